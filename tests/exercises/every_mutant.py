"""Every wrong version of every reference, judged: which are taken for right? And every right one: which is not?

    python -m tests.exercises.every_mutant [NAME …] [--seed N …] [--near]

prints the wrong ones that pass (survivors), the right ones that lose marks (false alarms), and how many were tried of each
kind. Changes that leave every answer right stand in equivalent.toml, each with its reason; one that is listed there and
rejected is printed too. With --near only the near misses are tried: those of near_misses.py, and types taken from the wrong place.
"""

import argparse
import tomllib
from collections import Counter
from functools import cache
from pathlib import Path
from unittest.mock import patch

from checker.course import PATHS, ROOT, find, load_exercise
from checker.judging.judge import judge
from checker.judging.verdict import PASSED
from checker.sandbox.workers import start_worker
from tests.exercises.at_once import is_wrong_at_once
from tests.exercises.mutants import Mutant, mutants
from tests.exercises.near_misses import bare, near_misses
from tests.exercises.rewritten import KINDS, other_ways, spoiled_ways, wanted_of

SEED = 20


def sources(folder):
    """All files of exercises/ or solutions/ as a member would hand them in; `ranges` is what the references are held by."""
    files = {path: ROOT / folder / f"{path}.py" for path in (*PATHS, "ranges")}
    return {
        f"{path}.py": file.read_text().replace("from solutions.", "from exercises.")
        for path, file in files.items()
        if file.exists()
    }


NEAR = {"strictness", "bound", "refusal", "range", "type"}


def every_mutant(path):
    """All mutants of an exercise's reference, and for each function asked for the ways to spoil all that it gives."""
    source = sources("solutions")[f"{path}.py"]
    questions = load_exercise(path).questions
    asked = {question.name: question.arrays for question in questions}
    promised = {question.name for question in questions if question.refuses}
    found = [*mutants(source, asked), *near_misses(source, asked, promised)]
    for question in questions:
        if not question.symbolic:
            found += [
                Mutant(KINDS[what], f"{KINDS[what]}: {what}: {question.name}", spoiled)
                for what, spoiled in spoiled_ways(source, {question.name: wanted_of(question)})
                if what in KINDS
            ]
    return found


@cache
def equivalents(path):
    """What changes nothing that counts, and why: (what was changed) to (the reason)."""
    groups = tomllib.loads((Path(__file__).parent / "equivalent.toml").read_text()).get(path.rpartition("/")[2], [])
    return {what: group["because"] for group in groups for what in group["changes"]}


def survivors(path, tried, worker, seed):
    """Those of the mutants that pass. No simpler failing input is looked for: nobody reads it here."""
    files = sources("solutions")
    left = [mutant for mutant in tried if not is_wrong_at_once(path, mutant.source, seed)]
    with patch("checker.judging.judge.simplest_failure", lambda *_: None):
        return [mutant for mutant in left if judge(path, files | {f"{path}.py": mutant.source}, worker, seed).kind == PASSED]


def written_otherwise(path):
    """(what is done differently, source) for each right answer made from the reference."""
    asked = {
        q.name: {"arrays"} if q.arrays and all(given.stacks for given in q.given.values()) else set()
        for q in load_exercise(path).questions
        if not q.symbolic
    }
    source = sources("solutions")[f"{path}.py"]
    promised = {question.name for question in load_exercise(path).questions if question.refuses}
    return [*other_ways(source, asked), ("without the refusals that are not promised", bare(source, promised))]


def false_alarms(path, ways, worker, seed):
    """What is found against those of the right answers that do not earn full marks, by what is done differently."""
    files = sources("solutions")
    return {
        what: verdict.findings
        for what, source in ways
        if (verdict := judge(path, files | {f"{path}.py": source}, worker, seed)).earned < verdict.marks
    }


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("names", nargs="*", metavar="NAME", help="exercises; all if none is named")
    parser.add_argument("--seed", type=int, nargs="+", default=[SEED])
    parser.add_argument("--near", action="store_true", help="near misses alone")
    asked = parser.parse_args()
    tried, equivalent, survived, right, alarms = Counter(), Counter(), Counter(), 0, 0
    for path in map(find, asked.names or PATHS):
        every, known, ways = every_mutant(path), equivalents(path), written_otherwise(path)
        if asked.near:
            every, ways = [mutant for mutant in every if mutant.kind in NEAR], ways[-1:]
            known = {what: why for what, why in known.items() if what.partition(":")[0] in NEAR}
        for seed in asked.seed:
            with start_worker() as worker:
                passed = survivors(path, every, worker, seed)
                refused = false_alarms(path, ways, worker, seed)
            right, alarms = right + len(ways), alarms + len(refused)
            tried.update(mutant.kind for mutant in every)
            equivalent.update(mutant.kind for mutant in passed if mutant.what in known)
            unknown = [mutant for mutant in passed if mutant.what not in known]
            survived.update(mutant.kind for mutant in unknown)
            print(
                f"{path}, seed {seed}: {len(every)} tried, {len(passed) - len(unknown)} equivalent, {len(unknown)} survive",
                flush=True,
            )
            for mutant in unknown:
                print(f"    survives  {mutant.what}")
            for what, findings in refused.items():
                print(f"    false alarm  {what}: {findings}")
            for what in sorted(set(known) - {mutant.what for mutant in passed}):
                print(f"    listed as equivalent, but rejected or not made  {what}")
    print(f"\n{'kind':20}{'tried':>8}{'equivalent':>12}{'survive':>9}")
    for kind in sorted(tried):
        print(f"{kind:20}{tried[kind]:8}{equivalent[kind]:12}{survived[kind]:9}")
    print(f"{'all':20}{tried.total():8}{equivalent.total():12}{survived.total():9}")
    print(f"\n{right} right answers written otherwise, {alarms} false alarms")


if __name__ == "__main__":
    main()
