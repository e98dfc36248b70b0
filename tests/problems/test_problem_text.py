"""How problems are shown: whole messages, as a user sees them."""

import pickle
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.located import read_catalogue
from packet.problems import MOST_SHOWN_A_FILE, Problem, Refused, nearest, path_text, render, render_all
from packet.snippet import FORBIDDEN
from packet.workspace import packaged
from packet.yamlread import read_yaml

CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")


@pytest.fixture
def refused_text(tmp_path: Path) -> Callable[[str], str]:
    """Return what is shown for a job.yaml with the given text."""

    def show(text: str) -> str:
        file = tmp_path / "jobs" / "26-041" / "job.yaml"
        file.parent.mkdir(parents=True)
        file.write_text(text, encoding="utf-8")
        with pytest.raises(Refused) as caught:
            read_yaml(file)
        return render_all(caught.value.problems, CATALOGUE, root=tmp_path)

    return show


def test_duplicate_key_and_hash_are_shown_whole(refused_text: Callable[[str], str]) -> None:
    text = "dry_in:\n  laps: 4 in\n  felt: #30\n  laps: 6 in\n"
    assert refused_text(text) == (
        """\
jobs/26-041/job.yaml:3:9: error[hash-starts-comment]: YAML takes "#30" for a remark, so that no value is left
    3 |   felt: #30
      |         ^^^
   at dry_in.felt.  Write felt: "#30" with quotation marks, or put a space behind the # if it is meant \
as a remark.
jobs/26-041/job.yaml:4:3: error[duplicate-key]: the key "laps" was already given on line 2, and only one of \
the two can hold
    4 |   laps: 6 in
      |   ^^^^
   at dry_in.laps.  Keep one of the two lines and delete the other.
2 errors in 1 file."""
    )


def test_a_file_that_is_too_large_is_shown_without_its_lines(tmp_path: Path) -> None:
    file = tmp_path / "photos.yaml"
    file.write_bytes(b"photos:\n" * 300_000)
    with pytest.raises(Refused) as caught:
        read_yaml(file)
    (problem,) = caught.value.problems
    assert render(problem, CATALOGUE, shown_path="photos.yaml", lines=()) == (
        """\
photos.yaml: error[too-large]: the file has 2.4 MB, and at most 2.0 MB are read
   Keep photos and papers in files of their own and name them here."""
    )


def test_problems_are_ordered_by_file_line_and_column_and_shown_once(tmp_path: Path) -> None:
    a, b = tmp_path / "a.yaml", tmp_path / "b.yaml"
    given_ = [
        Problem("empty-file", b, 1, 1),
        Problem("missing", a, 12, 1, values={"key": "run"}),
        Problem("missing", a, 2, 9, values={"key": "town"}),
        Problem("missing", a, 2, 3, values={"key": "street"}),
        Problem("missing", a, 2, 9, values={"key": "town"}),
    ]
    for file in (a, b):
        file.write_text("x\n")
    shown = re.findall(r"^(\S+): error", render_all(given_, CATALOGUE, root=tmp_path), flags=re.MULTILINE)
    assert shown == ["a.yaml:2:3", "a.yaml:2:9", "a.yaml:12:1", "b.yaml:1:1"]
    assert render_all(given_, CATALOGUE).endswith("\n4 errors in 2 files.")


def test_the_closing_line_counts_jobs_and_names_those_not_built() -> None:
    problem = Problem("empty-file", Path("job.yaml"))
    jobs = [f"26-{number:03}" for number in range(12)]
    one = render_all([problem], CATALOGUE, of_jobs=14, not_built=["26-014"])
    many = render_all([problem], CATALOGUE, of_jobs=14, not_built=jobs)
    assert one.endswith("\n1 error in 1 of 14 jobs. Nothing was built for 26-014.")
    assert "in 12 of 14 jobs. Nothing was built for 26-000, 26-001" in many
    assert many.endswith("26-007 and 4 more.")


def test_a_file_with_very_many_problems_shows_the_first_ones_and_counts_the_rest() -> None:
    file = Path("job.yaml")
    shown = render_all([Problem("empty-file", file, n) for n in range(1, 301)], CATALOGUE)
    assert shown.count("error[") == MOST_SHOWN_A_FILE
    assert shown.endswith("job.yaml: and 200 more\n300 errors in 1 file.")


