import numpy as np
import sympy as sp

x = sp.Symbol("x")
answer = [
    sp.lambdify(x, sp.sin(x) / x)(np.array([1.0, 2.0])).tolist(),
    sp.lambdify(x, x**2, "math")(3),
    float(sp.lambdify(x, sp.besselj(0, x), "mpmath")(1)),
    sp.lambdify(x, sp.Matrix([x, x**2]))(2.0).tolist(),
]
