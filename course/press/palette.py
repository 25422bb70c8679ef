"""The palette of figures and pages as custom properties of the page: light, dark, and light again on paper."""

import tomllib
from pathlib import Path

FILE = Path(__file__).parents[1] / "figures" / "palette.toml"


def style_sheet() -> str:
    """CSS that gives each colour its form: as the reader's system asks, or as the reader has set the switch."""
    palette = tomllib.loads(FILE.read_text("utf-8"))
    light, dark = (";".join(f"--{name}:{pair[side]}" for name, pair in palette.items()) for side in (0, 1))
    return (
        f":root{{color-scheme:light;{light}}}\n"
        f"@media screen{{:root[data-light=dark]{{color-scheme:dark;{dark}}}}}\n"
        f"@media screen and (prefers-color-scheme:dark){{:root:not([data-light=light]){{color-scheme:dark;{dark}}}}}\n"
    )
