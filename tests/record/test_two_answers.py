"""Two different answers to one question are refused at the line of one; the same answer twice is none."""

from collections.abc import Callable

import pytest

from packet.located import read_catalogue
from packet.problems import message
from packet.workspace import packaged
from tests.support.office import Office

SENTENCES = read_catalogue(packaged("shared") / "words" / "problems.yaml")
Change = Callable[[Office], Office]


def held(office: Office, code: str, path: str) -> str:
    """Return the sentences of the one problem, which stands at a path."""
    problems = office.problems()
    assert [(p.code, p.line, p.column) for p in problems] == [(code, *office.place(path))]
    return " ".join(message(problems[0], SENTENCES))


def ways(*items: str) -> str:
    return f"ways_out: [{', '.join(items)}]"


CORRECTED = "{requirement: deck-nail-field-spacing, kind: corrected, on: 2026-03-17, text: Nails added.}"
EXPLAINED = "{requirement: deck-nail-field-spacing, kind: explained, text: The old joists stand apart.}"


def test_two_ways_out_of_one_requirement_are_refused_at_the_second(job_office: Office) -> None:
    job_office.added(ways(CORRECTED, EXPLAINED))
    text = held(job_office, "way-out-twice", "ways_out.1.requirement")
    assert "differs from the first at ways_out[0]" in text


@pytest.mark.parametrize("change", ["on: 2026-03-18", "text: Nails added between."])
def test_ways_out_of_one_kind_that_say_something_else_differ_too(job_office: Office, change: str) -> None:
    old = "on: 2026-03-17" if change.startswith("on") else "text: Nails added."
    job_office.added(ways(CORRECTED, CORRECTED.replace(old, change)))
    held(job_office, "way-out-twice", "ways_out.1.requirement")


@pytest.mark.parametrize(
    "second",
    [
        CORRECTED,
        EXPLAINED.replace("field", "edge"),
        "{requirement: 'deck-sheets:S1', kind: explained, text: Laid over the old one.}",
    ],
)
def test_the_same_way_out_twice_or_one_of_something_else_is_taken(job_office: Office, second: str) -> None:
    job_office.added(ways(CORRECTED, second)).closeout()


def test_two_sheets_may_have_a_way_out_each_and_one_sheet_only_one(job_office: Office) -> None:
    first, second = (
        f"{{requirement: 'deck-sheets:S{n}', kind: explained, text: Sheet {n}.}}" for n in (1, 2)
    )
    job_office.added(ways(first, second)).closeout()
    job_office.changed("ways_out.1.requirement", "deck-sheets:S1")
    held(job_office, "way-out-twice", "ways_out.1.requirement")


@pytest.mark.parametrize(
    ("change", "code", "path", "says"),
    [
        (
            lambda o: o.changed("basis.no_permit", "Below one square."),
            "permit-and-none",
            "basis.no_permit",
            "and permit is 26-0388",
        ),
        (
            lambda o: o.changed("basis.no_permit", "Below one square.").replaced("  permit: 26-0388\n", ""),
            "permit-and-none",
            "basis.no_permit",
            "and permit_date is 2026-03-12",
        ),
        (
            lambda o: o.changed("roof.old.deck_fastener", "staples"),
            "staples-and-nail",
            "roof.old.deck_nail",
            "the nail 2-1/2 x 0.131 is given for an old deck that is held by staples",
        ),
        (
            lambda o: o.changed("dry_in.sealed_deck", "{way: two layers of underlayment}"),
            "layers-and-way",
            "dry_in.layers",
            "and layers is 1",
        ),
        (
            lambda o: o.added("detached: [{id: GU1, what: gutter, reset: 2026-03-18, state: not yet}]"),
            "set-again-or-not",
            "detached.GU1.state",
            "it was set again on 2026-03-18",
        ),
        (
            lambda o: o.added("detached: [{id: GU1, what: gutter, reset: 2026-03-18, state: left off}]"),
            "set-again-or-not",
            "detached.GU1.state",
            'stands as "left off"',
        ),
    ],
)
def test_what_is_answered_twice_is_refused(
    job_office: Office, change: Change, code: str, path: str, says: str
) -> None:
    assert says in held(change(job_office), code, path)


@pytest.mark.parametrize(
    "change",
    [
        lambda o: o.replaced("  permit: 26-0388\n  permit_date: 2026-03-12\n", "  no_permit: Too small.\n"),
        lambda o: o.changed("roof.old.deck_fastener", "smooth nails"),
        # Nobody knows whether the nail that was measured is smooth.
        lambda o: o.changed("roof.old.deck_fastener", "not known"),
        lambda o: o.changed("dry_in.sealed_deck", "{way: two layers of underlayment}").changed(
            "dry_in.layers", "2"
        ),
        lambda o: o.added("detached: [{id: GU1, what: gutter, reset: 2026-03-18, state: replaced}]"),
    ],
)
def test_what_is_answered_once_is_taken(job_office: Office, change: Change) -> None:
    change(job_office).closeout()
