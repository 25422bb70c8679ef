"""The budget of a crystal set, drawn from a student's own functions.

    python -m course.budget --exercises exercises --station "Curlew Bank" --picture budget.png

Run it at the top of the checkout. It works with your functions of units 1, 3 and 4. One that is not written yet, or that
stops with an error, is named, and the course's own takes its place.
"""

import argparse
import importlib
import inspect
import sys
import types
import warnings
from collections.abc import Callable
from functools import wraps
from pathlib import Path

import numpy as np

from checker.checks.units import in_full
from course.circle.crystal_set import DEPTH, MUTUAL
from course.circle.stations import GROUNDS, LOCAL, STATIONS, Station
from course.figures.unit04_crystal_set.budget import PLACES, budget_diagram, powers

CHAIN = (  # each after the ones that it is made of
    "unit01_signal.aerial_voltage",
    "unit01_signal.field_strength",
    "unit01_signal.radiation_resistance",
    "unit03_tuned_circuit.reflected_impedance",
    "unit03_tuned_circuit.aerial_coupling",
    "unit04_crystal_set.rectified_voltage",
    "unit04_crystal_set.detector_load",
    "unit04_crystal_set.phone_loudness",
    "unit04_crystal_set.crystal_set",
)


class Unusable(ValueError):
    """What was given cannot be drawn; the message says what, where, and what to do."""


def student_chain(folder: Path) -> tuple[types.ModuleType, types.ModuleType, dict[str, str]]:
    """A student's modules, with the course's function wherever theirs cannot be used.

    Parameters
    ----------
    folder : Path
        Of the exercises: `exercises` in a checkout.

    Returns
    -------
    field_strength, crystal_set : module
        Theirs, and everything that these call.
    replaced : dict
        Reason by name of the function; filled as the functions are called.
    """
    if not (folder / "unit04_crystal_set").is_dir():
        raise Unusable(f"{folder} holds no unit04_crystal_set: give the folder of the exercises, with --exercises")
    for name in [name for name in sys.modules if name.partition(".")[0] == "exercises"]:
        del sys.modules[name]
    package = types.ModuleType("exercises")
    package.__path__ = [str(folder.resolve())]
    sys.modules["exercises"] = package
    replaced: dict[str, str] = {}
    made: dict[str, Callable] = {}
    modules = {name: own_or_reference(name, made, replaced) for name in CHAIN}
    return modules[CHAIN[1]], modules[CHAIN[-1]], replaced


def own_or_reference(name: str, made: dict[str, Callable], replaced: dict[str, str]) -> types.ModuleType:
    """One module of the student's, each of its functions with the course's behind it; adds them to those `made`.

    The course's functions are made again so that they, too, call the student's.
    """
    reference = importlib.import_module(f"solutions.{name}")
    surroundings = dict(vars(reference))
    again = {
        what: types.FunctionType(inspect.unwrap(thing).__code__, surroundings, what, inspect.unwrap(thing).__defaults__)
        for what, thing in vars(reference).items()
        if inspect.isfunction(thing) and thing.__module__ == reference.__name__
    }
    try:
        module = importlib.import_module(f"exercises.{name}")
    except Exception as error:
        replaced[name.replace(".", "/") + ".py"] = f"it cannot be read, {sentence_of(error)}"
        module = types.ModuleType(f"exercises.{name}")
        vars(module).update({what: thing for what, thing in surroundings.items() if not what.startswith("__")})
        vars(module).update(again)
        sys.modules[module.__name__] = module
    made |= {what: with_fallback(what, vars(module).get(what), thing, replaced) for what, thing in again.items()}
    surroundings |= made
    vars(module).update({what: made[what] for what in again})
    return module


