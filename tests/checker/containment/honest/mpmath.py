import mpmath

mpmath.mp.dps = 30
answer = [
    str(mpmath.besselj(0, 2.4)),
    str(mpmath.quad(mpmath.sin, [0, mpmath.pi])),
    str(mpmath.ellipk(0.5)),
    str(mpmath.findroot(mpmath.cos, 1.5)),
]
