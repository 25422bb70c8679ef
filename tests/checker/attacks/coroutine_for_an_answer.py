# Tries: to hand back a coroutine that nobody awaits.
# Verdict: wrong.
# Says: returned a coroutine
async def resonant_frequency(inductance, capacitance):
    while True:
        pass


async def resonance_condition(inductance, capacitance):
    yield inductance
