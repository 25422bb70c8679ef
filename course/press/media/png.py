"""A picture that stands alone as PNG, drawn by the Chromium that is on the machine."""

import shutil
import subprocess
import tempfile
from pathlib import Path

from course.press.faults import Fault
from course.press.media.labels import view_box

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome")
WIDTHS = (200, 8000)


def draw_png(svg: str, width: int) -> bytes:
    """A picture at a width in points of the image.

    Raises
    ------
    Fault
        If the width is out of reach, or there is no Chromium, or it draws nothing.
    """
    if not WIDTHS[0] <= width <= WIDTHS[1]:
        raise Fault(f"--png {width}: write a width from {WIDTHS[0]} to {WIDTHS[1]}")
    browser = next(filter(None, map(shutil.which, BROWSERS)), None)
    if browser is None:
        raise Fault("--png needs Chromium, which is not installed: leave --png out, or take the PNG from the page")
    _, _, across, down = map(float, view_box(svg))
    height = round(width * down / across)
    style = f"body{{margin:0}}svg{{display:block;width:{width}px;height:{height}px}}"
    page = f'<!doctype html><meta charset="utf-8"><style>{style}</style>{svg[svg.index("<svg") :]}'
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        (place / "page.html").write_text(page, "utf-8")
        command = [
            browser,
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--no-first-run",
            "--hide-scrollbars",
            "--force-device-scale-factor=1",
            f"--user-data-dir={place / 'profile'}",
            f"--window-size={width},{height}",
            f"--screenshot={place / 'picture.png'}",
            (place / "page.html").as_uri(),
        ]
        subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=120, check=False)
        if not (place / "picture.png").is_file():
            raise Fault(f"{browser} did not draw the picture: leave --png out, or take the PNG from the page")
        return (place / "picture.png").read_bytes()
