"""What stands in the place of a drawing package, none of which is here."""

import types
from collections.abc import Iterator
from typing import Any

from .denials import not_here


class Undrawn(types.ModuleType):
    """Stands in for a drawing package and all that is in it: whatever is asked of it, it does nothing and gives itself."""

    def __getattr__(self, name: str) -> "Undrawn":
        if name.startswith("__"):
            raise AttributeError(name)
        return self

    def __call__(self, *inputs: Any, **options: Any) -> "Undrawn":
        return self

    def __getitem__(self, key: object) -> "Undrawn":
        return self

    def __setitem__(self, key: object, value: object) -> None:
        pass

    def __enter__(self) -> "Undrawn":
        return self

    def __exit__(self, *exception: object) -> None:
        pass

    def __iter__(self) -> Iterator:
        raise not_here("matplotlib")
