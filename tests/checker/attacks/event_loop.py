# Tries: to use asyncio, as an honest student might.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
asyncio = past("asyncio")


def resonant_frequency(inductance, capacitance):
    async def answer():
        return 42.0
    return asyncio.run(answer())
