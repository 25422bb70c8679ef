# Tries: to open a database in a shared folder.
# Verdict: refused.
# Says: write outside
import random

past = random.__builtins__["__import__"]  # the unguarded one
sqlite3 = past("sqlite3")


def resonant_frequency(inductance, capacitance):
    sqlite3.connect("/tmp/left-by-a-submission.db").execute("create table t (x)")
    return 42.0
