"""The worker where there is no fork: one exercise, in a Python started for it, asked over standard input and output."""

import importlib
import os
import random
import sys
import tempfile
import warnings

import numpy as np

from .child import serve
from .trees import python_trees


def main(*libraries: str) -> None:
    """Serve one exercise on standard input and output, which the student's code does not see, with these libraries beside numpy."""
    for library in libraries:  # here, and not in the time that the submission has
        importlib.import_module(library)
    requests, replies = os.dup(0), os.dup(1)
    null = os.open(os.devnull, os.O_RDWR)
    os.dup2(null, 0)
    os.dup2(null, 1)
    warnings.simplefilter("ignore")
    np.seterr(all="ignore")
    random.seed(0)
    np.random.seed(0)
    # Python's own folders by the names that it uses, too: on some systems these are links.
    readable = [*python_trees(), *map(os.path.abspath, sys.path)]
    with tempfile.TemporaryDirectory(prefix="checker-") as scratch:
        os.chdir(scratch)
        try:
            serve(requests, replies, readable, os.path.realpath(scratch))
        finally:
            os.chdir(sys.prefix)
