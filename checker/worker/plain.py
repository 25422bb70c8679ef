"""Is a source plain: can it be seen, without running it, to leave nothing behind in the process that it runs in?

Plain exercises of one member can follow one another in one process. That is a matter of speed and of nothing else: no wall
leans on it, the exercises are all one person's, and what is not plain, or goes wrong, gets a process of its own.

What is looked at is the compiled code: nothing in it may set an attribute, or speak a name by which something that is
shared could be reached and changed.
"""

import dis
import types

import numpy as np

_SETTING = {dis.opmap[name] for name in ("STORE_ATTR", "DELETE_ATTR")}
_ORDINARY = frozenset("__name__ __doc__ __module__ __qualname__ __annotations__ __future__".split())
_REACHING = frozenset(
    "setattr delattr getattr vars globals locals exec eval open input breakpoint gi_frame gi_code "
    "seterr seterrcall seterrobj setbufsize set_printoptions set_string_function add_docstring update_wrapper "
    "setcontext operator random warnings init_printing init_session".split()
)
_SHARED = frozenset(name for name in dir(np) if isinstance(getattr(np, name), (dict, list, set, types.ModuleType)))
_SPOKEN = (_REACHING | _SHARED) - {"linalg", "fft", "polynomial", "typing"}


def is_plain(code: types.CodeType) -> bool:
    """Whether a module's code only defines functions and values of its own, with numpy and the like."""
    return (
        _SPOKEN.isdisjoint(code.co_names)
        and all(not name.startswith("__") or name in _ORDINARY for name in code.co_names)
        and ("*",) not in code.co_consts
        and _SETTING.isdisjoint(code.co_code[::2])
        and all(map(is_plain, (part for part in code.co_consts if isinstance(part, types.CodeType))))
    )
