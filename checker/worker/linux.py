"""Linux system calls that Python has no function for, with Python's errors."""

import ctypes
import functools
import os
import platform
import sys
from typing import Any

from .syscalls import numbers


@functools.cache
def machine() -> str:
    """The name of this machine in the tables of calls; "" where they do not hold (not Linux, or a 32-bit Python)."""
    return platform.machine() if sys.platform == "linux" and sys.maxsize > 2**32 else ""


def syscall(name: str, *arguments: int | bytes | None) -> int:
    """Make the system call `name`.

    Parameters
    ----------
    name : str
        One of the table in `syscalls`.
    arguments : int, bytes or None
        As the kernel takes them; bytes stand for their address.

    Returns
    -------
    int, what the kernel answered

    Raises
    ------
    OSError
        The kernel refused, or this machine has no such call.
    """
    number = _numbers().get(name)
    if number is None:
        raise OSError(f"{name}: no such call on this machine")
    return _checked(_libc().syscall, ctypes.c_long, name, number, *arguments)


def library_call(name: str, *arguments: int | bytes | None) -> int:
    """Call a function of the C library that answers -1 and errno; arguments and errors as for `syscall`."""
    if not machine():
        raise OSError(f"{name}: not on this system")
    return _checked(getattr(_libc(), name), ctypes.c_int, name, *arguments)


def resolve(*names: str) -> None:
    """Look up functions of the C library now. In a fresh fork a look-up is slow: it touches the tables of every library."""
    for name in (*names, "syscall") if machine() else ():
        getattr(_libc(), name)


@functools.cache
def _numbers() -> Any:
    return numbers(machine())


@functools.cache
def _libc() -> Any:
    return ctypes.CDLL(None, use_errno=True)


def _checked(function: Any, gives: Any, name: str, *arguments: Any) -> Any:
    function.restype = gives
    answer = function(*(ctypes.c_long(argument) if isinstance(argument, int) else argument for argument in arguments))
    if answer == -1:
        code = ctypes.get_errno()
        raise OSError(code, f"{name}: {os.strerror(code)}")
    return answer
