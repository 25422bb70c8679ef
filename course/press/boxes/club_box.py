"""What the pages say of the club that publishes them."""

from collections.abc import Callable

from course.press.club import LINES, Club, is_address
from course.press.templates import render


def contact_link(contact: str) -> tuple[str, str]:
    """Address and words of a contact; no address where it is words alone, such as a telephone number."""
    if is_address(contact):
        return contact, contact.split("://")[1].rstrip("/")
    return (f"mailto:{contact}" if "@" in contact else "", contact)


def rules_links(club: Club, relative: Callable[[str], str]) -> list[tuple[str, str]]:
    """Address and words of the club's safety rules and of the licensing authority, as far as there are any."""
    page = relative(club.rules_page.removesuffix(".md") + ".html") if club.rules_page else club.safety_rules
    links = [(page, f"Safety rules of {club.name or 'the club'}"), (club.authority, "Licences: your authority")]
    return [(address, words) for address, words in links if address]


def card_html(club: Club, relative: Callable[[str], str]) -> str:
    """Name, meeting place, contact and the two links, for every footer; nothing where the file says nothing."""
    contact = [contact_link(club.contact)] if club.contact else []
    return render("club_card.html", club=club, links=contact + rules_links(club, relative))


def safety_html(club: Club, relative: Callable[[str], str]) -> str:
    """The two links by themselves, for the safety page."""
    return render("club_safety.html", links=rules_links(club, relative))


def pack_html(club: Club, relative: Callable[[str], str]) -> str:
    """The student pack to take home; nothing where the club offers none."""
    return render("club_pack.html", address=pack_address(club, relative)) if club.pack else ""


def pack_address(club: Club, relative: Callable[[str], str]) -> str:
    """Where the student pack is, from the page at work; "" where the club offers none."""
    return relative(club.pack_file) if club.pack_file else club.pack


def lines_html(club: Club) -> str:
    """The lines of the file: what each does, an example, and what it is on this site."""
    lines = [(key, says[0].upper() + says[1:], example, getattr(club, key)) for key, (says, example) in LINES.items()]
    return render("club_lines.html", lines=lines)
