"""Feed every reader inputs that look for new paths through it. By hand: `python -m tests.fuzz.by_coverage [INPUTS]`.

Needs `pip install atheris`, which follows what is executed and varies the inputs that led somewhere new. An exception that
a reader does not promise ends the run and is printed with the input that led to it.
"""

import subprocess
import sys
import tempfile
from pathlib import Path

INPUTS = 200_000


def one(name, inputs):
    import atheris

    with atheris.instrument_imports(include=["checker", "course.press", "zipfile", "json"]):
        from tests.fuzz.readers import READERS
    from tests.fuzz.readers import SEEDS

    with tempfile.TemporaryDirectory() as corpus:
        for number, seed in enumerate(SEEDS.get(name, [b"x"])):
            (Path(corpus) / str(number)).write_bytes(seed)
        atheris.Setup(
            [sys.argv[0], f"-runs={inputs}", "-max_len=4096", "-verbosity=0", "-print_final_stats=1", "-seed=1", corpus],
            READERS[name],
        )
        atheris.Fuzz()


def every(inputs):
    from tests.fuzz.readers import READERS

    failed = []
    for name in READERS:
        run = subprocess.run(
            [sys.executable, "-m", "tests.fuzz.by_coverage", name, str(inputs)], capture_output=True, text=True
        )
        tried = next((row.split()[-1] for row in run.stderr.split("\n") if "number_of_executed_units" in row), "?")
        print(f"{name:24} {tried:>9} inputs  {'nothing unhandled' if run.returncode == 0 else 'FAILED'}", flush=True)
        if run.returncode:
            failed.append(name)
            print(run.stdout[-2000:], run.stderr[-3000:])
    return 1 if failed else 0


if __name__ == "__main__":
    if len(sys.argv) > 2:
        one(sys.argv[1], int(sys.argv[2]))
    else:
        sys.exit(every(int(sys.argv[1]) if len(sys.argv) > 1 else INPUTS))
