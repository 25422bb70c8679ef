"""path_middle: the four through np.broadcast_arrays, then one = unit_arrow(latitude_1, longitude_1), two =
unit_arrow(latitude_2, longitude_2); with x, y, z = one + two latitude np.arctan2(z, np.hypot(x, y)), longitude
np.arctan2(y, x), distance 2 × EARTH_RADIUS × np.arctan2(length(one − two), length(one + two)). hop: with h =
distance/(2 × EARTH_RADIUS): along = (EARTH_RADIUS + height) sin(h), above = (EARTH_RADIUS + height) cos(h) −
EARTH_RADIUS. night_at, side −1 then 1: time = day − longitude/360 + 0.5 + side/4, and twelve times time +=
within_half_a_turn(−side × turn − hour_angle)/360, turn = np.degrees(np.arccos(np.clip(cosine, −1, 1))). path_night: day
= days_since_2000(year, month, day, 12.0), then 12 + 24 × (moment − day).
"""

import numpy as np

EARTH_RADIUS = 6371e3  # m, of a sphere as large as the earth
EPOCH = 10957  # days from 1 January 1970, where numpy counts from, to 1 January 2000


def days_since_2000(year, month, day, hour):
    date = np.datetime64(f"{year:04.0f}-{month:02.0f}-{day:02.0f}")
    return float(date.astype(int)) - EPOCH + (hour - 12) / 24


def sun_place(days, longitude):
    anomaly = np.radians(357.528 + 0.9856003 * days)
    ecliptic = np.radians(280.460 + 0.9856474 * days + 1.915 * np.sin(anomaly) + 0.020 * np.sin(2 * anomaly))
    obliquity = np.radians(23.439 - 0.0000004 * days)
    declination = np.degrees(np.arcsin(np.sin(obliquity) * np.sin(ecliptic)))
    right_ascension = np.degrees(np.arctan2(np.cos(obliquity) * np.sin(ecliptic), np.cos(ecliptic)))
    sidereal = 280.46061837 + 360.98564736629 * days + longitude
    return declination, within_half_a_turn(sidereal - right_ascension)


def within_half_a_turn(angle):
    return (angle + 180) % 360 - 180


def sun_elevation(days, latitude, longitude):
    declination, hour_angle = sun_place(days, longitude)
    phi, delta, hour = np.radians(latitude), np.radians(declination), np.radians(hour_angle)
    sine = np.sin(phi) * np.sin(delta) + np.cos(phi) * np.cos(delta) * np.cos(hour)
    return np.degrees(np.arcsin(sine))


def path_middle(latitude_1, longitude_1, latitude_2, longitude_2):
    places = np.broadcast_arrays(latitude_1, longitude_1, latitude_2, longitude_2)
    a = unit_arrow(places[0], places[1])
    b = unit_arrow(places[2], places[3])
    x, y, z = a + b
    latitude = np.degrees(np.arctan2(z, np.hypot(x, y)))
    longitude = np.degrees(np.arctan2(y, x))
    return latitude, longitude, 2 * EARTH_RADIUS * np.arctan2(length(a - b), length(a + b))


def unit_arrow(latitude, longitude):
    latitude, longitude = np.radians(np.broadcast_arrays(latitude, longitude))
    return np.array([np.cos(latitude) * np.cos(longitude), np.cos(latitude) * np.sin(longitude), np.sin(latitude)])


def length(arrow):
    return np.sqrt(np.sum(arrow**2, axis=0))


def hop(distance, height):
    half_angle = distance / (2 * EARTH_RADIUS)
    along = (EARTH_RADIUS + height) * np.sin(half_angle)
    above = (EARTH_RADIUS + height) * np.cos(half_angle) - EARTH_RADIUS
    return np.degrees(np.arctan2(above, along)), 2 * np.hypot(along, above)


def dark_elevation(height):
    return -np.degrees(np.arccos(EARTH_RADIUS / (EARTH_RADIUS + height)))


def night_at(day, latitude, longitude, dark_at):
    phi, eta = np.radians(latitude), np.radians(dark_at)
    moments = []
    for side in (-1, 1):
        time = day - longitude / 360 + 0.5 + side / 4
        for _ in range(12):
            declination, hour_angle = sun_place(time, longitude)
            delta = np.radians(declination)
            cosine = (np.sin(eta) - np.sin(phi) * np.sin(delta)) / (np.cos(phi) * np.cos(delta))
            wanted = -side * np.degrees(np.arccos(np.clip(cosine, -1, 1)))
            time = time + within_half_a_turn(wanted - hour_angle) / 360
        moments.append(time)
    return moments[0], moments[1]


def path_night(year, month, day, latitude_1, longitude_1, latitude_2, longitude_2, height):
    noon = days_since_2000(year, month, day, 12.0)
    latitude, longitude, _ = path_middle(latitude_1, longitude_1, latitude_2, longitude_2)
    begins, ends = night_at(noon, latitude, longitude, dark_elevation(height))
    return 12 + 24 * (begins - noon), 12 + 24 * (ends - noon)
