"""Reading ``job.yaml`` and ``office.yaml``: every problem of a file at once."""

from pathlib import Path

from packet.problems import Refused
from packet.reading import ReadFile, read_model
from packet.record.checks import faults
from packet.record.job import JobRecord, Office


def read_record(job_folder: Path) -> ReadFile[JobRecord]:
    """Return the record of a job folder.

    Raises:
        Refused: The file can't be read, does not fit the model, or contradicts itself.
    """
    read = read_model(job_folder / "job.yaml", JobRecord)
    found = faults(read.value)
    if found:
        raise Refused([read.problem(fault.code, fault.loc, fault.found, **fault.values) for fault in found])
    return read


def read_office(path: Path) -> ReadFile[Office]:
    """Return the office's own card.

    Raises:
        Refused: The file is missing or does not fit.
    """
    return read_model(path, Office)
