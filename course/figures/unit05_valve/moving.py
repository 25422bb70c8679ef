"""Valve, the moving pictures: electrons on their way, as many and as fast as the laws of `solutions/` make them.

Everything is drawn from the side: the filament at the left, the anode at the right. Lengths across are to scale except
the filament's cloud, which would be too thin to see.
"""

import numpy as np

from checker.checks.units import in_full
from course.figures.kit.animation import WIDTH, Animation, animation, spread
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA
from solutions.unit05_valve.emission import emission_density
from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.space_charge import CHARGE_TO_MASS, PERMITTIVITY, anode_density
from solutions.unit05_valve.triode_current import triode_current

OXIDE = 100.0, 1.0  # ampere per square metre and kelvin squared, volt: a usual coating, from memory
HOT = 950.0  # kelvin
LEFT, RIGHT = 82.0, 244.0  # units of the drawing: filament and anode
ROW, BAND = 70.0, 23.0  # units: from row to row, and half of a row's own height
SPEEDS = (0.1, 0.3, 0.5, 0.7, 0.9)  # part of the electrons that are slower
SLOWER = 9e8  # how much slower than the truth a picture runs


def filament(picture: Animation, y: float, colour: str = RUST) -> None:
    picture.line((LEFT, y - BAND - 3), (LEFT, y + BAND + 3), colour=colour, width=4)


def anode(picture: Animation, y: float) -> None:
    picture.line((RIGHT, y - BAND - 3), (RIGHT, y + BAND + 3), colour=INK, width=5)


def hops(picture: Animation, highest: float) -> list[int]:
    """Journeys out and back, one for each of `SPEEDS`: thrown up against an even pull, each as high as its energy.

    Energies away from a hot surface are spread exponentially (J. C. Maxwell's law of speeds, at the surface).
    """
    energies = -np.log1p(-np.array(SPEEDS))
    part = np.linspace(0, 1, 9)
    return [
        picture.journey(1.5 * np.sqrt(height) * part, 3 + highest * height * 4 * part * (1 - part))
        for height in energies / energies[-1]
    ]


def boil(picture: Animation, ways: list[int], count: int, y: float, seed: int) -> None:
    """So many electrons in a loop that leave the filament and fall back."""
    heights, moments = spread(count, y - BAND, y + BAND, seed), spread(count, 0, picture.seconds, seed + 3)
    for place in range(count):
        way = ways[(place * 2 + seed) % len(ways)]
        picture.electrons(way, [moments[place] + 0.61 * place], [(LEFT, heights[place])])


def crossing(voltage: float, gap: float, density: float) -> tuple[np.ndarray, np.ndarray]:
    """Moments in seconds, and places as parts of the gap, of an electron that crosses among others.

    Its acceleration grows evenly in time, by (e/m)(J/ε0), and it arrives with the speed that the voltage gives.
    """
    speed, growth = np.sqrt(2 * CHARGE_TO_MASS * voltage), CHARGE_TO_MASS * density / PERMITTIVITY
    roots = np.roots([growth / 12, 0, -speed / 2, gap])
    arrival = min(root.real for root in roots if abs(root.imag) < 1e-6 * abs(root) and root.real > 0)
    pull = speed / arrival - growth * arrival / 2
    time = arrival * np.linspace(0, 1, 12)
    return time, (pull * time**2 / 2 + growth * time**3 / 6) / gap


def dots(density: float) -> int:
    """How many electrons stand for a current density, in one loop of a picture with an anode."""
    return round(density / 7)


def cross(picture: Animation, y: float, density: float, voltage: float, gap: float, seed: int) -> None:
    """The electrons of a current density, on their way over to the anode, evenly one after the other."""
    time, place = crossing(voltage, gap, density)
    way = picture.journey(time * SLOWER, 3 + (RIGHT - LEFT - 6) * place)
    count = dots(density)
    moments = picture.seconds * (np.arange(count) + 0.3) / count
    picture.electrons(way, moments, [(LEFT, height) for height in spread(count, y - BAND, y + BAND, seed)])


@animation(
    caption="**A hot filament by itself.** Each dot is thrown out by the heat, is held back by the cloud before it, "
    "and falls home. How many leave is [Richardson's law](#1-where-do-the-electrons-come-from): fifty kelvin "
    "more, and there are twice as many.",
    alt="Three glowing wires, at 900, 950 and 1000 kelvin. Dots leave each to the right, slow down, turn and fall"
    " back; most stay near, a few go further. The second wire has a little over twice as many as the first, "
    "the third twice as many again. Beside them stands what each could give: 204, 447 and 912 amperes a "
    "square metre.",
)
def hot_filament():
    picture = Animation("hot-filament", 3 * ROW + 22, 4.0)
    ways = hops(picture, 118.0)
    for row, temperature in enumerate((900.0, 950.0, 1000.0)):
        y = 36 + row * ROW
        density = emission_density(temperature, *OXIDE)
        boil(picture, ways, round(density / 9), y, row)
        filament(picture, y, (RUST, RUST, BRASS)[row])
        picture.words(LEFT - 12, y + 5, f"{temperature:.0f} K", anchor="end")
        picture.words(WIDTH - 4, y + 5, in_full(density, "A/m²", 3), anchor="end")
    picture.words(LEFT, 3 * ROW + 17, "filament", RUST, "middle", small=True)
    return picture


