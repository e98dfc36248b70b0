"""README's deck: what it says the program answers, it answers."""

from pathlib import Path

from tests.support.office import Office
from tests.support.readme import readme_files

#: What the block leaves out.
REST = """\
job: {number: 26-041, kind: patch, status: under way}
property: {street: 9 Pelican Walk, town: Shell Point, state: South Carolina, time_zone: America/New_York}
cause: {what: Rot at the eave.}
basis: {code: irc-2021, authority: Shell Point building office}
"""


def test_the_deck_of_the_readme_says_how_far_to_cut_and_counts_its_nails(tmp_path: Path) -> None:
    """Rafters stand 24 in apart from the left end: 16 ft 8 in to 21 ft 8 in lies between those at 16 and 22 ft.

    A sheet of 8 ft bears on five of them, with nails each 6 in along 4 ft: nine on each.
    """
    office = Office(tmp_path / "office", REST + dict(readme_files())["rot at the eave"])
    closeout = office.closeout()
    assert closeout.deck_plan
    item = closeout.deck_plan.planes[0].cut_outs[0]
    told = [(step.side, step.reason, closeout.figures[step.added].value * 12) for step in item.steps]
    assert told == [("left", "sound_framing", 8), ("right", "sound_framing", 4)]
    assert closeout.figures["sheet.S1.nails"].value == 5 * 9


def test_old_framing_of_the_readme_is_written_as_measured(tmp_path: Path) -> None:
    block = dict(readme_files())["rot at the eave"]
    places = "at: [14 ft 3 in, 16 ft 3 in, 18 ft 2 in, 20 ft, 21 ft 10 in, 24 ft], unsound: [16 ft 3 in]"
    measured = block.replace("first: 0 ft", places)
    closeout = Office(tmp_path / "office", REST + measured).closeout()
    assert closeout.deck_plan
    item = closeout.deck_plan.planes[0].cut_outs[0]
    added = {step.side: closeout.figures[step.added].value * 12 for step in item.steps}
    assert added == {"left": 2 * 12 + 5, "right": 2}