def test_a_word_close_to_the_one_found_replaces_the_list_of_all() -> None:
    known = {"key": "kind", "accepted": "patch, section"}
    file = Path("job.yaml")
    near = render(
        Problem("unknown-key", file, found="pich", values={**known, "nearest": "pitch"}),
        CATALOGUE,
        shown_path="j",
    )
    far = render(
        Problem("unknown-key", file, found="zz", values={**known, "nearest": ""}), CATALOGUE, shown_path="j"
    )
    assert near.endswith('Did you mean "pitch"?')
    assert far.endswith("Keys still free here: patch, section.")


def test_a_code_without_a_sentence_still_shows_place_and_words() -> None:
    problem = Problem("no-such-code", Path("job.yaml"), 3, 4, "roof.pitch", "6:13")
    assert render(problem, CATALOGUE, shown_path="job.yaml", lines=()) == (
        "job.yaml: error[no-such-code]: 6:13\n   at roof.pitch."
    )


def test_a_part_in_brackets_is_left_out_when_one_of_its_words_is_empty() -> None:
    catalogue = {
        "x": {"says": "wrong[ in {key}]", "write": "Write one[ of: {accepted}][; {found} is {key}]."}
    }
    file = Path("absent.yaml")

    def shown(**values: str) -> str:
        return render(Problem("x", file, found="F", values=values), catalogue, shown_path="f")

    assert shown() == "f: error[x]: wrong\n   Write one."
    assert shown(key="K", accepted="[a]") == "f: error[x]: wrong in K\n   Write one of: [a]; F is K."


def test_the_caret_stands_below_the_words_behind_wide_and_combining_letters() -> None:
    line = "a: \u6f22\u5b57 e\u0301 bad"
    problem = Problem("bad-pitch", Path("x"), 1, line.index("bad") + 1, found="bad")
    rows = render(problem, CATALOGUE, shown_path="x", lines=[line]).splitlines()
    # Two wide letters take two columns each, the accent takes none.
    assert rows[2] == "      | " + " " * 10 + "^^^"


def test_a_long_line_is_cut_around_the_caret() -> None:
    line = "note: " + "word " * 100 + "bad" + " word" * 100
    problem = Problem("bad-pitch", Path("x"), 1, line.index("bad") + 1, found="bad")
    _, shown, carets, _ = render(problem, CATALOGUE, shown_path="x", lines=[line]).splitlines()
    assert len(shown) < 130
    assert shown[carets.index("^") :].startswith("bad")


@given(st.text(max_size=60), st.text(max_size=60), st.integers(1, 70), st.text(max_size=20))
def test_nothing_shown_can_move_a_terminals_cursor(line: str, found: str, column: int, at: str) -> None:
    problem = Problem("bad-length", Path("job.yaml"), 1, column, at, found, {"accepted": found, "key": line})
    shown = render(problem, CATALOGUE, shown_path=f"jobs/{at}", lines=line.split("\n"))
    assert not FORBIDDEN.search(shown)
    assert shown.count("\n") <= 3


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        ("pich", "pitch"),
        ("Pitch", "pitch"),
        ("eave height", "eave_height"),
        ("eave-heigth", "eave_height"),
        ("zz", None),
    ],
)
def test_nearest_forgives_case_spaces_and_a_slip(word: str, expected: str | None) -> None:
    assert nearest(word, ["planes", "pitch", "eave_height"]) == expected


def test_a_path_is_written_with_dots_and_positions() -> None:
    assert path_text(("roof", "planes", 1, "run")) == "roof.planes[1].run"
    assert path_text((0, "id")) == "[0].id"


def test_refused_takes_one_problem_or_many_and_travels_between_processes() -> None:
    problem = Problem("empty-file", Path("job.yaml"), values={"key": "x"})
    assert Refused(problem).problems == Refused([problem]).problems == (problem,)
    assert pickle.loads(pickle.dumps(Refused(problem))).problems == (problem,)
    assert str(Refused(problem)) == "job.yaml:1:1: empty-file"
