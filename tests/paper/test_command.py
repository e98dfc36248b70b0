"""``packet pdf``: what it makes and where, and what it leaves alone."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from packet.build import build
from packet.paper import make
from packet.workspace import Workspace
from tests.conftest import SMALLEST
from tests.paper.conftest import Paper, printed
from tests.support.office import NUMBER, Office
from tests.support.pictures import picture

Command = Callable[..., tuple[int, str, str]]
NAMES = [f"{NUMBER}-{name}.pdf" for name in ("nailing-card", "office", "outside", "roof-card")]


@pytest.fixture
def small(tmp_path: Path) -> Office:
    return Office(tmp_path / "an office # ü", SMALLEST)


def pdfs(office: Office) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in (office.root / "out").glob("*.pdf")}


def test_it_says_what_it_made_and_where(small: Office, command: Command) -> None:
    code, out, err = command(small.root, NUMBER)
    assert (code, err) == (0, "")
    first, *rest = out.splitlines()
    assert first.startswith(f"{NUMBER}: printed in ")
    assert rest == [
        f"  outside      out/{NUMBER}-outside.pdf",
        f"  office       out/{NUMBER}-office.pdf",
        f"  roof-card    out/{NUMBER}-roof-card.pdf",
        f"  nailing-card out/{NUMBER}-nailing-card.pdf",
    ]
    assert sorted(pdfs(small)) == NAMES
    assert command(small.root, "-q") == (0, "", "")
    assert command(small.root)[1].startswith(f"{NUMBER}: unchanged in ")


def test_an_unchanged_job_is_not_printed_again(
    small: Office, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "printed in" in command(small.root)[1]
    before = pdfs(small)
    with monkeypatch.context() as patched:
        patched.setattr(make, "assemble", lambda *_: pytest.fail("read again"))
        assert "unchanged in" in command(small.root)[1]
    assert pdfs(small) == before


def test_whatever_changed_is_printed_again(small: Office, command: Command) -> None:
    command(small.root)
    before = pdfs(small)
    (small.root / "out" / NAMES[0]).write_bytes(b"cut short")
    assert "printed in" in command(small.root)[1]
    (small.root / "out" / NAMES[2]).unlink()
    assert "printed in" in command(small.root)[1]
    assert pdfs(small) == before
    small.file("templates/paper/sections/photos.typ", "Prints are sold at the desk.\n")
    assert "printed in" in command(small.root)[1]
    small.changed("cause.what", "Another cause.")
    assert "printed in" in command(small.root)[1]
    assert "unchanged in" in command(small.root)[1]
    next((small.root / "out" / ".cache" / "papers").iterdir()).write_text("{")
    assert "unchanged in" in command(small.root)[1]  # set anew, and the same bytes


def test_a_record_that_changed_while_it_was_printed_is_printed_again(
    small: Office, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    typeset = make.typeset

    def slowly(*arguments: Any) -> bytes:
        small.write(SMALLEST.replace("A nail backed out.", "The other cause."))
        return typeset(*arguments)

    with monkeypatch.context() as patched:
        patched.setattr(make, "typeset", slowly)
        command(small.root)
    assert "printed in" in command(small.root)[1]
    assert "The other cause." in Paper(pdfs(small)[NAMES[2]]).text


def test_packet_and_paper_leave_each_other_alone(small: Office) -> None:
    workspace = Workspace(small.root)
    printed(small.root)
    papers = pdfs(small)
    assert build(workspace, small.job).made
    assert pdfs(small) == papers
    pages = sorted(path for path in (small.root / "out" / NUMBER).rglob("*"))
    printed(small.root)
    assert sorted(path for path in (small.root / "out" / NUMBER).rglob("*")) == pages
    assert not build(workspace, small.job).made


def test_a_bad_record_leaves_the_papers_made_before(small: Office, command: Command) -> None:
    printed(small.root)
    before = pdfs(small)
    small.replaced("kind: patch", "kind: pach")
    code, _, err = command(small.root)
    assert code == 2
    assert 'Did you mean "patch"?' in err
    assert f"Nothing was built for {NUMBER}" in err
    assert pdfs(small) == before


def test_a_run_that_fails_while_it_writes_leaves_whole_papers(
    small: Office, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    printed(small.root)
    before = pdfs(small)
    small.changed("cause.what", "Another cause.")
    write, written = Path.write_bytes, []

    def full(path: Path, content: bytes) -> int:
        if path.name.endswith(".part"):
            written.append(path)
            if len(written) == 2:
                write(path, content[:1000])
                raise OSError(28, "No space left on device")
        return write(path, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    code, _, err = command(small.root)
    monkeypatch.undo()
    assert code == 2
    assert "error[output-unwritable]" in err
    assert "no space left on device" in err
    assert pdfs(small) == before
    assert printed(small.root).made
    assert all(pdfs(small)[name] != before[name] for name in NAMES if "card" not in name)
    assert not list((small.root / "out").glob(".*.part"))


def test_a_photo_that_is_no_picture_is_named_in_the_log(small: Office, command: Command) -> None:
    picture(small.job / "photos" / "P01.jpg")
    whole = (small.job / "photos" / "P01.jpg").read_bytes()
    (small.job / "photos" / "P01.jpg").write_bytes(whole[: len(whole) // 2])
    small.log({"id": "P01", "file": "photos/P01.jpg", "stage": "done", "shows": "Done."})
    code, _, err = command(small.root)
    assert code == 2
    assert f"jobs/{NUMBER}/photos.yaml:2:" in err
    assert "error[photo-unreadable]" in err


def test_a_second_run_waits_for_the_first_and_then_gives_up(
    small: Office, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    from filelock import FileLock

    monkeypatch.setattr(make, "_PATIENCE_S", 0.1)
    (small.root / "out").mkdir()
    with FileLock(small.root / "out" / f".lock-pdf-{NUMBER}"):
        code, _, err = command(small.root)
    assert code == 2
    assert "error[job-busy]" in err


def test_an_upright_photo_and_a_wide_one_are_printed_whole(small: Office) -> None:
    picture(small.job / "photos" / "P01.jpg", size=(400, 1600))
    picture(small.job / "photos" / "P02.jpg", size=(3000, 500))
    small.log(
        *(
            {
                "id": name,
                "file": f"photos/{name}.jpg",
                "stage": "done",
                "shows": "Done.",
                "readers": ["outside", "office"],
            }
            for name in ("P01", "P02")
        )
    )
    paper = Paper(printed(small.root).papers["outside"].read_bytes())
    sizes = [
        (int(image.Width), int(image.Height))
        for page in range(len(paper.pages))
        for image in paper.images(page)
    ]
    assert sorted(sizes) == [(225, 900), (900, 150)]
