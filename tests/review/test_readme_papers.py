"""README's papers, visits and ways out hold together, and say what they are said to say."""

from pathlib import Path

from tests.support.office import Office
from tests.support.pictures import picture
from tests.support.readme import readme_files

#: What the block leaves out: the job, its time zone, the deck it speaks of, and the goods an approval is for.
REST = """\
job: {number: 26-041, kind: section, status: under way}
cause: {what: Rot at the eave.}
dates: {started: 2026-03-16}
roof: {eave_height: 9 ft, planes: [{id: A, title: front, shape: rectangle, lower: 40 ft, run: 20 ft, pitch: "6:12", facing: south, at: [0 ft, 0 ft]}], edges: [{id: E1, kind: eave, sides: [A.lower]}]}
deck: {field_spacing: 7 in, panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}, sheets: [{id: S1, plane: A, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}]}
bought: [{id: SHINGLES, item: laminated shingle, use: shingles, unit: bundle}]
"""


def test_the_papers_of_the_readme_hold_together(tmp_path: Path) -> None:
    block = dict(readme_files())["a house on the coast"]
    office = Office(tmp_path / "office", REST + block.replace("1955}", "1955, time_zone: America/Chicago}"))
    picture(office.job / "photos" / "P24.jpg", taken="2026:03:16 15:00:00")
    office.log({"id": "P24", "file": "photos/P24.jpg", "stage": "deck", "shows": "Nails added."})
    duties = {duty.id: duty for duty in office.closeout().duties}
    certificate = duties["windstorm-certificate"]
    assert certificate.word == "needed"
    assert {check.key: check.word for check in certificate.days}["application_before_work"] == "in_order"
    assert office.result("deck-nail-field-spacing").way_out == 0
