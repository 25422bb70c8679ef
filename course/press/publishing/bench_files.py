"""The browser bench's files, written beside the pages: figures, the stations' programme, the script and the style sheet."""

import base64
import json
import re
from pathlib import Path

from course.press.publishing.scripts import join_modules


def write_bench(course: Path, target: Path, entry: Path | None = None) -> None:
    """Write `figures.js`, `programme.js`, `bench.js` and `bench.css`: classic scripts, so that they work from a USB stick too.

    Parameters
    ----------
    course : Path
        Folder of `bench/` and `node_modules/`.
    target : Path
        Folder to write to.
    entry : Path, optional
        Module that `bench.js` is made from; the page's own if none is given.

    Raises
    ------
    Fault
        If the modules cannot be joined.
    """
    # Here, for `mkdocs serve` reads them afresh, and few builds want them.
    from course.bench.sets import bench_figures
    from course.circle.levels import RATE
    from course.circle.programme import programme
    from course.sounds.kit.level import PEAK, encoded

    bench = course / "bench"
    target.mkdir(parents=True, exist_ok=True)
    figures = json.dumps(bench_figures(), separators=(",", ":"))
    (target / "figures.js").write_text(f"globalThis.SALTMARSH_BENCH={figures};\n", "utf-8")
    sent = encoded(PEAK * programme(), RATE, format="MP3", compression_level=0.3)
    (target / "programme.js").write_text(f'globalThis.SALTMARSH_PROGRAMME="{base64.b64encode(sent).decode()}";\n', "utf-8")
    (target / "bench.css").write_text(compact_css((bench / "panel" / "bench.css").read_text("utf-8")), "utf-8")
    threads = {"THREADS_TEXT": bench / "sound" / "threads.js"}
    join_modules({target / "bench.js": entry or bench / "panel" / "main.js"}, threads)


def compact_css(sheet: str) -> str:
    """A style sheet without what only its writers need."""
    sheet = re.sub(r"/\*.*?\*/", "", sheet, flags=re.S)
    return re.sub(r"\s*([{};,])\s*|\s+", lambda gap: gap[1] or " ", sheet).replace(": ", ":")
