"""Writing a file so that it is either the old one or the new one, whole, whenever the program ends."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Any


@contextmanager
def open_replacement(path: Path, mode: str = "w", **how: Any) -> Iterator[IO]:
    """A new file that takes the place of `path` once it is written to the end; until then the old one stands.

    Parameters
    ----------
    path : Path
    mode : str
        "w" for text, UTF-8 unless `encoding` says otherwise, or "wb".
    **how
        As for `open`.
    """
    text: dict[str, Any] = {} if "b" in mode else {"encoding": "utf-8", "errors": "replace"}
    descriptor, draft = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
    try:
        with open(descriptor, mode, **text | how) as file:
            yield file
        os.chmod(draft, 0o666 & ~_umask())
        os.replace(draft, path)
    except BaseException:
        os.unlink(draft)
        raise


def _umask() -> int:
    mask = os.umask(0o022)
    os.umask(mask)
    return mask
