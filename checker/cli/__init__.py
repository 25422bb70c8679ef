"""The commands: a parser, and one module for each command."""

from .common import DONE, INTERRUPTED, NOT_YET, USAGE_ERROR
from .parser import main

__all__ = ["DONE", "INTERRUPTED", "NOT_YET", "USAGE_ERROR", "main"]
