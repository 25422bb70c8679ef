"""How `dial_log` is judged.

In the laws and slips: x and y the points, p a place, r a reading, R and F the log's readings and frequencies, f0 a
frequency, s a spacing.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    degrees,
    drawn,
    equal,
    hertz,
    invariant,
    less,
    one_of,
    refusal,
    relative,
    slip,
    value,
)

from .dial_log import (
    SPEED_OF_LIGHT,
    fitted_line,
    frequency_at,
    likely_channels,
    line_at,
    reading_for,
    scatter_about,
)

CLOSE = relative(1e-8, because="sums of large squares, double precision", floor=1e-9)
GUM = "JCGM 100:2008, Guide to the expression of uncertainty in measurement, annex H.3, calibration of a thermometer"
# Table H.6 (from memory; it gives every figure that the annex prints): temperature above 20 °C, and correction, °C.
THERMOMETER = np.array([1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511])
CORRECTION = np.array([-171.0, -169, -166, -159, -164, -165, -156, -157, -159, -161, -160]) / 1000
# The six stations that Saltmarsh Point hears; its strong three; and eight, with two more channels found by ear.
STATIONS = [
    np.array(carriers) * 1e3
    for carriers in ((693, 846, 855, 1107, 1206, 1449), (693, 846, 1107), (603, 693, 846, 855, 1107, 1206, 1341, 1449))
]


def squares_of(frequencies):
    return (SPEED_OF_LIGHT / frequencies) ** 2


def read_from_a_dial(stations, turn):
    """Readings of those stations on one of several dials, to half a degree, each a little out."""
    from_end = (squares_of(stations) - 35e3) / (260e3 - 35e3)
    out = [0.5 * ((3 * turn + 7 * n * n + n) % 5 - 2) for n in range(len(stations))]
    return np.round(2 * (8 + turn + (160 - 2 * turn) * from_end + out)) / 2


LOGS = [read_from_a_dial(stations, turn) for turn in range(12) for stations in STATIONS]
READINGS = drawn(LOGS, "3 to 8 readings, 0 to 180°, as noted", unit="°")
FREQUENCIES = drawn(STATIONS, "as many, 603 to 1449 kHz", unit="Hz")
SQUARES = drawn([squares_of(stations) for stations in STATIONS], "as many, 43 000 to 247 000 m²", unit="m²")
LOG = {"readings": READINGS, "frequencies": FREQUENCIES}


def as_many(*inputs):
    return len(inputs[-1]) == len(inputs[-2])


def faultless(R, F):
    """Readings that lie on their line."""
    intercept, slope = fitted_line(R, squares_of(F))
    return (squares_of(F) - intercept) / slope


def nearly(left, right, tolerance):
    return equal(left, right, absolute(1e-3, because="rounding of a line that fits exactly"))


def of_the_line_alone(r, R, F):
    square, uncertainty = line_at(r, R, squares_of(F))
    frequency = frequency_at(r, R, F)[0]
    return frequency, frequency / 2 * uncertainty / square


def straight_in(function, r, R, F):
    """The line fitted to another function of the frequency than the wavelength's square."""
    height, uncertainty = line_at(r, R, function(F))
    return height, np.hypot(uncertainty, scatter_about(R, function(F)))


