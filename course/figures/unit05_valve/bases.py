"""Valve, section 8: bases as they are seen from below, where the soldering is done."""

import numpy as np

from course.figures import figure
from course.figures.kit.style import FAINT, INK, PLUM, RUST, SEA, SMALL_TEXT, plot

ROLES = {"F": RUST, "H": RUST, "G": PLUM, "A": SEA, "K": INK, "–": INK}


def base(axes, centre, title, pins, thick=(), key=False):
    """One base: pins given as (angle in degrees clockwise from the top, number, role)."""
    x, y = centre
    turn = np.linspace(0, 2 * np.pi, 97)
    axes.plot(x + 1.25 * np.cos(turn), y + 1.25 * np.sin(turn), color=INK, linewidth=1.3)
    if key:
        axes.plot(x + 0.28 * np.cos(turn), y + 0.28 * np.sin(turn), color=INK, linewidth=1.0)
        axes.plot([x, x], [y - 0.28, y - 0.45], color=INK, linewidth=3)
    for angle, number, role in pins:
        a = np.radians(angle)
        px, py = x + 0.78 * np.sin(a), y + 0.78 * np.cos(a)
        axes.plot(
            px, py, "o", color=ROLES[role], markersize=9 if number in thick else 6, fillstyle="none" if role == "–" else "full"
        )
        axes.text(
            x + 1.6 * np.sin(a),
            y + 1.56 * np.cos(a),
            f"{number} {role}".removesuffix(" –"),
            color=ROLES[role],
            ha="center",
            va="center",
            fontsize=SMALL_TEXT,
        )
    axes.text(x, y - 2.45, title, ha="center", va="center", color=INK)


@figure(
    caption="Three bases seen **from below**, numbered clockwise: from memory, so check each with the maker's sheet "
    "and a meter. F filament, H heater, K cathode, G grid, A anode. Four pins: the two thick ones are the "
    "filament. Octal: count from the key.",
    alt="Three circles with pins, from below. Four-pin base of types 30, 01-A and 12-A: thick pins 1 and 4 at the"
    " foot, filament; 2, upper left, anode; 3, upper right, grid. Five-pin base of types 27, 37 and 56: 1 and"
    " 5 at the foot, heater; 2 anode; 3 grid; 4 cathode. Octal base of 1H4-G and 1G4-GT, key at the foot: 2 "
    "filament plus, 3 anode, 5 grid, 7 filament minus.",
)
def bases():
    drawing, axes = plot(height=5.6)
    base(axes, (-2.4, 2.6), "30, 01-A, 12-A", ((225, 1, "F"), (315, 2, "A"), (45, 3, "G"), (135, 4, "F")), thick=(1, 4))
    base(axes, (2.4, 2.6), "27, 37, 56", ((216, 1, "H"), (288, 2, "A"), (0, 3, "G"), (72, 4, "K"), (144, 5, "H")))
    octal = ((1, "–"), (2, "F"), (3, "A"), (4, "–"), (5, "G"), (6, "–"), (7, "F"), (8, "–"))
    base(axes, (0, -2.9), "1H4-G, 1G4-GT (octal)", tuple((180 + 45 * n - 22.5, n, role) for n, role in octal), key=True)
    axes.plot([-4.6, 4.6], [-0.35, -0.35], color=FAINT, linewidth=0.8)
    axes.set(xlim=(-4.7, 4.7), ylim=(-5.8, 4.7), aspect="equal")
    axes.axis("off")
    return drawing
