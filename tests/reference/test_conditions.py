"""``when``: what is known and true makes a row apply, what is unknown never does."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from packet.reference import Library
from packet.reference.when import FACTS, RowWhen, When, plain


def when(**conditions: object) -> When:
    return When.model_validate(conditions)


@pytest.mark.parametrize(
    ("condition", "value", "holds"),
    [
        ({"at_least": "140"}, 140, True),
        ({"at_least": "140"}, 139.99, False),
        ({"at_most": "130"}, 130, True),
        ({"at_most": "130"}, 130.01, False),
        ({"above": "130"}, 130, False),
        ({"above": "130"}, 130.01, True),
        ({"below": "140"}, 140, False),
        ({"below": "140"}, 139.99, True),
        ({"is": "175"}, 175, True),
        ({"is": "175"}, 174, False),
        ({"above": "116", "at_most": "155"}, 116, False),
        ({"above": "116", "at_most": "155"}, 155, True),
    ],
)
def test_ends_of_a_range_are_included_as_written(condition: object, value: float, holds: bool) -> None:
    assert when(wind_ultimate_mph=condition).judge(plain({"wind_ultimate_mph": value})) == (holds, ())


@pytest.mark.parametrize("value", [0.131, Decimal("0.131"), Fraction(131, 1000)])
def test_a_number_is_the_same_number_however_it_was_computed(value: object) -> None:
    assert when(nail_shank_in={"is": "0.131"}).judge(plain({"nail_shank_in": value}))[0] is True


def test_words_and_days_are_conditions_too() -> None:
    assert when(exposure={"one_of": ["B", "C"]}).judge({"exposure": "C"})[0] is True
    assert when(exposure={"one_of": ["B", "C"]}).judge({"exposure": "D"})[0] is False
    assert when(exposure={"is": "B"}).judge({"exposure": "C"})[0] is False
    since = when(permit_date={"at_least": "2020-09-01"})
    assert since.judge({"permit_date": date(2020, 9, 1)})[0] is True
    assert since.judge({"permit_date": date(2020, 8, 31)})[0] is False


def test_an_unknown_fact_leaves_it_open_and_is_named() -> None:
    both = when(wind_ultimate_mph={"above": "130"}, exposure={"is": "B"})
    assert both.judge(plain({"exposure": "B"})) == (None, ("wind_ultimate_mph",))
    assert both.judge(plain({"wind_ultimate_mph": None, "exposure": None})) == (
        None,
        ("wind_ultimate_mph", "exposure"),
    )


def test_one_known_failing_fact_settles_it_whatever_else_is_unknown() -> None:
    both = when(wind_ultimate_mph={"above": "130"}, exposure={"is": "B"})
    assert both.judge(plain({"exposure": "C"})) == (False, ())


def test_no_condition_applies_always() -> None:
    assert When().judge({}) == (True, ())


@given(st.dictionaries(st.sampled_from(sorted(FACTS)), st.none()))
def test_nothing_known_never_matches_a_condition(facts: dict[str, None]) -> None:
    assert when(slope_rise_in_12={"at_least": "0"}).judge(plain(facts))[0] is None


@pytest.mark.parametrize("facts", [{"wind_mph": 130}, {"exposure": "B", "shingle": "laminated"}])
def test_a_fact_that_is_none_is_refused_rather_than_ignored(facts: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="no such fact"):
        plain(facts)


@pytest.mark.parametrize(
    "conditions",
    [
        {"exposure": None},
        {"exposure": {}},
        {"exposure": {"is": "E"}},
        {"exposure": {"is": "B", "one_of": ["C"]}},
        {"wind_ultimate_mph": {}},
        {"wind_ultimate_mph": {"at_least": None}},
        {"wind_ultimate_mph": {"one_of": ["130"]}},
        {"wind_ultimate_mph": {"at_least": "fast"}},
    ],
)
def test_a_condition_that_says_nothing_or_too_much_is_refused(conditions: object) -> None:
    with pytest.raises(ValidationError):
        When.model_validate(conditions)


def test_a_row_of_which_it_cannot_be_told_stands_apart(library: Library) -> None:
    match = library.match(["irc-2021"], "deck.nail.gable_spacing", {"wind_ultimate_mph": 140})
    assert match.rows == ()
    assert [(each.row.id, each.missing) for each in match.cannot_tell] == [
        ("irc-2021-deck-gable-b", ("exposure",)),
        ("irc-2021-deck-gable-c", ("exposure",)),
    ]
    assert library.rows(["irc-2021"], "deck.nail.gable_spacing", {"wind_ultimate_mph": 140}) == []


WEAK = RowWhen.model_validate(
    {
        "kind_of_work": {"is": "re-roof"},
        "any_of": [{"old_fastener": {"is": "staples"}}, {"old_nail_length_in": {"at_most": "2"}}],
    }
)


@pytest.mark.parametrize(
    ("facts", "judged"),
    [
        ({"kind_of_work": "re-roof", "old_fastener": "staples"}, (True, ())),
        ({"kind_of_work": "re-roof", "old_nail_length_in": 2}, (True, ())),
        ({"kind_of_work": "patch", "old_fastener": "staples"}, (False, ())),
        (
            {"kind_of_work": "re-roof", "old_fastener": "smooth nails", "old_nail_length_in": 2.5},
            (False, ()),
        ),
        (
            {"kind_of_work": "re-roof", "old_fastener": "smooth nails"},
            (None, ("old_nail_length_in",)),
        ),
        ({"kind_of_work": "re-roof"}, (None, ("old_fastener", "old_nail_length_in"))),
        ({"old_fastener": "staples"}, (None, ("kind_of_work",))),
        ({"old_nail_length_in": 3}, (None, ("kind_of_work", "old_fastener"))),
        ({"old_fastener": "smooth nails", "old_nail_length_in": 3}, (False, ())),
        ({"kind_of_work": "patch"}, (False, ())),
    ],
)
def test_one_of_several_ways_is_enough_and_an_open_way_leaves_it_open(
    facts: dict[str, object], judged: tuple[bool | None, tuple[str, ...]]
) -> None:
    assert WEAK.judge(plain(facts)) == judged


@pytest.mark.parametrize(
    "ways",
    [
        [],
        [{"exposure": {"is": "B"}}],
        [{"exposure": {"is": "B"}}, {}],
        [{"exposure": {"is": "B"}}, {"exposure": {"is": "E"}}],
        [{"exposure": {"is": "B"}}, {"any_of": [{"exposure": {"is": "C"}}]}],
    ],
)
def test_ways_that_say_nothing_are_refused(ways: object) -> None:
    with pytest.raises(ValidationError):
        RowWhen.model_validate({"any_of": ways})


@pytest.mark.parametrize(
    ("fact", "condition", "holds", "fails"),
    [
        ("kind_of_work", {"one_of": ["section", "re-roof"]}, "section", "recover"),
        ("work_begun", {"at_least": "2020-09-01"}, date(2020, 9, 1), date(2020, 8, 31)),
        ("house_built", {"at_most": "2001"}, 2001, 2002),
        ("house_permit_date", {"below": "2002-03-01"}, date(2002, 2, 28), date(2002, 3, 1)),
        ("old_fastener", {"is": "not known"}, "not known", "staples"),
        ("old_nail_length_in", {"at_most": "2"}, 2, 2.125),
        ("old_nail_shank_in", {"at_least": "0.131"}, Decimal("0.131"), 0.113),
        ("frame_gravity", {"at_least": "0.42"}, 0.42, 0.36),
        ("roof_zone", {"is": "zone-3"}, "zone-3", "zone-2"),
        ("chimney_width_in", {"above": "30"}, 30.125, 30),
    ],
)
def test_facts_of_the_house_and_the_work(fact: str, condition: object, holds: object, fails: object) -> None:
    condition_of = when(**{fact: condition})
    assert condition_of.judge(plain({fact: holds}))[0] is True
    assert condition_of.judge(plain({fact: fails}))[0] is False
    assert condition_of.judge({}) == (None, (fact,))


def test_a_limit_that_builds_on_a_fact_is_put_together(library: Library) -> None:
    deck = Fraction(15, 32)
    rows = library.rows(["arma-nails"], "shingle_nail.penetration", {"panel_thickness_in": deck})
    assert [row.value for row in rows] == [deck + Fraction(1, 8)]
    match = library.match(["arma-nails"], "shingle_nail.penetration", {})
    assert match.rows == ()
    assert [each.missing for each in match.cannot_tell] == [("panel_thickness_in",)]


def test_an_unknown_code_is_an_error_and_not_an_empty_answer(library: Library) -> None:
    with pytest.raises(KeyError):
        library.rows(["irc-1899"], "deck.nail", {})
    with pytest.raises(KeyError):
        library.row("irc-2021-no-such-row")
