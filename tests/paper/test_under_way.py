"""Paper of a job under way: what is still to do is told apart from what is missing, and nothing is shown as laid."""

from pathlib import Path

import pytest

from tests.paper.conftest import Paper, papers
from tests.support.office import Office
from tests.support.pictures import picture

UNDER_WAY = """\
job: {number: 26-041, kind: section, status: under way}
property: {street: 18 Heron Lane, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
dates: {started: 2026-04-20, dried_in: 2026-04-21}
people: {crew: [Tam Oduya]}
cause: {what: Ice stood at the eave.}
roof:
  eave_height: 10 ft
  planes:
    - {id: PR, title: porch, shape: rectangle, lower: 14 ft, run: 7 ft, pitch: "2:12", facing: north, at: [0 ft, 40 ft]}
    - {id: GS, title: front, shape: rectangle, lower: 34 ft, run: 13 ft, pitch: "9:12", facing: south, at: [0 ft, 0 ft]}
    - {id: GN, title: back, shape: rectangle, lower: 34 ft, run: 13 ft, pitch: "9:12", facing: north, at: [34 ft, 26 ft]}
  framing: {member: 2x6 rafter, spacing: 24 in oc}
basis: {code: irc-2018, authority: Town office, wind_speed: 115 mph, exposure: B}
found:
  - {id: F1, what: Insulation lies against the deck., answer: not asked}
  - {id: F2, what: The chimney leans., answer: declined, on: 2026-04-20}
framing:
  - {id: R1, part: rafter tail, what: Cut off and stiffened., fasteners: 3 x 0.131 nails in two rows}
deck:
  boards:
    - {id: B1, plane: PR, where: at the eave, size: 1x6 pine, width: 5-1/2 in, pieces: 6, length: 60 ft, why: rot,
       nail: {size: 2-1/2 x 0.131, shank: smooth}, nails_each_bearing: 2}
  sheets:
    - {id: S1, plane: GS, at: [2 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
dry_in: {product: No. 30 felt, standard: ASTM D226 Type II}
temporary:
  - {id: T1, where: porch roof, what: tarp, put_on: 2026-04-21}
  - {id: T2, where: back slope, what: tarp, put_on: 2026-04-20, taken_off: 2026-04-21}
drip_edge: {metal: 0.019 in aluminum, lap: 3 in}
details:
  - {id: CH1, kind: chimney, where: below the ridge, state: left as found}
  - {id: PB1, kind: pipe boot, where: above the bath, state: new}
covering:
  areas:
    - {id: A1, plane: PR, outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 7 ft], [0 ft, 7 ft]]}
    - {id: A2, plane: GS, outline: [[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 5 ft], [0 ft, 5 ft]]}
  low_slope:
    - {id: L1, plane: PR, product: cap sheet over a base sheet, note: The cap sheet waits for a warm day.}
detached:
  - {id: GU1, what: back gutter, state: not yet, off: 2026-04-20}
  - {id: GU2, what: front gutter, state: set as it was, off: 2026-04-20, reset: 2026-04-21}
punch_list:
  - {id: PL1, what: Chipped paint at the rail.}
  - {id: PL2, what: A scuff., done_on: 2026-04-22}
inspections:
  - {id: I1, on: 2026-04-23, what: deck and dry-in, by: inspector, result: partial}
money: {contract: "USD 1,000.00"}
"""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Paper]:
    office = Office(tmp_path_factory.mktemp("under way") / "office", UNDER_WAY)
    logged = (("P01", "deck", "2026:04:20 10:00:00"), ("P02", "covering", "2026:04:22 10:00:00"))
    for name, _, taken in logged:
        picture(office.job / "photos" / f"{name}.jpg", taken=taken)
    office.log(
        *(
            {
                "id": name,
                "file": f"photos/{name}.jpg",
                "stage": stage,
                "shows": f"Shows {name}.",
                "proves": ["underlayment-type", "S1"],
                "readers": ["outside", "office"],
            }
            for name, stage, _ in logged
        )
    )
    return papers(office.root)


def test_what_the_record_says_is_unfinished_stands_below_what_is_open(made: dict[str, Paper]) -> None:
    cover = made["outside"].pages[0]
    told = cover[cover.index("Still to do") :]
    for said in (
        "Temporary cover still on: porch roof",
        "Not set again yet: back gutter",
        "Point not done yet: Chipped paint at the rail.",
        "The owner is still to be asked: Insulation lies against the deck.",
        "Passed in part, to be seen again: deck and dry-in, April 23, 2026",
    ):
        assert said in told
    for done in ("back slope", "front gutter", "A scuff", "The chimney"):
        assert done not in told


