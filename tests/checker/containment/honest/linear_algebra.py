import numpy as np
import numpy.linalg as la

a = np.arange(9.0).reshape(3, 3) + np.eye(3) * 10
answer = [
    la.det(a),
    la.inv(a).tolist(),
    sorted(la.eigvals(a).real.tolist()),
    la.solve(a, [1, 2, 3]).tolist(),
    la.svd(a)[1].tolist(),
]
