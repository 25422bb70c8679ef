"""How the pictures look: colours, sizes, axes.

A colour here is its light form; on the page it becomes a name that has a light and a dark form (`palette.toml`).
Sizes are set for a telephone: at 328 px wide the smallest text is still about 11 px high.
"""

import math
import tomllib
from collections.abc import Sequence
from pathlib import Path

import matplotlib

matplotlib.use("svg")
import matplotlib.pyplot as plt  # noqa: E402
from matplotlib.axes import Axes  # noqa: E402
from matplotlib.axis import Axis  # noqa: E402
from matplotlib.figure import Figure  # noqa: E402
from matplotlib.ticker import MaxNLocator, NullLocator  # noqa: E402

from checker.checks.units import PREFIXED, PREFIXES  # noqa: E402

PALETTE: dict[str, tuple[str, str]] = tomllib.loads(Path(__file__).with_name("palette.toml").read_text("utf-8"))
PAPER, SLIP, INK, SOFT, SEA, BRASS, RUST, KELP, PLUM, FAINT = (
    PALETTE[name][0] for name in ("paper", "slip", "ink", "soft", "sea", "brass", "rust", "kelp", "plum", "faint")
)

WIDTH, HEIGHT = 4.6, 3.1
TEXT = 12.5
SMALL_TEXT = 12.0
DASH, DOTS = (0, (5, 2)), (0, (1.5, 1.5))  # of lines that are not to be told by their colour alone
THREE_LOOKS = (RUST, (6, 2)), (BRASS, (3, 1.5)), (SEA, (None, None))  # colour and dashes of three curves in one plot
LINE = 1.8
THIN_LINE = 0.9

LOOK = {
    "figure.figsize": (WIDTH, HEIGHT),
    "figure.facecolor": "none",
    "figure.constrained_layout.use": True,
    "savefig.facecolor": "none",
    "font.size": TEXT,
    "axes.facecolor": "none",
    "axes.edgecolor": INK,
    "axes.labelcolor": INK,
    "axes.titlesize": TEXT,
    "axes.titlecolor": INK,
    "axes.linewidth": THIN_LINE,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.grid": True,
    "axes.axisbelow": True,
    "axes.prop_cycle": matplotlib.cycler(color=[SEA, BRASS, RUST, KELP, PLUM]),
    "axes.unicode_minus": True,
    "grid.color": FAINT,
    "grid.linewidth": 0.7,
    "lines.linewidth": LINE,
    "lines.solid_capstyle": "round",
    "patch.edgecolor": INK,
    "patch.linewidth": THIN_LINE,
    "hatch.color": INK,
    "text.color": INK,
    "xtick.color": INK,
    "ytick.color": INK,
    "xtick.labelsize": SMALL_TEXT,
    "ytick.labelsize": SMALL_TEXT,
    "legend.frameon": False,
    "legend.fontsize": SMALL_TEXT,
    "mathtext.fontset": "cm",
    "path.simplify_threshold": 0.2,
    "svg.fonttype": "none",
}
matplotlib.rcParams.update(LOOK)


def plot(rows: int = 1, height: float = HEIGHT, **subplots) -> tuple[Figure, Axes]:
    """An empty plot of the course's size and look.

    Parameters
    ----------
    rows : int
        Plots above one another, sharing their foot.
    height : float, inches
        Of the whole picture; the width is the same for all.
    **subplots
        Passed on to `matplotlib.pyplot.subplots`.

    Returns
    -------
    (Figure, Axes), or an array of Axes for several rows
    """
    return plt.subplots(rows, 1, figsize=(WIDTH, height), sharex=True, **subplots)


def engineering_axis(axis: Axis, quantity: str, unit: str, ticks: int = 5) -> None:
    """Name an axis and mark it in round numbers with one prefix: "frequency, kHz", 700, 800, 900.

    Parameters
    ----------
    axis : matplotlib Axis
        `axes.xaxis` or `axes.yaxis`, whose data are in plain SI units; call after the curves are drawn.
    quantity : str
        Its name, without the unit.
    unit : str
        SI unit without prefix.
    ticks : int
        The most marks to make, a logarithmic axis excepted.
    """
    largest = max(abs(end) for end in axis.get_view_interval())
    prefixes = PREFIXES if unit in PREFIXED else {0: ""}
    power = min(max(math.floor(math.log10(largest)) // 3 * 3, min(prefixes)), max(prefixes))
    if axis.get_scale() == "linear":
        axis.set_major_locator(MaxNLocator(ticks, steps=[1, 2, 2.5, 5, 10]))
    axis.set_major_formatter(lambda value, _: f"{value / 10.0**power:.6g}".replace("-", "−"))
    axis.set_label_text(f"{quantity}, {prefixes[power]}{unit}" if unit else quantity)


def marks(axis: Axis, places: Sequence[float], words: Sequence[str] | None = None) -> None:
    """Mark an axis at these places and nowhere else.

    Parameters
    ----------
    axis : matplotlib Axis
    places : sequence of float
    words : sequence of str, optional
        What stands at each; the numbers themselves if not given.
    """
    axis.set_ticks(places, [f"{place:g}".replace("-", "−") for place in places] if words is None else words)
    axis.set_minor_locator(NullLocator())


def label(axes: Axes, words: str, at: tuple[float, float], shift: tuple[float, float], color: str = INK, **style) -> None:
    """Words beside a point of a curve: `shift` is in points to the right and upwards, so that it is the same on any scale.

    Parameters
    ----------
    axes : matplotlib Axes
    words : str
    at, shift : (float, float)
    color : str
    **style
        Passed on to `Axes.annotate`.
    """
    axes.annotate(words, at, shift, textcoords="offset points", color=color, **style)
