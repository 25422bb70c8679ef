import numpy.testing as npt

npt.assert_allclose([1.0], [1.0])
answer = 1
