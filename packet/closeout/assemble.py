"""The flow: record, reference and photos in; figures and review; the closeout out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from packet import __version__
from packet.closeout.answers import reasons_for_what_is_shown, unknown_subjects
from packet.closeout.goods import missing_figures, product_problems
from packet.closeout.model import Care, Closeout, Code, Head, Photo
from packet.closeout.papers import figures_of_nothing, paper_problems
from packet.figures.access import access
from packet.figures.deck import deck_plan
from packet.figures.faults import shape_faults
from packet.figures.make import make_figures
from packet.figures.plan import plan
from packet.figures.renailing import renailing
from packet.figures.rules import code_ids
from packet.figures.takeoff import take_off
from packet.photos.taken import PhotoSet, TakenPhoto, take_photos
from packet.problems import Problem, Refused, nearest
from packet.reading import ReadFile
from packet.record.checks import Loc, shown_ids
from packet.record.job import JobRecord
from packet.record.load import read_office, read_record
from packet.record.office import Office
from packet.reference import Library
from packet.reference.models import Whose
from packet.review.catalogue import BY_ID
from packet.review.duties import duties, standings
from packet.review.expected import expected
from packet.review.findings import findings
from packet.review.holds import HoldPoint, hold_points
from packet.review.judge import review
from packet.workspace import Workspace

#: Lists of documents under ``basis``, and whose documents they hold.
_RULES_BY_FIELD: tuple[tuple[str, Whose], ...] = (("programs", "program"), ("practices", "practice"))

#: What is read of a job folder, which may come from elsewhere: as with photos, a link is not followed.
RECORD_FILES = ("job.yaml", "photos.yaml")


@dataclass(frozen=True)
class JobFiles:
    """The files of a job and its office, read and held against each other."""

    library: Library
    office: Office
    record: ReadFile[JobRecord]
    photos: PhotoSet


def assemble(workspace: Workspace, job_folder: Path) -> tuple[Closeout, tuple[TakenPhoto, ...]]:
    """Return the closeout of a job, and its photos with their originals.

    Args:
        workspace: The office.
        job_folder: Folder with ``job.yaml`` and perhaps ``photos.yaml``.

    Raises:
        Refused: Every problem of every file at once.
    """
    files = read_files(workspace, job_folder)
    record, library = files.record, files.library
    closeout = _closeout(library, files.office, record.value, files.photos)
    problems = list(missing_figures(record, closeout.takeoff, library))
    problems += _explained_nothing(record, [finding.id for finding in closeout.findings])
    problems += figures_of_nothing(record, closeout.figures)
    problems += reasons_for_what_is_shown(record, closeout.results)
    if problems:
        raise Refused(problems)
    return closeout, files.photos.photos


def assemble_holds(
    workspace: Workspace, job_folder: Path, library: Library | None = None
) -> tuple[JobRecord, tuple[HoldPoint, ...]]:
    """Return the record of a job and its hold points, without what only pages need.

    Photos are not read to their ends; that an original is the one in the log is for ``packet check`` to say.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        library: The office's library, where many jobs share one; None to load it.

    Raises:
        Refused: Every problem of every file at once.
    """
    files = read_files(workspace, job_folder, whole_photos=False, library=library)
    record, library = files.record.value, files.library
    results = review(record, files.photos.photos, library, make_figures(record, library))
    return record, hold_points(record, results, library.stages(), library.requirement_notes())


def closed_record(job_folder: Path) -> JobRecord | None:
    """Return the record of a job that is closed; None where it is not, or has a mistake."""
    if (job_folder / RECORD_FILES[0]).is_symlink():
        return None
    record, problems = read_record(job_folder)
    closed = record and not problems and record.value.job.status == "closed"
    return record.value if record and closed else None


def read_files(
    workspace: Workspace, job_folder: Path, *, whole_photos: bool = True, library: Library | None = None
) -> JobFiles:
    """Return the files of a job.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        whole_photos: Read each original to its end and hold it against its digest in the log.
        library: The office's library where it was loaded already; it then names files of other jobs as used.

    Raises:
        Refused: Every problem of every file at once.
    """
    linked = [name for name in RECORD_FILES if (job_folder / name).is_symlink()]
    if linked:
        raise Refused([Problem("path-leaves-job", job_folder, found=name) for name in linked])
    problems: list[Problem] = []
    office: ReadFile[Office] | None = None
    photos: PhotoSet | None = None
    try:
        library = library or Library.load(workspace.shared_folders())
    except Refused as refused:
        problems += refused.problems
    try:
        office = read_office(workspace.office_file)
    except Refused as refused:
        problems += refused.problems
    record, found = read_record(job_folder)
    problems += found
    if record:
        problems += _wrong_shapes(record, found)
    try:
        photos = take_photos(job_folder, whole=whole_photos)
    except Refused as refused:
        problems += refused.problems
    if library and record and photos is not None:
        problems += _between_files(library, record, photos)
        problems += product_problems(record, library)
    if problems or not (library and office and record and photos is not None):
        raise Refused(problems)
    return JobFiles(library, office.value, record, photos)


def _between_files(library: Library, record: ReadFile[JobRecord], photos: PhotoSet) -> Iterator[Problem]:
    """Find names that nothing carries: codes, requirements, planes, sheets and details."""
    job = record.value
    places: list[tuple[Loc, str, Whose]] = []
    if job.basis:
        places.append((("basis", "code"), job.basis.code, "law"))
        for name, whose in _RULES_BY_FIELD:
            places += [(("basis", name, n), id, whose) for n, id in enumerate(getattr(job.basis, name))]
    known_codes = library.code_ids()
    for loc, id, whose in places:
        if id not in known_codes:
            accepted = ", ".join(sorted(code for code in known_codes if library.code(code).whose == whose))
            near = nearest(id, known_codes) or ""
            yield record.problem("unknown-code", loc, id, nearest=near, accepted=accepted)
    for id in job.not_recorded:
        if id.partition(":")[0] not in BY_ID:
            near = nearest(id, BY_ID) or ""
            yield record.problem_of_key("unknown-requirement", ("not_recorded", id), nearest=near)
    for n, way in enumerate(job.ways_out):
        if way.requirement.partition(":")[0] not in BY_ID:
            loc, near = ("ways_out", n, "requirement"), nearest(way.requirement, BY_ID) or ""
            yield record.problem("unknown-requirement", loc, way.requirement, nearest=near)
    planes = set(job.roof.plane_ids) if job.roof else set()
    planes |= record.ids_typed
    things = {*BY_ID, *shown_ids(job), *record.ids_typed}
    yield from paper_problems(record, library, photos, BY_ID, things)
    yield from unknown_subjects(record)
    if photos.log:
        for n, entry in enumerate(photos.log.value.photos):
            if entry.plane and entry.plane not in planes and (job.roof or not record.ids_typed):
                yield photos.log.problem(
                    "unknown-id", ("photos", n, "plane"), entry.plane, accepted=", ".join(sorted(planes))
                )
            for m, id in enumerate(entry.proves):
                if id not in things:
                    near = nearest(id, things) or ""
                    yield photos.log.problem("unknown-proof", ("photos", n, "proves", m), id, nearest=near)


def _wrong_shapes(record: ReadFile[JobRecord], found: Sequence[Problem]) -> list[Problem]:
    """Find shapes that make no roof; where the record's own checks refused a part of it, they wait."""
    if any(problem.at.startswith("roof") for problem in found):
        return []
    told = {(problem.line, problem.column) for problem in found}
    problems = [
        record.problem_of_key(fault.code, fault.loc, **fault.values)
        if fault.code == "unknown-edge"
        else record.problem(fault.code, fault.loc, fault.found, **fault.values)
        for fault in shape_faults(record.value)
    ]
    return [problem for problem in problems if (problem.line, problem.column) not in told]


