from numpy.polynomial import Polynomial, chebyshev, legendre

answer = [Polynomial([1, -3, 2]).roots().tolist(), chebyshev.chebval(0.3, [1, 2, 3]), legendre.legval(0.3, [1, 2])]
