"""The table of outside checks on the site: enough of them, each with its source, each met by the course's own functions.

`python -m pytest -rP tests/exercises/test_outside.py` prints it.
"""
from course.press.outside import apart, outside_checks, outside_html


def test_every_outside_check_is_named_and_met():
    checks = list(outside_checks())
    for check in checks:
        print(f"{check.unit[4:6]}  {check.what}: wanted {check.wanted}, got {check.got}, difference {check.difference:.1e}, "
              f"allowed {check.allowed}  [{check.source}; {check.known}]")
        assert check.source and check.what
        assert check.difference < 0.05, check
    assert len(checks) >= 120
    assert sum(check.known != "recomputed" for check in checks) >= 60
    assert len({check.unit for check in checks}) >= 8


def test_differences():
    assert apart((1.0, "open"), (1.0, "open")) == 0
    assert apart((1.0, "open"), (1.0, "shut")) == float("inf")
    assert abs(apart((1.0, 2.02), (1.0, 2.0)) - 0.01) < 1e-12
    assert apart(0.5, 0.0) == 0.5


def test_the_page_holds_each_of_them():
    assert outside_html().count("<tr><th scope=\"row\">") == len(list(outside_checks()))
