"""What may be set of a figure or a sound when it is made again.

A maker's parameter says it beside its name: `q: Annotated[float, Between("Q of the circuit", 5, 500)] = 30`. The default
is what stands on the site.
"""

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from checker.checks.units import any_quantity, tidily


@dataclass(frozen=True)
class Between:
    """A number, from `low` to `high` in SI units; `unit` is the unit without prefix."""

    says: str
    low: float
    high: float
    unit: str = ""

    def read(self, text: str) -> float:
        """The value that a text such as "365 pF" stands for; ValueError says what is wrong."""
        text = text.strip()
        try:
            number = any_quantity(text)[0] if text.endswith(self.unit) and self.unit else float(text)
        except ValueError:
            raise ValueError(f"write a number such as {self.show(self.low)}") from None
        if not self.low <= number <= self.high:
            raise ValueError(f"write a number from {self.show(self.low)} to {self.show(self.high)}")
        return number

    def show(self, value: float) -> str:
        return tidily(value, self.unit, 4) if self.unit else f"{value:.6g}"

    @property
    def choice(self) -> str:
        return f"{self.show(self.low)} to {self.show(self.high)}"


@dataclass(frozen=True)
class OneOf:
    """One of a few numbers or words."""

    says: str
    values: tuple[Any, ...]
    unit: str = ""

    def read(self, text: str) -> Any:
        """The value that a text names; ValueError says which there are."""
        for value in self.values:
            if text.strip() in (str(value), self.show(value)):
                return value
        raise ValueError(f"write one of {self.choice}")

    def show(self, value: Any) -> str:
        return tidily(value, self.unit, 4) if self.unit else str(value)

    @property
    def choice(self) -> str:
        return ", ".join(map(self.show, self.values))


@dataclass(frozen=True)
class Several:
    """From one to `most` values of one kind, with commas between."""

    kind: Between
    most: int

    @property
    def says(self) -> str:
        return self.kind.says

    def read(self, text: str) -> tuple[float, ...]:
        """The values of a text such as "30, 80, 200"; ValueError says what is wrong."""
        pieces = text.split(",")
        if len(pieces) > self.most:
            raise ValueError(f"write at most {self.most} numbers, with commas between")
        return tuple(map(self.kind.read, pieces))

    def show(self, values: tuple[float, ...]) -> str:
        return ", ".join(map(self.kind.show, values))

    @property
    def choice(self) -> str:
        return f"up to {self.most}, each {self.kind.choice}"


Setting = Between | OneOf | Several

RASTER = OneOf("spacing of the channels", (9_000, 10_000), "Hz")


def settings_of(make: Callable[..., Any]) -> dict[str, tuple[Setting, Any]]:
    """What may be set of one maker: of each parameter its kind and the value it has on the site.

    Raises
    ------
    ValueError
        If a parameter has no default or does not say its kind.
    """
    found = {}
    for name, parameter in inspect.signature(make).parameters.items():
        kinds = [kind for kind in getattr(parameter.annotation, "__metadata__", ()) if isinstance(kind, Setting)]
        if parameter.default is parameter.empty or not kinds:
            raise ValueError(f"{make.__name__}: {name} needs a default and what it may be: see course/settings.py")
        found[name] = (kinds[0], parameter.default)
    return found
