"""numba, where it is installed; without it the same lines run as they stand, slower."""

try:
    from numba import njit
except ImportError:

    def njit(**_):
        return lambda function: function


COMPILED = {"cache": True, "error_model": "numpy", "fastmath": True}
INTO_ITS_CALLER = {**COMPILED, "inline": "always"}
