"""The warm process: numpy, and sympy if wanted, imported once, then a fork for every exercise to be run.

It is told five things over its socket. FORK or FORK_WITH_SCRATCH, with a descriptor (requests to read, replies to write):
fork a child that serves it, with or without a disk of its own; FORK_COMPILER: one that compiles and runs nothing. The answer is
the child's number and a pidfd. REAP: wait for a child; the answer is how it ended. FORGET: its end is not waited for, and there
is no answer.
The child reads its request itself, so that this process never holds a student's data.
"""

import array
import gc
import importlib
import importlib.util
import os
import random
import socket
import sys
import tempfile
import warnings
from dataclasses import replace
from typing import Any

import numpy as np

from .child import serve
from .compiling import serve_compiler
from .contain import contain, empty_environment, prepare, probe
from .trees import import_path, python_trees
from .view import show_only
from .wire import ANSWER, FORGET, FORK, FORK_COMPILER, FORK_WITH_SCRATCH, ORDER, REAP


def main(descriptor: int, rehearse: str, *libraries: str) -> None:
    """Serve the judge on an inherited socket until it closes, with these libraries imported beside numpy; `rehearse` if sympy, where
    it is one of them, is to be used once beforehand: that takes longer than importing it, and spares every exercise a little."""
    channel = socket.socket(fileno=descriptor)
    readable = python_trees()
    for library in libraries:
        importlib.import_module(library)
    sys.path[:] = import_path()
    del sys.argv[1:], sys.orig_argv[1:]  # nothing in a child tells how it came to be
    empty_environment()
    _warm_up(bool(rehearse))
    namespaces = probe().scratch
    if namespaces:
        show_only(readable, namespaces)
        importlib.util.find_spec("nothing_of_this_name")  # reads the new folders now: a child may not list them
    with tempfile.TemporaryDirectory(prefix="checker-") as scratch, prepare(readable, scratch) as walls:
        _fork_on_demand(channel, walls, readable)


def _fork_on_demand(channel: socket.socket, walls: Any, readable: Any) -> None:
    forgotten: set[int] = set()
    bare = replace(walls, scratch=None)
    while True:
        order, child, descriptors = _receive(channel)
        if not order:
            return
        if order in (FORK, FORK_WITH_SCRATCH, FORK_COMPILER):
            forgotten -= {child for child in forgotten if _has_ended(child)}
            child = os.fork()
            if child == 0:
                [end] = descriptors
                _be_a_child(end, walls if order == FORK_WITH_SCRATCH else bare, readable, order == FORK_COMPILER)
            pidfd = os.pidfd_open(child) if hasattr(os, "pidfd_open") else os.open(os.devnull, os.O_RDONLY)
            _send(channel, child, [pidfd])
            for used in (*descriptors, pidfd):
                os.close(used)
        elif order == REAP:
            _send(channel, os.waitpid(child, 0)[1], [])
        elif order == FORGET:
            forgotten.add(child)


def _has_ended(child: int) -> bool:
    return os.waitpid(child, os.WNOHANG)[0] == child


def _warm_up(rehearse: bool) -> None:
    """Touch what a first use would import or build, then keep it out of the garbage collector's way."""
    if rehearse and "sympy" in sys.modules:
        _warm_up_sympy(sys.modules["sympy"])
    np.linalg.eigvals(np.eye(2))
    np.random.default_rng(0)
    np.random.seed(0)
    warnings.simplefilter("ignore")  # a warning would look for the student's line in a file that is not there
    np.seterr(all="ignore")
    gc.collect()
    gc.freeze()


def _warm_up_sympy(sympy: Any) -> None:
    x = sympy.Symbol("x", positive=True)
    sympy.simplify(sympy.sin(x) ** 2 + sympy.cos(x) ** 2)
    sympy.solve(sympy.Eq(x * 2, 1 / x), x)
    sympy.integrate(sympy.cos(x) ** 2, x)
    sympy.lambdify(x, sympy.sqrt(x))
    sympy.sqrt(x).evalf(20, subs={x: 2.0})


def _be_a_child(end: int, walls: Any, readable: Any, compiles: bool) -> None:
    try:
        contain(walls, keep=(end,))
        random.seed(0)  # Python seeds it anew in each fork
        if compiles:
            serve_compiler(end)
        else:
            serve(end, end, readable, walls.scratch)
    finally:
        os._exit(0)


def _receive(channel: socket.socket) -> Any:
    message, ancillary, _, _ = channel.recvmsg(ORDER.size, socket.CMSG_LEN(array.array("i").itemsize))
    descriptors = array.array("i")
    for level, kind, data in ancillary:
        if level == socket.SOL_SOCKET and kind == socket.SCM_RIGHTS:
            descriptors.frombytes(data)
    order, child = ORDER.unpack(message) if message else (b"", 0)
    return order, child, list(descriptors)


def _send(channel: socket.socket, number: int, descriptors: Any) -> None:
    rights = [(socket.SOL_SOCKET, socket.SCM_RIGHTS, array.array("i", descriptors))] if descriptors else []
    channel.sendmsg([ANSWER.pack(number)], rights)
