"""Ties of the roof to the walls: each row shows the photos that name it, and no other tie's."""

import re
from collections.abc import Callable
from typing import Any

import pytest

from packet.closeout.redact import redact
from packet.problems import Refused
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office

Shoot = Callable[..., dict[str, Any]]
FRONT = "{id: TIE1, where: front wall, kind: clip, nails: 3, state: left as found}"
BACK = '{id: TIE2, where: back wall, kind: "strap over the top", state: new}'


def rows(office: Office) -> list[tuple[str, list[str]]]:
    """Return where each tie is, and the photos beside it."""
    words = load_words(Workspace(ROOT).shared_folders())
    made = make_pages(redact(office.closeout(), "outside"), Workspace(ROOT).template_folders(), words)
    scope = next(page.body for page in made if page.name == "scope")
    table = scope.split('<h2 id="ties">')[1].split("</table>")[0]
    found = re.findall(r'<th scope="row">([a-z&#; 0-9]+).*?</th>(.*?)</tr>', table, re.DOTALL)
    return [(where, re.findall(r"photos\.html#(\w+)", cells)) for where, cells in found]


def test_a_photo_stands_beside_the_tie_it_names_alone(job_office: Office, shoot: Shoot) -> None:
    office = job_office.changed("roof.ties", f"[{FRONT}, {BACK}]")
    office.log(shoot("P1", "stripped", "TIE1", "roof-to-wall-ties"))
    assert rows(office) == [("front wall", ["P1"]), ("back wall", [])]


def test_where_there_is_one_kind_of_tie_every_photo_of_ties_shows_it(
    job_office: Office, shoot: Shoot
) -> None:
    office = job_office.changed("roof.ties", f"[{FRONT}]")
    office.log(shoot("P1", "stripped", "roof-to-wall-ties"))
    assert rows(office) == [("front wall", ["P1"])]


def test_two_ties_of_one_id_are_refused(job_office: Office) -> None:
    office = job_office.changed("roof.ties", f"[{FRONT}, {FRONT}]")
    with pytest.raises(Refused) as refused:
        office.closeout()
    assert [(problem.code, problem.at) for problem in refused.value.problems] == [
        ("duplicate-id", "roof.ties[1].id")
    ]
