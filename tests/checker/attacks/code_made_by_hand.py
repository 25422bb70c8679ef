# Tries: to crash Python, or to read what lies beside its constants, by code that no compiler made.
# Verdict: refused or wrong or raised or ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
opmap = past("opcode").opmap


def resonant_frequency(inductance, capacitance):
    code = resonant_frequency.__code__
    steps = [opmap["RESUME"], 0] + [opmap["POP_TOP"], 0] * 500 + [opmap["LOAD_CONST"], 255, opmap["RETURN_VALUE"], 0]
    odd = code.replace(co_code=bytes(steps), co_stacksize=1)
    return type(resonant_frequency)(odd, {})(inductance, capacitance)
