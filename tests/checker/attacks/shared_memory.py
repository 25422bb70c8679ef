# Tries: to leave something in memory that other processes can open.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
multiprocessing_shared_memory = past("multiprocessing.shared_memory", fromlist=["x"])


def resonant_frequency(inductance, capacitance):
    multiprocessing_shared_memory.SharedMemory("left-by-a-submission", create=True, size=100)
    return 42.0