def with_fallback(name: str, own: Callable | None, reference: Callable, replaced: dict[str, str]) -> Callable:
    """The student's function; once it has failed, the course's."""

    @wraps(reference)
    def either(*arguments, **named):
        if name not in replaced:
            try:
                return own(*arguments, **named)
            except NotImplementedError:
                replaced[name] = "it is not written yet"
            except Exception as error:
                replaced[name] = f"it stopped with {sentence_of(error)}" if callable(own) else "it is not in the file"
        return reference(*arguments, **named)

    return either


def sentence_of(error: Exception) -> str:
    """An error in one line."""
    words = " ".join(str(error).split())
    return f"{type(error).__name__}: {words}" if words else type(error).__name__


def student_powers(station: Station, folder: Path) -> tuple[np.ndarray, dict[str, str]]:
    """Watts at the seven places by the student's functions, and what was replaced.

    Raises
    ------
    Unusable
        If there are no exercises in the folder, or the functions give no seven powers above nothing.
    """
    field_strength, crystal_set, replaced = student_chain(folder)
    field = field_strength.ground_wave_field(station.power, station.distance, station.frequency, *GROUNDS[station.ground])
    given = crystal_set.power_budget(station.power, field, station.frequency, MUTUAL, DEPTH)
    try:
        watts = np.asarray(given, dtype=float)
    except (TypeError, ValueError):
        watts = np.empty(0)
    if watts.shape != (len(PLACES),) or not np.isfinite(watts).all() or not (watts > 0).all():
        raise Unusable(
            f"your power_budget gave {given!r} for {station.name}: seven powers above 0 W are wanted; "
            "run `checker try` on the functions that it calls, from unit 1 on"
        )
    return watts, replaced


def table(watts: np.ndarray, expected: np.ndarray) -> str:
    """Seven lines: place, power, decibels lost on the way there; then where yours differ from the course's."""
    lost, usual = (10 * np.log10(chain[:-1] / chain[1:]) for chain in (watts, np.asarray(expected)))
    lines = [f"{PLACES[0]:14} {in_full(float(watts[0]), 'W', 3):>10}"]
    for place, power in enumerate(watts[1:]):
        remark = "" if abs(lost[place] - usual[place]) < 0.05 else f"   the course has {usual[place]:.1f}"
        lines.append(f"{PLACES[place + 1]:14} {in_full(float(power), 'W', 3):>10} {lost[place]:8.1f} dB lost{remark}")
    return "\n".join(lines)


def main(words: list[str] | None = None) -> int:
    named = {station.name.lower(): station for station in STATIONS}
    parser = argparse.ArgumentParser(prog="python -m course.budget", description=__doc__.split("\n")[0])
    parser.add_argument("--exercises", type=Path, default=Path("exercises"), help="folder of your exercises")
    parser.add_argument("--station", default=LOCAL.name, help=", ".join(station.name for station in STATIONS))
    parser.add_argument("--picture", type=Path, default=Path("budget.png"), help="file to draw: .png, .svg or .pdf")
    given = parser.parse_args(words)
    try:
        if given.station.lower() not in named:
            raise Unusable(f"there is no station called {given.station!r}: {', '.join(s.name for s in STATIONS)}")
        if given.picture.suffix.lower() not in (".png", ".svg", ".pdf"):
            raise Unusable(f"{given.picture}: end the picture's name with .png, .svg or .pdf")
        station = named[given.station.lower()]
        with warnings.catch_warnings(), np.errstate(all="ignore"):
            warnings.simplefilter("ignore")
            watts, replaced = student_powers(station, given.exercises)
        drawing = budget_diagram(watts)
        drawing.suptitle(station.name)
        try:
            drawing.savefig(given.picture, facecolor="white", dpi=200)
        except OSError as error:
            raise Unusable(f"{given.picture} cannot be written: {error.strerror}") from None
    except Unusable as error:
        print(error, file=sys.stderr)
        return 2
    print(f"{station.name}, by your functions\n{table(watts, np.asarray(powers(station)))}")
    for name, reason in replaced.items():
        print(f"the course's own instead of {name}: {reason}")
    print(f"drawn: {given.picture}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