def test_a_closed_job_has_nothing_to_do(outside: Paper) -> None:
    assert "Still to do" not in outside.text


def test_the_card_shows_nothing_as_laid_that_is_still_to_come(made: dict[str, Paper]) -> None:
    card = made["roof-card"]
    assert len(card.pages) == 1
    for said in (
        "The work is under way",
        "some of it may not be laid yet",
        "On this roof, or planned for it",
        "Shingle not yet",
        "Shingle nail not yet",
        "Low slope PR planned or under way: cap sheet over a base sheet. The cap sheet waits for a warm day.",
        "finished: not yet",
        "Promises begin when the work is finished; they are not written here yet.",
    ):
        assert said in card.text, said
    assert "Warranties: not recorded" not in card.text


def test_the_card_tells_framing_boards_new_details_and_what_was_left(made: dict[str, Paper]) -> None:
    for said in (
        "Not touched back (GN)",
        "Framing 2x6 rafter, 24 in on center",
        "Deck boards B1 1x6 pine, 60′ on PR, nail 2 1/2 in × 0.131 in smooth shank",
        "New Pipe boot PB1, above the bath",
        "Left as found Chimney CH1, below the ridge; offered and declined: The chimney leans.",
        "step only on framing",
    ):
        assert said in made["roof-card"].text, said


def test_money_that_is_not_due_is_no_gap(made: dict[str, Paper]) -> None:
    text = made["office"].text
    money = text[text.index("Contract USD 1,000.00") :][:80]
    assert "Final invoice not yet Paid not yet" in money


def test_a_value_without_a_photo_in_time_says_so_once_a_sheet(made: dict[str, Paper]) -> None:
    text = made["outside"].text
    cover = made["outside"].pages[0]
    assert "Deck boards, nails at each rafter: no photo from before it was covered. See the row" in cover
    row = text[text.index("Row by row") : text.index("What does not apply to this job")]
    assert "no photo shows it from before it was covered" not in row
    gaps = text[text.index("Each line says what was asked and is not documented") :]
    assert "Deck boards, nails at each rafter no photo shows it from before it was covered" in gaps


def test_photos_of_another_time_stand_clear_of_what_says_so(made: dict[str, Paper]) -> None:
    """The line under "Photos of another time" begins at least a line's height below it."""
    paper = made["outside"]
    page = next(at for at, text in enumerate(paper.pages) if "which prove nothing here" in text)
    runs = paper.runs(page)
    said = next(run for run in runs if run.text.strip().startswith("Photos of"))
    below = sorted(
        {run.up for run in runs if abs(run.left - said.left) < 1 and run.up < said.up}, reverse=True
    )
    photos = next(run.up for run in runs if run.text.strip() == "P02" and run.up < said.up)
    last = min(up for up in below if up > photos)
    assert last - photos > 9


def test_cells_that_nothing_can_fill_are_no_blanks(made: dict[str, Paper]) -> None:
    text = made["outside"].text
    assert "Drip edge not yet 0.019 in aluminum not recorded yet" in text
    assert "Rafter tail R1 3 x 0.131 nails in two rows" in text
    assert "Pipe boot PB1 above the bath new not yet" in text
    assert "DAY WHAT BY RESULT April 23, 2026" in text


def test_a_limit_without_a_number_is_one_sentence(made: dict[str, Paper]) -> None:
    text = made["outside"].text
    assert "along laps: held in place; no spacing given" in text
    assert "a limit stands there; what it says was not read for this packet" in text
    assert "one of a limit" not in text
    assert "given: " not in text


def test_the_paper_is_dated_by_the_last_day_the_record_tells_of(made: dict[str, Paper]) -> None:
    for paper in made.values():
        assert str(paper.pdf.docinfo["/CreationDate"]).startswith("D:20260423")


def test_the_office_has_no_date_of_today_when_the_record_has_none(tmp_path: Path) -> None:
    text = "\n".join(line for line in UNDER_WAY.splitlines()[:2]) + "\ncause: {what: A nail.}\n"
    paper = papers(Office(tmp_path / "office", text).root)["outside"]
    assert str(paper.pdf.docinfo["/CreationDate"]).startswith("D:19800101")
