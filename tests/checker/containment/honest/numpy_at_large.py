import io

import numpy as np

out = io.StringIO()
np.savetxt(out, np.arange(3.0))
np.save("kept.npy", np.arange(4))
answer = [
    out.getvalue(),
    np.load("kept.npy").tolist(),
    np.interp(1.5, [1, 2], [3, 4]),
    str(np.datetime64("1924-05-01") + 1),
    np.array2string(np.pi * np.ones(2)),
    np.ma.array([1, 2], mask=[0, 1]).sum().item(),
    np.char.upper("am").item(),
]
