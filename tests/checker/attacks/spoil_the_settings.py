# Tries: to change whatever can be set: language, time zone, printing, digits, recursion, switching, warnings, random numbers.
# Verdict: wrong or raised.
import random
import warnings

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")
decimal = past("decimal")
locale = past("locale")
os = past("os")
time = past("time")


def resonant_frequency(inductance, capacitance):
    os.environ["TZ"] = "Nowhere-99"
    time.tzset()
    locale.setlocale(locale.LC_ALL, "C")
    decimal.getcontext().prec = 1
    np.set_printoptions(precision=1, threshold=0, formatter={"all": lambda number: "503292.1"})
    sys.set_int_max_str_digits(0)
    sys.setswitchinterval(1e-9)
    sys.setrecursionlimit(120)
    warnings.simplefilter("error")
    random.seed(0)
    np.random.seed(0)
    return 42.0
