"""Errors of pydantic become problems at the line and column to edit."""

from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any, Literal

import pytest
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints, ValidationError
from pydantic_core import PydanticCustomError

from packet.located import from_validation, locate, read_catalogue
from packet.problems import Problem, render_all
from packet.workspace import packaged
from packet.yamlread import parse_yaml

CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")
FILE = Path("jobs/26-041/job.yaml")


class Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


def a_pitch(text: str) -> str:
    if ":" not in text:
        raise PydanticCustomError("bad-pitch", "{found}", {"found": text, "accepted": "6:12"})
    return text


def ids_differ(rows: tuple[Any, ...]) -> tuple[Any, ...]:
    ids = [row.id for row in rows]
    for name in ids:
        if ids.count(name) > 1:
            raise PydanticCustomError(
                "duplicate-id", "{found}", {"found": name, "accepted": "one of its own"}
            )
    return rows


def top_fits(plane: "Triangle") -> "Triangle":
    if plane.id == "TALL":
        raise PydanticCustomError(
            "out-of-range", "x", {"found": plane.id, "accepted": "low", "below": ("pitch",)}
        )
    return plane


class Rectangle(Strict):
    shape: Literal["rectangle"]
    id: str
    pitch: Annotated[str, AfterValidator(a_pitch)] = Field(description="Rise in 12.", examples=["6:12"])


class Triangle(Strict):
    shape: Literal["triangle"]
    id: str
    pitch: str = "6:12"
    eave_height: str = ""


Plane = Annotated[Rectangle | Annotated[Triangle, AfterValidator(top_fits)], Field(discriminator="shape")]


class Roof(Strict):
    planes: Annotated[tuple[Plane, ...], Field(min_length=1, max_length=3), AfterValidator(ids_differ)] = ()
    covering: Literal["shingle", "metal"] | None = None
    stories: int | None = Field(None, ge=1, le=3)


class Record(Strict):
    number: Annotated[str, StringConstraints(min_length=1, max_length=8)] = Field(examples=["26-041"])
    roof: Roof | None = None
    notes: dict[str, str] = {}
    code: Annotated[str, StringConstraints(pattern="^[a-z]+$")] = Field(
        "irc", description="Id.", examples=["irc"]
    )


def problems_of(text: str) -> tuple[Problem, ...]:
    document = parse_yaml(text.encode(), FILE)
    with pytest.raises(ValidationError) as caught:
        Record.model_validate(document.value)
    return from_validation(caught.value, document, Record)


def short(text: str) -> list[tuple[str, int, int, str]]:
    return [(problem.code, problem.line, problem.column, problem.at) for problem in problems_of(text)]


def test_unknown_and_missing_keys_are_shown_whole(tmp_path: Path) -> None:
    text = "number: 26-041\nroof:\n  planes:\n    - shape: rectangle\n      id: MS\n  coverring: shingle\n"
    file = tmp_path / FILE
    file.parent.mkdir(parents=True)
    file.write_text(text)
    document = parse_yaml(text.encode(), file)
    with pytest.raises(ValidationError) as caught:
        Record.model_validate(document.value)
    problems = from_validation(caught.value, document, Record)
    assert render_all(problems, CATALOGUE, root=tmp_path, of_jobs=1, not_built=["26-041"]) == (
        """\
jobs/26-041/job.yaml:4:7: error[missing]: the key "pitch" is missing
    4 |     - shape: rectangle
      |       ^
   at roof.planes[0].pitch.  Add a line such as "pitch: 6:12". Rise in 12.
jobs/26-041/job.yaml:6:3: error[unknown-key]: the key "coverring" is not known here
    6 |   coverring: shingle
      |   ^^^^^^^^^
   at roof.coverring.  Did you mean "covering"?
2 errors in 1 of 1 job. Nothing was built for 26-041."""
    )


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("roof: {stories: 1}", ("missing", 1, 1, "number")),
        ("number: 26-041-002", ("too-long", 1, 9, "number")),
        ('number: ""', ("too-short", 1, 9, "number")),
        ("number:", ("no-value", 1, 8, "number")),
        ("number: [1]", ("wrong-kind", 1, 9, "number")),
        ("number: {a: 1}", ("wrong-kind", 1, 9, "number")),
        ("number: 1\nroof: flat", ("wrong-kind", 2, 7, "roof")),
        ("number: 1\nroof: {planes: all}", ("wrong-kind", 2, 16, "roof.planes")),
        ("number: 1\nroof: {planes: []}", ("too-few-entries", 2, 16, "roof.planes")),
        ("number: 1\nroof: {covering: slate}", ("not-one-of", 2, 18, "roof.covering")),
        ("number: 1\nroof: {covering: [slate]}", ("wrong-kind", 2, 18, "roof.covering")),
        ("number: 1\nroof: {stories: 4}", ("out-of-range", 2, 17, "roof.stories")),
        ("number: 1\nroof: {stories: two}", ("wrong-kind", 2, 17, "roof.stories")),
        ("number: 1\nroof: {planes: [{id: A}]}", ("missing", 2, 17, "roof.planes[0].shape")),
        ("number: 1\nroof: {planes: [{id: A, shape: x}]}", ("not-one-of", 2, 32, "roof.planes[0].shape")),
        (
            "number: 1\nroof:\n  planes:\n    - {shape: rectangle, id: A, pitch: steep}",
            ("bad-pitch", 4, 40, "roof.planes[0].pitch"),
        ),
        (
            "number: 1\nroof:\n  planes:\n    - {shape: triangle, id: TALL, pitch: 9:12}",
            ("out-of-range", 4, 42, "roof.planes[0].pitch"),
        ),
        (
            "number: 1\nroof:\n  planes:\n    - {shape: triangle, id: A}\n    - {shape: triangle, id: A}",
            ("duplicate-id", 5, 29, "roof.planes[1].id"),
        ),
        ("number: 1\nnotes: {a: [1]}", ("wrong-kind", 2, 12, "notes.a")),
        ("number: 1\ncode: IRC", ("not-accepted", 2, 7, "code")),
        ("[number]", ("wrong-kind", 1, 1, "")),
    ],
)
def test_an_error_is_one_problem_at_its_place(lines: str, expected: tuple[str, int, int, str]) -> None:
    assert short(f"{lines}\n") == [expected]


