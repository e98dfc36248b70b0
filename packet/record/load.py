"""Reading ``job.yaml`` and ``office.yaml``: every problem of a file at once."""

import unicodedata
from dataclasses import replace
from pathlib import Path

from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model
from packet.record.checks import faults
from packet.record.job import JobRecord
from packet.record.office import Office


def read_record(job_folder: Path) -> ReadFile[JobRecord]:
    """Return the record of a job folder.

    Raises:
        Refused: The file can't be read, does not fit the model, contradicts itself, or gives another number
            than its folder's name.
    """
    read = read_model(job_folder / "job.yaml", JobRecord)
    found = [read.problem(fault.code, fault.loc, fault.found, **fault.values) for fault in faults(read.value)]
    number = read.value.job.number
    if same_name(number) != same_name(job_folder.name):
        found.insert(0, _another_number(read, number, job_folder.name))
    if found:
        raise Refused(found)
    return read


def read_office(path: Path) -> ReadFile[Office]:
    """Return the office's own card.

    Raises:
        Refused: The file is missing or does not fit.
    """
    try:
        return read_model(path, Office)
    except Refused as refused:
        raise Refused([_of_card(problem) for problem in refused.problems]) from None


def _of_card(problem: Problem) -> Problem:
    """Return the problem of a card, which a new office has still to fill in: such a key can't be left out."""
    field = Office.model_fields.get(problem.at)
    if problem.code != "no-value" or field is None or not field.is_required():
        return problem
    return replace(
        problem, code="card-empty", values={"key": problem.at, "example": str((field.examples or [""])[0])}
    )


def same_name(name: str) -> str:
    """Return a folder's name as every system tells names apart.

    Some disks take 26-041a and 26-041A for one name, and some store letters with accents taken apart.
    """
    return unicodedata.normalize("NFC", name).casefold()


def _another_number(read: ReadFile[JobRecord], number: str, folder: str) -> Problem:
    return read.problem("job-number-not-folder", ("job", "number"), number, folder=folder)
