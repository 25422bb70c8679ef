"""The table of outside checks on the site: enough of them, each with its source, each met by the course's own functions.

`python -m pytest -rP tests/exercises/test_outside.py` prints it.
"""

from course.press.boxes.published_box import published_figures, published_figures_html, relative_difference


def test_every_outside_check_is_named_and_met():
    checks = list(published_figures())
    for check in checks:
        print(
            f"{check.unit[4:6]}  {check.what}: wanted {check.wanted}, got {check.got}, difference {check.difference:.1e}, "
            f"allowed {check.allowed}  [{check.source}; {check.known}]"
        )
        assert check.source and check.what
        assert check.difference < 0.05, check
    assert len(checks) >= 120
    assert sum(check.known != "recomputed" for check in checks) >= 60
    assert len({check.unit for check in checks}) >= 8


def test_differences():
    assert relative_difference((1.0, "open"), (1.0, "open")) == 0
    assert relative_difference((1.0, "open"), (1.0, "shut")) == float("inf")
    assert abs(relative_difference((1.0, 2.02), (1.0, 2.0)) - 0.01) < 1e-12
    assert relative_difference(0.5, 0.0) == 0.5


def test_the_page_holds_each_of_them():
    assert published_figures_html().count('<tr><th scope="row">') == len(list(published_figures()))