def test_all_errors_of_a_record_are_told_at_once() -> None:
    text = "nmber: 1\nroof:\n  covering: slate\n  stories: 9\n  planes:\n    - {shape: triangle}\n"
    assert sorted(short(text)) == [
        ("missing", 6, 7, "roof.planes[0].id"),
        ("not-one-of", 3, 13, "roof.covering"),
        ("out-of-range", 4, 12, "roof.stories"),
        ("unknown-key", 1, 1, "nmber"),
    ]


def test_a_misspelt_key_is_not_missing_as_well_but_another_missing_key_is() -> None:
    text = "number: 1\nroof:\n  planes:\n    - {shape: rectangle, pich: 6:12}\n"
    assert short(text) == [
        ("missing", 4, 7, "roof.planes[0].id"),
        ("unknown-key", 4, 26, "roof.planes[0].pich"),
    ]


def test_the_nearest_key_is_one_that_this_member_of_a_union_accepts_and_that_is_still_free() -> None:
    def nearest_for(shape: str, key: str) -> tuple[str, str]:
        text = f"number: 1\nroof:\n  planes:\n    - {{shape: {shape}, id: A, pitch: '1:12', {key}: x}}\n"
        (problem,) = problems_of(text)
        return problem.values["nearest"], problem.values["accepted"]

    assert nearest_for("triangle", "eave_hight") == ("eave_height", "eave_height")
    assert nearest_for("rectangle", "eave_hight") == ("", "none")
    assert nearest_for("triangle", "Pitch") == ("", "eave_height")


def test_values_of_our_own_codes_fill_the_message() -> None:
    (problem,) = problems_of("number: 1\nroof: {planes: [{shape: rectangle, id: A, pitch: steep}]}\n")
    assert (problem.found, problem.values) == ("steep", {"key": "pitch", "accepted": "6:12"})


@pytest.mark.parametrize(
    ("lines", "value", "words"),
    [
        ("roof: {stories: 4}", "accepted", "at most 3"),
        ("roof: {stories: 0}", "accepted", "at least 1"),
        ("roof: {planes: []}", "accepted", "at least 1 entry"),
        ("roof: {covering: metl}", "nearest", "metal"),
        ("roof: {covering: metl}", "accepted", "shingle, metal"),
        ("roof: {planes: [{id: A, shape: triangel}]}", "nearest", "triangle"),
        ("roof: [a]", "found_kind", "a list"),
    ],
)
def test_a_problem_carries_what_would_be_accepted(lines: str, value: str, words: str) -> None:
    (problem,) = problems_of(f"number: 1\n{lines}\n")
    assert problem.values[value] == words


@pytest.mark.parametrize(
    ("example", "line"),
    [
        ("#30", 'size: "#30"'),
        ("12' 6\"", "size: 12' 6\""),
        ('"a"', "size: '\"a\"'"),
        (4, "size: 4"),
        (["16 ft 8 in", "0 ft"], "size: [16 ft 8 in, 0 ft]"),
        ({"along": "5 ft", "of": ["#30", "6:12"]}, "size: {along: 5 ft, of: ['#30', '6:12']}"),
    ],
)
def test_the_example_line_of_a_missing_key_is_yaml(example: Any, line: str) -> None:
    class Nail(Strict):
        size: Any = Field(examples=[example])
        of: str

    document = parse_yaml(b"of: x\n", FILE)
    with pytest.raises(ValidationError) as caught:
        Nail.model_validate(document.value)
    (problem,) = from_validation(caught.value, document, Nail)
    assert problem.values["example"] == line
    typed = example if isinstance(example, list | dict) else str(example)
    assert parse_yaml(line.encode(), FILE).value == {"size": typed}


def test_a_fault_found_by_a_check_is_located_by_its_path() -> None:
    document = parse_yaml(b"deck:\n  sheets:\n    - {id: S1, plane: XX}\n", FILE)
    problem = locate(document, "unknown-id", ("deck", "sheets", 0, "plane"), "XX", {"accepted": "MS, MN"})
    assert (problem.line, problem.column, problem.at) == (3, 23, "deck.sheets[0].plane")
    assert problem.values == {"key": "plane", "accepted": "MS, MN"}
    absent = locate(document, "out-of-range", ("deck", "sheets", 0, "width"))
    assert (absent.line, absent.column, absent.at) == (3, 7, "deck.sheets[0]")


def test_a_refused_pattern_tells_what_the_field_is_for() -> None:
    shown = render_all(problems_of("number: 1\ncode: IRC\n"), CATALOGUE)
    assert '"IRC" is not accepted for "code"' in shown
    assert "at code.  Write what the key stands for. Id. For example: irc." in shown


Check = Callable[[str], Any]


@pytest.mark.parametrize("check", [int, float])
def test_an_error_raised_by_a_validator_in_pythons_own_words_is_not_accepted(check: Check) -> None:
    class Line(Strict):
        value: Annotated[str, AfterValidator(check)]

    document = parse_yaml(b"value: many\n", FILE)
    with pytest.raises(ValidationError) as caught:
        Line.model_validate(document.value)
    (problem,) = from_validation(caught.value, document, Line)
    assert (problem.code, problem.line, problem.column, problem.found) == ("not-accepted", 1, 8, "many")
