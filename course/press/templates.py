"""HTML from the press's templates, escaped as all of ours; what is HTML already says so in the template, by `|safe`."""

from pathlib import Path

from checker.templates import environment

ENVIRONMENT = environment(Path(__file__).parent / "boxes" / "templates")


def render(template: str, **values: object) -> str:
    """HTML of one template.

    Parameters
    ----------
    template : str
        File in `boxes/templates/`.
    **values
        What stands in it by name.

    Returns
    -------
    str
    """
    return str(ENVIRONMENT.get_template(template).render(values))
