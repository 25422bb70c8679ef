"""How loud the bench is at first, with every set, as the pages open it, and at every goal; run by hand, about a minute.

python -m tests.benchmarks.bench_levels
"""

import numpy as np

from course.bench.sets import bench_figures
from course.press.boxes.bench_box import read_goals
from tests.site.bench_asked import asked
from tests.site.test_bench_goals import REACHED
from tests.site.test_bench_levels import OPENED, RATE, decibels, opened, sent_out

SECONDS, BEGUN = 6.0, 2.0  # how long each is played, and how much of that is not counted


def main() -> None:
    figures = bench_figures()
    starts = asked(figures, [("bench", {"call": "startingState", "args": [name]}) for name in figures["order"]])
    settings = {f"page {page}": text for page, text in OPENED.items()}
    settings |= {f"goal {goal['name']}, begun": goal["start"] for goal in read_goals()}
    settings |= {f"goal {name}, reached": text for name, text in REACHED.items()}
    names = [*(f"set {name}" for name in figures["order"]), *settings]
    for name, state in zip(names, [*starts, *opened(figures, settings.values())], strict=True):
        (sound,) = sent_out(figures, [state], SECONDS)
        later = sound[round(BEGUN * RATE) :]
        print(
            f"{name:28} {decibels(np.std(later)):6.1f} dB r.m.s., first tenth of a second "
            f"{decibels(np.std(sound[: RATE // 10])):6.1f}, peak {decibels(np.abs(sound).max()):6.1f}, steady {decibels(np.mean(later)):6.1f}"
        )


if __name__ == "__main__":
    main()
