"""What a child can see of the disk: the system's own folders, what Python needs, and nothing else, not even by name or size.

Landlock refuses to open what it does not grant, but not to look: how large a member's file is, and whether it is there, `stat`
still tells. So the warm process covers every folder of the disk's root that is not the system's with an empty one, once,
and lays what Python needs back into it. Its children see no more than it does.
"""

import os
from collections.abc import Sequence
from typing import Any

from .linux import library_call

CLONE_NEWNS, CLONE_NEWUSER = 0x00020000, 0x10000000
MS_NOSUID, MS_NODEV, MS_NOEXEC, MS_BIND, MS_REC, MS_PRIVATE = 2, 4, 8, 4096, 16384, 1 << 18
# They hold nobody's work, and programs and libraries look for things in them at any time.
SYSTEM = frozenset("bin dev etc lib lib32 lib64 libx32 proc sbin sys usr".split())
_EMPTY = b"size=1m,nr_inodes=16k,mode=755"


def enter_namespace(namespaces: int) -> None:
    """A view of the disk of this process's own: what it mounts nobody else sees.

    The user namespace, in which an ordinary user may mount, keeps the numbers of user and group as they are.

    Source: man 7 user_namespaces, man 7 mount_namespaces.
    """
    user, group = os.geteuid(), os.getegid()
    library_call("unshare", namespaces)
    if namespaces & CLONE_NEWUSER:
        for name, text in (("setgroups", "deny"), ("uid_map", f"{user} {user} 1"), ("gid_map", f"{group} {group} 1")):
            file = os.open(f"/proc/self/{name}", os.O_WRONLY)
            os.write(file, text.encode())
            os.close(file)
    library_call("mount", b"none", b"/", None, MS_REC | MS_PRIVATE, None)


def show_only(paths: Sequence[str], namespaces: int) -> None:
    """Hide all but the system's folders and these files and trees from this process and those that it will fork.

    Parameters
    ----------
    paths : sequence of str
        Absolute, without symbolic links, sorted, as `trees.python_trees` gives them.
    namespaces : int
        As in `Containment.scratch`.

    Raises
    ------
    OSError
        If the system does not let it.
    """
    enter_namespace(namespaces)
    for top in sorted(os.listdir("/")):
        folder = f"/{top}"
        if top in SYSTEM or os.path.islink(folder) or not os.path.isdir(folder) or folder in paths:
            continue
        held = [(path, os.open(path, os.O_PATH)) for path in paths if path.startswith(f"{folder}/") and os.path.exists(path)]
        library_call("mount", b"hidden", folder.encode(), b"tmpfs", MS_NOSUID | MS_NODEV | MS_NOEXEC, _EMPTY)
        for path, descriptor in held:
            if not os.path.lexists(path):  # what lies in a tree that is back already is back with it
                _put_back(path, descriptor)
            os.close(descriptor)


def _put_back(path: str, descriptor: Any) -> None:
    held = f"/proc/self/fd/{descriptor}"
    os.makedirs(os.path.dirname(path), exist_ok=True)
    if os.path.isdir(held):
        os.mkdir(path)
    else:
        os.close(os.open(path, os.O_CREAT | os.O_WRONLY))
    library_call("mount", held.encode(), os.fsencode(path), None, MS_BIND | MS_REC, None)
