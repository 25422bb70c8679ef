"""Which room of the press may import which: a table to read, held against the imports that there are."""

import ast

from checker.imports import imports_in

from .conftest import ROOT

PRESS = ROOT / "course" / "press"
SHARED = {"faults", "templates", "pages", "club", "current_page"}
ALLOWED = {
    "faults": set(),
    "templates": set(),
    "current_page": set(),
    "pages": {"faults"},
    "club": {"faults"},
    "text": {"faults"},
    "media": {"faults"},
    "boxes": SHARED | {"text", "media"},
    "publishing": SHARED | {"text", "media", "boxes"},
}
OUTSIDE = {  # what of ours beside the press a room may import
    "templates": {"checker.templates"},
    "text": {"checker.checks.units"},
    "media": {"checker.imports", "course.described", "course.settings"},
    "boxes": {"checker.imports", "checker.sheet.keys", "course.bench.sets", "course.settings"},
    "publishing": {"course.bench.sets", "course.circle.levels", "course.circle.programme", "course.sounds.kit.level"},
}


def imports_of_rooms() -> set[tuple[str, str]]:
    """Room, and module of ours that one of its files imports."""
    found = set()
    for path in PRESS.rglob("*.py"):
        room = path.relative_to(PRESS).with_suffix("").parts[0]
        tree = ast.parse(path.read_text("utf-8"))
        found |= {(room, name) for name in imports_in(tree) if name.split(".")[0] in ("course", "checker", "solutions")}
    return found


def test_each_room_imports_only_from_those_below_it():
    for room, name in sorted(imports_of_rooms()):
        parts = name.split(".")
        if parts[:2] == ["course", "press"]:
            assert len(parts) == 2 or parts[2] in ALLOWED[room] | {room}, f"{room} imports {name}"
        else:
            allowed = OUTSIDE.get(room, set())
            assert any(name == other or name.startswith(f"{other}.") or other.startswith(f"{name}.") for other in allowed), (
                f"{room} imports {name}"
            )


def test_the_table_knows_every_room_and_allows_nothing_that_is_not_used():
    rooms = {path.relative_to(PRESS).with_suffix("").parts[0] for path in PRESS.rglob("*.py")} - {"__init__"}
    assert rooms == set(ALLOWED)
    used = {(room, name.split(".")[2]) for room, name in imports_of_rooms() if name.startswith("course.press.")}
    assert {(room, other) for room, others in ALLOWED.items() for other in others} <= used
