"""The browser bench's files, written beside the pages: figures, the stations' programme, and the page's one script."""

import base64
import json
import subprocess
from pathlib import Path

from course.bench.sets import bench_figures
from course.press.faults import Fault
from course.sounds.level import PEAK, encoded
from course.sounds.programme import RATE, programme

ENTRY = Path("panel", "main.js")


def write_bench(course: Path, target: Path, entry: Path | None = None) -> None:
    """Write `figures.js`, `programme.js` and `bench.js`: classic scripts, so that they work from a USB stick too.

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
    target.mkdir(parents=True, exist_ok=True)
    figures = json.dumps(bench_figures(), separators=(",", ":"))
    (target / "figures.js").write_text(f"globalThis.SALTMARSH_BENCH={figures};\n", "utf-8")
    sent = encoded(PEAK * programme(), RATE, format="MP3", compression_level=0.3)
    (target / "programme.js").write_text(f'globalThis.SALTMARSH_PROGRAMME="{base64.b64encode(sent).decode()}";\n', "utf-8")
    command = ["node", str(course / "bench" / "join.js"), str(entry or course / "bench" / ENTRY), str(target / "bench.js")]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode:
        raise Fault(f"the bench's modules cannot be joined: {done.stderr.strip()}")
