"""New entries stand behind the old ones; not a byte of what was written by hand changes."""

import string
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packet.photos.logedit import NewEntry, read_log, with_entries
from packet.problems import Refused
from packet.snippet import FORBIDDEN
from packet.yamlread import parse_yaml

BOM = b"\xef\xbb\xbf"


def added(path: Path, data: bytes | None, *entries: NewEntry) -> tuple[bytes, int]:
    if data is not None:
        path.write_bytes(data)
    made = with_entries(read_log(path), entries)
    return made.data, made.first_line


def entry(id: str, remark: str = "", **more: Any) -> NewEntry:
    return NewEntry({"id": id, "file": f"photos/{id}.jpg", "stage": None, "shows": None, **more}, remark)


def test_a_new_log_holds_the_entries_as_a_person_would_write_them(tmp_path: Path) -> None:
    data, line = added(
        tmp_path / "photos.yaml",
        None,
        entry(
            "P01",
            "One remark.\nAnother.",
            taken_at="2026-03-16T08:12:30",
            offset="-04:00",
            taken_by="No: 1 #2",
        ),
        entry("P02", readers=("outside", "office")),
    )
    assert line == 4
    assert data.decode() == (
        "photos:\n"
        "  # One remark.\n"
        "  # Another.\n"
        "  - id: P01\n"
        "    file: photos/P01.jpg\n"
        "    stage:\n"
        "    shows:\n"
        "    taken_at: 2026-03-16T08:12:30\n"
        '    offset: "-04:00"\n'
        "    taken_by: 'No: 1 #2'\n"
        "  - id: P02\n"
        "    file: photos/P02.jpg\n"
        "    stage:\n"
        "    shows:\n"
        "    readers: [outside, office]\n"
    )


@pytest.mark.parametrize("empty", [b"", b"\n\n", b"# only a remark\n", b"# no end of line", BOM])
def test_a_log_without_entries_gets_its_key(tmp_path: Path, empty: bytes) -> None:
    data, _ = added(tmp_path / "photos.yaml", empty, entry("P01"))
    assert data.startswith(empty)
    assert parse_yaml(data, tmp_path).value["photos"][0]["id"] == "P01"
    assert data.count(b"photos:") == 1


@pytest.mark.parametrize("key", [b"photos:\n", b"photos:", b"photos: # none yet\r\n"])
def test_a_key_that_stands_there_alone_is_used(tmp_path: Path, key: bytes) -> None:
    data, _ = added(tmp_path / "photos.yaml", key, entry("P01"))
    assert data.startswith(key)
    assert [row["id"] for row in parse_yaml(data, tmp_path).value["photos"]] == ["P01"]


@pytest.mark.parametrize(
    ("old", "kept"),
    [
        (b"# ours: []\r\nphotos: []\r\n# end []\r\n", b"# ours: []\r\nphotos:\r\n# end []\r\n"),
        (b"photos: [ ]  # none yet", b"photos:  # none yet"),
        (BOM + b"photos: []\n", BOM + b"photos:\n"),
    ],
)
def test_the_brackets_of_an_empty_list_make_room_and_no_other_byte_goes(
    tmp_path: Path, old: bytes, kept: bytes
) -> None:
    data, _ = added(tmp_path / "photos.yaml", old, entry("P01"))
    assert data.startswith(kept)
    assert [row["id"] for row in parse_yaml(data, tmp_path).value["photos"]] == ["P01"]


@pytest.mark.parametrize(
    "text",
    [
        "{photos: []}\n",
        "photos: [\n]\n",
        "photos: [{id: P01, file: a.jpg}]\n",
        "{photos: [{id: P01, file: a.jpg}]}\n",
        "photos:\n  - id: P01\n    file: a.jpg\n...\n",
        "photos: null\n",
        "{}\n",
        # the line end that would be added belongs to the caption's text
        "photos:\n  - id: P01\n    file: a.jpg\n    shows: |\n      Rot",
    ],
)
def test_a_log_that_cannot_be_added_to_is_refused(tmp_path: Path, text: str) -> None:
    with pytest.raises(Refused) as refused:
        added(tmp_path / "photos.yaml", text.encode(), entry("P02"))
    assert [problem.code for problem in refused.value.problems] == ["photo-log-shape"]
    assert (tmp_path / "photos.yaml").read_text("utf-8") == text


