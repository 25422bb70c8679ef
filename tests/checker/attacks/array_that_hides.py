# Tries: to return an array whose numbers are masked away, another in steps backwards, and one that nobody may write.
# Verdict: wrong.
import numpy as np

CALLS = iter(range(10**9))


def resonant_frequency(inductance, capacitance):
    masked = np.ma.masked_array([42.0], mask=[True], fill_value=np.nan)
    backwards = np.arange(84.0)[::-2]
    still = np.broadcast_to(np.float64(42), (3, 0, 2))
    return (masked, backwards, still, np.ma.masked)[next(CALLS) % 4]