@animation(
    caption="**An anode draws them.** The filament is at 950 K in every row; the anode stands 2.5 mm away. What the "
    "anode cannot draw falls back. From 22.5 V to 90 V the current grows eightfold, by the three-halves law. "
    "At 180 V it takes all that there is, and more volts would bring no more. Shown about a thousand million "
    "times too slow.",
    alt="Four rows, with 22.5, 45, 90 and 180 volts on a plate at the right. In the first a few dots cross to it, ever "
    "faster, and most fall back to the filament; from row to row more cross and sooner, 40, 113, 319 and 447 amperes a "
    "square metre; in the last none falls back.",
)
def to_the_anode():
    picture = Animation("to-the-anode", 4 * ROW + 22, 4.0)
    ways = hops(picture, 26.0)
    emission, gap = emission_density(HOT, *OXIDE), 2.5e-3
    for row, voltage in enumerate((22.5, 45.0, 90.0, 180.0)):
        y = 36 + row * ROW
        density = anode_density(voltage, gap, emission)
        cross(picture, y, density, voltage, gap, row)
        boil(picture, ways, dots(emission - density), y, row)
        filament(picture, y)
        anode(picture, y)
        picture.words(LEFT - 12, y + 5, f"{voltage:g} V", anchor="end")
        picture.words(WIDTH - 4, y + 5, in_full(density, "A/m²", 3), anchor="end")
    picture.words(LEFT, 4 * ROW + 17, "filament", RUST, "middle", small=True)
    picture.words(RIGHT, 4 * ROW + 17, "anode", INK, "middle", small=True)
    return picture


@animation(
    caption="**The space charge.** The anode, 2.5 mm away, has 45 V in every row; only the filament's heat differs. What it "
    "gives more falls back: the cloud grows thicker, and the current stays as it was.",
    alt="Three rows with a filament at 900, 950 and 1000 kelvin and a plate at 45 volts. In each the same three dots or so "
    "at a time cross to the plate, 113 amperes a square metre. Close to the filament hangs a cloud of dots that are thrown out "
    "and fall back: thin in the first row, over three times as thick in the second, nearly nine times in the third.",
)
def space_charge():
    picture = Animation("space-charge", 3 * ROW + 22, 4.0)
    ways = hops(picture, 34.0)
    gap, voltage = 2.5e-3, 45.0
    for row, temperature in enumerate((900.0, 950.0, 1000.0)):
        y = 36 + row * ROW
        emission = emission_density(temperature, *OXIDE)
        drawn = anode_density(voltage, gap, emission)
        cross(picture, y, drawn, voltage, gap, row)
        boil(picture, ways, dots(emission - drawn), y, row)
        filament(picture, y, (RUST, RUST, BRASS)[row])
        anode(picture, y)
        picture.words(LEFT - 12, y + 5, f"{temperature:.0f} K", anchor="end")
        picture.words(WIDTH - 4, y + 5, in_full(drawn, "A/m²", 3), anchor="end")
    picture.words(LEFT, 3 * ROW + 17, "filament", RUST, "middle", small=True)
    picture.words(RIGHT, 3 * ROW + 17, "anode", INK, "middle", small=True)
    return picture


GRID = LEFT + 0.36 * (RIGHT - LEFT)
CATHODE_TO_GRID, GRID_TO_ANODE = 0.9e-3, 1.6e-3  # metre
WIRES = (-18.0, -6.0, 6.0, 18.0)  # units, from a row's middle: the grid's wires, cut through


def through_the_grid(picture: Animation, grid: float, shown: float) -> int:
    """A journey from filament to anode: as in a diode as far as the grid, then evenly faster, as nothing holds it there.

    `shown` is how many seconds a nanosecond lasts.
    """
    factor, _, offset = LAW
    drive = max(grid + HT / factor + offset, 0.05)
    at_grid, at_anode = (np.sqrt(2 * CHARGE_TO_MASS * voltage) for voltage in (drive, HT))
    first = 3 * CATHODE_TO_GRID / at_grid
    second = 2 * GRID_TO_ANODE / (at_grid + at_anode)
    part = np.linspace(0, 1, 9)
    near = (GRID - LEFT) * part**3
    far = GRID - LEFT + (RIGHT - GRID - 4) * (at_grid * part + (at_anode - at_grid) * part**2 / 2) * second / GRID_TO_ANODE
    time = np.concatenate([first * part, first + second * part[1:]])
    return picture.journey(time * 1e9 * shown, np.concatenate([near, far[1:]]))


def between_wires(count: int, y: float, seed: int) -> list[float]:
    """Heights at which electrons miss the grid's wires."""
    gaps = np.array([-22.0, -12.0, 0.0, 12.0, 22.0])
    return [y + gaps[(3 * place + seed) % 5] + wobble for place, wobble in enumerate(spread(count, -2.4, 2.4, seed))]


