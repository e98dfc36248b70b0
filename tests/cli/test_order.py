"""``packet order``: what it prints, what it writes, and how it exits."""

import csv
import os
import re
from pathlib import Path

import pytest

from packet.cli import order
from tests.cli.conftest import Run
from tests.support.office import Office, copy_job
from tests.support.planned import BEGUN, GOODS, PLANNED
from tests.support.readme import readme_files


@pytest.fixture
def begun(tmp_path: Path) -> Office:
    """A job that is planned and no more."""
    return Office(tmp_path / "office", BEGUN + GOODS)


def listed(file: Path) -> list[list[str]]:
    with file.open(encoding="utf-8-sig", newline="") as lines:
        return list(csv.reader(lines, strict=True))


def test_it_prints_the_list_and_says_where_it_lies(begun: Office, run: Run) -> None:
    ran = run(begun.root, "order", "26-041")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines() == [
        "26-041: lines to order: 3",
        "  10.00 squares net, 10.00 gross",
        "  To buy      Ordered     Need with allowance  For       Item",
        "  1 bundle    -           40′                  Starter   starter strip",
        "  35 bundles  36 bundles  1,125.0 sq ft        Shingles  laminated shingle",
        "      12.50 %: Valleys, and short courses.",
        "  -           2 pieces    -                    -         fan hood",
        "  out/26-041-order.csv",
    ]


def test_squares_of_openings_and_of_a_part_of_the_work_are_told_apart(begun: Office, run: Run) -> None:
    """40 ft by 25 ft are 10 squares; an opening of 10 ft by 8 ft takes 0.8; 20 ft by 20 ft are 4."""
    begun.replaced(
        "  edges:",
        "  openings: [{id: O1, plane: A, what: dormer, at: [4 ft, 4 ft], along: 10 ft, up: 8 ft}]\n  edges:",
    )
    assert run(begun.root, "order").out.splitlines()[1] == "  9.20 squares net, 10.00 gross"
    begun.replaced(
        "{id: A1, plane: A}",
        "{id: A1, plane: A, outline: [[20 ft, 0 ft], [40 ft, 0 ft], [40 ft, 20 ft], [20 ft, 20 ft]]}",
    )
    assert run(begun.root, "order").out.splitlines()[1] == "  9.20 squares net, 10.00 gross, 4.00 worked on"


def test_nails_show_their_weight_in_the_list_and_in_the_file(tmp_path: Path, run: Run) -> None:
    """8 boards of 8 ft on 24 in rafters bear at 40 places: 80 nails, which at 140 to the pound are 0.6 lb."""
    boards = (
        "deck: {boards: [{id: B1, plane: A, where: eave, size: 1x6, width: 5-1/2 in, pieces: 8, length: 64 ft,"
        " nails_each_bearing: 2, why: rot}]}\n"
    )
    nails = (
        "  - {id: N, item: 8d ring shank, use: deck nails, unit: box, pieces_each: 50, nails_a_pound: 140}\n"
    )
    framing = "  framing: {member: 2x8 rafter, spacing: 24 in oc}\ncovering:"
    office = Office(tmp_path / "nails", PLANNED.replace("covering:", framing) + boards + GOODS + nails)
    lines = [" ".join(line.split()) for line in run(office.root, "order").out.splitlines()]
    place = lines.index("2 boxes - 80 nails Deck nails 8d ring shank")
    assert lines[place + 1] == "the nails needed weigh 0.6 lb"
    rows = listed(office.root / "out" / "26-041-order.csv")
    (row,) = [row for row in rows if row[0] == "Deck nails"]
    assert dict(zip(rows[0], row, strict=True))["Weight of the nails (lb)"] == "0.6"
    assert {row[8] for row in rows[1:] if row[0] != "Deck nails"} == {""}


@pytest.mark.parametrize(
    ("planned_bundles", "says"),
    [("34", "order 1 more"), ("34-1/2", "order 1/2 more"), ("35", ""), ("36", "")],
)
def test_an_order_that_falls_short_is_marked_in_the_list_and_in_the_file(
    begun: Office, run: Run, planned_bundles: str, says: str
) -> None:
    begun.replaced("planned: 36", f"planned: {planned_bundles}")
    out = run(begun.root, "order").out
    assert out.count("more") == (1 if says else 0)
    assert f"\n      {says}\n" in out or not says
    rows = {row[0]: row for row in listed(begun.root / "out" / "26-041-order.csv")}
    assert rows["Shingles"][-1] == says


def test_nothing_more_is_to_be_ordered_once_the_job_is_closed(begun: Office, run: Run) -> None:
    begun.replaced("planned: 36", "planned: 30").changed("job.status", "closed")
    assert "order 5 more" not in run(begun.root, "order").out
    begun.changed("job.status", "under way")
    assert "order 5 more" in run(begun.root, "order").out


def test_the_file_holds_the_same_lines(begun: Office, run: Run) -> None:
    assert run(begun.root, "order").code == 0
    rows = listed(begun.root / "out" / "26-041-order.csv")
    assert [row[:4] for row in rows] == [
        ["For", "Item", "Product sheet", "To buy"],
        ["Starter", "starter strip", "", "1"],
        ["Shingles", "laminated shingle", "", "35"],
        ["", "fan hood", "", ""],
    ]


def test_a_record_with_little_in_it_makes_a_list_that_says_so(small_office: Office, run: Run) -> None:
    ran = run(small_office.root, "order")
    assert ran.code == 0
    assert "Nothing to buy could be computed" in ran.out
    assert len(listed(small_office.root / "out" / "26-041-order.csv")) == 1


