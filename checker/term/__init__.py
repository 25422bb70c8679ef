"""A course over a term: who is on the roster, what was set when, and what becomes of late and repeated hand-ins.

`reading` makes a `Term` of a file, by the tables of keys in `keys`; `roster` reads who is in it; `lateness` works out what late
costs; `new` writes a file to begin with.
"""
