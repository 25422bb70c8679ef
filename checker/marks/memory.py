"""How much more memory this process may take, on systems that can say it."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

try:
    import resource
except ImportError:  # Windows
    resource = None  # type: ignore[assignment]


@contextmanager
def limited_memory(more: int) -> Iterator[None]:
    """While this is open, what would take this process `more` bytes beyond what it has raises MemoryError.

    It does nothing where address space cannot be measured: elsewhere than on Linux.
    """
    if resource is None or not os.path.exists("/proc/self/statm"):
        yield
        return
    with open("/proc/self/statm") as statm:
        in_use = int(statm.read().split()[0]) * resource.getpagesize()
    soft, hard = resource.getrlimit(resource.RLIMIT_AS)
    most = in_use + more
    resource.setrlimit(resource.RLIMIT_AS, (most if hard == resource.RLIM_INFINITY else min(most, hard), hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_AS, (soft, hard))
