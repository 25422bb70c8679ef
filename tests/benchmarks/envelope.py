"""How fast is the envelope? Run by hand: `python tests/benchmarks/envelope.py`. Not a test: it holds to no time.

Both do the same thing: the club's set, oscillating at its limit with a station beside it. Times are of the processor, not of
the clock, so that whatever else the machine does counts little.

    carrier rate   SciPy's odeint, at the tolerance at which the tests find the agreement
    ours           the envelope, at the steps for sound and at four times as many
    plain          the same without numba

Memory is what the process holds at most while two and while twenty seconds are rendered, each in a process of its own.
"""

import importlib.util
import json
import resource
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from solutions.unit06_reaction.network import saltmarsh_set  # noqa: E402
from solutions.unit06_reaction.stability import retuned  # noqa: E402
from solutions.unit07_oscillation import compiling, cycle, stepping  # noqa: E402
from solutions.unit07_oscillation.cycle import grid_table  # noqa: E402
from solutions.unit07_oscillation.envelope import RATE, carrier, follow, frequency_offset, render, start  # noqa: E402
from solutions.unit07_oscillation.slow_mode import slow_mode  # noqa: E402
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage, small_signal_set  # noqa: E402
from tests.physics.carrier_rate import envelope_of, integrate, swinging  # noqa: E402

REFERENCE, OFFSET, EMF = 995e3, 2e3, 1e-3
WINDINGS = retuned(replace(small_signal_set(saltmarsh_set(REFERENCE)), throttle_capacitance=160e-12), REFERENCE)
SECONDS = 5.0


def processor_time(action, turns=3):
    """Least processor time of some runs, and the last result."""
    times = []
    for _ in range(turns):
        begun = time.process_time()
        result = action()
        times.append(time.process_time() - begun)
    return min(times), result


def one_run(rate, seconds=SECONDS):
    """Processor time of the envelope for each second of signal, and its end."""
    emf = carrier(np.arange(int(seconds * rate)) / rate, OFFSET, EMF)
    spent, heard = processor_time(lambda: follow(emf, rate, REFERENCE, WINDINGS, state=start(seed=3.0)))
    return spent / seconds, heard


def without_numba(rate, samples=4000):
    """The same in plain Python."""
    held = {name: sys.modules.get(name) for name in ("numba", compiling.__name__, cycle.__name__)}
    sys.modules["numba"] = None
    for module in (compiling, cycle, stepping):  # in the order in which they import each other
        spec = importlib.util.spec_from_file_location(module.__name__, module.__file__)
        plain = importlib.util.module_from_spec(spec)
        if module is not stepping:
            sys.modules[module.__name__] = plain
        spec.loader.exec_module(plain)
    sys.modules.update(held)
    emf = carrier(np.arange(samples) / rate, OFFSET, EMF)
    net, stage = slow_mode(WINDINGS, SALTMARSH_STAGE, REFERENCE), Stage(*map(float, SALTMARSH_STAGE))
    inputs = emf, 1 / rate, 1, 2 * np.pi * REFERENCE, *start(seed=3.0), net, stage, grid_table()
    spent, _ = processor_time(lambda: plain.march(*inputs), turns=1)
    return spent * rate / samples


def memory(seconds):
    """Most memory held, in megabytes, by a process that renders so many seconds and throws them away."""
    code = (
        f"import sys; sys.path.insert(0, {str(ROOT)!r}); sys.argv = ['envelope', 'render', '{seconds}']; "
        f"exec(open({__file__!r}).read(), {{'__name__': '__main__', '__file__': {__file__!r}}})"
    )
    return json.loads(subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True).stdout)


def rendered(seconds):
    """Render in blocks while the reaction is advanced; print peak memory and processor time a second."""

    def windings(at):
        return replace(WINDINGS, throttle_capacitance=(60 + 100 * at / seconds) * 1e-12)

    for _ in render(0.01, REFERENCE, lambda t: carrier(t, OFFSET, EMF), windings):
        pass
    begun = time.process_time()
    for _ in render(seconds, REFERENCE, lambda t: carrier(t, OFFSET, EMF), windings, every=2):
        pass
    spent = (time.process_time() - begun) / seconds
    print(json.dumps([resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024, spent]))


def main():
    one_run(RATE, 0.01)  # compiled, tables made
    fine_cost, fine = one_run(4 * RATE)
    cost, heard = one_run(RATE)
    limit = follow(np.zeros(20000), 4 * RATE, REFERENCE, WINDINGS, state=start(seed=3.0))
    begin = swinging(WINDINGS, SALTMARSH_STAGE, REFERENCE, abs(limit.grid[-1]), limit.bias[-1], limit.state.anode)
    duration = 3e-4
    full_cost, (instants, states) = processor_time(
        lambda: integrate(WINDINGS, SALTMARSH_STAGE, REFERENCE, duration, begin), turns=1
    )
    full_cost /= duration
    grid, bias = envelope_of(instants, states, REFERENCE)
    last = slice(-len(instants) // 3, -200)
    crest, mean_bias = np.mean(np.abs(grid[last])), np.mean(bias[last])
    turning = np.polyfit(instants[last], np.unwrap(np.angle(grid[last])), 1)[0] / (2 * np.pi)

    print(
        f"carrier rate    {full_cost:9.1f} s of processor a second       crest {crest:.4f} V  bias {mean_bias:.4f} V"
        f"  turning {turning:+.1f} Hz"
    )
    for name, rate in (("ours, for sound", RATE), ("ours, fine", 4 * RATE)):
        alone = follow(np.zeros(int(0.05 * rate)), rate, REFERENCE, WINDINGS, state=start(seed=3.0))
        spent = cost if rate == RATE else fine_cost
        print(
            f"{name:15} {spent:9.3f} s of processor a second       crest {abs(alone.grid[-1]):.4f} V"
            f"  bias {alone.bias[-1]:.4f} V  turning {frequency_offset(alone.grid, rate)[-1]:+.1f} Hz"
            f"   {1 / spent:.1f} × real time, {full_cost / spent:,.0f} × carrier rate"
        )
    plain = without_numba(RATE)
    print(f"plain           {plain:9.1f} s of processor a second       {full_cost / plain:,.0f} × carrier rate")
    for seconds in (2, 20, 60):
        most, spent = memory(seconds)
        print(
            f"blocks, {seconds:3} s long  {spent:9.3f} s of processor a second       at most {most:.0f} MB, {1 / spent:.1f} ×"
            " real time, the reaction advanced all the way"
        )


if __name__ == "__main__":
    rendered(float(sys.argv[2])) if sys.argv[1:2] == ["render"] else main()
