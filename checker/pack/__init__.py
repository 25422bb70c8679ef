"""The student pack: the exercises and the checker, sealed practice values, no reference code."""
