"""What a file is refused for, and where."""

import os
from pathlib import Path

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from packet.problems import Problem, Refused, render_all
from packet.yamlread import LIMIT_BYTES, MOST_DEEP, parse_yaml, read_yaml

FILE = Path("job.yaml")


def refusals(data: str | bytes) -> tuple[Problem, ...]:
    with pytest.raises(Refused) as caught:
        parse_yaml(data.encode() if isinstance(data, str) else data, FILE)
    return caught.value.problems


def places(data: str | bytes) -> list[tuple[str, int, int]]:
    return [(problem.code, problem.line, problem.column) for problem in refusals(data)]


@pytest.mark.parametrize(
    ("text", "code", "line", "column"),
    [
        ("a: 1\nb: 2\na: 3\n", "duplicate-key", 3, 1),
        ("x: {a: 1, 'a': 2}\n", "duplicate-key", 1, 11),
        ("a: &base 1\n", "aliases-refused", 1, 4),
        ("a: *base\n", "aliases-refused", 1, 4),
        ("*base : 1\n", "aliases-refused", 1, 1),
        ("a:\n  <<: {b: 1}\n", "merge-refused", 2, 3),
        ("a: !!python/object:os.system x\n", "tags-refused", 1, 4),
        ("a: !mine [1]\n", "tags-refused", 1, 4),
        ("a: ! x\n", "tags-refused", 1, 4),
        ("? [a, b]\n: 1\n", "bad-key", 1, 3),
        ("~: 1\n", "bad-key", 1, 1),
        ("a: 1\n---\nb: 2\n", "several-documents", 2, 1),
        ("felt: #30\n", "hash-starts-comment", 1, 7),
        ("felt:\n- #30 felt\n", "hash-starts-comment", 2, 3),
        ("x: {felt: #30\n }\n", "hash-starts-comment", 1, 11),
        ("a: [1, 2\nb: 3\n", "bracket-left-open", 1, 4),
        ("a: 1\nb: 'left open\nc: 2\n", "quote-left-open", 2, 4),
        ('a: "5-5/8" exposure\n', "text-after-quote", 1, 12),
        ("note: step: lift\n", "colon-in-text", 1, 11),
        ("a: 1\n  b: 2\n", "bad-indent", 2, 3),
        ("job:\n  kind:patch\n  status: closed\n", "space-missing", 2, 3),
        ("- kind:patch\n  status: closed\n", "space-missing", 1, 1),
        ("title: *urgent*\n", "quote-needed", 1, 8),
        ("title: & sons\n", "quote-needed", 1, 8),
        ('- {run: "12\' 6"", title: "x"}\n', "quote-in-brackets", 1, 16),
        ('sides: ["a" b]\n', "quote-in-brackets", 1, 13),
        ("a:\n  - x\n y: 2\n", "bad-indent", 3, 2),
        ("a:\n\tb: 1\n", "tab-indent", 2, 1),
        ("a: 1\nfoo\nb: 2\n", "colon-missing", 2, 1),
        ("foo\nb: 2\n", "colon-missing", 1, 1),
        ("a: @x\n", "quote-needed", 1, 4),
        ("a: %x\n", "quote-needed", 1, 4),
        ("a: ]\n", "quote-needed", 1, 4),
        ('a: "C:\\Users"\n', "bad-escape", 1, 4),
        ("- a\nb: 1\n", "bad-yaml", 2, 1),
        ("", "empty-file", 1, 1),
        ("# only a remark\n", "empty-file", 1, 1),
        ("---\n~\n", "empty-file", 1, 1),
        ("a: 1\nb: x\0y\n", "nul-byte", 2, 5),
        ("a: \x1b[31m\n", "control-character", 1, 4),
        ("a: left\u202eright\n", "control-character", 1, 8),
        ('a: "\\u202e"\n', "control-character", 1, 4),
        ('a: "\\0"\n', "control-character", 1, 4),
        (b"a: 1\nb: caf\xe9\n", "not-utf8", 2, 7),
        ("a: 1\n".encode("utf-16"), "not-utf8", 1, 1),
    ],
)
def test_refused_at_its_place(text: str | bytes, code: str, line: int, column: int) -> None:
    assert places(text) == [(code, line, column)]


