# Tries: to start threads without end.
# Verdict: refused.
# Says: start a thread
import random

past = random.__builtins__["__import__"]  # the unguarded one
threading = past("threading")
time = past("time")


def resonant_frequency(inductance, capacitance):
    while True:
        threading.Thread(target=time.sleep, args=(60,)).start()
