"""The worker where there is no fork: one exercise, in a Python started for it, asked over standard input and output."""

import os
import random
import sys
import tempfile
import warnings

import mpmath  # noqa: F401  here, and not in the time that the submission has
import numpy as np
import sympy  # noqa: F401

from .child import serve
from .trees import python_trees


def main() -> None:
    """Serve one exercise on standard input and output, which the student's code does not see."""
    requests, replies = os.dup(0), os.dup(1)
    null = os.open(os.devnull, os.O_RDWR)
    os.dup2(null, 0)
    os.dup2(null, 1)
    warnings.simplefilter("ignore")
    np.seterr(all="ignore")
    random.seed(0)
    np.random.seed(0)
    with tempfile.TemporaryDirectory(prefix="checker-") as scratch:
        os.chdir(scratch)
        try:
            serve(requests, replies, python_trees(), scratch)
        finally:
            os.chdir(sys.prefix)
