"""Free area of attic vents: worked examples, and both conditions of the reduced area by edition."""

import json
from pathlib import Path

import pytest

from packet.calc.ventilation import attic_to_vents, free_area_of_run, required_free_area, share_of_area
from packet.cli.main import status
from packet.reference import Library
from packet.workspace import packaged
from tests.support.office import NUMBER, Office

#: 40 to 50 percent of the area required at 1/300 is high, a foot below the ridge.
SPLIT = {"vent_high_share_percent": 45, "vent_high_below_top_ft": 1}
HIGH = {"vent_high_share_percent": 60, "vent_high_above_eaves_ft": 5}
COLD, MILD, CLASS_II = {"climate_zone": 6}, {"climate_zone": 3}, {"vapor_retarder": "class II"}
CLASS_III = {"vapor_retarder": "class III"}


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("attic_sq_ft", "ratio", "sq_ft", "sq_in"),
    [
        (1500, 150, 10, 1440),  # a roofing contractor's page, how to calculate attic ventilation: seen
        (1500, 300, 5, 720),  # a vent maker's answer page: 5 sq ft, 360 sq in low and 360 high: seen
        (1200, 150, 8, 1152),  # a roofing supplier's page: 8 sq ft, 1152 sq in, 576 at each: seen
        (1200, 300, 4, 576),  # derived, the same attic at the reduced ratio
        (600, 150, 4, 576),  # another maker's page, a house of 20 by 30 ft: seen
    ],
)
def test_worked_examples(attic_sq_ft: int, ratio: int, sq_ft: int, sq_in: int) -> None:
    """Public worked examples of the two ratios."""
    assert required_free_area(attic_sq_ft, ratio) == sq_in == sq_ft * 144
    assert attic_to_vents(attic_sq_ft, sq_in) == ratio
    assert share_of_area(sq_in / 2, sq_in) == 50


@pytest.mark.parametrize(
    ("foot_sq_in", "sq_in"),
    [
        (9, 720),  # vent sizing article: 9 sq in a foot of soffit strip (seen, weight C)
        (10, 800),  # a listed vented soffit in a state association's list: 0.069 sq ft a foot (seen)
    ],
)
def test_a_soffit_gives_its_printed_area_by_the_foot(foot_sq_in: int, sq_in: int) -> None:
    """80 ft of eave by two printed values; 0.069 sq ft of it is 10 sq in, rounded."""
    assert free_area_of_run(80, foot_sq_in) == sq_in
    assert free_area_of_run(80, 0.069 * 144) == pytest.approx(800, abs=6)


@pytest.mark.parametrize(
    ("code", "facts", "ratio"),
    [
        # 2009, by the 2010 California Residential Code: 50 to 80 percent high, 3 ft above the eaves, or 1 perm.
        ("irc-2009", HIGH, 300),
        ("irc-2009", {**HIGH, "vent_high_share_percent": 50}, 300),
        ("irc-2009", {**HIGH, "vent_high_share_percent": 80}, 300),
        ("irc-2009", {**HIGH, "vent_high_share_percent": 49.9, **CLASS_III}, 150),
        ("irc-2009", {**HIGH, "vent_high_share_percent": 80.1, **CLASS_III}, 150),
        ("irc-2009", {**HIGH, "vent_high_above_eaves_ft": 2.9, **CLASS_III}, 150),
        ("irc-2009", {**HIGH, "vent_high_above_eaves_ft": 2.9, **CLASS_II}, 300),
        # 2012, by a reproduction of the section: one of the two conditions is enough.
        ("irc-2012", {**MILD, **SPLIT}, 300),
        ("irc-2012", {**COLD, **SPLIT, **CLASS_III}, 300),
        ("irc-2012", {**COLD, **CLASS_II, "vent_high_share_percent": 0}, 300),
        ("irc-2012", {**MILD, **CLASS_II, "vent_high_share_percent": 0}, 150),
        ("irc-2012", {**MILD, **SPLIT, "vent_high_share_percent": 50.1}, 150),
        ("irc-2012", {**MILD, **SPLIT, "vent_high_below_top_ft": 3.1}, 150),
        # 2021, by public notes that quote it: both conditions; the retarder in zones 6 to 8 alone.
        ("irc-2021", {**MILD, **SPLIT}, 300),
        ("irc-2021", {**COLD, **SPLIT, **CLASS_II}, 300),
        ("irc-2021", {**COLD, **SPLIT, **CLASS_III}, 150),
        ("irc-2021", {**COLD, **CLASS_II, "vent_high_share_percent": 39.9}, 150),
        ("irc-2021", {**MILD, **SPLIT, "vent_high_share_percent": 39.9}, 150),
        ("irc-2021", {**MILD, **SPLIT, "vent_high_share_percent": 50.1}, 150),
    ],
)
def test_ratio_by_edition(library: Library, code: str, facts: dict[str, object], ratio: int) -> None:
    """IRC R806.2: one over 150, and one over 300 by each edition's own conditions: seen (secondary)."""
    deciding = {row.value for row in library.rows([code], "ventilation.ratio", facts) if row.may_decide}
    assert min(deciding) == ratio
    assert {row.checked for row in library.rows([code], "ventilation.ratio", facts)} == {"seen_secondary"}


