"""Whatever a submission tries that it may not, there is a sentence with its own line in it."""

import os
import re
import sys
from importlib.machinery import BuiltinImporter, FrozenImporter, PathFinder

import pytest

from checker.worker import denials, trees

FILE = "unit03_tuned_circuit/resonance.py"
TREES = trees.python_trees()
# The tests' own process may have other finders of modules, which packages that the warm process never loads put there.
PYTHONS_OWN = [BuiltinImporter, FrozenImporter, PathFinder]

TRIED = {
    "network": [
        "import socket\n\nsocket.socket()",
        "import urllib.request\n\nurllib.request.urlopen('http://127.0.0.1:9/')",
        "import socket\n\nsocket.getaddrinfo('localhost', 80)",
    ],
    "program": [
        "import subprocess\n\nsubprocess.run(['true'])",
        "import os\n\nos.system('true')",
        "import os\n\nos.execv('/bin/true', ['true'])",
        "import os\n\nos.popen('true')",
        "import os\n\nos.posix_spawn('/bin/true', ['true'], {})",
    ],
    "process": ["import os\n\nos.fork()", "import multiprocessing as m\n\nm.Process(target=print).start()"],
    "thread": [
        "import threading\n\nthreading.Thread(target=print).start()",
        "import concurrent.futures as c\n\nc.ThreadPoolExecutor().submit(print)",
    ],
    "signal": ["import os\n\nos.kill(os.getppid(), 9)", "import os\n\nos.killpg(0, 9)"],
    "read": [
        "x = 1\n\nopen('/etc/passwd')",
        "from pathlib import Path\n\nPath('/etc/passwd').read_text()",
        "import os\n\nos.open('/etc/passwd', 0)",
        "import numpy\n\nnumpy.loadtxt('/etc/passwd')",
        "import io\n\nio.open_code('/etc/passwd')",
    ],
    "list": [
        "import os\n\nos.listdir('/')",
        "import glob\n\nglob.glob('/*')",
        "from pathlib import Path\n\nlist(Path('/').iterdir())",
    ],
    "write": [
        "x = 1\n\nopen('/tmp/here', 'w')",
        "import os\n\nos.mkdir('/tmp/here')",
        "import numpy\n\nnumpy.save('/tmp/here', [1])",
    ],
    "change": [
        "import os\n\nos.remove('/tmp/here')",
        "import os\n\nos.rename('/tmp/here', 'a')",
        "import os\n\nos.chmod('/etc/passwd', 0)",
        "import os\n\nos.link('/etc/passwd', 'a')",
        "import os\n\nos.symlink('/etc/passwd', 'a')",
        "import os\n\nos.utime('/etc/passwd')",
        "import os\n\nos.truncate('/etc/passwd', 0)",
    ],
    "machine": ["import ctypes\n\nctypes.CDLL(None).getpid()", "import ctypes\n\nctypes.string_at(id(1))"],
    "limits": ["import resource\n\nresource.setrlimit(resource.RLIMIT_CPU, (-1, -1))"],
    "watch": ["import sys\n\nsys.addaudithook(print)"],
}


class Stopped(BaseException):
    """No Exception, so that no library takes it for a file that is not there."""


def with_watch(source, stop):
    """The attempts seen while `source` runs in a child that is watched, and the words of the one that it ended with."""

    def body():
        sys.path[:] = trees.import_path()
        sys.meta_path[:] = PYTHONS_OWN
        seen = []

        def note(attempt):
            seen.append([attempt.kind, attempt.path, attempt.line])
            if stop:
                raise Stopped(attempt.words)

        denials.watch_audit(note, {FILE}, readable=TREES, writable=[os.getcwd()])
        try:
            exec(compile(source, FILE, "exec"), {})
        except Stopped as caught:
            return [seen, str(caught)]
        except Exception as error:
            attempt = denials.describe_denial(error, {FILE})
            return [seen or [[attempt.kind, attempt.path, attempt.line]], attempt.words] if attempt else [seen, repr(error)]
        return [seen, ""]

    return body


