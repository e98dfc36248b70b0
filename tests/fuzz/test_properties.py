"""What holds of any text, any measure and any photo log, tried with a few examples in every run."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packet.problems import Refused
from packet.yamlread import parse_yaml
from tests.fuzz import measures
from tests.fuzz.cases import Demo, demos
from tests.fuzz.judge import Bench
from tests.fuzz.words import MARKS, TOKENS
from tests.support.office import ROOT, as_yaml

FEW = settings(max_examples=60)

#: Text that is nearly YAML: its marks, a few words, and pieces that hurt.
PIECES = st.sampled_from(
    [*MARKS, *(token for token in TOKENS if len(token) < 100), "job", "roof", "\n  ", "\n- ", ": ", "a", "1"]
)
NEARLY_YAML = st.lists(PIECES, max_size=30).map("".join)

DIGITS = st.from_regex(
    r"[0-9]{1,5}(\.[0-9]{1,4})?|[0-9]{1,3}/[0-9]{1,3}|[0-9]{1,3}[- ][0-9]{1,2}/[0-9]{1,2}", fullmatch=True
)
UNITS = st.sampled_from(
    [
        "",
        " in",
        '"',
        " ft",
        "'",
        " oc",
        " mph",
        " sq ft",
        " squares",
        ":12",
        "/12",
        "d",
        " x 0.113",
        "\u2033",
        "\u00bd",
    ]
)
MEASURES = st.lists(st.tuples(DIGITS, UNITS).map("".join), min_size=1, max_size=3).map(" ".join)

SCALARS = st.one_of(
    st.none(),
    MEASURES,
    st.sampled_from(TOKENS),
    st.text(max_size=20),
    st.integers(),
    st.booleans(),
    st.dates().map(str),
)
VALUES: st.SearchStrategy[Any] = st.recursive(
    SCALARS,
    lambda below: st.one_of(
        st.lists(below, max_size=3), st.dictionaries(st.text(max_size=8), below, max_size=3)
    ),
    max_leaves=6,
)
KEYS = (
    "id",
    "file",
    "sha256",
    "taken_at",
    "offset",
    "offset_from",
    "stated_by",
    "taken_by",
    "stage",
    "plane",
    "pin",
    "direction",
    "shows",
    "proves",
    "readers",
)
ENTRIES = st.dictionaries(st.one_of(st.sampled_from(KEYS), st.text(max_size=8)), VALUES, max_size=8)


@pytest.fixture(scope="module")
def base() -> list[Demo]:
    return demos(ROOT)[:1]


@pytest.fixture(scope="module")
def bench(base: list[Demo]) -> Iterator[Bench]:
    with TemporaryDirectory(prefix="fuzz-test-") as folder:
        yield Bench(Path(folder), base)


@FEW
@given(
    st.one_of(NEARLY_YAML.map(lambda text: text.encode("utf-8", "surrogatepass")), st.binary(max_size=200))
)
def test_any_bytes_are_read_or_refused_at_a_place_of_the_file(data: bytes) -> None:
    try:
        parse_yaml(data, Path("job.yaml"))
    except Refused as refused:
        text = data.decode("utf-8", errors="replace").removeprefix("\ufeff")
        lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
        for problem in refused.problems:
            assert 1 <= problem.line <= len(lines)
            assert 1 <= problem.column <= len(lines[problem.line - 1]) + 1


@FEW
@given(MEASURES)
def test_any_measure_is_read_exactly_or_refused_with_a_reason(text: str) -> None:
    assert [fault for kind in measures.PARSERS if (fault := measures.judged(kind, text))] == []


@FEW
@given(st.lists(ENTRIES, max_size=3), st.booleans())
def test_any_photo_log_is_accepted_or_refused(
    bench: Bench, base: list[Demo], entries: list[dict[str, Any]], listed: bool
) -> None:
    log: Any = {"photos": entries} if listed else entries
    assert bench.judge(base[0].name, {"photos.yaml": as_yaml(log).encode("utf-8", "replace")}) is None


@FEW
@given(st.sampled_from(("complaint", "cause", "roof", "dates", "bought", "money", "property")), VALUES)
def test_any_value_of_a_part_is_accepted_or_refused(
    bench: Bench, base: list[Demo], key: str, value: Any
) -> None:
    text = base[0].files["job.yaml"].decode()
    head = "\n".join(line for line in text.split("\n") if not line.startswith("#"))
    kept = [block for block in head.split("\n\n") if not block.lstrip("\n").startswith(f"{key}:")]
    record = "\n\n".join([*kept, as_yaml({key: value})])
    assert bench.judge(base[0].name, {"job.yaml": record.encode("utf-8", "replace")}) is None
