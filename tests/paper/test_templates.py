"""An office's own templates of paper, good and bad."""

import os
import socket
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.conftest import SMALLEST
from tests.paper.conftest import papers
from tests.support.office import Office

Command = Callable[..., tuple[int, str, str]]


@pytest.fixture
def small(tmp_path: Path) -> Office:
    return Office(tmp_path / "office", SMALLEST)


def test_an_offices_template_stands_in_for_the_packaged_one_and_may_hold_it(small: Office) -> None:
    small.file(
        "templates/paper/sections/photos.typ",
        '#include "/default/sections/photos.typ"\nPrints on paper are sold at the desk.\n',
    )
    made = papers(small.root)["outside"]
    assert "Prints on paper are sold at the desk." in made.text
    assert "Photos are whole and uncropped" in made.text
    assert "Scope of work" in made.text


@pytest.mark.parametrize(
    ("text", "line", "why"),
    [
        ("= Photos\n\n#nonsense\n", 3, "unknown variable: nonsense"),
        ("#(1 + \n", 1, "unclosed delimiter"),
        ('#import "../lib.typ": *\n#day("tomorrow")\n', 2, "tomorrow"),
        ('#image("/photos/none.jpg", alt: "none")\n', 1, "file not found"),
    ],
)
def test_a_bad_template_is_named_with_its_line(
    small: Office, command: Command, text: str, line: int, why: str
) -> None:
    small.file("templates/paper/sections/photos.typ", text)
    code, out, err = command(small.root)
    assert (code, out) == (2, "")
    assert f"templates/paper/sections/photos.typ:{line}:" in err
    assert "error[template-bad]" in err
    assert why in err
    assert "Traceback" not in err
    assert "packet-paper-" not in err
    assert not list((small.root / "out").glob("*.pdf"))


def test_a_template_reads_nothing_outside_its_folder(small: Office, command: Command, tmp_path: Path) -> None:
    (tmp_path / "secret.txt").write_text("the combination is 1234")
    (small.root / "templates" / "paper").mkdir(parents=True)
    (small.root / "templates" / "paper" / "linked.txt").symlink_to(tmp_path / "secret.txt")
    for path in ("/etc/passwd", str(tmp_path / "secret.txt"), "../../../secret.txt", "../linked.txt"):
        small.file("templates/paper/sections/photos.typ", f'#read("{path}")\n')
        code, _, err = command(small.root)
        assert (code, "error[template-bad]" in err) == (2, True), err
        assert "1234" not in err


def test_a_template_fetches_no_package(small: Office, command: Command) -> None:
    small.file("templates/paper/sections/photos.typ", 'Words.\n#import "@preview/tables:0.1.0": *\n')
    code, _, err = command(small.root)
    assert code == 2
    assert "templates/paper/sections/photos.typ:2:10: error[paper-package]" in err
    assert "@preview/tables:0.1.0" in err


def test_a_package_whose_name_is_put_together_reaches_no_network(
    small: Office, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        listening.listen()
        listening.setblocking(False)
        proxy = f"http://127.0.0.1:{listening.getsockname()[1]}"
        for name in ("https_proxy", "HTTPS_PROXY"):
            monkeypatch.setenv(name, proxy)
        small.file(
            "templates/paper/sections/photos.typ", 'Words.\n#import "\\u{40}preview/tables:0.1.0": *\n'
        )
        code, _, err = command(small.root)
        with pytest.raises(BlockingIOError):  # nobody came
            listening.accept()
    assert code == 2
    assert "templates/paper/sections/photos.typ:2:" in err
    assert "error[paper-package]" in err
    assert "@preview/tables:0.1.0" in err
    assert os.environ["https_proxy"] == proxy


def test_an_offices_fonts_and_hidden_files_are_left_alone(small: Office) -> None:
    small.file("templates/paper/fonts/coverage.txt", "not a list")
    small.file("templates/paper/sections/.photos.typ.swp", '"@preview/x"')
    assert "Photo log" in papers(small.root)["outside"].text