def grid_wires(picture: Animation, y: float) -> None:
    picture.parts += [f'<circle cx="{GRID:.1f}" cy="{y + wire:.1f}" r="2.6" style="fill:{PLUM}"/>' for wire in WIRES]


@animation(
    caption="**A grid lets more or fewer through.** Type 30, 90 V on the anode in every row; only the grid's voltage "
    "differs. The grid takes none of them itself: a negative wire pushes electrons away.",
    alt="Three rows, each with a filament, a column of four small circles, the grid, and an anode. With 0 volts "
    "on the grid many dots pass between the wires and run on to the anode, 7.2 milliamperes. With minus 4.5 "
    "volts about a third do, 2.6 milliamperes; the rest turn back before the grid. With minus 9 volts all "
    "turn back.",
)
def grid_control():
    picture = Animation("grid-control", 3 * ROW + 22, 4.0)
    ways = hops(picture, 34.0)
    most = triode_current(HT, 0.0, *LAW)
    for row, grid in enumerate((0.0, -4.5, -9.0)):
        y = 36 + row * ROW
        current = triode_current(HT, grid, *LAW)
        across = round(60 * current / most)
        moments = picture.seconds * (np.arange(across) + 0.4) / max(across, 1)
        if across:
            way = through_the_grid(picture, grid, 0.55)
            picture.electrons(way, moments, [(LEFT, height) for height in between_wires(across, y, row)])
        boil(picture, ways, 66 - across, y, row)
        filament(picture, y)
        grid_wires(picture, y)
        anode(picture, y)
        picture.words(LEFT - 12, y + 5, f"{grid:g} V".replace("-", "−"), PLUM, "end")
        picture.words(WIDTH - 4, y + 5, f"{current * 1e3:.1f} mA", anchor="end")
    for x, name, colour in ((LEFT, "filament", RUST), (GRID, "grid", PLUM), (RIGHT, "anode", INK)):
        picture.words(x, 3 * ROW + 17, name, colour, "middle", small=True)
    return picture


@animation(
    caption="**A signal on the grid.** The grid swings by 3 V either way about −4.5 V and takes no current; the "
    "anode's current follows at once, and a battery pays for it. The crests of the current are taller than its"
    " troughs are deep: the law is bent. (An electron's journey is drawn too slow for the tone: in truth it is over in"
    " some three thousandths of a millionth of a second.)",
    alt="Above, filament, grid and anode, with bunches of dots that run to the anode, dense and then sparse. "
    "Below, two curves against time with a dot that moves along each: the grid's voltage, a sine from minus "
    "7.5 to minus 1.5 volts, and in step with it the anode current, from 0.5 to 5.5 milliamperes, with tall "
    "crests and shallow troughs.",
)
def signal_on_the_grid():
    picture = Animation("signal-on-the-grid", 292, 6.0)
    time = np.linspace(0, picture.seconds, 49)
    grid = -4.5 + 3.0 * np.sin(2 * np.pi * time / picture.seconds)
    current = triode_current(HT, grid, *LAW)
    y, count = 36.0, 110
    passed = np.concatenate([[0], np.cumsum((current[1:] + current[:-1]) / 2)])
    leave = np.interp((np.arange(count) + 0.5) / count, passed / passed[-1], time)
    heights = between_wires(count, y, 1)
    kinds = [through_the_grid(picture, bias, 0.4) for bias in (-6.5, -4.5, -2.5)]
    for moment, height in zip(leave, heights, strict=True):
        bias = np.interp(moment, time, grid)
        way = kinds[int(np.argmin(np.abs(np.array([-6.5, -4.5, -2.5]) - bias)))]
        picture.electrons(way, [moment], [(LEFT, height)])
    filament(picture, y)
    grid_wires(picture, y)
    anode(picture, y)
    for x, name, colour in ((LEFT, "filament", RUST), (GRID, "grid", PLUM), (RIGHT, "anode", INK)):
        picture.words(x, y + 45, name, colour, "middle", small=True)
    across = np.linspace(62, WIDTH - 8, time.size)
    for values, top, foot, colour, name, marks, unit in (
        (grid, 112, 172, PLUM, "grid, V", (-7.5, -4.5, -1.5), 1.0),
        (current, 204, 280, SEA, "anode, mA", (0.0, 2e-3, 4e-3), 1e-3),
    ):
        low, high = min(marks[0], values.min()), values.max()
        down = foot - (foot - top) * (values - low) / (high - low)
        for mark in marks:
            level = foot - (foot - top) * (mark - low) / (high - low)
            picture.line((58, level), (62, level), width=0.9)
            picture.words(54, level + 4, f"{mark / unit:g}".replace("-", "−"), anchor="end", small=True)
        picture.line((62, top - 6), (62, foot), (WIDTH - 8, foot), width=0.9)
        picture.line(*zip(across, down, strict=True), colour=colour, width=1.8)
        picture.words(WIDTH - 8, top - 6, name, colour, "end")
        rider = picture.journey(time, across - across[0], down - down[0])
        picture.send(rider, f'<circle cx="{across[0]:.1f}" cy="{down[0]:.1f}" r="4.5"', 0.0)
    return picture