def test_quiet_writes_and_says_nothing(begun: Office, run: Run) -> None:
    ran = run(begun.root, "order", "-q")
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    assert (begun.root / "out" / "26-041-order.csv").is_file()


def test_what_is_missing_stands_below_its_line(begun: Office, run: Run) -> None:
    begun.replaced(", cover_each: 32.8 sq ft", "")
    lines = run(begun.root, "order").out.splitlines()
    at = next(number for number, line in enumerate(lines) if line.endswith("laminated shingle"))
    assert lines[at].split()[0] == "-"
    assert lines[at + 2] == "      not computed: the wrapper's cover is not recorded"


def test_a_bad_record_is_told_and_the_other_job_is_listed(begun: Office, run: Run) -> None:
    copy_job(begun, "26-042")
    begun.replaced("unit: piece", "unit: pieces")
    ran = run(begun.root, "order")
    assert ran.code == 2
    assert "26-041/job.yaml" in ran.err
    assert "26-042: lines to order: 3" in ran.out
    assert [path.name for path in (begun.root / "out").glob("*.csv")] == ["26-042-order.csv"]


def test_a_job_that_is_not_there_is_refused(begun: Office, run: Run) -> None:
    ran = run(begun.root, "order", "26-999")
    assert (ran.code, ran.out) == (2, "")
    assert "26-999" in ran.err


def test_a_full_disk_leaves_the_earlier_list_whole(
    begun: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert run(begun.root, "order").code == 0
    file = begun.root / "out" / "26-041-order.csv"
    before = file.read_bytes()
    begun.replaced("fan hood", "another hood")

    def full(path: Path, content: bytes) -> int:
        with path.open("wb") as part:
            part.write(content[: len(content) // 2])
        raise OSError(28, os.strerror(28), str(path))

    monkeypatch.setattr(Path, "write_bytes", full)
    ran = run(begun.root, "order")
    assert ran.code == 2
    assert "no space left on device" in ran.err
    assert file.read_bytes() == before
    assert sorted(path.name for path in file.parent.iterdir() if path.suffix == ".part") == []


@pytest.mark.parametrize("columns", [24, 40, 70, 100])
def test_a_terminal_is_never_wider_than_it_is_and_nothing_is_cut(
    begun: Office, run: Run, monkeypatch: pytest.MonkeyPatch, columns: int
) -> None:
    long = "laminated shingle of the long name that a supplier gives it in his price list of the year"
    begun.replaced("laminated shingle", long)
    monkeypatch.setattr(order, "_width", lambda: columns - 2)
    out = run(begun.root, "order").out
    assert max(map(len, out.splitlines())) <= max(columns, 32)
    assert long in re.sub(r"\s+", " ", out)
    assert "35 bundles" in re.sub(r"\s+", " ", out)


def test_before_the_work_what_the_roof_surely_takes_is_listed_though_it_can_not_be_counted_yet(
    tmp_path: Path, run: Run
) -> None:
    planned = Office(tmp_path / "planned", PLANNED + GOODS)
    out = re.sub(r"\s+", " ", run(planned.root, "order").out)
    assert "Underlayment - not computed: which underlayment is laid is not recorded (dry_in)" in out
    assert "Drip edge - not computed: no goods are written down for it" in out
    planned.changed("job.status", "under way").added("cause: {what: Worn out.}")
    out = run(planned.root, "order").out
    assert "Drip edge" not in out
    assert "Underlayment" not in out


def test_the_roof_and_the_goods_of_the_readme_are_listed(tmp_path: Path, run: Run) -> None:
    files = dict(readme_files())
    head = PLANNED[: PLANNED.index("roof:")]
    felt = "  - {id: FELT, item: felt, use: underlayment, product: our-felt, unit: roll}\n"
    office = Office(
        tmp_path / "office", f"{head}dry_in: {{product: felt, end_lap: 6 in}}\n{files['job']}{felt}"
    )
    for name in ("shared/products/our-felt.yaml", "shared/sources.yaml"):
        office.file(name, files[name])
    ran = run(office.root, "order")
    assert (ran.code, ran.err) == (0, "")
    rows = {row[0]: row for row in listed(office.root / "out" / "26-041-order.csv")}
    assert {"Shingles", "Starter", "Underlayment", "Valley lining"} <= rows.keys()
    assert rows["Underlayment"][2] == "our-felt"
    assert all(int(rows[name][3]) for name in ("Shingles", "Starter", "Underlayment"))
    edges = {edge.id for edge in office.closeout().geometry.edges}  # type: ignore[union-attr]
    assert {"MS-MN", "MS-PW", "MN-EAVE", "MS-EAVE-1"} <= edges
    assert office.finding_ids() == set()


def test_the_other_roof_of_the_readme_holds_together(tmp_path: Path, run: Run) -> None:
    """An opening of 32 sq ft is taken off; the slope of the wing and the hip end are one plane, 36 ft of eave."""
    head = PLANNED[: PLANNED.index("roof:")]
    office = Office(tmp_path / "office", head + dict(readme_files())["another roof"])
    ran = run(office.root, "order")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines()[1] == "  13.57 squares net, 13.89 gross"
    closeout = office.closeout()
    assert closeout.geometry
    edges = {edge.id: edge for edge in closeout.geometry.edges}
    assert {plane.id for plane in closeout.geometry.planes} == {"S", "N", "E", "WW", "PORCH"}
    assert (edges["E-EAVE"].length_ft, edges["PW"].kind) == (36, "headwall")
    starter = closeout.figures["takeoff.starter.net"].working
    assert starter
    assert {"edge.PR1.worked", "edge.E-EAVE.worked"} <= {term.origin.ref for term in starter.terms}
    assert office.finding_ids() == set()
