"""The tables of numbers against the kernel's own headers, and the filter as the kernel would run it."""

import errno
import itertools
import re
import struct
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.worker import filter, landlock, syscalls
from tests.checker.containment.bare import NUMBERS

HEADERS = {
    "x86_64": Path("/usr/include/x86_64-linux-gnu/asm/unistd_64.h"),
    "aarch64": Path("/usr/include/asm-generic/unistd.h"),
}


def published_numbers(machine):
    """Names and numbers in the Linux headers (linux-libc-dev), for a 64-bit machine."""
    if not HEADERS[machine].exists():
        pytest.skip(f"{HEADERS[machine]} is not on this system")
    text = HEADERS[machine].read_text()
    found = {name: int(number) for name, number in re.findall(r"#define __NR(?:3264)?_(\w+)\s+(\d+)", text)}
    if machine == "aarch64":
        found["newfstatat"] = found.pop("fstatat")  # renamed further down
        # aarch64 asks for getrlimit and renameat, which newer machines do without (__ARCH_WANT_*, from memory).
    return found


@pytest.mark.parametrize("machine", syscalls.MACHINES)
def test_numbers_are_those_of_the_kernel(machine):
    published = published_numbers(machine)
    ours = syscalls.numbers(machine) | {
        name: row[syscalls.MACHINES.index(machine)]
        for name, row in NUMBERS.items()
        if row[syscalls.MACHINES.index(machine)] is not None
    }
    newer = {name for name in ours if name not in published}
    assert {name: ours[name] for name in ours if name not in newer} == {
        name: published[name] for name in ours if name not in newer
    }
    assert all(ours[name] > max(published.values()) for name in newer)


@pytest.mark.parametrize("machine", syscalls.MACHINES)
def test_what_a_machine_lacks_it_lacks(machine):
    published = published_numbers(machine)
    lacking = set(syscalls._TABLE) - set(syscalls.numbers(machine))
    assert not lacking & set(published)


def test_every_name_in_the_filter_is_in_the_table():
    everywhere = set(syscalls.numbers("x86_64")) | set(syscalls.numbers("aarch64"))
    assert {*filter.FREE, *filter.ABSENT, *filter.CONDITIONAL} <= everywhere
    assert len({*filter.FREE, *filter.ABSENT, *filter.CONDITIONAL}) == len(filter.FREE) + len(filter.ABSENT) + len(
        filter.CONDITIONAL
    )


def test_an_unknown_machine_has_no_numbers():
    assert syscalls.numbers("riscv64") == syscalls.numbers("") == {}


@pytest.mark.parametrize("header", [Path("/usr/include/linux/landlock.h")])
def test_rights_are_those_of_the_kernel(header):
    if not header.exists():
        pytest.skip(f"{header} is not on this system")
    bits = re.findall(r"#define LANDLOCK_ACCESS_FS_(\w+)\s+\(1ULL << (\d+)\)", header.read_text())
    assert len(bits) >= 13
    assert all(getattr(landlock, name) == 1 << int(bit) for name, bit in bits)


@pytest.mark.parametrize("version, known", [(1, 13), (2, 14), (3, 15), (4, 15), (5, 16), (7, 16), (99, 16)])
def test_no_right_is_asked_of_a_landlock_that_does_not_know_it(version, known):
    """landlock.rst (from memory), "Previous limitations": REFER since ABI 2, TRUNCATE 3, IOCTL_DEV 5."""
    assert landlock.known(version, landlock.LOOKING | landlock.CHANGING | landlock.REFER) == (1 << known) - 1


# The filter, run by an interpreter of classic BPF (Linux Documentation/networking/filter.rst).


def verdict(program, number, arguments=(0,) * 6, architecture=None):
    data = struct.pack("<iIQ6Q", number, architecture, 0, *arguments)
    steps, at, a = [struct.unpack_from("<HBBI", program, place) for place in range(0, len(program), 8)], 0, 0
    while True:
        code, yes, no, k = steps[at]
        at += 1
        if code == 0x20:
            a = struct.unpack_from("<I", data, k)[0]
        elif code == 0x54:
            a &= k
        elif code == 0x06:
            return k
        else:
            at += yes if {0x15: a == k, 0x25: a > k, 0x35: a >= k}[code] else no


ALLOW, KILL = 0x7FFF_0000, 0x8000_0000
EPERM, ENOSYS = 0x5_0000 | errno.EPERM, 0x5_0000 | errno.ENOSYS
PROGRAMS = {machine: filter.program(machine) for machine in syscalls.MACHINES}


