"""The demo job on paper, printed once for all tests that only look at it."""

import io
import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from math import hypot
from pathlib import Path
from typing import Any, NamedTuple

import pikepdf
import pytest
from pypdf import PdfReader

from packet.cli.main import status
from packet.paper.make import Printed, print_job
from packet.site.filters import make_filters
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import DEMO_JOB, NUMBER, ROOT


class Run(NamedTuple):
    """Letters set in one go, and where they begin, from the lower left corner of their page [pt]."""

    text: str
    left: float
    up: float


@dataclass(frozen=True)
class Paper:
    """One PDF: its bytes, what a reader sees on its pages, and what it is built of."""

    content: bytes

    @cached_property
    def pdf(self) -> pikepdf.Pdf:
        return pikepdf.open(io.BytesIO(self.content))

    @cached_property
    def pages(self) -> list[str]:
        """The text of each page, white space made one space."""
        return [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(self.content)).pages]

    @cached_property
    def lines(self) -> list[list[str]]:
        """The lines of each page."""
        reader = PdfReader(io.BytesIO(self.content))
        return [page.extract_text().splitlines() for page in reader.pages]

    def runs(self, page: int) -> list[Run]:
        """The runs of letters on a page, as they come in the file."""
        found: list[Run] = []

        def visit(text: str, cm: list[float], tm: list[float], *_: Any) -> None:
            if text.strip():
                left, up = tm[4], tm[5]
                found.append(Run(text, cm[0] * left + cm[2] * up + cm[4], cm[1] * left + cm[3] * up + cm[5]))

        PdfReader(io.BytesIO(self.content)).pages[page].extract_text(visitor_text=visit)
        return found

    @cached_property
    def text(self) -> str:
        return " ".join(self.pages)

    @cached_property
    def letters(self) -> str:
        """All text without white space, so that a line's end can't hide a word."""
        return re.sub(r"\s", "", self.text)

    @cached_property
    def written(self) -> bytes:
        """All that the file holds besides pictures, unpacked."""
        streams = (item for item in self.pdf.objects if isinstance(item, pikepdf.Stream))
        return b"\0".join(item.read_bytes() for item in streams if item.get("/Subtype") != "/Image")

    def structure(self) -> Iterator[pikepdf.Dictionary]:
        """Yield every element of the structure that a reader aloud follows."""
        waiting = [self.pdf.Root.StructTreeRoot.K]
        while waiting:
            found = waiting.pop()
            if isinstance(found, pikepdf.Array):
                waiting.extend(found)
            elif isinstance(found, pikepdf.Dictionary) and "/S" in found:
                yield found
                waiting.append(found.get("/K", pikepdf.Array()))

    def images(self, page: int) -> list[pikepdf.Stream]:
        """The pictures drawn on a page, those inside drawings too."""
        found, waiting = [], [self.pdf.pages[page].obj]
        while waiting:
            for item in waiting.pop().get("/Resources", {}).get("/XObject", {}).values():
                if item.Subtype == "/Image":
                    found.append(item)
                else:
                    waiting.append(item)
        return found

    def page_of_sheet(self, name: str) -> int:
        """The page on which a sheet's first-level head stands, counted from 1."""
        pages = {page.objgen: number for number, page in enumerate(self.pdf.pages, 1)}
        with self.pdf.open_outline() as outline:
            item = next(item for item in outline.root if item.title == name)
            return pages[item.destination[0].objgen]

    def smallest_letters(self) -> float:
        """The height of the smallest letters, drawings included [pt]."""
        found: list[float] = []

        def visit(text: str, cm: list[float], tm: list[float], _: Any, size: float) -> None:
            if text.strip():
                across, up = tm[2] * cm[0] + tm[3] * cm[2], tm[2] * cm[1] + tm[3] * cm[3]
                found.append(size * hypot(across, up))

        for page in PdfReader(io.BytesIO(self.content)).pages:
            page.extract_text(visitor_text=visit)
        return min(found)

    def data(self) -> bytes:
        """The attached data of the copy."""
        return bytes(self.attached()["packet.json"].EF.F.read_bytes())

    def attached(self) -> dict[str, pikepdf.Dictionary]:
        """The attached files by name, as the document's associated files."""
        return {str(file.UF): file for file in self.pdf.Root.get("/AF", ())}


def printed(root: Path) -> Printed:
    """Print the one job of an office."""
    workspace = Workspace(root)
    words = load_words(workspace.shared_folders())
    return print_job(workspace, root / "jobs" / NUMBER, words, make_filters(words))


def papers(root: Path) -> dict[str, Paper]:
    """Print the one job of an office and return its papers by name."""
    return {name: Paper(path.read_bytes()) for name, path in printed(root).papers.items()}


def demo_office(root: Path) -> Path:
    """Write an office with a copy of the demo job, photos included."""
    shutil.copytree(DEMO_JOB, root / "jobs" / NUMBER)
    (root / "shared").mkdir()
    shutil.copyfile(ROOT / "shared" / "office.yaml", root / "shared" / "office.yaml")
    return root


@pytest.fixture(scope="session")
def demo_root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return demo_office(tmp_path_factory.mktemp("paper") / "office")


@pytest.fixture(scope="session")
def demo_papers(demo_root: Path) -> dict[str, Paper]:
    return papers(demo_root)


@pytest.fixture(scope="session")
def outside(demo_papers: dict[str, Paper]) -> Paper:
    return demo_papers["outside"]


@pytest.fixture(scope="session")
def office(demo_papers: dict[str, Paper]) -> Paper:
    return demo_papers["office"]


@pytest.fixture(scope="session")
def card(demo_papers: dict[str, Paper]) -> Paper:
    return demo_papers["roof-card"]


@pytest.fixture
def command(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Callable[..., tuple[int, str, str]]:
    """Run ``packet pdf`` in a folder; returns its exit code and what it wrote to stdout and stderr."""

    def run(folder: Path, *arguments: str) -> tuple[int, str, str]:
        monkeypatch.chdir(folder)
        capsys.readouterr()
        code = status(["pdf", *arguments])
        said = capsys.readouterr()
        return code, said.out, said.err

    return run
