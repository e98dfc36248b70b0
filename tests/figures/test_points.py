"""Points of shingle nails over an open soffit, worked by hand."""

from fractions import Fraction

import pytest

from tests.support.office import Office


def shown(office: Office) -> Fraction | None:
    figure = office.closeout().figures.get("soffit.points_below")
    return Fraction(figure.value) if figure else None


def test_the_nail_less_what_it_goes_through(job_office: Office) -> None:
    """1-1/2 in less 3/8 in of covering and 15/32 in of panel, the thinner of panel and old deck."""
    assert shown(job_office.changed("roof.soffit", "open")) == Fraction(21, 32)


@pytest.mark.parametrize(
    ("path", "typed", "points"),
    [
        ("covering.nail.length", "1-1/4 in", Fraction(13, 32)),
        ("covering.nail.length", "3/4 in", Fraction(0)),
        ("covering.above_deck", "1/2 in", Fraction(17, 32)),
        ("deck.panel.thickness", "19/32 in", Fraction(5, 8)),  # the old deck of 1/2 in is now the thinner
        ("roof.old.deck_thickness", "3/8 in", Fraction(3, 4)),
    ],
)
def test_each_measure_counts(job_office: Office, path: str, typed: str, points: Fraction) -> None:
    assert shown(job_office.changed("roof.soffit", "open").changed(path, typed)) == points


def test_boards_are_a_deck_too(job_office: Office) -> None:
    job_office.changed("roof.soffit", "open").changed(
        "deck.boards",
        "[{id: BD1, plane: MN, where: eave, size: 1x4, width: 3-1/2 in, thickness: 5/16 in, pieces: 1, length: 4 ft, why: rot}]",
    )
    assert shown(job_office) == Fraction(13, 16)


def test_nothing_is_told_of_a_closed_soffit_or_of_one_nobody_wrote_down(job_office: Office) -> None:
    assert shown(job_office) is None
    assert shown(job_office.changed("roof.soffit", "closed")) is None


def test_without_what_lies_above_the_deck_it_is_not_guessed(job_office: Office) -> None:
    job_office.changed("roof.soffit", "open").replaced("  above_deck: 3/8 in\n", "")
    assert shown(job_office) is None
