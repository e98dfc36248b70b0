"""A small roof whose worked area is a whole number of square feet, on the coast or elsewhere."""

from pathlib import Path

from packet.review.duties import DayCheck, Duty
from tests.support.office import Office

#: One plane of 40 ft by 25 ft on the slope (run 20 ft at 9:12): 1,000 sq ft. The worked piece is filled in.
SMALL = """\
job: {{number: 26-041, kind: {kind}, status: {status}}}
property: {{street: 18 Heron Lane, town: Pellam Reach, county: {county}, state: {state}, time_zone: America/Chicago}}
dates: {{started: 2026-04-13, dried_in: 2026-04-14, finished: 2026-04-15}}
cause: {{what: A puncture.}}
roof:
  eave_height: 9 ft
  planes: [{{id: A, title: front, shape: rectangle, lower: 40 ft, run: 20 ft, pitch: 9:12, facing: south, at: [0 ft, 0 ft]}}]
  edges: [{{id: E1, kind: eave, sides: [A.lower]}}]
basis: {{code: irc-2021, authority: building office}}
covering: {{areas: [{{id: A1, plane: A, outline: [[0 ft, 0 ft], [{along}, 0 ft], [{along}, 10 ft], [0 ft, 10 ft]]}}]}}
"""


def small_office(
    folder: Path,
    *,
    state: str = "Texas",
    county: str = "Galveston County",
    kind: str = "patch",
    status: str = "closed",
    along: str = "9.9 ft",
) -> Office:
    """Return an office whose job worked ``along`` times 10 ft of a roof of 1,000 sq ft."""
    text = SMALL.format(state=state, county=county, kind=kind, status=status, along=along)
    return Office(folder / "office", text)


def duty(office: Office, id: str) -> Duty:
    found = [item for item in office.closeout().duties if item.id == id]
    assert len(found) == 1, f"{len(found)} entries for {id}"
    return found[0]


def duty_ids(office: Office) -> list[str]:
    return [item.id for item in office.closeout().duties]


def day(office: Office, id: str, key: str) -> DayCheck:
    return next(check for check in duty(office, id).days if check.key == key)
