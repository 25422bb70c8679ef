import traceback
import warnings

import numpy as np

with warnings.catch_warnings(record=True) as caught:
    warnings.simplefilter("always")
    warnings.warn("loose coupling", stacklevel=1)
    np.float64(1) / np.float64(0)
try:
    answer = 1 / 0
except ZeroDivisionError:
    text = traceback.format_exc()
answer = [len(caught), text.splitlines()[-1]]
