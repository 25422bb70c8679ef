"""What the pages' reader of typed quantities takes from the checker's: prefixes, look-alikes, and the ratios that have a name."""

from typing import Any

from checker.checks.units import LOOK_ALIKES, PREFIXES
from checker.judging.compare import NAMED_RATIOS


def reader_tables() -> dict[str, Any]:
    """The tables of the checker's reader, in the order in which it tries them, as JSON has them."""
    return {
        "prefixes": [[prefix, power] for power, prefix in PREFIXES.items()],
        "alike": [[chr(sign), as_written] for sign, as_written in LOOK_ALIKES.items()],
        "ratios": [[name, ratio] for name, ratio in NAMED_RATIOS.items()],
    }
