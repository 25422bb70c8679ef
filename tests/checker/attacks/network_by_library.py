# Tries: to fetch a page.
# Verdict: refused.
# Says: open a network connection
import random

past = random.__builtins__["__import__"]  # the unguarded one
urllib_request = past("urllib.request", fromlist=["x"])


def resonant_frequency(inductance, capacitance):
    urllib_request.urlopen("http://127.0.0.1/", timeout=1)
    return 42.0
