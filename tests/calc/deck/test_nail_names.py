"""Names of nails, and what a penny number leaves open."""

from fractions import Fraction

import pytest

from packet.calc.deck.nail_names import NamedNail, identifies_one, names_of, sold_as
from packet.calc.domain import OutOfRange

F = Fraction
COMMON = NamedNail("common", F(5, 2), F("0.131"), "smooth", 8)
BOX = NamedNail("box", F(5, 2), F("0.113"), "smooth", 8)
RING = NamedNail("ring", F(5, 2), F("0.131"), "ring", 8)
TWIN = NamedNail("twin", F(5, 2), F("0.131"), "smooth", 8)
LONG = NamedNail("long", F(3), F("0.148"), "smooth", 10)
UNNAMED = NamedNail("unnamed", F(3), F("0.120"), "ring")
ALL = (COMMON, BOX, RING, TWIN, LONG, UNNAMED)


def test_a_size_has_all_its_names_and_no_other() -> None:
    assert names_of(F(5, 2), F("0.131"), "smooth", ALL) == ("common", "twin")
    assert names_of(F(5, 2), F("0.131"), "ring", ALL) == ("ring",)
    assert names_of(F(3), F("0.120"), "ring", ALL) == ("unnamed",)


@pytest.mark.parametrize(
    ("length", "shank", "kind"),
    [(F(5, 2), F("0.132"), "smooth"), (F(41, 16), F("0.131"), "smooth"), (F(3), F("0.148"), "ring")],
)
def test_a_size_between_two_nails_has_no_name(length: F, shank: F, kind: str) -> None:
    assert names_of(length, shank, kind, ALL) == ()


def test_everything_sold_under_a_number_is_listed() -> None:
    assert sold_as(8, ALL) == (COMMON, BOX, RING, TWIN)
    assert sold_as(9, ALL) == ()


def test_a_number_identifies_a_nail_only_where_one_size_is_sold_under_it() -> None:
    assert not identifies_one(8, ALL)
    assert identifies_one(8, (COMMON, TWIN))
    assert identifies_one(10, ALL)
    assert not identifies_one(9, ALL)
    assert not identifies_one(8, (COMMON, RING))


def test_nonsense_is_refused() -> None:
    for call in (
        lambda: names_of(0, 1, "ring", ALL),
        lambda: sold_as(0, ALL),
        lambda: identifies_one(-8, ALL),
    ):
        with pytest.raises(OutOfRange):
            call()
