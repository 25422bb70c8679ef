"""Processor time, memory, descriptors: each has an end, and cannot be had back."""

import errno
import os
import resource
import signal

import numpy
import pytest

from checker.worker import contain
from tests.checker.containment.bare import answers


def test_processor_time_ends(attack):
    def spin():
        signal.alarm(20)
        while True:
            pass

    def spin_on():
        signal.signal(signal.SIGXCPU, lambda *about: None)
        spin()

    quick = contain.Limits(cpu_seconds=1)
    assert attack(spin, limits=quick).signal == signal.SIGXCPU
    assert attack(spin_on, limits=quick).signal == signal.SIGKILL


@pytest.mark.parametrize("kind", ["bytes", "list", "array", "powers"])
def test_memory_ends_in_a_memory_error(attack, kind):
    ways = {
        "bytes": lambda: len(bytearray(1 << 30)),
        "list": lambda: len([None] * (1 << 28)),
        "array": lambda: len(numpy.ones(1 << 28)),
        "powers": lambda: [bytearray(1 << 20) for _ in range(4096)] and None,
    }
    assert "MemoryError" in attack(ways[kind]).error
    assert attack(lambda: len(bytearray(300 << 20))).value == 300 << 20


def test_descriptors_run_out(attack):
    def hoard():
        held = []
        try:
            while True:
                held.append(open(os.devnull))
        except OSError as error:
            return [len(held), error.errno]

    count, number = attack(hoard).value
    assert number == errno.EMFILE and count < 64


def may_leave_a_core():
    most = resource.getrlimit(resource.RLIMIT_CORE)[1]
    resource.setrlimit(resource.RLIMIT_CORE, (most, most))


def test_limits_are_those_asked_for(attack):
    asked = contain.Limits(cpu_seconds=3, memory_bytes=100 << 20, file_bytes=5000, descriptors=40)
    names = ["RLIMIT_CPU", "RLIMIT_FSIZE", "RLIMIT_NOFILE", "RLIMIT_CORE", "RLIMIT_NPROC", "RLIMIT_MEMLOCK"]
    found = attack(
        lambda: [resource.getrlimit(getattr(resource, name)) for name in names], limits=asked, setup=may_leave_a_core
    )
    assert found.value == [[3, 4], [5000, 5000], [40, 40], [0, 0], [0, 0], [0, 0]]


def test_limits_cannot_be_raised(attack):
    def widen():
        return answers(
            {
                name: lambda name=name: resource.setrlimit(getattr(resource, name), (-1, -1))
                for name in ("RLIMIT_CPU", "RLIMIT_AS", "RLIMIT_FSIZE")
            }
        )

    assert set(attack(widen).value.values()) == {"not allowed to raise maximum limit"}


def test_a_crash_leaves_no_core(attack):
    outcome = attack(os.abort)
    assert outcome.signal in (signal.SIGABRT, signal.SIGSEGV)
