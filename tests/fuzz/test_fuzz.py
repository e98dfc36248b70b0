"""A few changed records of every kind in each run of the tests; a minute of them with ``-m fuzz``."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tests.fuzz import measures
from tests.fuzz.cases import Demo, case, demos
from tests.fuzz.judge import MOST_S, Bench, Fault
from tests.fuzz.run import fuzz
from tests.fuzz.shrink import smallest
from tests.support.office import ROOT

SEED = 1


@pytest.fixture(scope="module")
def base() -> list[Demo]:
    return demos(ROOT)


@pytest.fixture(scope="module")
def bench(base: list[Demo]) -> Iterator[Bench]:
    with TemporaryDirectory(prefix="fuzz-test-") as folder:
        yield Bench(Path(folder), base)


@pytest.mark.parametrize("first", range(0, 120, 20))
def test_a_changed_record_is_answered_and_never_a_fault(bench: Bench, base: list[Demo], first: int) -> None:
    for number in range(first, first + 20):
        made = case(base, SEED, number)
        fault = bench.judge(made.job, made.files, deep=number % 20 == 0)
        assert fault is None, f"python -m tests.fuzz.run --seed {SEED} --only {number}: {fault}"


def test_the_demo_records_themselves_are_accepted(bench: Bench, base: list[Demo]) -> None:
    before = bench.seen["exit 2"]
    for demo in base:
        assert bench.judge(demo.name, demo.files, deep=True) is None
    assert bench.seen["exit 2"] == before


def test_a_case_is_made_of_its_seed_and_number_alone(base: list[Demo]) -> None:
    for number in range(40):
        assert case(base, SEED, number) == case(base, SEED, number)
    assert case(base, SEED, 3) != case(base, SEED + 1, 3)


def test_every_kind_of_change_is_made(base: list[Demo]) -> None:
    kinds = {case(base, SEED, number).kind for number in range(200)}
    assert kinds == {"values", "structure", "text", "bytes", "photos"}


#: A fault put into the program, and what the bench calls it.
PLANTED = {
    "traceback": ("packet.closeout.assemble.make_figures", lambda *given: 1 // 0, "exit 70 ZeroDivisionError"),
    "no end": ("packet.record.load.faults", lambda *given: _forever(), "too slow"),
    "wrong line": ("packet.yamlread.document.Document.place", lambda self, loc, key=False: (999, 1), "place of unknown-key"),
}  # fmt: skip


def _forever() -> None:
    while True:
        pass


@pytest.mark.parametrize("planted", PLANTED)
def test_a_fault_in_the_program_is_seen(
    bench: Bench, base: list[Demo], planted: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    name, fault, signature = PLANTED[planted]
    monkeypatch.setattr(name, fault)
    monkeypatch.setattr("tests.fuzz.judge.MOST_S", MOST_S / 10)
    text = base[0].files["job.yaml"]
    if planted == "wrong line":
        text += b"no-such-key: x\n"
    found = bench.judge(base[0].name, {"job.yaml": text + b"# planted\n"})
    assert isinstance(found, Fault)
    assert found.signature.startswith(signature)


def test_a_fault_is_made_small() -> None:
    whole = {
        "job.yaml": b"\n".join(b"line %d" % n for n in range(200)) + b"\nkey: bad\nlast",
        "photos.yaml": b"x",
    }
    small = smallest(whole, lambda files: b"bad" in files.get("job.yaml", b""))
    assert small == {"job.yaml": b"bad"}


@pytest.mark.fuzz
def test_a_minute_of_changed_records(tmp_path: Path) -> None:
    tally = fuzz(ROOT, tmp_path / "faults", 7, 60)
    assert sum(tally.cases.values()) > 100
    assert not tally.faults


@pytest.mark.parametrize("kind", measures.PARSERS)
def test_a_parser_of_measures_reads_back_what_it_writes(kind: str) -> None:
    assert measures.judged(kind, "no measure at all") is None
    assert measures.judged(kind, "1" * 61) is None
