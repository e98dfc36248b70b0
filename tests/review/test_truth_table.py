"""The words for one question, row by row of the truth table."""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

import pytest

from packet.figure import Source
from packet.figures.rules import Limit
from packet.reference.models import Whose
from packet.reference.vocabulary import Kind, Nail
from packet.review.compare import governing, meets, verified, word
from packet.review.model import Answer, Word

SOURCE = Source("x", "A document", "2021", "Table 1", "seen")


def limit(
    value: Any, *, kind: Kind = "at_most", whose: Whose = "law", decides: bool = True, superseded: str = ""
) -> Limit:
    number = Fraction(value) if isinstance(value, int | str) else value
    name = f"{whose}-{value}-{'decides' if decides else 'silent'}"
    return Limit(name, whose, kind, number, (), (), SOURCE, decides, superseded=superseded)


def answer(value: Any) -> Answer:
    return Answer(Fraction(value) if isinstance(value, int | str) else value)


SIX, UNREAD = limit(6), limit(6, decides=False)
MEMORY_OF_LAW, MAKER_SIX = limit(4, kind="at_least", decides=False), limit(6, kind="at_least", whose="maker")
OLD = limit(4, decides=False, superseded="replaced in 2024")

ROWS: list[tuple[str, int | None, Sequence[Limit], bool, Word]] = [
    ("differs, with a photo", 8, [SIX], True, "differs"),
    ("differs, without a photo", 8, [SIX], False, "differs"),
    ("meets, with a photo", 6, [SIX], True, "meets"),
    ("meets, without a photo", 6, [SIX], False, "not_recorded"),
    ("a photo without a value", None, [SIX], True, "not_recorded"),
    ("neither", None, [SIX], False, "not_recorded"),
    ("rule not verified, value within it", 6, [UNREAD], True, "not_verified"),
    ("rule not verified, value beyond it", 8, [UNREAD], True, "not_verified"),
    ("rule not verified, no photo", 6, [UNREAD], False, "not_recorded"),
    ("no rule at all", 6, [], True, "not_verified"),
    ("a superseded rule alone", 8, [OLD], True, "not_verified"),
    ("a superseded rule beside one that stands", 6, [OLD, SIX], True, "meets"),
    ("beyond one of two", 5, [limit(4), SIX], True, "differs"),
    ("the law unread, the maker kept", 6, [MEMORY_OF_LAW, MAKER_SIX], True, "not_verified"),
    ("the law unread, the maker missed", 4, [MEMORY_OF_LAW, MAKER_SIX], True, "differs"),
    ("the law silent, the maker kept", 6, [MAKER_SIX], True, "meets"),
]


@pytest.mark.parametrize(
    ("value", "limits", "proven", "expected"), [row[1:] for row in ROWS], ids=[row[0] for row in ROWS]
)
def test_row(value: int | None, limits: Sequence[Limit], proven: bool, expected: Word) -> None:
    assert word(answer(value), limits, present=False, proven=proven) == expected


@pytest.mark.parametrize(("proven", "expected"), [(True, "meets"), (False, "not_recorded")])
def test_what_only_has_to_be_there_needs_a_photo_and_no_rule(proven: bool, expected: Word) -> None:
    assert word(Answer(True), [], present=True, proven=proven) == expected


@pytest.mark.parametrize(
    ("kind", "value", "of", "expected"),
    [
        ("at_most", "6", "6", True),
        ("at_most", "6-1/64", "6", False),
        ("at_least", "4", "4", True),
        ("at_least", "3-63/64", "4", False),
    ],
)
def test_the_limit_itself_is_kept(kind: Kind, value: str, of: str, expected: bool) -> None:
    whole, _, part = value.partition("-")
    measured = Fraction(whole) + Fraction(part or 0)
    assert meets(Answer(measured), limit(of, kind=kind)) is expected


@pytest.mark.parametrize(
    ("length", "shank", "kind", "expected"),
    [
        ("19/8", "0.113", "ring", True),
        ("5/2", "0.120", "ring", True),
        ("19/8", "0.112", "ring", False),
        ("37/16", "0.113", "ring", False),
        ("19/8", "0.113", "smooth", False),
        ("5/2", "0.131", "smooth", True),
        ("5/2", "0.130", "smooth", False),
    ],
)
def test_a_nail_suits_by_shank_length_and_thickness(
    length: str, shank: str, kind: str, expected: bool
) -> None:
    accepted = (
        Nail.model_validate({"length_in": "2-1/2", "shank_in": "0.131", "shank": "smooth"}),
        Nail.model_validate({"length_in": "2-3/8", "shank_in": "0.113", "shank": "ring"}),
    )
    nail = Answer((Fraction(length), Fraction(shank), kind))
    assert meets(nail, limit(accepted, kind="one_of")) is expected


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("ASTM D226 Type II", True),
        ("astm  d226 type ii", True),
        ("ASTM D226 Type III", False),
        ("ASTM D226", False),
    ],
)
def test_words_are_compared_whole_without_regard_to_case_and_spaces(typed: str, expected: bool) -> None:
    assert meets(Answer(typed), limit(("ASTM D226 Type II",), kind="one_of")) is expected


def test_the_tightest_limit_that_may_decide_governs() -> None:
    loose, tight, tighter_but_unread = limit(8), limit(4), limit(2, decides=False)
    assert governing([loose, tight, tighter_but_unread], answer(3)) == tight
    least, more = limit(4, kind="at_least"), limit(6, kind="at_least", whose="maker")
    assert governing([least, more], answer(6)) == more


def test_of_several_limits_the_one_that_is_missed_governs() -> None:
    six, four = limit(6), limit(4)
    assert governing([six, four], answer(5)) == four
    nails, others = limit(("a",), kind="one_of"), limit(("b",), kind="one_of", whose="maker")
    assert governing([nails, others], answer(None)) == nails
    assert governing([nails, others], Answer("a")) == others


def test_nothing_governs_where_nothing_may_decide() -> None:
    assert governing([UNREAD, OLD], answer(8)) is None
    assert not verified([UNREAD, OLD])
    assert not verified([])
