"""The sheet before a job: pages for the phone and for paper, beside the packets."""

from dataclasses import dataclass
from pathlib import Path

from packet.build import Told, disk_refusal, epoch_of, write_site
from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.site.plan import open_questions, plan_files, plan_pages
from packet.site.publish import replacing
from packet.text import load_words
from packet.workspace import Workspace

#: Added to the job's name for its folder: a job's own folder is replaced whole by ``packet build``.
ENDING = "-plan"


@dataclass(frozen=True)
class Planned:
    """A sheet that was made.

    Attributes:
        front: Its front page.
        crew: The crew's page.
        pages: How many pages it has.
        questions: Sentences of what the record lacks.
    """

    front: Path
    crew: Path
    pages: int
    questions: tuple[str, ...]


def make_plan(workspace: Workspace, job_folder: Path, tell: Told) -> Planned:
    """Make the sheet of one job in the place of an earlier one, whole or not at all.

    It is made from the outside copy: a crew's phone carries nothing that is the office's alone.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        tell: Told each step as it begins.

    Raises:
        Refused: Problems in a file of the office, pages that make no whole site, or a disk that takes no
            more; an earlier sheet stays whole.
    """
    tell("record")
    target = workspace.out / f"{job_folder.name}{ENDING}"
    try:
        closeout, _ = assemble(workspace, job_folder)
        words = load_words(workspace.shared_folders())
        copy = redact(closeout, "outside")
        tell("plan")
        pages = plan_pages(copy, workspace.template_folders(), words)
        files = plan_files(copy, words)
        with replacing(workspace.out, target.name) as work:
            language = copy["packet"]["language"]
            epoch = epoch_of(closeout.record.dates.started)
            write_site(workspace, words["plan.name"], language, pages, files, epoch, work / "plan")
            _up(work / "plan", work)
    except OSError as error:
        refused = disk_refusal(error, target, workspace.out)
        if refused is None:
            raise
        raise refused from error
    questions = tuple(words[f"plan.questions.{question.id}"] for question in open_questions(copy))
    return Planned(target / "index.html", target / "crew.html", len(pages), questions)


def _up(folder: Path, into: Path) -> None:
    """Move what a folder holds one up; the engine builds beside itself, and needs a folder of its own."""
    for path in list(folder.iterdir()):
        path.rename(into / path.name)
    folder.rmdir()
