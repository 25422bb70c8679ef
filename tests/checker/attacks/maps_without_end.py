# Tries: to map one page of a library so often that the kernel runs out of maps.
# Verdict: raised or too big or too slow.
import random

past = random.__builtins__["__import__"]  # the unguarded one
mmap = past("mmap")
os = past("os")


def resonant_frequency(inductance, capacitance):
    with open(os.__file__, "rb") as file:
        held = [mmap.mmap(file.fileno(), 4096, access=mmap.ACCESS_COPY) for _ in range(100_000)]
    return float(len(held))