@pytest.mark.parametrize("kind, source", [(kind, source) for kind, sources in TRIED.items() for source in sources])
def test_an_attempt_is_named_with_its_line(attack, kind, source):
    seen, error = attack(with_watch(source, stop=True)).value
    assert [seen[0][0], seen[0][2]] == [kind, 3], (seen, error)
    assert denials.WORDS[kind] in error and error.endswith(", line 3")


def test_the_hook_alone_stops_what_it_names(attack):
    """Where the kernel contains nothing, an honest mistake is stopped still; a hostile one is not."""
    seen, error = attack(with_watch("import os\n\nos.system('touch here')", stop=True), without=["contain"]).value
    assert error == "tried to start another program, line 3"


HONEST = """
import asyncio, ctypes.util, decimal, glob, linecache, os, random, shutil, sqlite3, tempfile, warnings, wave, zoneinfo
import numpy, sympy
with tempfile.TemporaryDirectory() as folder:
    open(os.path.join(folder, "a"), "w").close()
    os.rename(os.path.join(folder, "a"), os.path.join(folder, "b"))
    glob.glob(folder + "/*")
    os.listdir(folder)
with tempfile.TemporaryFile() as file:
    file.write(b"1")
    file.flush()
    os.ftruncate(file.fileno(), 0)
open("mine.txt", "w").close()
os.remove("mine.txt")
linecache.getlines("unit03_tuned_circuit/resonance.py")
warnings.warn("x")
numpy.linalg.inv(numpy.eye(3)); numpy.random.default_rng(); numpy.arange(3).tobytes()
sympy.lambdify(sympy.Symbol("x"), 1); sympy.integrate(sympy.Symbol("x"))
open(os.devnull).close()
"""


def test_honest_work_is_no_attempt(attack):
    seen, error = attack(with_watch(HONEST, stop=False)).value
    assert (seen, error) == ([], "")


def test_a_module_looked_for_in_vain_is_no_attempt(attack):
    """The import system lists every folder of sys.path; one that it may not see is an empty one to it."""
    source = "import sys\n\nsys.path.append('/etc')\nimport no_such_module"
    assert attack(with_watch(source, stop=True)).value == [[], repr(ModuleNotFoundError("No module named 'no_such_module'"))]


@pytest.mark.parametrize(
    "source, kind, path",
    [
        ("import os\n\nos.chroot('/')", "other", "/"),
        ("import os\n\nos.setuid(0)", "other", ""),
        ('raise RuntimeError("can\'t start new thread")', "thread", ""),
    ],
)
def test_an_error_that_no_hook_foresaw_is_described(attack, source, kind, path):
    def body():
        try:
            exec(compile(source, FILE, "exec"), {})
        except Exception as error:
            found = denials.describe_denial(error, {FILE})
            return [found.kind, found.path, found.line, found.words]

    found = attack(body).value
    assert found[:3] == [kind, path, source.count("\n") + 1]
    assert found[3].startswith("tried to ")


@pytest.mark.parametrize("error", [ValueError("no"), FileNotFoundError(2, "not there"), RuntimeError("other"), MemoryError()])
def test_other_errors_are_no_denials(error):
    assert denials.describe_denial(error, {FILE}) is None


@pytest.mark.parametrize(
    "path, text",
    [
        ("plain.txt", "plain.txt"),
        (b"bytes.txt", "bytes.txt"),
        ("\x1b[31mred\n", "?[31mred?"),
        ("a\u202eb", "a?b"),
        (3, ""),
        (None, ""),
        ("x" * 200, "x" * 79 + "…"),
        (b"\xff", "?"),
    ],
)
def test_a_path_is_made_fit_to_print(path, text):
    assert denials.shown(path) == text


def test_every_kind_has_words_and_every_event_a_kind():
    assert set(denials._KIND_OF.values()) | set(denials._ON_PATHS.values()) | {"read", "other"} == set(denials.WORDS)
    assert all(re.fullmatch(r"[a-z].*[^.]", words) for words in denials.WORDS.values())
