"""`checker hear`: the student's own receiver as a sound, beside the reference's; or what one exercise of theirs sounds like."""

import argparse
import os
from collections.abc import Iterator
from pathlib import Path

from ..course import SEALED
from ..hear.answers import MemberAnswers, ReferenceAnswers
from ..hear.chain import CORE, LENT, YOURS, reference_chain
from ..hear.files import CAUTION, write_files
from ..hear.own import OwnFunctions, Unheard
from ..hear.own_files import CAUTION as CAUTION_ALONE
from ..hear.own_files import write_own
from ..hear.pieces import PIECES
from ..hear.receiver import Performance, demonstration_emf, play
from ..hear.sealed import read_sealed_hear
from ..report.text import Line, wrap
from ..sandbox.workers import start_own_worker
from ..see.names import find_asked
from ..submissions.members import read_member_folder
from .called import called_as
from .common import DONE, NOT_YET, Command, UsageError, add_folder_argument, exercises_folder, terminal_width
from .terminal import show

# What cannot be played, and without which functions, in a pack.
MISSING = {
    "circuit_voltage": ("the reaction demonstration", "circuit_voltage or swing_step"),
    "receiver": ("the six stations", "receiver, circuit_voltage or swing_step"),
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "exercise", nargs="?", metavar="EXERCISE", help=f"one of {', '.join(PIECES)}; left out: the whole receiver"
    )
    add_folder_argument(parser)
    parser.add_argument(
        "--into", metavar="DIR", type=Path, default=Path("heard"), help="where sounds and picture go (default: heard)"
    )


def run(options: argparse.Namespace) -> int:
    if options.exercise:
        return _hear_one(options)
    member = read_member_folder(exercises_folder(options.folder).resolve(), "you", account=False)
    chain, reference = read_sealed_hear() if SEALED else (reference_chain(), None)
    if reference is None:
        reference = play(chain, ReferenceAnswers(chain)).sound
    with start_own_worker() as worker:
        played = play(chain, MemberAnswers(chain, member.files, worker))
    emf = demonstration_emf(chain, chain.numbers["log"])
    levels = write_files(options.into, played, reference, emf, chain)
    show([Line(f"  {problem}", "yellow") for problem in member.problems])
    show(
        [
            *_ownership(played),
            *(Line(f"  {level}") for level in levels),
            Line(f"Open in a browser:  {os.path.relpath(options.into / 'index.html')}", "bold"),
            *wrap(CAUTION, terminal_width(), "yellow"),
        ]
    )
    return DONE if {source.whose for source in played.sources.values()} == {YOURS} else NOT_YET


def _hear_one(options: argparse.Namespace) -> int:
    """The sound of one exercise."""
    name = find_asked(options.exercise, called_as())[0].rpartition("/")[2]
    if name not in PIECES:
        raise UsageError(f"{name} has no sound of its own. These have: {', '.join(PIECES)}.")
    piece = PIECES[name]
    member = read_member_folder(exercises_folder(options.folder).resolve(), "you", account=False)
    show([Line(f"  {problem}", "yellow") for problem in member.problems])
    try:
        with start_own_worker() as worker:
            sound = piece.play(OwnFunctions(member.files, worker), 1.0)
    except Unheard as why:
        show([Line(f"{name}: no sound yet", "bold"), *wrap(str(why), terminal_width(), "yellow")])
        show([Line(f"  {why.line[0]}, line {why.line[1]}", "dim")] if why.line else [])
        return NOT_YET
    page, level = write_own(options.into, piece, sound, called_as())
    show(
        [
            Line(piece.title, "bold"),
            *wrap(piece.says, terminal_width()),
            Line(f"  {level}"),
            Line(f"Open in a browser:  {os.path.relpath(page)}", "bold"),
            *wrap(CAUTION_ALONE, terminal_width(), "yellow"),
        ]
    )
    return DONE


def _ownership(played: Performance) -> Iterator[Line]:
    """How much of the chain is the student's own, how much of that by the core's way, and what the course lends."""
    by_core = sum(source.whose == CORE for source in played.sources.values())
    lent = {" ".join(key): source.note for key, source in played.sources.items() if source.whose == LENT}
    own = len(played.sources) - len(lent)
    the_way = f", {by_core} of them by the core's way" if by_core else ""
    yield Line(
        f"{own} of the {len(played.sources)} links of this receiver {'is' if own == 1 else 'are'} your own{the_way}.", "bold"
    )
    if lent:
        others = "them" if not own else "the other" if len(lent) == 1 else "the others"
        yield Line(f"The course lends {others}{', where it can' if played.missing else ''}:")
    wide = max(map(len, lent), default=0) + 1
    for name, why in lent.items():
        yield from wrap(f"{name + ':':<{wide}} {why}", terminal_width())
    for name in played.missing:
        part, own_ways = MISSING[name]
        yield from wrap(
            f"Without {own_ways} of your own, {part} cannot be played in your sound: a student pack holds the "
            "reference as a recording only. Listen to reference.wav.",
            terminal_width(),
            "yellow",
        )


COMMAND = Command("hear", "hear one exercise of yours, or your own receiver beside the reference", add_arguments, run)