def test_every_independent_problem_is_found_in_one_pass() -> None:
    text = "a: 1\na: 2\nfelt: #30\nl:\n  - #15\n  - {b: 1, b: *x}\n<<: 3\na: #9\n"
    assert places(text) == [
        ("duplicate-key", 2, 1),
        ("hash-starts-comment", 3, 7),
        ("hash-starts-comment", 5, 5),
        ("duplicate-key", 6, 12),
        ("aliases-refused", 6, 15),
        ("merge-refused", 7, 1),
        ("duplicate-key", 8, 1),
        ("hash-starts-comment", 8, 4),
    ]


def test_problems_before_the_place_where_reading_stops_are_kept() -> None:
    assert places("a: 1\na: 2\nb: c: d\n") == [("duplicate-key", 2, 1), ("colon-in-text", 3, 5)]


def test_a_problem_names_its_path_and_the_first_of_two_keys() -> None:
    (problem,) = refusals("roof:\n  planes:\n    - id: MS\n      id: MN\n")
    assert (problem.at, problem.found, problem.values) == ("roof.planes[0].id", "id", {"first": "3"})


@pytest.mark.parametrize(
    ("typed", "instead"),
    [("#30", '"#30"'), ('#30 6" lap', "'#30 6\" lap'"), ("#6'\"", '"#6\'\\""')],
)
def test_what_to_write_instead_of_a_remark_reads_back_as_typed(typed: str, instead: str) -> None:
    (problem,) = refusals(f"felt: {typed}\n")
    assert problem.values["instead"] == f"felt: {instead}"
    assert parse_yaml(problem.values["instead"].encode(), FILE).value == {"felt": typed}


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("note: step: lift", "step: lift"),
        ('gap: "5-5/8" on center', '"5-5/8" on center'),
        ("lap: '12' 6\"'", "12' 6\""),
        ("by: @dov  # the foreman", "@dov"),
    ],
)
def test_the_line_to_write_instead_is_yaml_and_holds_the_words(line: str, value: str) -> None:
    (problem,) = refusals(f"{line}\n")
    assert list(parse_yaml(problem.values["instead"].encode(), FILE).value.values()) == [value]


def test_nesting_is_read_up_to_the_limit_and_refused_beyond() -> None:
    assert parse_yaml(("[" * MOST_DEEP + "]" * MOST_DEEP).encode(), FILE).value
    assert places("[" * (MOST_DEEP + 1) + "]" * (MOST_DEEP + 1)) == [("too-deep", 1, MOST_DEEP + 1)]


@pytest.mark.parametrize("opening", ["[", "{", "- ", "a: {", '{"a": '])
def test_nesting_without_end_is_refused_without_recursion(opening: str) -> None:
    assert {problem.code for problem in refusals(opening * 100_000)} == {"too-deep"}


def test_too_many_values_are_refused() -> None:
    assert places("[" + "a," * 250_000 + "]")[0][0] == "too-many-nodes"


def test_an_alias_bomb_is_refused_before_it_grows() -> None:
    rows = ["a0: &a0 [x, x]"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 60)]
    assert places("\n".join(rows)) == [("aliases-refused", 1, 5)]


def test_a_file_of_fifty_megabytes_is_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "job.yaml"
    file.touch()
    os.truncate(file, 50_000_000)

    def opened(self: Path, *args: object, **rest: object) -> None:
        raise AssertionError(self)

    monkeypatch.setattr(Path, "open", opened)
    with pytest.raises(Refused) as caught:
        read_yaml(file)
    (problem,) = caught.value.problems
    assert (problem.code, problem.values["size"], problem.values["most"]) == (
        "too-large",
        "50.0 MB",
        "2.0 MB",
    )


