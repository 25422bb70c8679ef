"""The palette of figures and pages, each colour in a light and a dark form."""

import tomllib
from pathlib import Path

FILE = Path(__file__).parents[2] / "figures" / "kit" / "palette.toml"


def read_palette() -> dict[str, list[str]]:
    """Of each colour's name its light and its dark form."""
    return tomllib.loads(FILE.read_text("utf-8"))


def style_sheet() -> str:
    """CSS that gives each colour its form: as the reader's system asks, or as the reader has set the switch; light on paper."""
    palette = read_palette()
    light, dark = (";".join(f"--{name}:{pair[side]}" for name, pair in palette.items()) for side in (0, 1))
    return (
        f":root{{color-scheme:light;{light}}}\n"
        f"@media screen{{:root[data-light=dark]{{color-scheme:dark;{dark}}}}}\n"
        f"@media screen and (prefers-color-scheme:dark){{:root:not([data-light=light]){{color-scheme:dark;{dark}}}}}\n"
    )
