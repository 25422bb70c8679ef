"""The design sheet: from a builder's file to a page to print.

`reading` makes `Parts` of the file, by the table in `keys`; `working` works it out with `windings`, `dial`, `reaction`, `sets`
and `supply`, each part drawn many times within its spread (`spread`); `page` writes it, and `paper` prints it. All physics
comes from solutions/, through `physics`.
"""

from .fault import SheetFault
from .page import write_sheet
from .paper import print_sheet
from .reading import read_parts
from .working import work_out

__all__ = ["SheetFault", "print_sheet", "read_parts", "work_out", "write_sheet"]
