from numpy import random

answer = [random.default_rng(7).normal(size=3).tolist(), random.RandomState(7).rand(2).tolist()]
