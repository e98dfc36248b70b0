"""Take any one photo or value out of the whole re-roof: exactly the rows it proved change.

What each value proves was read off by hand and stands in ``removed-from-26-052.yaml``; whatever is not named
there proves nothing. ``python -m tests.review.test_remove_one`` prints that file anew, to be read again.
"""

from collections.abc import Mapping, Sequence
from pathlib import Path

import pytest
import yaml

from packet.figures.make import make_figures
from packet.photos.taken import TakenPhoto, take_photos
from packet.record.checks import faults
from packet.record.job import JobRecord
from packet.record.load import read_record
from packet.reference import Library
from packet.review.judge import review
from packet.review.model import Result
from packet.workspace import packaged
from tests.support.office import ROOT
from tests.support.removing import removals

JOB = ROOT / "jobs" / "26-052"
HELD = Path(__file__).parent / "removed-from-26-052.yaml"

Rows = Mapping[str, Result]


class Job:
    """The whole re-roof, read once."""

    def __init__(self) -> None:
        read, problems = read_record(JOB)
        assert read is not None
        assert not problems
        self.record = read.value
        self.photos = take_photos(JOB).photos
        self.library = Library.load([packaged("shared")])

    def rows(self, record: JobRecord, photos: Sequence[TakenPhoto]) -> Rows:
        figures = make_figures(record, self.library)
        results = review(record, photos, self.library, figures)
        return {f"{result.requirement}:{result.subject}".rstrip(":"): result for result in results}

    def changed(self, before: Rows, record: JobRecord) -> list[str]:
        """Return the rows whose word changed, that came or that went; a row that says the same has not."""
        after = self.rows(record, self.photos)
        return sorted(
            name
            for name in {*before, *after}
            if (before[name].word if name in before else "") != (after[name].word if name in after else "")
        )


@pytest.fixture(scope="module")
def job() -> Job:
    return Job()


@pytest.fixture(scope="module")
def before(job: Job) -> Rows:
    return job.rows(job.record, job.photos)


def test_each_photo_taken_out_changes_exactly_the_rows_it_stands_behind(job: Job, before: Rows) -> None:
    for photo in job.photos:
        id = photo.entry.id
        after = job.rows(job.record, [other for other in job.photos if other is not photo])
        changed = {name for name in {*before, *after} if before.get(name) != after.get(name)}
        assert changed == {name for name, row in before.items() if id in (*row.evidence, *row.late)}, id
        for name in changed:
            alone = before[name].evidence == (id,) and not before[name].papers
            if alone and before[name].word in ("meets", "not_verified"):
                assert after[name].word == "not_recorded", (id, name)
                assert after[name].open, (id, name)


def test_the_photos_prove_every_row_that_wants_one(before: Rows) -> None:
    bare = [n for n, row in before.items() if row.word == "meets" and not (row.evidence or row.papers)]
    assert bare == []


def test_each_value_taken_out_changes_exactly_the_rows_it_proved(job: Job, before: Rows) -> None:
    held = yaml.safe_load(HELD.read_text(encoding="utf-8"))
    assert removed(job, before) == held


def removed(job: Job, before: Rows) -> dict[str, list[str]]:
    """Return what changes with each value, where anything does; a record that would be refused is left out."""
    found = {}
    for path, record in removals(job.record):
        if not faults(record):
            changed = job.changed(before, record)
            if changed:
                found[path] = changed
    return found


if __name__ == "__main__":
    whole = Job()
    print(yaml.safe_dump(removed(whole, whole.rows(whole.record, whole.photos)), sort_keys=False, width=110))
