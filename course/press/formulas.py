"""Formulas, set by KaTeX in one Node process that lives as long as the build."""

import contextlib
import json
import shutil
import subprocess
from functools import cache
from pathlib import Path

from mkdocs.exceptions import PluginError

from course.press.faults import Fault


class NodeMissing(PluginError):
    """Node, or what npm should have brought, is not there."""


def bring_packages(course: Path) -> None:
    """Install what `package.json` names, if it is not there in the pinned version.

    Parameters
    ----------
    course : Path
        Folder of `package.json`.

    Raises
    ------
    NodeMissing
        If Node.js or npm is not installed, or npm fails.
    """
    npm = shutil.which("npm")
    if not npm or not shutil.which("node"):
        raise NodeMissing("Node.js sets the formulas and is not installed: install Node.js 18 or newer, then build again.")
    wanted = json.loads((course / "package.json").read_text("utf-8"))["dependencies"]
    if all(installed_version(course, package) == version for package, version in wanted.items()):
        return
    done = subprocess.run([npm, "ci", "--no-audit", "--no-fund"], cwd=course, capture_output=True, text=True)
    if done.returncode:
        last = (done.stderr.strip().splitlines() or ["no reason given"])[0]
        raise NodeMissing(f"npm ci in {course} failed ({last}): run it there by hand to see why, then build again.")


def installed_version(course: Path, package: str) -> str | None:
    try:
        return json.loads((course / "node_modules" / package / "package.json").read_text("utf-8"))["version"]
    except (OSError, ValueError, KeyError):
        return None


class Typesetter:
    """A Node process that answers formulas with HTML and MathML, each one set once."""

    def __init__(self, course: Path):
        self.process = subprocess.Popen(
            ["node", str(course / "press" / "formulas.js")],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            encoding="utf-8",
        )
        self.set = cache(self._set)

    def _set(self, tex: str, display: bool) -> str:
        """HTML of one formula.

        Parameters
        ----------
        tex : str
            LaTeX, without the dollar signs.
        display : bool
            On lines of its own.

        Raises
        ------
        Fault
            If KaTeX does not understand it.
        """
        try:
            self.process.stdin.write(json.dumps({"tex": tex, "display": display}) + "\n")
            self.process.stdin.flush()
            line = self.process.stdout.readline()
        except OSError:
            line = ""
        if not line:
            raise NodeMissing("Node.js stopped while setting formulas: run npm ci in course/, then build again.")
        answer = json.loads(line)
        if "fault" in answer:
            raise Fault(f"formula {tex.strip()} is not right: {answer['fault'].removeprefix('KaTeX parse error: ')}")
        return answer["html"]

    def close(self) -> None:
        with contextlib.suppress(OSError):
            self.process.stdin.close()
        self.process.wait(timeout=10)
