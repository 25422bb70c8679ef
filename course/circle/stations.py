"""The stations round Saltmarsh Point and the ground their waves cross; all of them invented.

Ground constants are those of ITU-R P.368 as the NTIA validation set uses them (`tests/published/signal`).
"""

from typing import NamedTuple

from solutions.unit01_signal.field_strength import ground_wave_field


class Ground(NamedTuple):
    """A kind of surface: conductivity in siemens per metre, relative permittivity a pure number."""

    conductivity: float
    relative_permittivity: float


class Station(NamedTuple):
    """A transmitter: frequency in hertz, power in watts; from the hut, distance in metres and bearing in degrees."""

    name: str
    frequency: float
    power: float
    distance: float
    bearing: float
    ground: str

    @property
    def field(self) -> float:
        """Its ground wave at the hut, volts per metre r.m.s., over flat ground."""
        return ground_wave_field(self.power, self.distance, self.frequency, *GROUNDS[self.ground])


GROUNDS = {
    "sea": Ground(5.0, 70.0),
    "salt marsh": Ground(0.03, 40.0),
    "average land": Ground(0.003, 22.0),
    "dry heath": Ground(0.001, 15.0),
}
LOCAL = Station("Saltmarsh Point", 846e3, 1e3, 4e3, 20, "salt marsh")
ACROSS_THE_BAY = Station("Curlew Bank", 1107e3, 5e3, 60e3, 100, "sea")
NEXT_CHANNEL = Station("Gannet Rock", 855e3, 1e3, 80e3, 330, "average land")
ON_THE_HEATH = Station("Holm Light", 1449e3, 2e3, 35e3, 265, "dry heath")
FAR_OVER_SEA = Station("Merrow Sound", 693e3, 50e3, 280e3, 130, "sea")
STATIONS = (LOCAL, ACROSS_THE_BAY, NEXT_CHANNEL, ON_THE_HEATH, FAR_OVER_SEA)
NIGHT_ONLY = 1206e3  # Skerry Vore, 150 kW, 900 km: no ground wave to speak of
