# Tries: to read a file of the system, by plain open.
# Verdict: refused.
# Says: read a file outside its own folder (/etc/passwd)
def resonant_frequency(inductance, capacitance):
    return len(open('/etc/passwd').read())
