"""What one member may cost the judge, on the judge's side of the wall. The child's own limits are in `worker/contain`."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Budget:
    """Sizes in bytes, times in seconds.

    Of a submission: `entries` looked at, `depth` of folders, bytes of one `file`, of a `notebook`, which may hold pictures, of
    `all_files` together and of a `zip`, and `unpacked`, which counts what is unpacked and then thrown away too.

    Of an exercise: a `reply` to one call, the `replies` together, seconds of the search for the simplest failing input, seconds
    of waiting for calls beyond those that every submission gets (`asking`), seconds of looking for slips by mending them
    (`mending`), seconds of the judge's own beyond the exercise's limit (`judging`), and `memory` beyond what the judge has in use
    when it begins.

    Of a member, in one judge: seconds of waiting for what compiles (`compiling`), and bytes of what is `compiled`.
    Of what is lent to an exercise in place of earlier ones: bytes of the `questions` together, how many values (`lent`), seconds
    of the processor's for working them out (`lending`), and numbers in one (`lent_numbers`), arrays broadcast. For each value a
    child is waited for a little longer (`exchange`), up to so many seconds in all (`exchanges`): on a busy machine that is what
    two processes take to hear of each other.
    """

    entries: int = 5000
    depth: int = 12
    file: int = 256 << 10
    notebook: int = 2 << 20
    all_files: int = 8 << 20
    zip: int = 8 << 20
    unpacked: int = 16 << 20
    reply: int = 3 << 20
    replies: int = 9 << 20
    search: float = 2.0
    asking: float = 4.0
    mending: float = 4.0
    judging: float = 9.0
    memory: int = 280 << 20
    compiling: float = 2.0
    compiled: int = 8 << 20
    questions: int = 16 << 20
    lent: int = 10_000
    lending: float = 3.0
    lent_numbers: int = 4096
    exchange: float = 0.01
    exchanges: float = 10.0


BUDGET = Budget()
GRACE = 1.0


def patience(seconds: float) -> float:
    """Seconds that the judge waits for a batch of calls to an exercise whose own limit is `seconds`."""
    return 2 * seconds + GRACE