EXERCISE = Exercise(
    title="Which station is that, between the ones I know?",
    questions=[
        Question(
            asks=fitted_line,
            given={"x": READINGS, "y": SQUARES},
            where=as_many,
            gives=("", ""),
            arrays=False,
            agrees_within=CLOSE,
            holds=[
                invariant("points on a line give that line", lambda f, x, y: (np.array(f(x, 3 + 2 * x)), np.array([3.0, 2.0]))),
                invariant("it passes through the mean of both", lambda f, x, y: (f(x - np.mean(x), y)[0], np.mean(y))),
                invariant(
                    "a dial read 10° higher all along changes the slope by nothing",
                    lambda f, x, y: (f(x + 10, y)[1], f(x, y)[1]),
                ),
            ],
            published=[
                value(
                    "the line of a thermometer's corrections in °C",
                    given=(THERMOMETER, CORRECTION),
                    wanted=(-0.1712, 0.00218),
                    within=absolute(5e-5, because="printed to four decimals"),
                    source=GUM,
                    known="memory",
                ),
            ],
            refuses=[refusal("readings that are all equal", (np.array([5.0, 5.0, 5.0]), np.array([1.0, 2.0, 3.0])))],
            slips=[
                slip(
                    "drawn the line through the first and the last point",
                    lambda x, y: (y[0] - x[0] * (y[-1] - y[0]) / (x[-1] - x[0]), (y[-1] - y[0]) / (x[-1] - x[0])),
                ),
                slip("given the slope first", lambda x, y: fitted_line(x, y)[::-1]),
                slip("forced the line through nothing at nothing", lambda x, y: (0.0, np.sum(x * y) / np.sum(x**2))),
                slip(
                    "fitted x to y: it is y whose lack is made least",
                    lambda x, y: (-fitted_line(y, x)[0] / fitted_line(y, x)[1], 1 / fitted_line(y, x)[1]),
                ),
                slip("returned the mean of y for the height at x = 0", lambda x, y: (np.mean(y), fitted_line(x, y)[1])),
            ],
        ),
        Question(
            asks=scatter_about,
            given={"x": READINGS, "y": SQUARES},
            where=as_many,
            arrays=False,
            agrees_within=CLOSE,
            holds=[
                invariant("points on a line do not scatter", lambda f, x, y: (f(x, 3 + 2 * x), 0.0), nearly),
                invariant("a slant added to all changes nothing", lambda f, x, y: (f(x, y + 100 * x), f(x, y))),
                invariant("twice as far off, twice the scatter", lambda f, x, y: (f(x, 2 * y), 2 * f(x, y))),
            ],
            published=[
                value(
                    "the same thermometer, in °C",
                    given=(THERMOMETER, CORRECTION),
                    wanted=0.0035,
                    within=absolute(5e-5, because="printed to four decimals"),
                    source=GUM,
                    known="memory",
                ),
            ],
            refuses=[refusal("two stations only", (np.array([20.0, 90.0]), np.array([5e4, 1e5])))],
            slips=[
                slip("divided by n", lambda x, y: scatter_about(x, y) * np.sqrt(1 - 2 / len(x))),
                slip(
                    "divided by n − 1: the line has used up two of the points",
                    lambda x, y: scatter_about(x, y) * np.sqrt((len(x) - 2) / (len(x) - 1)),
                ),
                slip("left out the root", lambda x, y: scatter_about(x, y) ** 2),
                slip(
                    "taken the scatter about the mean instead of the line",
                    lambda x, y: np.std(y) * np.sqrt(len(x) / max(len(x) - 2, 1)),
                ),
                slip(
                    "averaged the sizes instead of the squares",
                    lambda x, y: np.sum(np.abs(y - fitted_line(x, y)[0] - fitted_line(x, y)[1] * x)) / (len(x) - 2),
                ),
            ],
        ),
        Question(
            asks=line_at,
            given={"place": degrees("5°", "175°"), "x": READINGS, "y": SQUARES},
            where=as_many,
            gives=("", ""),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at the mean reading the uncertainty is the scatter over the root of n",
                    lambda f, p, x, y: (f(np.mean(x), x, y)[1], f.scatter_about(x, y) / np.sqrt(len(x))),
                ),
                invariant(
                    "at nothing the height is the intercept", lambda f, p, x, y: (f(0.0, x, y)[0], f.fitted_line(x, y)[0])
                ),
                invariant(
                    "it is never surer than at the mean", lambda f, p, x, y: (f(np.mean(x), x, y)[1], f(p, x, y)[1]), at_most
                ),
                invariant(
                    "the whole log noted twice is surer",
                    lambda f, p, x, y: (f(p, np.concatenate([x, x]), np.concatenate([y, y]))[1], f(p, x, y)[1]),
                    less,
                ),
            ],
            published=[
                value(
                    "the same thermometer at 30 °C, in °C",
                    given=(10.0, THERMOMETER, CORRECTION),
                    wanted=(-0.1494, 0.0041),
                    within=absolute(5e-5, because="printed to four decimals"),
                    source=GUM,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "given the scatter of one point for the line's uncertainty",
                    lambda p, x, y: (line_at(p, x, y)[0], scatter_about(x, y)),
                ),
                slip(
                    "counted the place from nothing instead of from the mean: then the line's two numbers vary together",
                    lambda p, x, y: (
                        line_at(p, x, y)[0],
                        scatter_about(x, y) * np.sqrt(1 / len(x) + p**2 / np.sum((x - np.mean(x)) ** 2)),
                    ),
                ),
                slip(
                    "left out the slope's uncertainty",
                    lambda p, x, y: (line_at(p, x, y)[0], scatter_about(x, y) / np.sqrt(len(x))),
                ),
                slip(
                    "left out the mean's uncertainty",
                    lambda p, x, y: (
                        line_at(p, x, y)[0],
                        scatter_about(x, y) * np.abs(p - np.mean(x)) / np.sqrt(np.sum((x - np.mean(x)) ** 2)),
                    ),
                ),
                slip(
                    "added one more reading's scatter: this is the line's own uncertainty",
                    lambda p, x, y: (line_at(p, x, y)[0], np.hypot(line_at(p, x, y)[1], scatter_about(x, y))),
                ),
            ],
        ),
        Question(
            asks=frequency_at,
            given={"reading": degrees("5°", "175°")} | LOG,
            where=as_many,
            gives=("Hz", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a faultless log gives its own stations back, and is sure of them",
                    lambda f, r, R, F: (np.array(f(faultless(R, F)[1], faultless(R, F), F)), np.array([F[1], 0.0])),
                    nearly,
                ),
                invariant(
                    "stations of half the frequency, all half",
                    lambda f, r, R, F: (np.array(f(r, R, F / 2)), np.array(f(r, R, F)) / 2),
                ),
                invariant(
                    "a dial with its figures running the other way does as well",
                    lambda f, r, R, F: (np.array(f(180 - r, 180 - R, F)), np.array(f(r, R, F))),
                ),
            ],
            no_published="The line's figures are met above; this turns them into a frequency.",
            refuses=[refusal("a reading so far outside that no wavelength is left", (-300.0, LOGS[0], STATIONS[0]))],
            slips=[
                slip("left out the scatter of this reading", of_the_line_alone),
                slip(
                    "fitted the frequency itself: it is the wavelength's square that is even",
                    lambda r, R, F: straight_in(lambda frequencies: frequencies, r, R, F),
                ),
                slip(
                    "forgotten the half: the frequency goes as one over the root of the square",
                    lambda r, R, F: (frequency_at(r, R, F)[0], 2 * frequency_at(r, R, F)[1]),
                ),
                slip(
                    "returned the wavelength, in metres",
                    lambda r, R, F: (
                        SPEED_OF_LIGHT / frequency_at(r, R, F)[0],
                        frequency_at(r, R, F)[1] * SPEED_OF_LIGHT / frequency_at(r, R, F)[0] ** 2,
                    ),
                ),
                slip(
                    "returned the uncertainty of the wavelength's square, in square metres",
                    lambda r, R, F: (frequency_at(r, R, F)[0], straight_in(squares_of, r, R, F)[1]),
                ),
                slip(
                    "returned the variance: take its root",
                    lambda r, R, F: (frequency_at(r, R, F)[0], frequency_at(r, R, F)[1] ** 2),
                ),
            ],
        ),
        Question(
            asks=reading_for,
            given={"frequency": hertz("600 kHz", "1500 kHz")} | LOG,
            where=as_many,
            gives=("°", "°"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at that reading your frequency_at finds the station",
                    lambda f, f0, R, F: (f.frequency_at(f(f0, R, F)[0], R, F)[0], f0),
                ),
                invariant(
                    "a dial whose figures run the other way: as sure, and no uncertainty is below nothing",
                    lambda f, f0, R, F: (np.array(f(f0, 180 - R, F)), np.array([180 - f(f0, R, F)[0], f(f0, R, F)[1]])),
                ),
                invariant(
                    "a dial of twice as many divisions has twice the uncertainty in them",
                    lambda f, f0, R, F: (np.array(f(f0, 2 * R, F)), 2 * np.array(f(f0, R, F))),
                ),
            ],
            no_published="The line's figures are met above; this reads it the other way round.",
            slips=[
                slip(
                    "fitted the readings to the squares: keep the line that you have",
                    lambda f0, R, F: (
                        line_at(squares_of(f0), squares_of(F), R)[0],
                        np.hypot(line_at(squares_of(f0), squares_of(F), R)[1], scatter_about(squares_of(F), R)),
                    ),
                ),
                slip(
                    "left out the scatter of one more reading",
                    lambda f0, R, F: (
                        reading_for(f0, R, F)[0],
                        line_at(reading_for(f0, R, F)[0], R, squares_of(F))[1] / np.abs(fitted_line(R, squares_of(F))[1]),
                    ),
                ),
                slip(
                    "fitted the frequency itself: it is the wavelength's square that is even",
                    lambda f0, R, F: (
                        (f0 - fitted_line(R, F)[0]) / fitted_line(R, F)[1],
                        straight_in(lambda frequencies: frequencies, 90.0, R, F)[1] / np.abs(fitted_line(R, F)[1]),
                    ),
                ),
                slip(
                    "forgotten to divide the uncertainty by the slope",
                    lambda f0, R, F: (
                        reading_for(f0, R, F)[0],
                        reading_for(f0, R, F)[1] * np.abs(fitted_line(R, squares_of(F))[1]),
                    ),
                ),
                slip(
                    "forgotten the intercept",
                    lambda f0, R, F: (squares_of(f0) / fitted_line(R, squares_of(F))[1], reading_for(f0, R, F)[1]),
                ),
            ],
        ),
        Question(
            asks=likely_channels,
            given={"reading": degrees("20°", "160°"), "spacing": one_of(9000, 10000)} | LOG,
            where=as_many,
            gives="Hz",
            arrays=False,
            agrees_within=relative(1e-12, because="whole multiples of the spacing"),
            holds=[
                invariant(
                    "each is within two standard uncertainties",
                    lambda f, r, s, R, F: (
                        np.abs(np.asarray(f(r, s, R, F)) - f.frequency_at(r, R, F)[0]).max(initial=0.0),
                        2 * f.frequency_at(r, R, F)[1],
                    ),
                    at_most,
                ),
                invariant(
                    "they follow each other without a gap, and the next on either side is not within",
                    lambda f, r, s, R, F: (4 * f.frequency_at(r, R, F)[1], (len(f(r, s, R, F)) + 1) * s),
                    at_most,
                ),
            ],
            no_published="A count of channels; the uncertainties it rests on are met above.",
            slips=[
                slip(
                    "given the nearest channel alone", lambda r, s, R, F: np.array([s * np.round(frequency_at(r, R, F)[0] / s)])
                ),
                slip(
                    "gone one standard uncertainty either way",
                    lambda r, s, R, F: (
                        s
                        * np.arange(
                            np.ceil((frequency_at(r, R, F)[0] - frequency_at(r, R, F)[1]) / s),
                            np.floor((frequency_at(r, R, F)[0] + frequency_at(r, R, F)[1]) / s) + 1,
                        )
                    ),
                ),
                slip(
                    "left the last one out: np.arange stops before its end", lambda r, s, R, F: likely_channels(r, s, R, F)[:-1]
                ),
                slip("returned the channels' numbers", lambda r, s, R, F: likely_channels(r, s, R, F) / s),
                slip(
                    "rounded the first one down: it must lie within as well",
                    lambda r, s, R, F: (
                        s
                        * np.arange(
                            np.floor((frequency_at(r, R, F)[0] - 2 * frequency_at(r, R, F)[1]) / s),
                            np.floor((frequency_at(r, R, F)[0] + 2 * frequency_at(r, R, F)[1]) / s) + 1,
                        )
                    ),
                ),
            ],
        ),
    ],
    hints=[
        "Lay a ruler over the points: as many above as below, and none far. How far the points lie from it tells how well "
        "the dial can be read; a ruler laid over many points is surer than any of them, and surest in their midst.",
        "With dx = x − mean(x) the slope is Σ(dx y)/Σ(dx²), and the line passes through both means. The scatter is the "
        "root of Σ(lack²)/(n − 2). The line's uncertainty at p is the scatter times the root of 1/n + (p − "
        "mean(x))²/Σ(dx²). One more reading adds the scatter once more, as a square. For the dial y is (c/f)².",
        "intercept = mean(y) − slope × mean(x);   with squares = (SPEED_OF_LIGHT/frequencies)² and height, unsure = "
        "line_at(reading, readings, squares): frequency = SPEED_OF_LIGHT/np.sqrt(height) with the uncertainty frequency/2"
        " × np.hypot(unsure, scatter)/height, ValueError where height <= 0;   reading = ((SPEED_OF_LIGHT/frequency)² − "
        "intercept)/slope with np.hypot(of line_at there, scatter)/np.abs(slope);   channels: with f, u = "
        "frequency_at(reading, …): spacing × np.arange(np.ceil((f − 2 × u)/spacing), np.floor((f + 2 × u)/spacing) + 1).",
    ],
)
