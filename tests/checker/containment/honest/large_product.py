import numpy as np

a = np.ones((500, 500))
answer = float((a @ a).sum())
