"""Papers held against other files: the photos, stages, codes, requirements and figures they name."""

from collections.abc import Collection, Iterator, Mapping

from packet.figure import Figure
from packet.photos.taken import PhotoSet
from packet.problems import Problem, nearest
from packet.reading import ReadFile
from packet.record.fault import Loc
from packet.record.job import JobRecord
from packet.record.papers import Inspection
from packet.reference import Library
from packet.reference.models import Stage

#: What a visit that names no stages looked at, at the earliest: work, once the roof was opened.
_OPENED = "started"


def paper_problems(
    record: ReadFile[JobRecord],
    library: Library,
    photos: PhotoSet,
    requirements: Collection[str],
    things: Collection[str],
) -> Iterator[Problem]:
    """Find what papers name and nothing carries, and visits from before there was anything to look at.

    Args:
        record: The job record.
        library: Its stages and codes.
        photos: The photos of the job.
        requirements: Ids of requirements.
        things: Ids of requirements and of everything a photo can show.
    """
    yield from _proves_nothing(record, things)
    yield from _photos_named(record, photos)
    yield from _stages_and_days(record, library)
    for loc, name in _requirements_named(record.value):
        if name.partition(":")[0] not in requirements:
            near = nearest(name, requirements) or ""
            yield record.problem("unknown-requirement", loc, name, nearest=near)
    codes = library.code_ids()
    for n, item in enumerate(record.value.code_items):
        if item.code and item.code not in codes:
            near = nearest(item.code, codes) or ""
            yield record.problem("unknown-code", ("code_items", n, "code"), item.code, nearest=near)


def figures_of_nothing(record: ReadFile[JobRecord], figures: Mapping[str, Figure]) -> Iterator[Problem]:
    """Find code items whose amount is a figure that the packet does not have."""
    for n, item in enumerate(record.value.code_items):
        if item.figure and item.figure not in figures:
            near = nearest(item.figure, figures) or ""
            yield record.problem("unknown-figure", ("code_items", n, "figure"), item.figure, nearest=near)


def _proves_nothing(record: ReadFile[JobRecord], things: Collection[str]) -> Iterator[Problem]:
    for n, document in enumerate(record.value.documents):
        for m, name in enumerate(document.proves):
            if name not in things:
                near = nearest(name, things) or ""
                yield record.problem("unknown-paper-proof", ("documents", n, "proves", m), name, nearest=near)


def _requirements_named(record: JobRecord) -> Iterator[tuple[Loc, str]]:
    for n, visit in enumerate(record.inspections):
        for m, correction in enumerate(visit.corrections):
            if correction.requirement:
                yield ("inspections", n, "corrections", m, "requirement"), correction.requirement


def _photos_named(record: ReadFile[JobRecord], photos: PhotoSet) -> Iterator[Problem]:
    entries = photos.log.value.photos if photos.log else ()
    known = {entry.id for entry in entries} | (photos.log.ids_typed if photos.log else frozenset())
    for loc, id in _photo_names(record.value):
        if id not in known:
            accepted = "a photo of photos.yaml" if known else "none: photos.yaml lists no photo"
            near = nearest(id, known) or ""
            yield record.problem("unknown-photo", loc, id, nearest=near, accepted=accepted)


def _photo_names(record: JobRecord) -> Iterator[tuple[Loc, str]]:
    for n, visit in enumerate(record.inspections):
        for m, correction in enumerate(visit.corrections):
            if correction.photo:
                yield ("inspections", n, "corrections", m, "photo"), correction.photo
    for n, item in enumerate(record.code_items):
        for name in ("photos_found", "photos_built"):
            for m, id in enumerate(getattr(item, name)):
                yield ("code_items", n, name, m), id


def _stages_and_days(record: ReadFile[JobRecord], library: Library) -> Iterator[Problem]:
    stages = {stage.id: stage for stage in library.stages()}
    for n, visit in enumerate(record.value.inspections):
        unknown = [(m, id) for m, id in enumerate(visit.stages) if id not in stages]
        for m, id in unknown:
            loc: Loc = ("inspections", n, "stages", m)
            near = nearest(id, stages) or ""
            yield record.problem("unknown-stage", loc, id, nearest=near, accepted=", ".join(stages))
        early = _too_early(visit, stages, record.value)
        if early:
            name, day = early
            yield record.problem(
                "inspection-before-work",
                ("inspections", n, "on"),
                str(visit.on),
                what=visit.what,
                name=name,
                day=day,
            )


def _too_early(visit: Inspection, stages: Mapping[str, Stage], record: JobRecord) -> tuple[str, str] | None:
    """Return the day of the work a visit should not come before, by its key and value; None when it fits."""
    earliest = [stages[id].earliest for id in visit.stages if id in stages] if visit.stages else [_OPENED]
    days = {name: getattr(record.dates, name) for name in earliest if name}
    broken = {name: day for name, day in days.items() if day and visit.on < day}
    if not broken:
        return None
    name = max(broken, key=lambda key: broken[key])
    return f"dates.{name}", str(broken[name])