def asked(machine, name, **arguments):
    words = [arguments.get(f"a{place}", 0) for place in range(6)]
    return verdict(PROGRAMS[machine], syscalls.numbers(machine)[name], words, filter.ARCHITECTURES[machine])


@pytest.mark.parametrize("machine", syscalls.MACHINES)
def test_every_number_gets_the_verdict_that_the_list_says(machine):
    number = syscalls.numbers(machine)
    free = {number[name] for name in filter.FREE if name in number}
    absent = {number[name] for name in filter.ABSENT}
    conditional = {number[name] for name in filter.CONDITIONAL if name in number}
    for candidate in set(range(700)) - conditional:
        wanted = ALLOW if candidate in free else ENOSYS if candidate in absent or candidate > syscalls.NEWEST else EPERM
        assert verdict(PROGRAMS[machine], candidate, architecture=filter.ARCHITECTURES[machine]) == wanted, candidate


@pytest.mark.parametrize("machine", syscalls.MACHINES)
@given(architecture=st.integers(0, 2**32 - 1), number=st.integers(0, 500))
def test_a_foreign_architecture_is_killed(machine, architecture, number):
    """linux/audit.h: 0x40000003 is i386, 0x40000028 is 32-bit Arm."""
    for foreign in (architecture, 0x4000_0003, 0x4000_0028):
        if foreign != filter.ARCHITECTURES[machine]:
            assert verdict(PROGRAMS[machine], number, architecture=foreign) == KILL


@given(st.integers(0, 0x3FFF_FFFF))
def test_an_x32_number_is_killed(number):
    assert verdict(PROGRAMS["x86_64"], 0x4000_0000 + number, architecture=filter.ARCHITECTURES["x86_64"]) == KILL


@pytest.mark.parametrize("machine", syscalls.MACHINES)
def test_memory_is_writable_or_code_never_both(machine):
    for write, execute, anonymous in itertools.product((0, 2), (0, 4), (0, 0x20)):
        wanted = EPERM if execute and (write or anonymous) else ALLOW
        assert asked(machine, "mmap", a2=1 | write | execute, a3=2 | anonymous) == wanted
    assert asked(machine, "mprotect", a2=1) == ALLOW
    assert asked(machine, "mprotect", a2=5) == EPERM


@pytest.mark.parametrize("machine", syscalls.MACHINES)
@given(high=st.integers(0, 2**32 - 1), low=st.integers(0, 2**32 - 1), process=st.integers(1, 2**31 - 1))
def test_limits_may_be_read_not_set(machine, high, low, process):
    assert asked(machine, "prlimit64", a3=high << 32 | low) == ALLOW
    assert asked(machine, "prlimit64", a0=process) == EPERM
    for new_limit in (high << 32, low, high << 32 | low):
        assert asked(machine, "prlimit64", a2=new_limit) == (EPERM if new_limit else ALLOW)


@pytest.mark.parametrize("machine", syscalls.MACHINES)
@given(request=st.integers(0, 2**32 - 1))
def test_only_harmless_requests_of_ioctl_and_fcntl(machine, request):
    """asm-generic/ioctls.h: TCGETS, FIONCLEX, FIOCLEX; asm-generic/fcntl.h: 0 to 4, and 5 to 7 for locks; linux/fcntl.h: 1030."""
    assert asked(machine, "ioctl", a1=request) == (ALLOW if request in (0x5401, 0x5450, 0x5451) else EPERM)
    assert asked(machine, "fcntl", a1=request) == (ALLOW if request in (*range(5), 1030) else EPERM)
    for command in range(40):
        assert asked(machine, "fcntl", a1=command) == (ALLOW if command < 5 else EPERM)


@pytest.mark.parametrize(
    "machine, name, place", [("x86_64", "open", "a1"), ("x86_64", "openat", "a2"), ("aarch64", "openat", "a2")]
)
def test_a_file_opened_for_reading_cannot_be_cut(machine, name, place):
    for mode in (0, 1, 2, 3):
        assert asked(machine, name, **{place: mode}) == ALLOW
        assert asked(machine, name, **{place: mode | 0o1000}) == (ALLOW if mode in (1, 2) else EPERM)
        for more in (0, 0o1000, 0o200000):  # O_PATH of asm-generic/fcntl.h, by itself, with O_TRUNC, with O_DIRECTORY
            assert asked(machine, name, **{place: mode | 0o10000000 | more}) == EPERM
