"""Nails driven too deep: what the counts lead to."""

from fractions import Fraction

import pytest

from packet.calc.deck.overdriven import (
    Counted,
    Remedy,
    added_for_overdriven,
    finding_of,
    remedy,
    share_overdriven,
    staples_instead,
)
from packet.calc.domain import OutOfRange


def at(driven: int, sixteenth: int, eighth: int, spacing_in: int = 6) -> Remedy:
    return remedy(
        Counted(driven, sixteenth, eighth),
        spacing_in,
        most_percent=20,
        added_for_each_two=1,
        may_split_at_in=4,
    )


@pytest.mark.parametrize(
    ("driven", "sixteenth", "eighth", "finding", "added"),
    [
        (40, 0, 0, "sixteenth-or-less", 0),
        (40, 8, 0, "one-fifth-or-fewer", 0),  # 20 percent to the nail
        (40, 9, 0, "more-than-one-fifth", 5),
        (40, 10, 0, "more-than-one-fifth", 5),
        (40, 1, 1, "beyond-an-eighth", 1),
        (40, 8, 1, "beyond-an-eighth", 4),
        (40, 40, 40, "beyond-an-eighth", 20),
    ],
)
def test_counts_lead_to_a_row_and_a_number(
    driven: int, sixteenth: int, eighth: int, finding: str, added: int
) -> None:
    assert at(driven, sixteenth, eighth) == Remedy(finding, added, ask=False)  # type: ignore[arg-type]


def test_where_nails_stand_close_the_answer_is_to_ask_first() -> None:
    assert [at(40, 10, 0, spacing).ask for spacing in (3, 4, 5, 6)] == [True, True, False, False]
    assert not at(40, 8, 0, 3).ask, "nothing is added, so there is nothing to ask"
    nothing = remedy(Counted(40, 40, 0), 3, most_percent=20, added_for_each_two=0, may_split_at_in=4)
    assert nothing == Remedy("more-than-one-fifth", 0, ask=False)


def test_the_share_is_exact() -> None:
    assert share_overdriven(1, 3) == Fraction(100, 3)
    assert finding_of(Counted(3, 1, 0), Fraction(100, 3)) == "one-fifth-or-fewer"


def test_an_odd_nail_counts_as_a_pair_and_staples_by_the_nail() -> None:
    assert [added_for_overdriven(count, 1) for count in range(6)] == [0, 1, 1, 2, 2, 3]
    assert staples_instead(added_for_overdriven(9, 1), 3) == 15


@pytest.mark.parametrize(("driven", "sixteenth", "eighth"), [(0, 0, 0), (10, 11, 0), (10, 2, 3), (10, 2, -1)])
def test_counts_that_can_not_be_are_refused(driven: int, sixteenth: int, eighth: int) -> None:
    with pytest.raises(OutOfRange):
        Counted(driven, sixteenth, eighth)


@pytest.mark.parametrize(
    "call",
    [
        lambda: share_overdriven(5, 4),
        lambda: added_for_overdriven(-1, 1),
        lambda: staples_instead(1, 0),
        lambda: at(40, 1, 1, 0),
        lambda: finding_of(Counted(4, 1, 0), -1),
    ],
)
def test_nonsense_is_refused(call) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRange):
        call()
