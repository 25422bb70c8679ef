"""A file name for each member's report: readable, safe on every file system, and no two alike."""

import re
import unicodedata
from collections import Counter
from collections.abc import Sequence
from hashlib import sha256

_TAKEN = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))}  # by Windows
_LONGEST = 60


def report_names(names: Sequence[str]) -> list[str]:
    """File names, without suffix, for members' names, in their order.

    Parameters
    ----------
    names : sequence of str
        Any Unicode, and the same name more than once if need be.

    Returns
    -------
    list of str
        Of a to z, 0 to 9 and hyphens; different from one another. A name whose plain form is nobody else's has that; of
        the others each has a piece of its name's hash, and its place where even the names are equal.
    """
    plain = [_plain(name) for name in names]
    sharing = Counter(plain)
    seen = Counter()
    result = []
    for name, text in zip(names, plain, strict=True):
        if not text or sharing[text] > 1 or text in _TAKEN or re.search(r"-[0-9a-f]{12}(-\d+)?$", text):
            text = f"{text or 'member'}-{sha256(name.encode('utf-8', 'surrogatepass')).hexdigest()[:12]}"
            seen[text] += 1
            text += f"-{seen[text]}" * (seen[text] > 1)
        result.append(text)
    return result


def _plain(name: str) -> str:
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:_LONGEST].strip("-")
