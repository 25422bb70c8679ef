# Tries: to pass off answers as another exercise's, by the names that the judge's own messages have.
# Verdict: refused.
# Says: not an answer
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")
json = past("json")


def resonant_frequency(inductance, capacitance):
    line = json.dumps({"exercise": "unit00_bench/prefixes", "function": "to_engineering", "value": "1 mH", "altered": []})
    for descriptor in range(3, 64):
        try:
            os.write(descriptor, line.encode() + b"\n")
        except OSError:
            pass
    return 42.0
