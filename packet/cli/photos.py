"""``packet photos``: photos from a phone or a card into a job's folder and its log."""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from packet.cli.main import EXIT_BAD
from packet.cli.progress import one_line
from packet.cli.report import chosen, sentences, the_workspace
from packet.problems import Catalogue, Problem, message, shown
from packet.readers import READERS, Reader
from packet.snippet import FORBIDDEN, visible

if TYPE_CHECKING:
    from packet.photos.intake import TakenIn
    from packet.photos.newentry import NewPhoto

STAGES = ("before", "stripped", "deck", "dried-in", "edges", "covering", "done")
_LONGEST_NAME = 200
#: Photos listed that were there already.
_MOST_LISTED = 10


def _a_name(context: click.Context, parameter: click.Parameter, value: str | None) -> str | None:
    """Return a name as a log may hold it."""
    if value is None:
        return None
    name = value.strip()
    if not 0 < len(name) <= _LONGEST_NAME or FORBIDDEN.search(name) or re.search(r"[\t\r\n]", name):
        raise click.BadParameter(f"write a name on one line, at most {_LONGEST_NAME} characters.")
    return name


def _readers(
    context: click.Context, parameter: click.Parameter, value: str | None
) -> tuple[Reader, ...] | None:
    """Return readers given as one word with commas, in the order the program names them."""
    if value is None:
        return None
    words = {word.strip() for word in value.split(",")}
    if not words <= set(READERS):
        raise click.BadParameter(f"write one or more of {', '.join(READERS)}, with commas between them.")
    return tuple(reader for reader in READERS if reader in words)


@click.command(
    name="photos",
    help="Take photos from a phone or a card into a job and its log.\n\n"
    "FOLDER is a folder, looked through down to its last one, or a single file; there may be several. "
    "Originals are copied as they are; photos that lie in the job's own folder photos are logged where they "
    "lie.\n\n"
    "Example: packet photos 26-041 ~/phone",
)
@click.argument("job")
@click.argument("folders", metavar="FOLDER...", nargs=-1, required=True)
@click.option("--stage", type=click.Choice(STAGES), help="Stage of the work that all of them show.")
@click.option("--by", "taken_by", callback=_a_name, help="Who took all of them.")
@click.option("--set-by", callback=_a_name, help="Who writes these entries.")
@click.option("--readers", callback=_readers, help="Copies that may carry them, for example outside,office.")
@click.option("--dry-run", is_flag=True, help="Say what would be taken in, and write nothing.")
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(
    job: str,
    folders: tuple[str, ...],
    stage: str | None,
    taken_by: str | None,
    set_by: str | None,
    readers: tuple[Reader, ...] | None,
    dry_run: bool,
    quiet: bool,
) -> int:
    """Take photos in and return the exit code."""
    from packet.photos.intake import take_in
    from packet.photos.newentry import Said
    from packet.photos.sources import find_photos
    from packet.text import load_words

    workspace = the_workspace()
    folder = chosen(workspace, [job])[0]
    zone = _time_zone(folder)
    remarks = load_words(workspace.shared_folders())["photo_log"]
    catalogue = sentences()
    sources = find_photos(_at_home(name) for name in folders)
    with one_line(quiet=quiet) as show:
        taken = take_in(
            folder,
            sources,
            Said(stage, taken_by, set_by, readers),
            zone=zone,
            remarks=remarks,
            lock=workspace.out / f".lock-photos-{folder.name}",
            dry_run=dry_run,
            tell=lambda number, of, path: show(
                f"{folder.name}: photo {number} of {of}: {visible(path.name)[:40]}"
            ),
        )
    if not quiet:
        for line in _report(folder.name, taken, catalogue, stage=stage, dry_run=dry_run):
            click.echo(line)
    for line in _lines(taken.problems, catalogue, code=True):
        click.echo(line, err=True)
    return EXIT_BAD if taken.problems else 0


def _at_home(name: str) -> Path:
    """Return a path with ``~`` filled in, which not every terminal does; one of an unknown user stays."""
    try:
        return Path(name).expanduser()
    except RuntimeError:
        return Path(name)


def _time_zone(folder: Path) -> str:
    """Return the time zone of the house; the rest of the record may still be unfinished.

    Raises:
        Refused: The record can't be read, or gives no time zone.
    """
    from pydantic import TypeAdapter, ValidationError

    from packet.fields import TimeZone
    from packet.problems import Refused
    from packet.record.load import read_record
    from packet.yamlread import read_yaml

    house = read_yaml(folder / "job.yaml").value
    found = house.get("property") if isinstance(house, dict) else None
    try:
        zone: str = TypeAdapter(TimeZone).validate_python(
            found.get("time_zone") if isinstance(found, dict) else None
        )
    except ValidationError:
        raise Refused(read_record(folder)[1]) from None  # says what is wrong, with its place
    return zone


def _report(
    job: str, taken: "TakenIn", catalogue: Catalogue, *, stage: str | None, dry_run: bool
) -> Iterator[str]:
    """Yield what was taken in, what was not and why, and what comes next."""
    count = _photos(len(taken.new))
    yield f"{job}: {count} would be taken in; nothing was written" if dry_run else f"{job}: {count} taken in"
    for photo in taken.new:
        yield f"  {photo.id}  {_new(photo)}"
    if taken.known:
        yield f"already there: {_photos(len(taken.known))}"
        yield from _first(f"  {_shown(path)} is {id}" for path, id in taken.known)
    if taken.twice:
        yield f"the same picture again, taken in once: {_photos(len(taken.twice))}"
        yield from _first(f"  {_shown(path)} is {_shown(other)}" for path, other in taken.twice)
    if taken.passed_over:
        yield f"skipped: {len(taken.passed_over)}"
        yield from _lines(taken.passed_over, catalogue, code=False)
    if taken.new and not dry_run:
        place = f"{_shown(taken.log)} from line {taken.first_line}"
        lacks = "shows, the caption," if stage else "stage and shows, the caption,"
        yield f"Next: write {lacks} in {place}. Until then no copy carries them."


def _first(lines: Iterable[str]) -> Iterator[str]:
    """Yield the first lines of what is long when a phone's folder is taken in again, and how many more."""
    every = list(lines)
    yield from every[:_MOST_LISTED]
    if len(every) > _MOST_LISTED:
        yield f"  and {len(every) - _MOST_LISTED} more"


def _new(photo: "NewPhoto") -> str:
    """Return where a photo came from, where it lies, and when it was taken."""
    taken_at, offset = photo.facts.taken_at, photo.offset
    when = "no time in the photo"
    if taken_at:
        zone = {"camera": "", "property": " by the time zone of the house", None: " offset not known"}
        when = f"{taken_at:%Y-%m-%d %H:%M} {offset or ''}".strip() + zone[photo.offset_from]
    place = visible(photo.file)
    return f"{_shown(photo.source)} → {place}, {when}" if photo.copied else f"{place}, where it lay, {when}"


def _lines(problems: Iterable[Problem], catalogue: Catalogue, *, code: bool) -> Iterator[str]:
    """Yield a line for each file; its own lines are a picture's bytes and are not shown."""
    for problem in problems:
        says, write = message(problem, catalogue)
        label = f"error[{problem.code}]: " if code else ""
        yield f"{'' if code else '  '}{_shown(problem.file)}: {label}{says}. {write}".rstrip()


def _photos(count: int) -> str:
    return "1 photo" if count == 1 else f"{count} photos"


def _shown(path: Path) -> str:
    return visible(shown(path, Path.cwd()))
