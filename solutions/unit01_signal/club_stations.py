"""The stations round Saltmarsh Point and the ground that their waves cross; all of them invented.

Ground constants are those of ITU-R P.368 as the NTIA validation set uses them (`tests/published/signal`).
"""

from typing import NamedTuple

from solutions.unit01_signal.field_strength import ground_wave_field


class Ground(NamedTuple):
    """A kind of surface: conductivity in siemens per metre, relative permittivity a pure number."""

    conductivity: float
    relative_permittivity: float


class Station(NamedTuple):
    """A transmitter: frequency in hertz, power in watts; from the hut, its distance in metres and the ground on the way.

    `ground` is a name in `GROUNDS`, or None if the station comes by the sky.
    """

    name: str
    frequency: float
    power: float
    distance: float
    ground: str | None

    @property
    def field(self) -> float:
        """Its ground wave at the hut, volts per metre r.m.s., over flat ground."""
        return self.field_at(self.distance)

    def field_at(self, distance: float) -> float:
        """Its ground wave so many metres off, over the same ground."""
        return ground_wave_field(self.power, distance, self.frequency, *GROUNDS[self.ground])


GROUNDS = {
    "sea": Ground(5.0, 70.0),
    "salt marsh": Ground(0.03, 40.0),
    "average land": Ground(0.003, 22.0),
    "dry heath": Ground(0.001, 15.0),
}
LOCAL = Station("Saltmarsh Point", 846e3, 1e3, 4e3, "salt marsh")
ACROSS_THE_BAY = Station("Curlew Bank", 1107e3, 5e3, 60e3, "sea")
NEXT_CHANNEL = Station("Gannet Rock", 855e3, 1e3, 80e3, "average land")
ON_THE_HEATH = Station("Holm Light", 1449e3, 2e3, 35e3, "dry heath")
FAR_OVER_SEA = Station("Merrow Sound", 693e3, 50e3, 280e3, "sea")
STATIONS = (LOCAL, ACROSS_THE_BAY, NEXT_CHANNEL, ON_THE_HEATH, FAR_OVER_SEA)
NIGHT_ONLY = Station("Skerry Vore", 1206e3, 150e3, 900e3, None)
