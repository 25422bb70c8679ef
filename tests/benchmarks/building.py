"""How long does the site take? Run by hand: `python tests/benchmarks/building.py [--cold]`. Not a test: it holds to no time.

The course is copied, and built in the copy: with nothing changed since the last build, with one lesson changed, and, on
`mkdocs serve`, how long after a lesson is written its new page can be fetched. With `--cold` a build comes first for which no
picture, sound or page is kept; without it what the checkout has kept is taken along, and one build before brings it up to date.
Beside the time on the clock stands that of the processor, which says more where other programs are at work.
"""

import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from contextlib import suppress
from pathlib import Path
from urllib.request import urlopen

ROOT = Path(__file__).resolve().parents[2]
PARTS = ("solutions", "checker", "exercises", "course")
MKDOCS = [sys.executable, "-m", "mkdocs"]
LESSON = "unit03_tuned_circuit/index"
PORT, PATIENCE = 8731, 600  # seconds


def copy_course(root: Path, cold: bool) -> None:
    """A copy of all that the site is built from, with or without what is kept of earlier builds."""
    leave = shutil.ignore_patterns("node_modules", "site", "__pycache__", *(["build"] if cold else []))
    for part in PARTS:
        shutil.copytree(ROOT / part, root / part, ignore=leave)
    (root / "course" / "node_modules").symlink_to(ROOT / "course" / "node_modules")


def change_lesson(root: Path, word: str) -> None:
    """Write one more sentence into a lesson."""
    with open(root / "course" / "lessons" / f"{LESSON}.md", "a", encoding="utf-8") as lesson:
        lesson.write(f"\nOne more sentence, {word}.\n")


def time_build(root: Path, what: str) -> None:
    """Build once, and print how long it took."""
    before, begun = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run([*MKDOCS, "build", "-f", "course/mkdocs.yml", "--strict", "--quiet"], cwd=root, check=True)
    seconds, after = time.perf_counter() - begun, resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    print(f"{what:28} {seconds:6.1f} s, processor {used:6.1f} s", flush=True)


def wait_for(word: str) -> None:
    """Ask for the lesson until the word stands in it."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        with suppress(OSError), urlopen(f"http://127.0.0.1:{PORT}/{LESSON}.html", timeout=PATIENCE) as page:
            if word in page.read().decode():
                return
        time.sleep(0.05)
    raise TimeoutError(f"{word} did not come within {PATIENCE} s")


def time_server(root: Path) -> None:
    """Print how long a changed lesson takes to be served."""
    server = subprocess.Popen([*MKDOCS, "serve", "-f", "course/mkdocs.yml", "-q", "-a", f"127.0.0.1:{PORT}"], cwd=root)
    try:
        wait_for("<h1")
        for word in ("onceserved", "twiceserved"):
            begun = time.perf_counter()
            change_lesson(root, word)
            wait_for(word)
            print(f"{f'served, {word}':28} {time.perf_counter() - begun:6.1f} s", flush=True)
    finally:
        server.terminate()
        server.wait()


def main() -> None:
    cold = "--cold" in sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        copy_course(root, cold)
        os.environ["PYTHONPATH"] = str(root)
        time_build(root, "nothing kept" if cold else "brought up to date")
        time_build(root, "nothing changed")
        change_lesson(root, "changed")
        time_build(root, "one lesson changed")
        time_server(root)


if __name__ == "__main__":
    main()
