"""Reading ``job.yaml`` and ``office.yaml``: every problem of a file at once."""

import unicodedata
from dataclasses import replace
from pathlib import Path

from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model, read_what_holds
from packet.record.checks import faults
from packet.record.fault import Fault
from packet.record.job import JobRecord
from packet.record.office import Office


def read_record(job_folder: Path) -> tuple[ReadFile[JobRecord] | None, tuple[Problem, ...]]:
    """Return the record of a job folder as far as it holds, and all its problems.

    Problems are those of its fields, what it says against itself, and a number that is not its folder's name.
    A record with problems is there to be held against other files, not to be built.
    """
    read, problems = read_what_holds(job_folder / "job.yaml", JobRecord)
    if read is None:
        return None, problems
    found = [
        read.problem(fault.code, fault.loc, fault.found, **fault.values)
        for fault in faults(read.value)
        if not _follows(fault, read)
    ]
    number = read.value.job.number
    if same_name(number) != same_name(job_folder.name):
        found.insert(0, _another_number(read, number, job_folder.name))
    told = {(problem.line, problem.column) for problem in problems}
    return read, (*problems, *(p for p in found if (p.line, p.column) not in told))


def _follows(fault: Fault, read: ReadFile[JobRecord]) -> bool:
    """Tell whether a fault only follows from a refused part: what was typed there is not missing as well."""
    if fault.code == "cause-missing":
        return "cause" in read.document.value
    if fault.code == "roof-without-planes":
        typed = read.document.value["roof"]
        return bool(typed.get("forms") or typed.get("planes"))
    if fault.code == "goods-never-came":
        line = read.document.value["bought"][read.original(fault.loc)[1]]
        return "delivered" in line or "deliveries" in line
    named = fault.found.partition(".")[0]
    lost_planes = bool(read.ids_typed) and not read.value.roof
    names = fault.code in ("unknown-id", "wing-joins")
    return names and (named in read.ids_typed or (fault.code == "unknown-id" and lost_planes))


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
