"""What a contractor is likely to mistype, held against the demo record."""

import pytest

from packet.located import read_catalogue
from packet.problems import Problem, message, render_all
from packet.workspace import packaged
from tests.support.office import Office
from tests.support.records import fits_any_pitch

CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")


def only(office: Office) -> Problem:
    problems = office.problems()
    assert len(problems) == 1, problems
    return problems[0]


@pytest.mark.parametrize(
    ("path", "value", "code"),
    [
        ("deck.nail.size", "8d", "penny-size"),
        ("deck.nail.size", "8d ring shank", "penny-size"),
        ("roof.old.deck_nail", "10d", "penny-size"),
        ("deck.nail.size", "2-3/8", "no-unit"),
        ("deck.edge_spacing", "6", "no-unit"),
        ("roof.planes.MS.run", "12", "no-unit"),
        ("roof.planes.MS.pitch", "6", "no-unit"),
        ("basis.wind_speed", "130", "no-unit"),
        ("bought.SHINGLES.cover_each", "32.8", "no-unit"),
        ("covering.nail.length", "1-1/2", "no-unit"),
        ("roof.planes.MS.pitch", "steep", "bad-pitch"),
        ("deck.edge_spacing", "-6 in", "negative"),
        ("deck.edge_spacing", "11 ft", "out-of-range"),
        ("covering.nails_each", "six", "bad-count"),
        ("bought.SHINGLES.delivered", "some", "bad-quantity"),
        ("dates.started", "03/16/2026", "bad-date"),
        ("dates.started", "2026-02-30", "bad-date"),
        ("property.time_zone", "Eastern", "bad-time-zone"),
        ("property.time_zone", "../../etc/passwd", "bad-time-zone"),
        ("money.paid", "$4,612", "bad-money"),
        ("deck.sheets.0.id", "sheet one", "bad-id"),
        ("job.kind", "patchh", "not-one-of"),
        ("roof.planes.MS.shape", "trapeze", "not-one-of"),
        ("documents.D2.readers.0", "everyone", "not-one-of"),
        ("roof.edges.E5.sides", "[]", "too-few-entries"),
        ("complaint", "[a, b]", "wrong-kind"),
        ("cause.what", "", "no-value"),
    ],
)
def test_a_value_is_refused_where_it_stands(job_office: Office, path: str, value: str, code: str) -> None:
    stood = job_office.place(path)
    problem = only(job_office.changed(path, value))
    assert problem.code == code
    assert problem.line == stood[0]
    if value:
        assert (problem.line, problem.column) == job_office.place(path)
        assert job_office.text.splitlines()[problem.line - 1][problem.column - 1 :].startswith(value)


def test_a_bare_number_is_answered_with_the_accepted_forms(job_office: Office) -> None:
    says, write = message(only(job_office.changed("deck.edge_spacing", "6")), CATALOGUE)
    assert '"6" has no unit' in says
    assert "6 in" in write


def test_a_penny_name_is_answered_with_length_by_shank(job_office: Office) -> None:
    says, write = message(only(job_office.changed("deck.nail.size", "8d")), CATALOGUE)
    assert '"8d"' in says
    assert " x " in write


def test_a_number_sign_that_yaml_takes_for_a_comment_is_explained(job_office: Office) -> None:
    office = job_office.replaced("  product: No. 30 felt\n", "  product: #30\n")
    problem = only(office)
    assert (problem.code, problem.found) == ("hash-starts-comment", "#30")
    assert office.text.splitlines()[problem.line - 1][problem.column - 1 :] == "#30"
    assert "#30" in message(problem, CATALOGUE)[1]
    assert "quotation marks" in message(problem, CATALOGUE)[1]


@pytest.mark.parametrize(
    ("old", "new", "nearest"),
    [
        ("  edge_spacing: 6 in\n", "  edge_spaceing: 6 in\n", "edge_spacing"),
        ("complaint: A", "complaints: A", "complaint"),
        ("  county: Kestrel", "  County: Kestrel", "county"),
        ("span_rating: 32/16", "span-rating: 32/16", "span_rating"),
    ],
)
def test_an_unknown_key_is_pointed_at_with_the_nearest_one(
    job_office: Office, old: str, new: str, nearest: str
) -> None:
    office = job_office.replaced(old, new)
    problem = only(office)
    line = office.text.splitlines()[problem.line - 1]
    assert (problem.code, problem.values["nearest"]) == ("unknown-key", nearest)
    assert line[problem.column - 1 :].startswith(new.strip().partition(":")[0])


def test_a_key_with_no_near_one_lists_the_keys_still_free(small_office: Office) -> None:
    office = small_office.changed("cause", "{what: A nail., weather: wet}")
    problem = only(office)
    assert problem.values["nearest"] == ""
    assert problem.values["accepted"] == "how_known"


@pytest.mark.parametrize("part", ["job", "property"])
def test_job_and_property_must_be_there(small_office: Office, part: str) -> None:
    lines = [line for line in small_office.text.splitlines() if not line.startswith(f"{part}:")]
    problem = only(small_office.write("\n".join(lines)))
    assert (problem.code, problem.at) == ("missing", part)


@pytest.mark.parametrize("status", ["closed", "under way"])
def test_a_roof_that_was_opened_has_a_cause(small_office: Office, status: str) -> None:
    without = "\n".join(line for line in small_office.text.splitlines() if not line.startswith("cause:"))
    problem = only(small_office.write(without).changed("job.status", status))
    assert (problem.code, problem.at, problem.found) == ("cause-missing", "job.status", status)


def test_a_planned_job_may_not_know_its_cause(small_office: Office) -> None:
    without = "\n".join(line for line in small_office.text.splitlines() if not line.startswith("cause:"))
    assert small_office.write(without).changed("job.status", "planned").closeout().record.cause is None


def test_everything_else_may_be_absent(small_office: Office) -> None:
    closeout = small_office.closeout()
    assert closeout.geometry is None
    assert {result.word for result in closeout.results} <= {"not_recorded", "does_not_apply"}


def test_a_slope_and_a_job_number_stay_the_text_that_was_typed(job_office: Office) -> None:
    office = fits_any_pitch(job_office).changed("roof.planes.MS.pitch", "4:12").changed("job.number", "1.10")
    office.job = office.job.rename(office.job.with_name("1.10"))
    record = office.closeout().record
    assert record.roof
    assert record.roof.planes[0].pitch.text == "4:12"
    assert record.roof.planes[0].pitch.rise_in_12 == 4
    assert record.job.number == "1.10"


def test_the_report_shows_the_line_with_a_caret_under_the_value(job_office: Office) -> None:
    office = job_office.changed("deck.edge_spacing", "6")
    line, column = office.place("deck.edge_spacing")
    shown = render_all(office.problems(), CATALOGUE, root=office.root).splitlines()
    assert shown[0].startswith(f"jobs/26-041/job.yaml:{line}:{column}: error[no-unit]: ")
    assert shown[1].endswith("edge_spacing: 6")
    assert shown[2].index("^") - shown[1].index("6", shown[1].index("spacing")) == 0
    assert shown[3].strip().startswith("at deck.edge_spacing.")
    assert shown[-1] == "1 error in 1 file."