def test_a_log_that_does_not_fit_is_refused_at_its_place(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        added(tmp_path / "photos.yaml", b"photos:\n  - id: P01\n    fiel: a.jpg\n", entry("P02"))
    assert [(p.code, p.line) for p in refused.value.problems] == [("unknown-key", 3)]


def test_a_log_holds_two_thousand_photos_and_no_more(tmp_path: Path) -> None:
    rows = "".join(f"  - {{id: P{n:04}, file: a.jpg}}\n" for n in range(1999))
    old = f"photos:\n{rows}".encode()
    assert added(tmp_path / "photos.yaml", old, entry("Q1"))[1] == 2001
    with pytest.raises(Refused) as refused:
        added(tmp_path / "photos.yaml", old, entry("Q1"), entry("Q2"))
    assert [problem.code for problem in refused.value.problems] == ["photo-log-full"]


TEXT = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")).filter(lambda c: not FORBIDDEN.match(c)),
    min_size=1,
    max_size=30,
)
WORD = st.text(string.ascii_letters, min_size=1, max_size=12)
REMARK = st.builds("# {}".format, TEXT) | st.just("") | st.just("   ")


def _double(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _single(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


VALUE = (
    TEXT.map(_double)
    | TEXT.map(_single)
    | WORD
    | st.tuples(WORD, TEXT).map(lambda pair: f"{pair[0]}  # {pair[1]}")
    | st.tuples(WORD, WORD).map(lambda pair: f"{pair[0]}\n{' ' * 12}{pair[1]}")  # goes on in a second line
    | st.tuples(WORD, WORD).map(lambda pair: f">-\n{' ' * 12}{pair[0]}\n{' ' * 12}{pair[1]}")
    | st.just("")
)


@st.composite
def logs(draw: st.DrawFn) -> bytes:
    """Return a log as a person may write it: remarks, quotation marks, blank lines, any indentation and line end."""
    indent, gap = " " * draw(st.integers(0, 6)), " " * draw(st.integers(1, 4))
    lines = draw(st.lists(REMARK, max_size=2))
    lines.append("photos:" + draw(st.sampled_from(["", "  ", "  # all of them"])))
    for number in range(draw(st.integers(1, 4))):
        lines += [f"{indent}{remark}" for remark in draw(st.lists(REMARK, max_size=2))]
        if draw(st.booleans()):
            lines.append(f"{indent}-{gap}{{id: P{number}, file: 'a.jpg', shows: {draw(TEXT.map(_double))}}}")
            continue
        keys = [("id", f"P{number}"), ("file", draw(TEXT.map(_double))), ("shows", draw(VALUE))]
        if draw(st.booleans()):
            keys.append(("taken_by", draw(TEXT.map(_single))))
        lead = f"{indent}-{gap}"
        for key, value in draw(st.permutations(keys)):
            lines.append(f"{lead}{key}:{' ' * draw(st.integers(1, 3))}{value}")
            lead = f"{indent} {' ' * len(gap)}"
    lines += draw(st.lists(REMARK, max_size=2))
    end = draw(st.sampled_from(["\n", "\r\n"]))
    text = end.join("\n".join(lines).split("\n")) + draw(st.sampled_from(["", end, end * 3]))
    return draw(st.sampled_from([b"", BOM])) + text.encode()


NEW = st.lists(
    st.builds(
        lambda taken_by, set_by, stage, readers, remark: {
            "taken_by": taken_by, "set_by": set_by, "stage": stage, "readers": readers, "remark": remark,
        },
        TEXT.filter(str.strip), TEXT.filter(str.strip), st.sampled_from([None, "deck", "dried-in"]),
        st.sampled_from([("office",), ("outside", "office")]), st.sampled_from(["", "A remark: it's #1."]),
    ),
    min_size=1,
    max_size=3,
)  # fmt: skip


@given(old=logs(), new=NEW)
@settings(max_examples=300)
def test_every_byte_of_a_hand_made_log_is_kept_and_every_entry_reads_as_before(
    tmp_path_factory: pytest.TempPathFactory, old: bytes, new: list[dict[str, Any]]
) -> None:
    path = tmp_path_factory.getbasetemp() / "photos.yaml"
    before = parse_yaml(old, path).value["photos"]
    entries = [entry(f"P{90 + n}", **more) for n, more in enumerate(new)]
    data, line = added(path, old, *entries)
    assert data.startswith(old)
    document = parse_yaml(data, path)
    assert document.value["photos"][: len(before)] == before
    assert [row["id"] for row in document.value["photos"][len(before) :]] == [e.values["id"] for e in entries]
    for row, more in zip(document.value["photos"][len(before) :], new, strict=True):
        assert (row["taken_by"], row["set_by"], row["stage"]) == (
            more["taken_by"],
            more["set_by"],
            more["stage"],
        )
        assert row["readers"] == list(more["readers"])
    assert document.place(("photos", len(before)))[0] == line
    tail = data[len(old) :].lstrip(b"\r\n")
    assert (b"\r\n" in tail) == (b"\r\n" in old)
    assert tail.count(b"\n") == tail.count(b"\r\n") or b"\r\n" not in tail
