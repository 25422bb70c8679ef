import signal
import time

before = time.monotonic()
time.sleep(0.01)
answer = [time.monotonic() - before >= 0.01, time.strftime("%Y", time.gmtime(0))]
signal.signal(signal.SIGALRM, lambda *about: None)
signal.setitimer(signal.ITIMER_REAL, 0.01)
signal.setitimer(signal.ITIMER_REAL, 0)
