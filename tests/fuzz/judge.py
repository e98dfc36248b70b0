"""One case run through the program, and what must hold of any file whatever: no fault of ours, a clear answer, soon."""

import io
import os
import re
import shutil
import signal
import traceback
from collections import Counter
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from time import process_time
from types import FrameType

import yaml

from packet import reading
from packet.cli.main import status
from packet.photos.facts import PhotoUnreadable, read_facts
from packet.photos.renditions import render
from packet.problems import Refused
from packet.snippet import FORBIDDEN
from packet.workspace import Workspace, packaged
from packet.yamlread import parse_yaml
from tests.fuzz.cases import CARD, Demo

#: No file may keep the program longer than this [s of processor time].
MOST_S = 5.0

#: Longest report of any number of problems [characters]; a few files of a hundred problems each.
LONGEST_REPORT = 400_000

_PROBLEM = re.compile(
    r"^(?P<file>[^\n]+?)(?::(?P<line>\d+):(?P<column>\d+))?: error\[(?P<code>[a-z0-9-]+)\]: (?P<says>.*)$",
    re.M,
)
_LINE_BREAK = re.compile(r"\r\n|\n|\r")
_NULLS = ("", "~", "null", "Null", "NULL")


class TooSlow(BaseException):
    """A case took more processor time than any may; no ``except Exception`` may swallow it."""


@dataclass(frozen=True)
class Fault:
    """What went wrong.

    Attributes:
        kind: Which promise was broken.
        signature: Tells faults apart: one that shrinks to another signature is another fault.
        detail: Traceback or the words that show it.
    """

    kind: str
    signature: str
    detail: str


class Bench:
    """An office on disk that cases are laid into, one after another."""

    def __init__(self, folder: Path, demos: list[Demo]) -> None:
        self.folder = folder
        self.demos = {demo.name: demo for demo in demos}
        self.codes = set(
            yaml.safe_load((packaged("shared") / "words" / "problems.yaml").read_text(encoding="utf-8"))
        )
        self.seen: Counter[str] = Counter()
        self._runs = 0
        for demo in demos:
            for name, data in demo.files.items():
                self._put(demo.name, name, data)

    def _path(self, job: str, name: str) -> Path:
        office = self.folder / f"office {job}"
        return office / "shared" / CARD if name == CARD else office / "jobs" / job / name

    def _put(self, job: str, name: str, data: bytes) -> None:
        path = self._path(job, name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)

    def judge(self, job: str, files: Mapping[str, bytes], *, deep: bool = False) -> Fault | None:
        """Run changed files through ``packet check`` and the photo room.

        Args:
            job: The demo job the files belong to.
            files: Changed files by name.
            deep: Also fill every page of both copies when the record is accepted.
        """
        self._runs += 1
        if self._runs % 100 == 0:
            reading._read.cache_clear()  # a run of hours must not fill the memory with records
        for name, data in files.items():
            self._put(job, name, data)
        try:
            return self._judged(job, files, deep=deep)
        finally:
            for name in files:
                self._put(job, name, self.demos[job].files[name])

    def _judged(self, job: str, files: Mapping[str, bytes], *, deep: bool) -> Fault | None:
        office = self.folder / f"office {job}"
        begun = process_time()
        try:
            with _time_limit():
                code, said, error = _check(office)
                fault = self._answer(office, code, said, error)
                for name, data in files.items():
                    fault = fault or (
                        _photo(self._path(job, name), office)
                        if name.startswith("photos/")
                        else _same_values(data)
                    )
                if deep and code != 2 and not fault:
                    fault = _pages(office, job)
        except TooSlow as slow:
            return Fault(
                "too slow", f"too slow in {slow}", f"more than {MOST_S} s of processor time in {slow}"
            )
        self.seen[f"exit {code}"] += 1
        spent = process_time() - begun
        return fault or (Fault("too slow", "too slow", f"{spent:.1f} s") if spent > MOST_S else None)

    def _answer(self, office: Path, code: int, said: str, error: str) -> Fault | None:
        """Hold the exit code, the problems and their places against what was promised."""
        if code not in (0, 1, 2):
            return Fault("exit code", f"exit {code} {_last_frame(error)}", error)
        problems = list(_PROBLEM.finditer(error))
        self.seen.update({match["code"] for match in problems})
        if (code == 2) != bool(problems):
            return Fault("no reason", f"exit {code} with {len(problems)} problems", said + error)
        if len(error) > LONGEST_REPORT:
            return Fault("long report", "long report", f"{len(error)} characters: {error[:2000]}")
        if "Warning: " in error:
            return Fault("noise", f"noise {error.partition('Warning: ')[2][:20]}", error)
        hidden = FORBIDDEN.search(said + error)
        if hidden:
            return Fault("raw character", f"raw character U+{ord(hidden[0]):04X}", said + error)
        for match in problems:
            if match["code"] not in self.codes or len(match["says"]) < 10:
                return Fault("no sentence", f"no sentence for {match['code']}", match[0])
        placed = (match for match in problems if match["line"])
        return next((fault for match in placed if (fault := _place_fault(office, match))), None)


