"""Lookups give what was printed and never anything beyond; a table that breaks its own word is refused."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.problems import Problem
from packet.reference import Library, NotInTable
from packet.reference.invariants import UnknownInvariant, broken_rows
from packet.workspace import packaged
from tests.reference.conftest import TABLE

Write = Callable[[str, str], Path]
Problems = Callable[[], list[Problem]]
PLACE = {"exposure": "B", "mean_roof_height_ft": 13}


@given(st.fractions(min_value=0, max_value=400))
def test_next_above_is_the_least_printed_value_that_reaches(speed: Fraction) -> None:
    table = Library.load([packaged("shared")]).table("wind_classes")
    printed = [116, 155, 194]
    if speed > 194:
        with pytest.raises(NotInTable):
            table.lookup(wind_ultimate_mph=speed, **PLACE)
    else:
        found = table.lookup(wind_ultimate_mph=speed, **PLACE).number("wind_ultimate_mph")
        assert found == min(value for value in printed if value >= speed)


def test_the_error_names_table_locator_and_limits(library: Library) -> None:
    with pytest.raises(NotInTable) as error:
        library.table("wind_classes").lookup(wind_ultimate_mph=200, **PLACE)
    assert (error.value.table, error.value.column, error.value.asked) == (
        "wind_classes",
        "wind_ultimate_mph",
        "200",
    )
    assert error.value.limits == "116, 155, 194"
    assert "ASTM D7158-24a" in error.value.locator
    assert all(part in str(error.value) for part in ("wind_classes", "D7158-24a", "200", "194"))


@pytest.mark.parametrize("name", ["wind_ultimate_mph", "fastest_mile_mph"])
@pytest.mark.parametrize("speed", [0, 99, 101, 115, 201])
def test_an_exact_key_is_never_guessed_between_rows(library: Library, name: str, speed: int) -> None:
    table = library.table({"wind_ultimate_mph": "ultimate_to_nominal"}.get(name, "fastest_mile"))
    with pytest.raises(NotInTable):
        table.lookup(**{name: speed})


@pytest.mark.parametrize(("exposure", "height"), [("D", 20), ("B", 61), (None, 20), ("B", None), ("C", 60.5)])
def test_a_table_is_not_used_where_it_does_not_hold(
    library: Library, exposure: object, height: object
) -> None:
    table = library.table("wind_classes")
    with pytest.raises(NotInTable):
        table.lookup(wind_ultimate_mph=100, exposure=exposure, mean_roof_height_ft=height)


def test_a_validity_that_nobody_answers_refuses(library: Library) -> None:
    with pytest.raises(NotInTable, match="unknown"):
        library.table("wind_classes").lookup(wind_ultimate_mph=100)


def test_a_key_left_out_or_made_up_is_an_error_of_the_caller(library: Library) -> None:
    with pytest.raises(TypeError, match="looked up by"):
        library.table("nails_per_pound").lookup(nail="8d common")
    with pytest.raises(TypeError, match="looked up by"):
        library.table("penny_lengths").lookup(penny=8, head="flat")


def test_a_cell_that_was_not_read_gives_its_reason(library: Library) -> None:
    row = library.table("roll_goods").lookup(roll="synthetic, 10 squares")
    assert row.number("area_sq_ft") == 1000
    with pytest.raises(NotInTable, match="width differs by maker"):
        row.number("width_in")


def test_rows_name_their_own_source_and_mark(library: Library) -> None:
    table = library.table("nails_per_pound")
    old = table.lookup(nail="8d common", source="wire-nail-list").source
    usual = table.lookup(nail="8d common", source="common-practice").source
    assert (old.id, old.checked) == ("wire-nail-list", "seen")
    assert (usual.id, usual.checked) == ("common-practice", "memory")


@pytest.mark.parametrize(
    ("old", "new", "code", "at"),
    [
        ("table: gutter_spans", "table: gutters", "name-mismatch", "table"),
        ("units: {width_in: in", "units: {width_in: inch", "not-one-of", "units.width_in"),
        ("keys: {width_in", "keys: {width", "unknown-column", "keys.width"),
        ("next_above", "linear", "not-one-of", "keys.width_in"),
        ("width_in: 6, spacing_in: 24", "width_in: 6, spacing: 24", "unknown-column", "rows[1].spacing"),
        ("width_in: 6, spacing_in: 24", "width_in: 6", "cell-missing", "rows[1]"),
        ("spacing_in: 24", "spacing_in: null", "reason-missing", "rows[1].spacing_in"),
        ("spacing_in: 24", "spacing_in: about 24", "bad-quantity", "rows[1].spacing_in"),
        ("spacing_in: 24", "spacing_in: 42", "table-invariant", "rows[1]"),
        ("spacing_in: 24", "spacing_in: 23", "table-sum", "sums.spacing_in"),
        ("width_in: 6, spacing_in: 24", "width_in: 5, spacing_in: 24", "table-key-twice", "rows[1]"),
        ("spacing_in falls with width_in", "spacing_in is nice", "unknown-invariant", "invariants[0]"),
        (
            "spacing_in falls with width_in",
            "spacing_in falls with height",
            "unknown-invariant",
            "invariants[0]",
        ),
        ("id: common-practice", "id: nobody", "unknown-source", "source.id"),
        ("checked: memory", "checked: sure", "not-one-of", "checked"),
        ("title:", "titel:", "unknown-key", "titel"),
        ("sums: {width_in: 11", "sums: {height_in: 11", "unknown-column", "sums.height_in"),
    ],
)
def test_a_mistake_in_a_table_is_refused_at_its_place(
    write: Write, problems: Problems, old: str, new: str, code: str, at: str
) -> None:
    assert old in TABLE
    path = write("tables/gutter_spans.yaml", TABLE.replace(old, new, 1))
    found = [(p.code, p.at) for p in problems()]
    assert (code, at) in found, found
    word = at.split(".")[-1].split("[")[0]
    for problem in problems():
        if (problem.code, problem.at) == (code, at) and word not in ("rows", "invariants", "id"):
            assert word in path.read_text(encoding="utf-8").splitlines()[problem.line - 1]


COLUMNS = frozenset({"a", "b", "c"})


def rows(*cells: tuple[int, int, str]) -> list[dict[str, Fraction | str | None]]:
    return [{"a": Fraction(a), "b": Fraction(b), "c": c} for a, b, c in cells]


@pytest.mark.parametrize(
    ("sentence", "broken"),
    [
        ("a is unique", [2]),
        ("b rises with a", [1]),
        ("b never rises with a", []),
        ("b never falls with a", [1]),
        ("a falls with b", [2]),
        ("b rises with a in each c", []),
        ("b above a", []),
        ("a at least b", [0, 1, 2]),
        ("b equals a times a over 1", [0, 1, 2]),
    ],
)
def test_each_form_of_invariant_finds_the_rows_that_break_it(sentence: str, broken: list[int]) -> None:
    data = rows((1, 5, "x"), (2, 5, "y"), (1, 9, "z"))
    assert sorted(set(broken_rows(sentence, data, COLUMNS))) == broken


def test_a_row_that_breaks_a_trend_is_found_behind_equal_keys() -> None:
    data = rows((1, 5, "x"), (1, 9, "x"), (2, 7, "x"))
    assert set(broken_rows("b never rises with a", data, COLUMNS)) == {2}


@pytest.mark.parametrize(
    "sentence", ["", "a", "a rises", "a rises with z", "z is unique", "a rises with b sometimes"]
)
def test_a_sentence_that_cannot_be_checked_is_refused(sentence: str) -> None:
    with pytest.raises(UnknownInvariant):
        list(broken_rows(sentence, rows((1, 2, "x")), COLUMNS))
