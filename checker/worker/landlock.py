"""Landlock: what a process, and all it starts, may still do with files, TCP ports and processes of others.

A ruleset says which rights it handles and where it grants them; a handled right is refused everywhere else. Rulesets
laid one over the other all have to agree. Rights are granted on whole trees and cannot be taken back further down.
Looking at a name (stat, access, readlink), chmod and chown are not covered.

Source: Linux Documentation/userspace-api/landlock.rst; man 7 landlock; include/uapi/linux/landlock.h.
"""

import os
import stat
import struct

from .linux import syscall

EXECUTE, WRITE_FILE, READ_FILE, READ_DIR, REMOVE_DIR, REMOVE_FILE = (1 << bit for bit in range(6))
MAKE_CHAR, MAKE_DIR, MAKE_REG, MAKE_SOCK, MAKE_FIFO, MAKE_BLOCK, MAKE_SYM = (1 << bit for bit in range(6, 13))
REFER, TRUNCATE, IOCTL_DEV = 1 << 13, 1 << 14, 1 << 15

LOOKING = EXECUTE | READ_FILE | READ_DIR | IOCTL_DEV
CHANGING = (
    WRITE_FILE
    | REMOVE_DIR
    | REMOVE_FILE
    | MAKE_CHAR
    | MAKE_DIR
    | MAKE_REG
    | MAKE_SOCK
    | MAKE_FIFO
    | MAKE_BLOCK
    | MAKE_SYM
    | TRUNCATE
)
TCP = 1 << 0 | 1 << 1  # bind, connect
OTHERS = 1 << 0 | 1 << 1  # abstract Unix sockets, signals

# The ABI that brought each right; what a kernel does not know must not be asked of it.
_SINCE = {REFER: 2, TRUNCATE: 3, IOCTL_DEV: 5}
_TCP_SINCE, _OTHERS_SINCE = 4, 6

_VERSION, _PATH_BENEATH = 1, 1


def abi() -> int:
    """The version of Landlock that this system has, 0 if none."""
    try:
        return syscall("landlock_create_ruleset", None, 0, _VERSION)
    except OSError:
        return 0


def ruleset(version: int, files: int, *, others: bool = False) -> int:
    """An empty ruleset that handles `files`, and TCP and processes outside if `others`, as far as `version` knows them.

    Parameters
    ----------
    version : int
        From `abi`.
    files : int
        Rights on files.
    others : bool
        Whether to shut TCP, abstract Unix sockets and signals too.

    Returns
    -------
    int, a descriptor
    """
    tcp = TCP if others and version >= _TCP_SINCE else 0
    scope = OTHERS if others and version >= _OTHERS_SINCE else 0
    return syscall("landlock_create_ruleset", struct.pack("<QQQ", known(version, files), tcp, scope), 24, 0)


def known(version: int, rights: int) -> int:
    """Those of `rights` that a version of Landlock knows."""
    return rights & ~sum(right for right, since in _SINCE.items() if version < since)


def grant(rules: int, path: str, rights: int) -> None:
    """Grant `rights` beneath `path`; of them, on what is not a directory, those that make sense there."""
    descriptor = os.open(path, os.O_PATH | os.O_CLOEXEC)
    try:
        if not stat.S_ISDIR(os.fstat(descriptor).st_mode):
            rights &= EXECUTE | WRITE_FILE | READ_FILE | TRUNCATE | IOCTL_DEV
        syscall("landlock_add_rule", rules, _PATH_BENEATH, struct.pack("<Qi", rights, descriptor), 0)
    finally:
        os.close(descriptor)


def restrict(rules: int) -> None:
    """Put this process under a ruleset, for good. It must have given up new privileges before."""
    syscall("landlock_restrict_self", rules, 0)