def _check(office: Path) -> tuple[int, str, str]:
    """Return exit code, words and errors of ``packet check`` in a folder."""
    before = Path.cwd()
    out, err = io.StringIO(), io.StringIO()
    os.chdir(office)
    try:
        with redirect_stdout(out), redirect_stderr(err):
            code = status(["check"])
    finally:
        os.chdir(before)
    return code, out.getvalue(), err.getvalue()


def _place_fault(office: Path, match: re.Match[str]) -> Fault | None:
    """Return a fault when a problem points at no character of its file."""
    path = office / match["file"]
    text = (
        path.read_bytes().decode("utf-8", errors="replace").removeprefix("\ufeff") if path.is_file() else ""
    )
    lines = _LINE_BREAK.split(text)
    line, column = int(match["line"]), int(match["column"])
    if 1 <= line <= len(lines) and 1 <= column <= len(lines[line - 1]) + 1:
        return None
    return Fault("place", f"place of {match['code']}", f"{match[0]}\nthe file has {len(lines)} lines")


def _same_values(data: bytes) -> Fault | None:
    """Return a fault when a file that is accepted holds other values here than another reader finds in it."""
    path = Path("case.yaml")
    try:
        document = parse_yaml(data, path)
    except Refused:
        return None
    other = yaml.load(data.decode("utf-8").removeprefix("\ufeff"), Loader=_Nulls)  # noqa: S506 (text only)
    if document.value != other:
        return Fault("values", "values differ from another reader", f"{document.value!r}\n{other!r}"[:4000])
    return None


class _Nulls(yaml.CBaseLoader):
    """PyYAML's reader of plain text, with a plain empty word as no value."""

    def construct_scalar(self, node: yaml.ScalarNode) -> str | None:  # type: ignore[override]
        return None if node.style in (None, "") and node.value in _NULLS else super().construct_scalar(node)


def _photo(path: Path, office: Path) -> Fault | None:
    """Read the facts of a photo and make its copies; a picture may be refused, and nothing else."""
    cache = office / "renditions"
    cache.mkdir(exist_ok=True)
    noise = io.StringIO()
    try:
        with redirect_stderr(noise):
            facts = read_facts(path)
            render(path, facts.sha256, cache)
    except PhotoUnreadable:
        pass
    except Exception:
        trace = traceback.format_exc()
        return Fault("photo", f"photo {_last_frame(trace)}", trace)
    finally:
        shutil.rmtree(cache)
    said = noise.getvalue()
    return Fault("noise", f"noise {said.partition('Warning: ')[2][:20]}", said) if said else None


def _pages(office: Path, job: str) -> Fault | None:
    """Fill every page and draw the roof: a record that the check takes must be one that can be built."""
    from packet.closeout.assemble import assemble
    from packet.closeout.redact import redact
    from packet.drawings.deck_plan import deck_plans
    from packet.drawings.roof_plan import roof_plan
    from packet.readers import READERS
    from packet.site.pages import make_pages
    from packet.text import load_words

    workspace = Workspace(office)
    try:
        closeout, _ = assemble(workspace, office / "jobs" / job)
        words = load_words(workspace.shared_folders())
        for reader in READERS:
            copy = redact(closeout, reader)
            make_pages(copy, workspace.template_folders(), words)
        if copy["geometry"]:
            roof_plan(copy["geometry"], words["drawing"], narrow=False)
            for narrow in (False, True):
                deck_plans(copy, words["drawing"], narrow=narrow)
    except Exception:
        trace = traceback.format_exc()
        return Fault("pages", f"pages {_last_frame(trace)}", trace)
    return None


def _last_frame(trace: str) -> str:
    """Return error type and innermost place in the program of a traceback, to tell faults apart."""
    frames: Iterator[str] = reversed(re.findall(r'File "[^"]*?(packet/[^"]+", line \d+)', trace))
    kinds = re.findall(r"^([\w.]+(?:Error|Exception|Refused|Exit|Interrupt)?)(?::|$)", trace, re.M)
    return f"{kinds[-1] if kinds else 'unknown'} at {next(frames, 'no frame of ours')}"


@contextmanager
def _time_limit() -> Iterator[None]:
    """Break off what takes too long; the limit counts processor time, since the machine may be busy."""

    def stop(number: int, frame: FrameType | None) -> None:
        where = f"{frame.f_code.co_filename}:{frame.f_lineno}" if frame else "nowhere"
        raise TooSlow(where.rpartition("site-packages/")[2])

    before = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, MOST_S)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)
