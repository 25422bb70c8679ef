"""How `night_path` is judged.

In the laws and slips: t a time in days and D a whole number of them, y, mo and d a date, p and q latitude and longitude, of two
places p1, q1, p2, q2, s a distance, z a height, h the sun's elevation at which it is dark.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    degrees,
    drawn,
    equal,
    invariant,
    less,
    metres,
    picture,
    refusal,
    relative,
    slip,
    value,
    whole,
)

from .night_path import (
    EARTH_RADIUS,
    dark_elevation,
    days_since_2000,
    hop,
    night_at,
    path_middle,
    path_night,
    sun_elevation,
    sun_place,
)

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-7)
MOMENT = absolute(1e-5, because="a second, in days")
HOUR = absolute(3e-4, because="a second, in hours")
SUN = "apparent place of the sun by astropy 8.0.2, no refraction; sun_elevation.csv, whose places are invented"
SUN_WITHIN = absolute(0.012, because="the short formulae are good to a hundredth of a degree")
GEOMETRY = "one hop over a sphere of 6371 km by plane trigonometry; skywave_geometry.csv"
TWILIGHT = "sunset on high over a sphere of 6371 km; skywave_facts.toml, sunset_at_height"
EPHEMERIS = "PyEphem 4.2.1, next setting and rising of the sun's centre at that elevation, no refraction"
PRINTED = absolute(6e-4, because="printed to three decimals")
SECONDS = absolute(1e-4, because="nine seconds, in days")
TIME = drawn(
    [float(day) + eighth / 8 for day in (0, *range(100, 10000, 37)) for eighth in (0, 2, 5, 7, 1, 3, 4, 6)],
    "0 to 10 000 days",
    unit="days",
    stacks=True,
)
LATITUDE, LONGITUDE = degrees("-70°", "70°"), degrees("-180°", "180°")
NORTH, WEST = degrees("35°", "65°"), degrees("-30°", "30°")
DATE = {"year": whole(2000, 2030), "month": whole(1, 12), "day": whole(1, 28)}
PLACES = {"latitude_1": NORTH, "longitude_1": WEST, "latitude_2": NORTH, "longitude_2": WEST}
HEIGHT = metres("60 km", "300 km")


def nearly(left, right, tolerance):
    return equal(left, right, absolute(1e-3, because="nearly reached"))


def in_seconds(left, right, tolerance):
    return equal(left, right, absolute(2e-4, because="the sun's place changes from one to the other"))


def apart(p1, q1, p2, q2, *others):
    return abs(p1 - p2) + abs(q1 - q2) > 2


def in_radians(t, p, q):
    slope, hour_angle = map(np.radians, sun_place(t, q))
    return np.degrees(np.arcsin(np.sin(p) * np.sin(slope) + np.cos(p) * np.cos(slope) * np.cos(hour_angle)))


def flat_middle(p1, q1, p2, q2):
    return (p1 + p2) / 2, (q1 + q2) / 2, path_middle(p1, q1, p2, q2)[2]


def chord(p1, q1, p2, q2):
    """The way through the earth instead of along the ground."""
    latitude, longitude, distance = path_middle(p1, q1, p2, q2)
    return latitude, longitude, 2 * EARTH_RADIUS * np.sin(distance / (2 * EARTH_RADIUS))


def night_of_path(D, p1, q1, p2, q2, h):
    latitude, longitude, _ = path_middle(p1, q1, p2, q2)
    return tuple(12 + 24 * (moment - D) for moment in night_at(D, latitude, longitude, h))


def wrong_night(y, mo, d, p1, q1, p2, q2, z):
    """Dark as soon as the sun is down on the ground."""
    return night_of_path(days_since_2000(y, mo, d, 12.0), p1, q1, p2, q2, 0.0)


def day_of_path(y, mo, d, p1, q1, p2, q2, z):
    """The night before instead of the night after."""
    D = days_since_2000(y, mo, d, 12.0)
    return tuple(moment - 24 for moment in night_of_path(D - 1, p1, q1, p2, q2, dark_elevation(z)))


def one_guess(D, p, q, h):
    """The sun's place at noon taken for the whole night."""
    noon = D - q / 360
    declination, hour_angle = sun_place(noon, q)
    cosine = (np.sin(np.radians(h)) - np.sin(np.radians(p)) * np.sin(np.radians(declination))) / (
        np.cos(np.radians(p)) * np.cos(np.radians(declination))
    )
    half = np.degrees(np.arccos(np.clip(cosine, -1, 1)))
    return noon + (half - hour_angle) / 360, noon + 1 - (half + hour_angle) / 360


