"""The instances in which a reader answers an exercise in numbers: drawn when first asked for, and kept until their check changes."""

import importlib
import json
from dataclasses import asdict
from pathlib import Path
from typing import Any

from checker.imports import Sources
from course.press.media.sources import installed_version

MADE_BY = "course.answers.instances"


class TypedAnswers:
    """The instances of all exercises.

    Parameters
    ----------
    root : Path
        Folder that holds `solutions/`, `checker/` and `course/`.
    solutions : Sources
        The modules below `root` that a check may import.
    folder : Path
        Where they are kept.
    """

    def __init__(self, root: Path, solutions: Sources, folder: Path) -> None:
        self.solutions, self.folder = solutions, folder
        self.maker = Sources(root, ("checker", "course")).hash_of([MADE_BY], f"numpy {installed_version('numpy')}")

    def of(self, exercise: Any) -> dict[str, dict[str, Any]]:
        """By function what is asked in numbers, as `asked_in_numbers` gives it, in plain dicts and lists.

        Parameters
        ----------
        exercise : checker.checks.exercise.Exercise

        Returns
        -------
        dict
            Empty if nothing in the exercise can be answered by a number.
        """
        key = self.solutions.hash_of([f"solutions.{exercise.path.replace('/', '.')}_check"], self.maker)
        record = self.folder / f"{exercise.path}.json"
        if record.is_file():
            kept = json.loads(record.read_text("utf-8"))
            if kept["key"] == key:
                return dict(kept["asked"])
        drawn = {one.name: asdict(one) for one in importlib.import_module(MADE_BY).asked_in_numbers(exercise)}
        text = json.dumps({"key": key, "asked": drawn}, ensure_ascii=False)
        record.parent.mkdir(parents=True, exist_ok=True)
        record.write_text(text, "utf-8")
        return dict(json.loads(text)["asked"])
