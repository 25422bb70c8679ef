"""Paper says where a sound or a bench plays, and a booklet has the club's own rules in it."""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from course.press.boxes.club_box import card_html
from course.press.boxes.paper_box import paper_html, qr_svg
from course.press.club import Club
from course.press.publishing.booklet import RULES, Finished, join_pages
from course.press.publishing.kept import Kept

SITE = "https://saltmarsh-point.example/course"
# Bytes that the largest text has at level M in versions 1 to 6 (ISO/IEC 18004:2015, table 7; recalled from memory).
MOST_BYTES = {1: 14, 2: 26, 3: 42, 4: 62, 5: 84, 6: 106}


@pytest.mark.parametrize("version", MOST_BYTES)
@pytest.mark.parametrize("over", [0, 1])
def test_a_code_has_as_many_modules_as_the_standard_says_and_its_quiet_zone(version, over):
    """Version v has 17 + 4 v modules a side, and four are left free around it (ISO/IEC 18004:2015, 5.3; from memory)."""
    text = (SITE + "/" + "a" * 100)[: MOST_BYTES[version] + over]
    side = 17 + 4 * (version + over) + 2 * 4
    assert ET.fromstring(qr_svg(text)).get("viewBox") == f"0 0 {side} {side}"


def test_the_address_stands_beside_its_code_and_leads_to_the_sound():
    box = paper_html(f"{SITE}/", "unit03_tuned_circuit/index.html#sound-struck", "Listen")
    address = f"{SITE}/unit03_tuned_circuit/index.html#sound-struck"
    assert f'Listen: <a href="{address}">{address}</a>' in box and qr_svg(address) in box
    assert 'class="paper-only"' in box and 'class="paper-code" aria-hidden="true"' in box
    assert paper_html("", "index.html#bench-1", "Listen") == ""


def test_a_booklet_ends_with_the_club_s_rules_and_links_to_them_stay_in_it():
    page = Finished("unit01_a/index.html", "A", '<h1 id="a">A</h1><p><a href="../club_rules.html#earths">Our rules</a></p>')
    rules = Finished("club_rules.html", "Our own rules", '<h1 id="our">Our own rules</h1><h2 id="earths">Earths</h2>')
    booklet = join_pages([page], Kept(Path(), ""), rules)
    assert f'<section class="page" id="{RULES}">' in booklet and f'<a href="#{RULES}">Our own rules</a>' in booklet
    assert f'href="#{RULES}-earths"' in booklet and f'id="{RULES}-earths"' in booklet
    ids = re.findall(r' id="([^"]+)"', booklet)
    assert len(ids) == len(set(ids)) and "club_rules.html" not in booklet


def test_without_a_page_of_rules_a_booklet_is_as_it_was():
    page = Finished("unit01_a/index.html", "A", "<h1>A</h1>")
    assert RULES not in join_pages([page], Kept(Path(), ""))


def test_the_card_of_a_booklet_leads_to_the_rules_in_it():
    card = card_html(
        Club(safety_rules="club_rules.md"), lambda address: f"#{RULES}" if address == "club_rules.html" else address
    )
    assert f'href="#{RULES}"' in card
