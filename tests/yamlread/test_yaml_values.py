"""What a read file holds: text as typed, and where it stands."""

from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from packet.snippet import FORBIDDEN
from packet.yamlread import parse_yaml, read_yaml

FILE = Path("job.yaml")

LINE_TEXT = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=40).filter(
    lambda text: not FORBIDDEN.search(text)
)


def value_of(text: str) -> Any:
    return parse_yaml(text.encode(), FILE).value


TYPED = (
    *("4:12", "010", "yes", "No", "on", "1_000", "2026-03-16", "1e999999", "0x1F", "1.10", ".inf", "26-041"),
    *("=", '6"', "12' 6\"", "+1", "0o7", "190:20:30"),
)


@pytest.mark.parametrize("typed", TYPED)
def test_scalars_stay_the_text_that_was_typed(typed: str) -> None:
    assert value_of(f"a: {typed}\nb: [{typed}]\n") == {"a": typed, "b": [typed]}


@pytest.mark.parametrize("typed", ["", "~", "null", "Null", "NULL"])
def test_an_empty_value_is_none(typed: str) -> None:
    document = parse_yaml(f"a: {typed}\nb:\n  - {typed}\n".encode(), FILE)
    assert document.value == {"a": None, "b": [None]}
    assert document.words(("a",)) == typed


@pytest.mark.parametrize("typed", ['""', "''", '"~"', "'null'", '"#30"', "|\n  x\n"])
def test_a_quoted_value_is_never_none(typed: str) -> None:
    assert isinstance(value_of(f"a: {typed}\n")["a"], str)


def test_a_remark_behind_a_value_is_left_alone() -> None:
    assert value_of("felt: No. 30 #30\nlap: # to be measured\nmetal:   ## later\n") == {
        "felt": "No. 30",
        "lap": None,
        "metal": None,
    }


def test_a_glued_remark_behind_a_group_is_left_alone() -> None:
    assert value_of("roof: #main\n  pitch: 6:12\ndeck: #new\n  - S1\n") == {
        "roof": {"pitch": "6:12"},
        "deck": ["S1"],
    }


@given(LINE_TEXT)
def test_every_text_survives_quoting(text: str) -> None:
    quoted = yaml.safe_dump({"a": [text]}, default_style='"', allow_unicode=True, width=10_000)
    assert value_of(quoted) == {"a": [text]}


@given(st.dictionaries(LINE_TEXT.filter(bool), st.lists(LINE_TEXT, max_size=3), min_size=1, max_size=5))
def test_every_value_stands_where_its_place_says(record: dict[str, list[str]]) -> None:
    text = yaml.safe_dump(record, default_style="'", allow_unicode=True, width=10_000, sort_keys=False)
    document = parse_yaml(text.encode(), FILE)
    lines = text.split("\n")
    assert document.value == record
    for key, entries in record.items():
        line, column = document.place((key,), key=True)
        assert lines[line - 1][column - 1] in "'\"?"
        for number, entry in enumerate(entries):
            line, column = document.place((key, number))
            assert lines[line - 1][: column - 1] == "- "
            assert yaml.safe_load(lines[line - 1][column - 1 :]) == entry


def test_places_of_values_keys_and_entries() -> None:
    text = "job: {number: 26-041}\nroof:\n  planes:\n    - id: MS\n      run: 12 ft\n"
    document = parse_yaml(text.encode(), FILE)
    assert document.place(("job", "number")) == (1, 15)
    assert document.place(("job", "number"), key=True) == (1, 7)
    assert document.place(("roof",), key=True) == (2, 1)
    assert document.place(("roof", "planes", 0)) == (4, 7)
    assert document.place(("roof", "planes", 0), key=True) == (4, 7)
    assert document.place(("roof", "planes", 0, "run")) == (5, 12)
    assert document.words(("roof", "planes", 0, "run")) == "12 ft"


def test_an_absent_part_stands_at_its_nearest_ancestor() -> None:
    document = parse_yaml(b"roof:\n  planes:\n    - id: MS\n", FILE)
    assert document.place(("roof", "planes", 0, "run")) == (3, 7)
    assert document.place(("roof", "pitch"), key=True) == (1, 1)
    assert document.place(("dates", "started")) == (1, 1)
    assert document.words(("roof", "pitch")) == ""


def test_a_union_tag_in_a_path_is_passed_over() -> None:
    document = parse_yaml(b"planes:\n  - shape: triangle\n    run: 12 ft\n", FILE)
    assert document.place(("planes", 0, "triangle", "run")) == (3, 10)
    assert document.resolve(("planes", 0, "triangle", "run")) == ("planes", 0, "run")


@pytest.mark.parametrize("newline", ["\n", "\r\n", "\r"])
def test_places_hold_with_every_kind_of_line_end_and_a_byte_order_mark(newline: str) -> None:
    text = newline.join(["a: 1", "b:", "  - \N{HAMMER}: x", ""])
    document = parse_yaml(b"\xef\xbb\xbf" + text.encode(), FILE)
    assert document.value == {"a": "1", "b": [{"\N{HAMMER}": "x"}]}
    assert document.place(("a",), key=True) == (1, 1)
    assert document.place(("b", 0, "\N{HAMMER}")) == (3, 8)


def test_a_file_of_twelve_thousand_lines_is_read(tmp_path: Path) -> None:
    entry = "- id: P{0}\n  file: photos/P{0}.jpg\n  pin: [4 ft, 3 ft 2 in]\n  shows: Rot at the valley.\n"
    file = tmp_path / "photos.yaml"
    file.write_text("photos:\n" + "".join(entry.format(n) for n in range(3000)))
    document = read_yaml(file)
    assert len(document.value["photos"]) == 3000
    assert document.place(("photos", 2999, "pin", 1)) == (12_000, 15)


def test_the_python_parser_gives_the_same_document(monkeypatch: pytest.MonkeyPatch) -> None:
    text = b"a: #x y\n  b: 4:12\nc: [1, {d: ~}]\ne: |\n  words\n"
    fast = parse_yaml(text, FILE)
    monkeypatch.setattr("packet.yamlread.reader._LOADER", yaml.SafeLoader)
    slow = parse_yaml(text, FILE)
    assert slow == fast
    assert slow.place(("c", 1, "d")) == fast.place(("c", 1, "d")) == (3, 12)
