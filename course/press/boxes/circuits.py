"""The bench's circuits in as few bytes as they can be drawn with."""

import re

COMMON = {  # of nearly all lines of a circuit
    "stroke": "currentColor",
    "fill": "none",
    "stroke-width": "1.7",
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
}
ALIKE = re.compile(r'<path d="[^"]*"(?P<style>(?: style="[^"]*")?) ?/>(?:\s*<path d="[^"]*"(?P=style) ?/>)+')


def compact_svg(svg: str) -> str:
    """A drawing with its commonest style said once, lines alike in one path, and no more figures than a screen can show."""
    svg = re.sub(r"(\d)(?:\.0+|(\.\d)\d+)(?!\d)", r"\1\2", svg)
    head, _, body = svg.partition("</desc>")
    body = ALIKE.sub(join_paths, re.sub(r' style="([^"]*)"', leave_common_out, body))
    common = ";".join(f"{name}:{value}" for name, value in COMMON.items())
    return f'{head}</desc><g style="{common}">{body.replace("</svg>", "</g></svg>")}'


def leave_common_out(style: re.Match[str]) -> str:
    """A style without what is common."""
    said = [part.split(":") for part in style[1].replace(": ", ":").split(";") if part.strip()]
    left = ";".join(f"{name.strip()}:{value}" for name, value in said if COMMON.get(name.strip()) != value)
    return f' style="{left}"' if left else ""


def join_paths(run: re.Match[str]) -> str:
    """Paths in a row that look alike, as one."""
    strokes = re.sub(r"\s*([A-Za-z,])\s*|\s+", lambda gap: gap[1] or " ", "".join(re.findall(' d="([^"]*)"', run[0]))).replace(
        ",-", "-"
    )
    return f'<path d="{strokes}"{run["style"]}/>'
