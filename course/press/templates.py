"""The press's one Jinja environment. Values are escaped; what is HTML already says so in the template, by `|safe`."""

from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

ENVIRONMENT = Environment(
    loader=FileSystemLoader(Path(__file__).parent / "boxes" / "templates"),
    autoescape=True,
    trim_blocks=True,
    lstrip_blocks=True,
    undefined=StrictUndefined,
)


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