def _explained_nothing(record: ReadFile[JobRecord], findings: Sequence[str]) -> Iterator[Problem]:
    """Find explanations of what was not found: a mistyped id would leave the finding open without a word."""
    for id in record.value.explained:
        if id not in findings:
            near = nearest(id, findings) or ""
            yield record.problem_of_key("unknown-finding", ("explained", id), nearest=near)


def _closeout(library: Library, office: Office, record: JobRecord, photos: PhotoSet) -> Closeout:
    figures = make_figures(record, library)
    deck = deck_plan(record, library, figures)
    again = renailing(record, library, figures)
    takeoff = take_off(record, library, figures)
    results = review(record, photos.photos, library, figures)
    needed = duties(record, photos.photos, library, figures)
    found = findings(record, photos.photos, figures, takeoff, deck, library, results, needed)
    geometry = plan(record, figures)
    of_items = (item.code for item in record.code_items if item.code)
    codes = tuple(_code(id, library) for id in dict.fromkeys((*code_ids(record), *of_items)))
    care = _care(record, library)
    safety = access(record, library, figures)
    stages = tuple(stage.id for stage in library.stages())
    return Closeout(
        packet=Head(program=__version__, reference=dict(library.digests())),
        office=office,
        record=record,
        codes=codes,
        figures=figures.by_id,
        results=results,
        findings=found,
        holds=hold_points(record, results, library.stages(), library.requirement_notes()),
        duties=needed,
        approvals=standings(record),
        stages=stages,
        expected=expected(record),
        photos=tuple(_photo(photo, record.property.time_zone) for photo in photos.photos),
        deck_plan=deck,
        renailing=again,
        takeoff=takeoff,
        geometry=geometry,
        care=care,
        access=safety,
    )


def _code(id: str, library: Library) -> Code:
    code = library.code(id)
    return Code(id=id, title=code.title, edition=code.edition, whose=code.whose, note=code.note or "")


def _care(record: JobRecord, library: Library) -> tuple[Care, ...]:
    """Return the care notes that fit this house."""
    built = record.property.built
    fitting = (
        (id, note)
        for id, note in library.care().items()
        if note.applies is None or built is None or built < note.applies.built_before
    )
    return tuple(
        Care(id=id, kind=note.kind, when=note.when, says=note.says, source=library.care_source(note))
        for id, note in fitting
    )


def _photo(photo: TakenPhoto, zone: str) -> Photo:
    """Return a photo as published; its file names come from its id and its bytes, not from typed text."""
    entry, facts = photo.entry, photo.facts
    name = f"photos/{entry.id.lower()}-{facts.sha256[:8]}"
    values = {field: getattr(entry, field) for field in type(entry).model_fields}
    values |= {"taken_at": photo.taken_at, "offset": photo.offset}
    return Photo.model_construct(
        **values,
        original_sha256=facts.sha256,
        width_px=facts.width_px,
        height_px=facts.height_px,
        time_from=photo.time_from,
        time_stated=photo.is_stated(zone),
        clock=photo.clock,
        large=f"{name}.jpg",
        small=f"{name}-small.jpg",
        has_place=facts.has_place,
    )
