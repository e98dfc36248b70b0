"""An office of its own in a temporary folder, with one job whose files a test may edit as text."""

import json
import shutil
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import yaml

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.problems import Problem, Refused
from packet.review.model import Result
from packet.workspace import Workspace
from tests.support.yamltext import place_of, with_value

ROOT = Path(__file__).resolve().parents[2]
DEMO_JOB = ROOT / "jobs" / "26-041"
NUMBER = "26-041"


class Office:
    """A folder with ``shared/office.yaml`` and one job; a change returns the office, so they chain."""

    def __init__(self, root: Path, record: str) -> None:
        self.root = root
        self.job = root / "jobs" / NUMBER
        self.job.mkdir(parents=True)
        self.file("shared/office.yaml", (ROOT / "shared" / "office.yaml").read_text(encoding="utf-8"))
        self.write(record)

    @property
    def workspace(self) -> Workspace:
        return Workspace(self.root)

    @property
    def record(self) -> Path:
        return self.job / "job.yaml"

    @property
    def text(self) -> str:
        return self.record.read_text(encoding="utf-8")

    def file(self, name: str, text: str) -> Path:
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
        return path

    def write(self, record: str) -> "Office":
        self.record.write_text(record, encoding="utf-8", newline="\n")
        return self

    def changed(self, path: str, value: str) -> "Office":
        """Put YAML text in the place of a value; a key that is not there yet is added."""
        return self.write(with_value(self.text, path, value))

    def replaced(self, old: str, new: str) -> "Office":
        assert self.text.count(old) == 1, f"{old!r} stands {self.text.count(old)} times in the record"
        return self.write(self.text.replace(old, new))

    def added(self, text: str) -> "Office":
        return self.write(f"{self.text.rstrip()}\n{text}\n")

    def log(self, *entries: Mapping[str, Any]) -> "Office":
        """Write ``photos.yaml``, one entry a line; JSON is YAML."""
        lines = [f"  - {json.dumps(entry, ensure_ascii=False)}" for entry in entries]
        (self.job / "photos.yaml").write_text("\n".join(["photos:", *lines, ""]), encoding="utf-8")
        return self

    def place(self, path: str, *, key: bool = False, file: str = "job.yaml") -> tuple[int, int]:
        """Line and column of a value, found with PyYAML's own marks and not by the program."""
        return place_of((self.job / file).read_text(encoding="utf-8"), path, key=key)

    def closeout(self) -> Closeout:
        return assemble(self.workspace, self.job)[0]

    def problems(self) -> tuple[Problem, ...]:
        try:
            self.closeout()
        except Refused as refused:
            return refused.problems
        raise AssertionError("nothing was refused")

    def places(self) -> list[tuple[str, str, int, int]]:
        """File, code, line and column of every problem."""
        return sorted((p.file.name, p.code, p.line, p.column) for p in self.problems())

    def result(self, requirement: str, subject: str = "") -> Result:
        found = [r for r in self.closeout().results if (r.requirement, r.subject) == (requirement, subject)]
        assert len(found) == 1, f"{len(found)} results for {requirement} {subject}"
        return found[0]

    def finding_ids(self) -> set[str]:
        return {finding.id for finding in self.closeout().findings}


def copy_job(office: Office, number: str) -> Path:
    """Copy the office's job under another number and return the copy's folder."""
    folder = Path(shutil.copytree(office.job, office.job.with_name(number)))
    (folder / "job.yaml").write_text(
        with_value(office.text, "job.number", number), encoding="utf-8", newline="\n"
    )
    return folder


def demo_text() -> str:
    return (DEMO_JOB / "job.yaml").read_text(encoding="utf-8")


def as_yaml(data: Mapping[str, Any]) -> str:
    return yaml.safe_dump(data, sort_keys=False, allow_unicode=True, width=10_000)


def walk(value: Any, path: tuple[str | int, ...] = ()) -> Iterable[tuple[tuple[str | int, ...], Any]]:
    """Yield every leaf of plain data with its path."""
    if isinstance(value, Mapping):
        for key, item in value.items():
            yield from walk(item, (*path, key))
    elif isinstance(value, list | tuple):
        for index, item in enumerate(value):
            yield from walk(item, (*path, index))
    else:
        yield path, value
