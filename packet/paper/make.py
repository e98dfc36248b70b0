"""One job on paper: a PDF for each copy, a roof card and a nailing card, whole or not at all."""

import json
import os
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from itertools import chain
from pathlib import Path
from typing import Any

from filelock import FileLock, Timeout

from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.drawings.deck_plan import deck_plans
from packet.drawings.roof_plan import roof_plan
from packet.paper.letters import printable, rewritten
from packet.paper.receipt import Receipt
from packet.paper.shown import Filters, shown
from packet.paper.templates import fonts_of
from packet.paper.typesetting import typeset
from packet.photos.prints import print_all
from packet.placing import placing
from packet.problems import Problem, Refused
from packet.readers import READERS
from packet.record.job import JobRecord
from packet.text import Words
from packet.workspace import Workspace

#: The paper of each copy comes from this template.
PACKET = "packet.typ"

#: Cards, by name. The roof card hangs in the house and the nailing card goes up on the roof, so both are made
#: from the copy for everybody's eyes.
CARDS, CARDS_OF = {"roof-card": "roof-card.typ", "nailing-card": "nailing-card.typ"}, "outside"

#: How long a run waits for another one that writes the same papers [s].
_PATIENCE_S = 60.0

Told = Callable[[str], None]


@dataclass(frozen=True)
class Printed:
    """What was made.

    Attributes:
        papers: The PDFs, by copy, the cards last.
        made: False when nothing had changed, or each of them was there already, byte for byte.
    """

    papers: Mapping[str, Path]
    made: bool


def papers_of(workspace: Workspace, job_folder: Path) -> dict[str, Path]:
    """Return where the papers of a job lie: beside its folder in ``out/``, which a build replaces whole."""
    names = (*READERS, *CARDS)
    return {name: workspace.out / f"{job_folder.name}-{name}.pdf" for name in names}


def print_job(
    workspace: Workspace,
    job_folder: Path,
    words: Words,
    filters: Filters,
    *,
    key_now: Callable[[], str] | None = None,
    tell: Told = lambda step: None,
) -> Printed:
    """Make the papers of one job.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        words: The text catalogue.
        filters: Filters that write values as the pages do.
        key_now: Returns a digest of all that output of the job depends on; without it, it is printed anew.
        tell: Told each step as it begins.

    Raises:
        Refused: Problems in a file of the office, a bad template, or a disk that takes no more; the papers
            made before stay whole.
    """
    papers = papers_of(workspace, job_folder)
    receipt = Receipt(workspace.out / ".cache" / "papers" / f"{job_folder.name}.json", papers, key_now)
    key = receipt.key()
    if receipt.holds(key):
        return Printed(papers, made=False)
    tell("record")
    closeout, photos = assemble(workspace, job_folder)
    epoch = _epoch(closeout.record)
    tell("photos")
    try:
        prints = print_all(job_folder, photos, workspace.out / ".cache" / "photos")
        made: dict[Path, bytes] = {}
        for reader in READERS:
            tell(reader)
            copy = redact(closeout, reader)
            files = _files(copy, prints, words, filters, workspace)
            made[papers[reader]] = typeset(PACKET, files, workspace.template_folders(), epoch)
            for name, template in CARDS.items() if reader == CARDS_OF else ():
                tell(name)
                made[papers[name]] = typeset(template, files, workspace.template_folders(), epoch)
        new = _write(made, workspace.out, job_folder.name)
        receipt.write(key)
        return Printed(papers, new)
    except OSError as error:
        values = {"reason": os.strerror(error.errno).lower() if error.errno else str(error)}
        raise Refused(Problem("output-unwritable", workspace.out, values=values)) from error


def _files(
    copy: Mapping[str, Any],
    prints: Mapping[str, Path],
    words: Words,
    filters: Filters,
    workspace: Workspace,
) -> dict[str, bytes | Path]:
    """Return all that the templates may read of one copy."""
    plain = json.loads(json.dumps(words, default=dict))
    data = {"copy": copy, **shown(copy, words, filters)}
    data, plain = rewritten([data, plain], printable(fonts_of(workspace.template_folders())))
    files: dict[str, bytes | Path] = {
        "packet.json": json.dumps(copy, indent=1, ensure_ascii=False, sort_keys=True).encode(),
        "shown.json": json.dumps(data).encode(),
        "words.json": json.dumps(plain).encode(),
    }
    if data["copy"]["geometry"]:
        files["drawings/roof-plan.svg"] = roof_plan(data["copy"]["geometry"], plain["drawing"]).encode()
    for plane, deck in deck_plans(data["copy"], plain["drawing"]).items():
        files[f"drawings/deck-{plane}.svg"] = deck.encode()
    return files | {f"photos/{photo['id']}.jpg": prints[photo["id"]] for photo in copy["photos"]}


def _write(made: Mapping[Path, bytes], out: Path, job: str) -> bool:
    """Put papers in their places once all of them are written; return whether any is another than before.

    Raises:
        Refused: Another run holds these papers (``job-busy``).
    """
    out.mkdir(parents=True, exist_ok=True)
    try:
        with FileLock(out / f".lock-pdf-{job}", timeout=_PATIENCE_S):
            new = {path: content for path, content in made.items() if _differs(path, content)}
            with ExitStack() as all_written:
                for path, content in new.items():
                    all_written.enter_context(placing(path)).write_bytes(content)
    except Timeout as error:
        raise Refused(Problem("job-busy", out, found=job)) from error
    return bool(new)


def _differs(path: Path, content: bytes) -> bool:
    return not path.is_file() or path.read_bytes() != content


def _epoch(record: JobRecord) -> int:
    """Return the time of the document: the last day the record tells of, never today."""
    last = max(_days(record), default=date(1980, 1, 1))
    return int(datetime.combine(last, time(), UTC).timestamp())


def _days(record: JobRecord) -> Iterator[date]:
    """Yield the days on which something was done or seen; the ends of promises are still to come."""
    entries = (record.found, record.temporary, record.detached, record.punch_list, record.callbacks)
    visits = (record.inspections, record.permissions, record.ways_out)
    for told in (record.dates, record.tested, *chain(*entries, *visits)):
        if told is not None:
            yield from (value for _, value in told if isinstance(value, date))
