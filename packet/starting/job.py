"""The folder of a new job: a commented record that holds as it is, an empty log, a place for photos."""

import tempfile
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import Any

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.problems import Problem, Refused
from packet.starting.answers import flag_of
from packet.starting.habits import HABITS, Offer
from packet.starting.writing import filled, not_writable
from packet.workspace import Workspace

#: Begins the name of the folder that a job is made in before it takes its place; hidden ones are no jobs.
_UNFINISHED = ".new-"


def make_job(
    workspace: Workspace, answers: Mapping[str, str], offered: Sequence[Offer], confirmed: Collection[str]
) -> tuple[Path, Closeout]:
    """Make the folder of a new job, whole or not at all, and return it with what its record says.

    Args:
        workspace: The office.
        answers: Accepted answers by the key they go to; ``county`` may be absent.
        offered: The office's habits.
        confirmed: Ids of those that were confirmed for this job.

    Raises:
        Refused: The job is there already, can't be written, or does not hold with the office's own files.
    """
    target = workspace.jobs / answers["number"]
    try:
        with tempfile.TemporaryDirectory(prefix=_UNFINISHED, dir=workspace.jobs) as unfinished:
            folder = Path(unfinished) / target.name
            _write(folder, workspace, answers, offered, confirmed)
            closeout, _ = assemble(workspace, folder)
            if target.exists():  # made by somebody else since it was asked for
                raise Refused(Problem("job-exists", Path(flag_of("number")), found=target.name))
            folder.rename(target)
    except OSError as error:
        raise Refused(not_writable(target, error)) from None
    return target, closeout


def _write(
    folder: Path,
    workspace: Workspace,
    answers: Mapping[str, str],
    offered: Sequence[Offer],
    confirmed: Collection[str],
) -> None:
    values: dict[str, Any] = {
        "county": "",
        **answers,
        "schema": (workspace.root / ".schemas" / "job.schema.json").is_file(),
        "usual": {habit.id: None for habit in HABITS} | {offer.habit.id: offer.value for offer in offered},
        "confirmed": frozenset(confirmed),
    }
    (folder / "photos").mkdir(parents=True)
    for name in ("job.yaml", "photos.yaml"):
        (folder / name).write_text(filled(f"{name}.j2", values), encoding="utf-8", newline="\n")
