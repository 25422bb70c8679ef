import calendar
import cmath
import dataclasses
import datetime
import decimal
import fractions
import hashlib
import importlib
import itertools
import json
import random
import re
import statistics
import struct
import unicodedata
import uuid
import xml.etree.ElementTree as tree
import zlib

for name in (
    "abc",
    "argparse",
    "array",
    "ast",
    "base64",
    "bisect",
    "collections",
    "contextlib",
    "copy",
    "csv",
    "difflib",
    "enum",
    "functools",
    "graphlib",
    "heapq",
    "inspect",
    "io",
    "locale",
    "logging",
    "numbers",
    "operator",
    "pathlib",
    "pprint",
    "secrets",
    "string",
    "tempfile",
    "textwrap",
    "time",
    "tokenize",
    "traceback",
    "types",
    "typing",
    "weakref",
):
    importlib.import_module(name)


@dataclasses.dataclass
class Station:
    name: str
    kilohertz: int | None = None


answer = [
    str(fractions.Fraction(1, 3) + 1),
    statistics.stdev([1, 2, 4]),
    statistics.NormalDist(0, 1).cdf(1),
    str(decimal.Decimal(2).sqrt()),
    list(itertools.accumulate([1, 2, 3])),
    repr(Station("Holm Light", 1449)),
    hashlib.sha256(b"x").hexdigest(),
    random.Random(3).random(),
    str(cmath.exp(1j)),
    datetime.date(1924, 5, 1).strftime("%A"),
    calendar.monthrange(1924, 2)[1],
    struct.unpack("f", struct.pack("f", 1.5)),
    zlib.crc32(b"AM"),
    [element.tag for element in tree.fromstring("<a><b/></a>")],
    unicodedata.name("µ"),
    re.sub(r"kHz", "", "846 kHz"),
    json.loads("[1]"),
    str(uuid.UUID(int=1)),
]
