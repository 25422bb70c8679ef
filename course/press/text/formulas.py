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
    """The version of a package that npm has brought, or None."""
    try:
        version: str = json.loads((course / "node_modules" / package / "package.json").read_text("utf-8"))["version"]
        return version
    except (OSError, ValueError, KeyError):
        return None


class Typesetter:
    """A Node process that answers formulas with HTML and MathML, each one set once."""

    def __init__(self) -> None:
        self.process: subprocess.Popen[str] | None = None  # begun with the first formula
        self.typeset = cache(self._typeset)

    def _typeset(self, tex: str, display: bool) -> str:
        """HTML of one formula, asked of Node.

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
        if self.process is None:
            self.process = subprocess.Popen(
                ["node", str(Path(__file__).with_name("formulas.mjs"))],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                encoding="utf-8",
            )
        to_node, from_node = self.process.stdin, self.process.stdout
        assert to_node and from_node  # both are pipes
        try:
            to_node.write(json.dumps({"tex": tex, "display": display}) + "\n")
            to_node.flush()
            line = from_node.readline()
        except OSError:
            line = ""
        if not line:
            raise NodeMissing("Node.js stopped while setting formulas: run npm ci in course/, then build again.")
        answer: dict[str, str] = json.loads(line)
        if "fault" in answer:
            raise Fault(f"formula {tex.strip()} is not right: {answer['fault'].removeprefix('KaTeX parse error: ')}")
        return answer["html"]

    def close(self) -> None:
        """End the process, if there is one."""
        if self.process is None:
            return
        assert self.process.stdin
        with contextlib.suppress(OSError):
            self.process.stdin.close()
        self.process.wait(timeout=10)
