"""Puts questions to the bench's modules in Node, many at a time."""

import json
import os
import shutil
import subprocess
from dataclasses import asdict
from pathlib import Path

import pytest

ANSWERS = Path(__file__).with_name("bench_answers.mjs")


def asked(figures: dict, questions: list[tuple[str, dict]]) -> list:
    """What the modules answer to each (name, given)."""
    node = shutil.which("node")
    if not node:
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)("Node.js is not installed: the bench was not tried")
    put = json.dumps({"figures": figures, "questions": [{"ask": ask, "given": given} for ask, given in questions]})
    done = subprocess.run([node, str(ANSWERS)], input=put, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def plain(part) -> dict:
    """A dataclass or named tuple of `solutions/` as the modules take it."""
    fields = part._asdict() if hasattr(part, "_asdict") else asdict(part)
    return {name: float(value) for name, value in fields.items()}


def tuned_state(figures: dict, set_: str, frequency: float, **knobs: float) -> dict:
    """A set as the page opens it, its knobs turned, and then tuned to a frequency in hertz."""
    (begun,) = asked(figures, [("bench", {"call": "startingState", "args": [set_]})])
    (state,) = asked(figures, [("bench", {"call": "tunedTo", "args": [{**begun, **knobs}, frequency]})])
    return state


def only(figures: dict, name: str, weaker: float = 1.0) -> dict:
    """The part of the figures that leaves one station on the air."""
    return {"stations": [{**s, "field": s["field"] / weaker} for s in figures["stations"] if s["name"] == name]}
