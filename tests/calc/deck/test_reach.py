"""How far a nail reaches."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.reach import least_deck_nail, past_underside, penetration, ringed_penetration
from packet.calc.domain import OutOfRange

F = Fraction
INCHES = st.integers(1, 96).map(lambda n: F(n, 32))


def test_boards_below_the_panel_take_their_part() -> None:
    assert penetration(F(5, 2), F(7, 16)) == F(33, 16)
    assert penetration(F(5, 2), F(7, 16) + F(3, 4)) == F(21, 16)


def test_a_nail_that_ends_above_the_framing_holds_nothing() -> None:
    assert penetration(1, F(19, 16)) == 0
    assert ringed_penetration(1, F(19, 16), F(3, 2)) == 0


def test_only_the_rings_count() -> None:
    assert ringed_penetration(F(19, 8), F(7, 16), F(3, 2)) == F(3, 2)
    assert ringed_penetration(F(19, 8), F(5, 4), F(3, 2)) == F(9, 8)


@given(INCHES, INCHES)
def test_the_least_nail_reaches_exactly_as_far_as_it_must(above: F, least: F) -> None:
    assert penetration(least_deck_nail(above, least), above) == least


@given(INCHES, INCHES, INCHES)
def test_what_shows_below_is_what_the_deck_does_not_hold(length: F, above: F, deck: F) -> None:
    shown = past_underside(length, above, deck)
    assert shown >= 0
    assert (shown > 0) == (length > above + deck)
    assert not shown or shown + above + deck == length


@pytest.mark.parametrize(
    ("length", "deck", "shown"),
    [(F(5, 4), F(15, 32), F(13, 32)), (F(5, 4), F(7, 8), 0), (F(3, 2), F(3, 4), F(3, 8))],
)
def test_shingle_nails_through_a_soffit_board(length: F, deck: F, shown: F) -> None:
    # 3/8 in of shingle and felt above the deck
    assert past_underside(length, F(3, 8), deck) == shown


@pytest.mark.parametrize(
    "call",
    [
        lambda: penetration(0, 1),
        lambda: penetration(1, -1),
        lambda: ringed_penetration(1, 1, 0),
        lambda: least_deck_nail(1, 0),
        lambda: past_underside(1, 0, 0),
    ],
)
def test_nonsense_is_refused(call) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRange):
        call()
