# why do it twice
from solutions.unit00_bench.dropper_resistor import *