def test_the_limit_is_the_largest_size_that_is_read(tmp_path: Path) -> None:
    file = tmp_path / "job.yaml"
    file.write_bytes(b"a: 1\n#" + b"x" * (LIMIT_BYTES - 6))
    assert read_yaml(file).value == {"a": "1"}
    file.write_bytes(file.read_bytes() + b"x")
    with pytest.raises(Refused):
        read_yaml(file)


@pytest.mark.parametrize("kind", ["absent", "folder", "pipe", "bad name", "loop"])
def test_what_is_no_readable_file_is_refused(tmp_path: Path, kind: str) -> None:
    file = tmp_path / ("a\0b" if kind == "bad name" else "job.yaml")
    if kind == "folder":
        file.mkdir()
    elif kind == "pipe":
        os.mkfifo(file)
    elif kind == "loop":
        file.symlink_to(file)
    with pytest.raises(Refused) as caught:
        read_yaml(file)
    (problem,) = caught.value.problems
    assert problem.code == ("file-missing" if kind == "absent" else "file-unreadable")
    assert problem.values.get("reason") or kind == "absent"


def never_a_traceback(data: bytes) -> None:
    lines = len(data.splitlines()) + 1
    problems: tuple[Problem, ...] = ()
    value = None
    try:
        value = parse_yaml(data, FILE).value
    except Refused as refused:
        problems = refused.problems
    assert (value is None) == bool(problems)
    assert all(1 <= problem.line <= lines and problem.column >= 1 for problem in problems)
    assert render_all(problems, {})


PIECES = (
    *(
        "a",
        "b",
        "felt",
        " ",
        "  ",
        "\n",
        "\n  ",
        "\n- ",
        ": ",
        ":",
        "#30",
        " #",
        "- ",
        "[",
        "]",
        "{",
        "}",
        ",",
    ),
    *('"', "'", "|", ">", "&x", "*x", "!t ", "!!str ", "<<", "~", "? ", "---\n", "...\n", "%YAML 1.2\n"),
    *(
        "%TAG ! x\n",
        "\t",
        "\r\n",
        "\r",
        "@",
        "`",
        "\\",
        "\\u",
        "\\x4",
        "\ufeff",
        "\u2028",
        "\x85",
        "\0",
        "\xa0",
    ),
    *("\u00e9", "\U0001f528", "\u202e", "=", "0", "\ud7ff", "\ufffd"),
)
YAMLISH = st.lists(st.sampled_from(PIECES), max_size=30).map("".join)


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_with_a_place(data: bytes) -> None:
    never_a_traceback(data)


@settings(max_examples=1500)
@given(YAMLISH)
@example("? a\n: #30\n")
@example("? \n: #3\n")
@example("&a\n")
@example("a: \xa0#30")
def test_any_yaml_like_text_is_read_or_refused_with_a_place(text: str) -> None:
    never_a_traceback(text.encode())


@settings(max_examples=300)
@given(YAMLISH)
def test_the_python_parser_refuses_with_a_place_too(text: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("packet.yamlread.reader._LOADER", yaml.SafeLoader)
        never_a_traceback(text.encode())


@settings(max_examples=300)
@given(YAMLISH)
def test_what_is_read_is_what_yaml_means(text: str) -> None:
    """Against PyYAML's own loader without resolvers: the same keys, lists and words."""
    try:
        ours = parse_yaml(text.encode(), FILE).value
    except Refused:
        return
    theirs = yaml.load(text, Loader=getattr(yaml, "CBaseLoader", yaml.BaseLoader))

    def emptied(value: object) -> object:
        if isinstance(value, dict):
            return {key: emptied(below) for key, below in value.items()}
        if isinstance(value, list):
            return [emptied(below) for below in value]
        return "" if value in (None, "~") else value

    assert emptied(ours) == emptied(theirs)
