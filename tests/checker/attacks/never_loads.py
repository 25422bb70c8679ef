# Tries: to stop the file from ever being loaded.
# Verdict: too slow.
while True:
    pass
