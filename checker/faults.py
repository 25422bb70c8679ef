"""Faults of the checker's own, caught at one place, so that one exercise never costs another and a class ends with its table."""

import traceback
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

Result = TypeVar("Result")
_HERE = Path(__file__).parent


class Problem(Exception):
    """Something that stops the whole command and is nobody's fault here; the text says what, where and what to do."""


def attempt(action: Callable[..., Result], *arguments: object) -> tuple[Result, str] | tuple[None, str]:
    """(what the action gives, "") or (None, what was wrong with the checker and where). A `Problem` goes through."""
    try:
        return action(*arguments), ""
    except Problem:
        raise
    except Exception as error:  # the one place where everything is caught
        return None, _describe(error)


def _describe(error: BaseException) -> str:
    """Kind of the error and the last line of the checker's own that it came by: "TypeError in judging/compare.py, line 7"."""
    ours = [frame for frame in traceback.extract_tb(error.__traceback__) if Path(frame.filename).is_relative_to(_HERE)]
    where = f" in {Path(ours[-1].filename).relative_to(_HERE).as_posix()}, line {ours[-1].lineno}" if ours else ""
    return f"{type(error).__name__}{where}"
