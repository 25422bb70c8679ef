# Tries: to raise an error whose text is a formula, with terminal codes and a page's tags.
# Verdict: raised.
def resonant_frequency(inductance, capacitance):
    raise ValueError("=HYPERLINK(\"http://127.0.0.1/\";\"marks\")\x1b[2J\x07<img src=x onerror=alert(1)>\u202e")
