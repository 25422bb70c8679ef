import sympy as sp

w, L, C = sp.symbols("w L C", positive=True)
x = sp.Symbol("x")
answer = [
    str(sp.solve(sp.Eq(w * L, 1 / (w * C)), w)),
    str(sp.integrate(sp.exp(-(x**2)), (x, -sp.oo, sp.oo))),
    str(sp.simplify(sp.sin(x) ** 2 + sp.cos(x) ** 2)),
    str(sp.diff(sp.besselj(0, x), x)),
    str(sp.series(sp.cos(x), x, 0, 5)),
    str(sp.Matrix([[1, 2], [3, 4]]).inv()),
    str(sp.limit(sp.sin(x) / x, x, 0)),
    str(sp.factor(x**4 - 1)),
    str(sp.dsolve(sp.Function("f")(x).diff(x) - sp.Function("f")(x))),
    sp.latex(sp.sqrt(x)),
    sp.pretty(x / 2),
    str(sp.nsolve(sp.cos(x) - x, 1)),
    str(sp.apart(1 / (x**2 - 1))),
    str(sp.laplace_transform(sp.exp(-x), x, w)[0]),
    str(sp.sympify("2*x + 1")),
    sp.srepr(x),
    sp.pycode(x**2),
]