@pytest.mark.parametrize("code", ["irc-2009", "irc-2012", "irc-2021"])
def test_unknown_facts_leave_1_to_150_in_force_and_are_named(library: Library, code: str) -> None:
    """Nothing is known of zone, retarder or split: the area is not reduced."""
    match = library.match([code], "ventilation.ratio", {})
    assert [(row.value, row.may_decide, row.in_doubt) for row in match.rows] == [(150, True, False)]
    assert {item.row.value for item in match.cannot_tell} == {300}
    named = {fact for item in match.cannot_tell for fact in item.missing}
    assert {"vent_high_share_percent", "vapor_retarder"} <= named


@pytest.mark.parametrize(
    ("code", "facts"), [("irc-2015", {**MILD, **SPLIT}), ("irc-2018", {**MILD, **SPLIT})]
)
def test_an_exception_that_was_not_read_confirms_nothing_and_keeps_the_rule_from_accusing(
    library: Library, code: str, facts: dict[str, object]
) -> None:
    """IRC 2015 and 2018 R806.2: 1/150 seen (secondary), the exception from memory."""
    rows = {row.value: row for row in library.rows([code], "ventilation.ratio", facts)}
    assert (rows[150].may_decide, rows[150].in_doubt) == (True, True)
    assert (rows[300].may_decide, rows[300].checked) == (False, "memory")


def test_of_2024_nothing_was_read(library: Library) -> None:
    """IRC 2024 R806.2: from memory."""
    rows = library.rows(["irc-2024"], "ventilation.ratio", {**MILD, **SPLIT})
    assert rows
    assert not any(row.may_decide for row in rows)


@pytest.mark.parametrize(
    ("code", "required", "share"),
    [("irc-2012", 720, 50), ("irc-2021", 720, 50)],
)
def test_the_command_works_a_1500_sq_ft_attic(
    small_office: Office,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    code: str,
    required: int,
    share: int,
) -> None:
    """1,500 sq ft, 20 ft of ridge at 18 sq in and 40 ft of soffit at 9: 720 sq in, half of it high."""
    small_office.added(
        f"basis: {{code: {code}, authority: the town}}\n"
        "ventilation:\n"
        "  attic_area: 1500 sq ft\n"
        "  climate_zone: 3\n"
        "  vents:\n"
        "    - {id: VT1, what: ridge vent, place: high, state: new, length: 20 ft, free_sq_in_each: 18,"
        " below_top: 3 in}\n"
        "    - {id: VT2, what: soffit strip, place: low, state: reused, length: 40 ft, free_sq_in_each: 9}\n"
        "    - {id: VT3, what: gable louver, place: high, state: closed, pieces: 2, free_sq_in_each: 60}\n"
    )
    figures = _figures(small_office.root, monkeypatch, capsys)
    assert figures["vent.VT1.area"]["value"] == 360
    assert figures["vent.VT2.area"]["value"] == 360
    assert "vent.VT3.area" not in figures
    assert figures["ventilation.total"]["value"] == 720
    assert figures["ventilation.required_150"]["value"] == 1440
    assert figures["ventilation.required_300"]["value"] == 720
    assert figures["ventilation.high_share"]["value"] == share
    assert figures["ventilation.ratio"]["value"] == 300
    assert figures["ventilation.required"]["value"] == required


def _figures(
    root: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> dict[str, dict[str, object]]:
    monkeypatch.chdir(root)
    capsys.readouterr()
    assert status(["figures", NUMBER, "--json"]) == 0
    printed: dict[str, dict[str, object]] = json.loads(capsys.readouterr().out)
    return printed
