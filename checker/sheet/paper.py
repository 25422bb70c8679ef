"""A page on paper: PDF by a Chromium that is on this machine."""

import os
import shutil
import subprocess
import tempfile
from contextlib import suppress
from pathlib import Path
from subprocess import DEVNULL

from .fault import SheetFault

BROWSERS = "chromium", "chromium-browser", "google-chrome", "chrome"
SECONDS = 60


def print_sheet(page: Path, pdf: Path) -> Path:
    """Print a page into a PDF, by its own style for paper.

    Raises
    ------
    SheetFault
        If there is no browser here, or it made no PDF.
    """
    browser = next(filter(None, map(shutil.which, BROWSERS)), None)
    if browser is None:
        raise SheetFault(f"There is no Chromium here to print with: open {page} in a browser and print it from there.")
    with tempfile.TemporaryDirectory(prefix="sheet-", ignore_cleanup_errors=True) as scratch:
        made = Path(scratch) / "sheet.pdf"
        root = hasattr(os, "geteuid") and os.geteuid() == 0  # whom Chromium's own sandbox refuses
        command = [
            browser,
            "--headless",
            "--disable-gpu",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-sync",
            "--disable-component-update",
            f"--user-data-dir={scratch}/profile",
            *(["--no-sandbox"] if root else []),
            "--no-pdf-header-footer",
            f"--print-to-pdf={made}",
            page.resolve().as_uri(),
        ]
        with suppress(OSError, subprocess.TimeoutExpired):
            subprocess.run(command, timeout=SECONDS, stdin=DEVNULL, stdout=DEVNULL, stderr=DEVNULL)
        if not made.is_file() or made.read_bytes()[:5] != b"%PDF-":
            raise SheetFault(f"{browser} made no PDF: open {page} in a browser and print it from there.")
        shutil.copyfile(made, pdf)
    return pdf