EXERCISE = Exercise(
    title="When does the far station come in?",
    seconds=4.0,
    questions=[
        Question(
            asks=sun_elevation,
            picture=picture(at={"latitude": 50.0}, between=(0.0, 3.0), points=97),
            given={"days": TIME, "latitude": LATITUDE, "longitude": LONGITUDE},
            gives="°",
            # The sun nearly overhead, and nearly underfoot: noon on the meridian of the epoch, and its antipode.
            edges=[
                lambda days, latitude, longitude: (0.0, -23.0, 0.0),
                lambda days, latitude, longitude: (0.0, 23.0, 180.0),
            ],
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "on the other side of the world the sun stands as far below as here above",
                    lambda f, t, p, q: (f(t, -p, q + 180), -f(t, p, q)),
                ),
                invariant(
                    "at the pole the sun stands as high all day, but for its declination's small change",
                    lambda f, t, p, q: (f(t, 90.0, q), f(t, 90.0, 0.0)),
                ),
                invariant("all the way round is the same place", lambda f, t, p, q: (f(t, p, q + 360), f(t, p, q))),
            ],
            published=[
                value(
                    "noon at 50° north on the Greenwich meridian, 20 March 2023",
                    given=(days_since_2000(2023, 3, 20, 12.0), 50.0, 0.0),
                    wanted=39.8171,
                    within=SUN_WITHIN,
                    source=SUN,
                    known="recomputed",
                ),
                value(
                    "35° south, 140° east, 15 January 2023, 8 hours UT",
                    given=(days_since_2000(2023, 1, 15, 8.0), -35.0, 140.0),
                    wanted=21.7,
                    within=SUN_WITHIN,
                    source=SUN,
                    known="recomputed",
                ),
                value(
                    "40° north, 100° west, 10 February 2024, 1 hour UT: ten degrees down",
                    given=(days_since_2000(2024, 2, 10, 1.0), 40.0, -100.0),
                    wanted=-10.4053,
                    within=SUN_WITHIN,
                    source=SUN,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("given degrees to np.sin, which wants radians", in_radians),
                slip("returned radians", lambda t, p, q: np.radians(sun_elevation(t, p, q))),
                slip("counted longitude to the west", lambda t, p, q: sun_elevation(t, p, -q)),
                slip("counted latitude to the south", lambda t, p, q: sun_elevation(t, -p, q)),
                slip(
                    "returned the distance from the zenith: the height is what it lacks of 90°",
                    lambda t, p, q: 90 - sun_elevation(t, p, q),
                ),
                slip(
                    "added the longitude once more: the hour angle is already the place's own",
                    lambda t, p, q: sun_elevation(t, p, 2 * q),
                ),
            ],
        ),
        Question(
            asks=path_middle,
            picture=picture(at={"longitude_2": 10.0}),
            given=PLACES,
            where=apart,
            gives=("°", "°", "m"),
            agrees_within=relative(1e-9, because="a few operations, double precision", floor=1e-9),
            holds=[
                invariant(
                    "there and back is one path",
                    lambda f, p1, q1, p2, q2: (np.array(f(p1, q1, p2, q2)), np.array(f(p2, q2, p1, q1))),
                ),
                invariant(
                    "along a meridian the middle is half-way",
                    lambda f, p1, q1, p2, q2: (np.array(f(40.0, q1, 60.0, q1))[:2], np.array([50.0, q1])),
                ),
                invariant(
                    "from the middle it is half as far",
                    lambda f, p1, q1, p2, q2: (f(*f(p1, q1, p2, q2)[:2], p2, q2)[2], f(p1, q1, p2, q2)[2] / 2),
                ),
                invariant(
                    "a quarter of the equator is a quarter of the sphere's girth",
                    lambda f, p1, q1, p2, q2: (f(0.0, q1, 0.0, q1 + 90)[2], np.pi / 2 * EARTH_RADIUS),
                ),
            ],
            no_published="Geometry on a sphere; tests hold it to an astronomy library's angle between two places.",
            slips=[
                slip("averaged latitudes and longitudes: the shortest way bends towards the pole", flat_middle),
                slip("measured through the earth: along the ground it is an arc", chord),
                slip(
                    "returned the place in radians",
                    lambda *inputs: (*np.radians(path_middle(*inputs)[:2]), path_middle(*inputs)[2]),
                ),
                slip("returned half the distance", lambda *inputs: (*path_middle(*inputs)[:2], path_middle(*inputs)[2] / 2)),
                slip(
                    "returned the angle at the earth's centre, in radians: times the radius it is a distance",
                    lambda *inputs: (*path_middle(*inputs)[:2], path_middle(*inputs)[2] / EARTH_RADIUS),
                ),
                slip(
                    "given longitude before latitude",
                    lambda *inputs: (path_middle(*inputs)[1], path_middle(*inputs)[0], path_middle(*inputs)[2]),
                ),
            ],
        ),
        Question(
            asks=hop,
            given={"distance": metres("50 km", "3000 km"), "height": HEIGHT},
            gives=("°", "m"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "nearly straight up and down: twice the height", lambda f, s, z: (f(1.0, z)[1] / (2 * z), 1.0), nearly
                ),
                invariant("a higher mirror, a steeper start", lambda f, s, z: (f(s, z)[0], f(s, 1.2 * z)[0]), less),
                invariant(
                    "it is farther than the chord between the ends",
                    lambda f, s, z: (2 * EARTH_RADIUS * np.sin(s / (2 * EARTH_RADIUS)), f(s, z)[1]),
                    less,
                ),
            ],
            published=[
                value(
                    "1000 km by the E layer",
                    given=(1000e3, 100e3),
                    wanted=(8.970, 1027.217e3),
                    within=relative(1e-6, because="printed to a metre and a thousandth of a degree", floor=6e-4),
                    source=GEOMETRY,
                    known="recomputed",
                ),
                value(
                    "300 km by the F layer",
                    given=(300e3, 220e3),
                    wanted=(54.579, 535.447e3),
                    within=relative(1e-6, because="printed to a metre and a thousandth of a degree", floor=6e-4),
                    source=GEOMETRY,
                    known="recomputed",
                ),
                value(
                    "2500 km by the E layer: below the horizon",
                    given=(2500e3, 100e3),
                    wanted=(-1.097, 2523.443e3),
                    within=relative(1e-6, because="printed to a metre and a thousandth of a degree", floor=6e-4),
                    source=GEOMETRY,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the earth for flat", lambda s, z: (np.degrees(np.arctan2(2 * z, s)), 2 * np.hypot(s / 2, z))),
                slip("returned one way up only", lambda s, z: (hop(s, z)[0], hop(s, z)[1] / 2)),
                slip("turned by the whole distance instead of half of it", lambda s, z: hop(2 * s, z)),
                slip("returned radians", lambda s, z: (np.radians(hop(s, z)[0]), hop(s, z)[1])),
                slip(
                    "returned the angle at the mirror, between the wave and the upright",
                    lambda s, z: (90 - hop(s, z)[0] - np.degrees(s / (2 * EARTH_RADIUS)), hop(s, z)[1]),
                ),
            ],
        ),
        Question(
            asks=dark_elevation,
            given={"height": metres("10 km", "300 km")},
            gives="°",
            agrees_within=CLOSE,
            holds=[
                invariant("on the ground the sun sets at the horizon", lambda f, z: (f(0.0), 0.0)),
                invariant("the higher, the longer the light lasts", lambda f, z: (f(1.1 * z), f(z)), less),
                invariant(
                    "close to the ground it goes as the root of the height", lambda f, z: (f(0.4e3) / f(0.1e3), 2.0), nearly
                ),
            ],
            published=[
                value("for air 60 km up", given=(60e3,), wanted=-7.833, within=PRINTED, source=TWILIGHT, known="recomputed"),
                value("for air 90 km up", given=(90e3,), wanted=-9.574, within=PRINTED, source=TWILIGHT, known="recomputed"),
            ],
            slips=[
                slip(
                    "returned it above the horizon: seen from the ground the sun has gone down long before",
                    lambda z: -dark_elevation(z),
                ),
                slip("returned radians", lambda z: np.radians(dark_elevation(z))),
                slip("taken the arc tangent of the height over the radius", lambda z: -np.degrees(np.arctan(z / EARTH_RADIUS))),
                slip("taken the arc sine of the radii", lambda z: -90 - dark_elevation(z)),
            ],
        ),
        Question(
            asks=night_at,
            given={"day": whole(0, 10000), "latitude": LATITUDE, "longitude": LONGITUDE, "dark_at": degrees("-12°", "0°")},
            gives=("days", "days"),
            agrees_within=MOMENT,
            holds=[
                invariant(
                    "at your nightfall, where there is one, your sun stands at the elevation asked for",
                    lambda f, D, p, q, h: (f.sun_elevation(f(D, 0.6 * p, q, h)[0], 0.6 * p, q), h),
                    nearly,
                ),
                invariant(
                    "and at your daybreak",
                    lambda f, D, p, q, h: (f.sun_elevation(f(D, 0.6 * p, q, h)[1], 0.6 * p, q), h),
                    nearly,
                ),
                invariant(
                    "a degree farther east it is night four minutes earlier, within some seconds",
                    lambda f, D, p, q, h: (f(D, 0.6 * p, q, h)[0] - f(D, 0.6 * p, q + 1, h)[0], 1 / 360),
                    in_seconds,
                ),
            ],
            published=[
                value(
                    "the 8913th day, 52° north, 4° west, 8° down",
                    given=(8913, 52.0, -4.0, -8.0),
                    wanted=(8913.393405916, 8913.624797899),
                    within=SECONDS,
                    source=EPHEMERIS,
                    known="recomputed",
                ),
                value(
                    "the 3000th, 40° south, 70° west, 10° down",
                    given=(3000, -40.0, -70.0, -10.0),
                    wanted=(3000.486300388, 3000.913362421),
                    within=SECONDS,
                    source=EPHEMERIS,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("given daybreak first", lambda *inputs: night_at(*inputs)[::-1]),
                slip("taken the sun's place at noon for the whole night: work it again for each moment", one_guess),
                slip("counted longitude to the west", lambda D, p, q, h: night_at(D, p, -q, h)),
                slip("taken the sun at the horizon for dark", lambda D, p, q, h: night_at(D, p, q, 0.0)),
                slip("taken the night before this noon", lambda D, p, q, h: night_at(D - 1, p, q, h)),
                slip("turned the sign of the elevation", lambda D, p, q, h: night_at(D, p, q, np.where(h < 0, -h, 1.0)[()])),
            ],
        ),
        Question(
            asks=path_night,
            picture=picture(along="month"),
            given=DATE | PLACES | {"height": metres("60 km", "90 km")},
            edges=[lambda y, mo, d, *others: (2024, 2, 29, *others)],
            where=lambda y, mo, d, *others: apart(*others),
            gives=("h", "h"),
            arrays=False,
            agrees_within=HOUR,
            holds=[
                invariant(
                    "there and back is one path",
                    lambda f, y, mo, d, p1, q1, p2, q2, z: (
                        np.array(f(y, mo, d, p1, q1, p2, q2, z)),
                        np.array(f(y, mo, d, p2, q2, p1, q1, z)),
                    ),
                ),
                invariant(
                    "higher air is dark for a shorter time",
                    lambda f, y, mo, d, p1, q1, p2, q2, z: (
                        np.ptp(f(y, 1, d, 40.0, q1, 50.0, q2, 1.1 * z)),
                        np.ptp(f(y, 1, d, 40.0, q1, 50.0, q2, z)),
                    ),
                    less,
                ),
                invariant(
                    "a path all north of the arctic circle is dark for the whole of a midwinter day",
                    lambda f, y, mo, d, p1, q1, p2, q2, z: (np.ptp(f(y, 12, 20, 83.0, q1, 83.0, q1 + 5, z)), 24.0),
                    lambda left, right, tolerance: equal(left, right, absolute(0.05, because="noon moves a little")),
                ),
            ],
            no_published="It joins the functions above; tests hold it to an astronomy library for many dates and places.",
            refuses=[
                refusal(
                    "30 February, and any other day that there is not",
                    (2023, 2, 30, 50.0, 0.0, 55.0, 5.0, 80e3),
                    (2023, 2, 29, 50.0, 0.0, 55.0, 5.0, 80e3),
                    (2023, 4, 31, 50.0, 0.0, 55.0, 5.0, 80e3),
                    (2023, 4, 0, 50.0, 0.0, 55.0, 5.0, 80e3),
                ),
                refusal(
                    "a thirteenth month, or one before the first",
                    (2023, 13, 1, 50.0, 0.0, 55.0, 5.0, 80e3),
                    (2023, 0, 1, 50.0, 0.0, 55.0, 5.0, 80e3),
                ),
            ],
            slips=[
                slip("taken the ground's own sunset: the air that soaks the wave up has the sun for longer", wrong_night),
                slip(
                    "looked at the first station alone: the middle of the path counts",
                    lambda y, mo, d, p1, q1, p2, q2, z: path_night(y, mo, d, p1, q1, p1, q1, z),
                ),
                slip(
                    "looked at the second station alone",
                    lambda y, mo, d, p1, q1, p2, q2, z: path_night(y, mo, d, p2, q2, p2, q2, z),
                ),
                slip("taken the night before", day_of_path),
                slip(
                    "counted the hours from noon: they count from midnight at the beginning of the date",
                    lambda *inputs: tuple(hour - 12 for hour in path_night(*inputs)),
                ),
                slip(
                    "returned a part of a day instead of hours",
                    lambda *inputs: tuple(hour / 24 for hour in path_night(*inputs)),
                ),
            ],
        ),
    ],
    hints=[
        "Draw the globe from the side. Over the middle of the path hangs the air that must be dark: the sun leaves it "
        "later than the ground below. How far must the sun go down, seen from the ground? And where is the middle: think "
        "of two arrows from the earth's centre, added.",
        "sin h = sin φ sin δ + cos φ cos δ cos H gives the height; turned round, with h the elevation that counts as "
        "dark, it gives H. Guess a moment a quarter of a day from midnight, ask sun_place what H is then, move the moment "
        "by the difference over 360 degrees a day, and again, a dozen times. The dark elevation is −arccos(R/(R + "
        "height)).",
        "path_middle: the four through np.broadcast_arrays, then one = unit_arrow(latitude_1, longitude_1), two = "
        "unit_arrow(latitude_2, longitude_2); with x, y, z = one + two latitude np.arctan2(z, np.hypot(x, y)), longitude "
        "np.arctan2(y, x), distance 2 × EARTH_RADIUS × np.arctan2(length(one − two), length(one + two)). hop: with h = "
        "distance/(2 × EARTH_RADIUS): along = (EARTH_RADIUS + height) sin(h), above = (EARTH_RADIUS + height) cos(h) − "
        "EARTH_RADIUS. night_at, side −1 then 1: time = day − longitude/360 + 0.5 + side/4, and twelve times time += "
        "within_half_a_turn(−side × turn − hour_angle)/360, turn = np.degrees(np.arccos(np.clip(cosine, −1, 1))). "
        "path_night: day = days_since_2000(year, month, day, 12.0), then 12 + 24 × (moment − day).",
    ],
)
