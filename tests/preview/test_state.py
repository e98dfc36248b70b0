"""When open pages reload, and what stands above them."""

import re

import pytest

from packet.preview.pages import with_preview
from packet.preview.state import Preview
from tests.support.built import packet_of
from tests.support.office import NUMBER, Office

PAGE = b"<html><head><title>x</title></head><body dir='ltr'>\n<p>Good.</p></body></html>"


@pytest.fixture
def preview(small_office: Office) -> Preview:
    packet_of(small_office)
    return Preview(small_office.root / "out" / NUMBER, "outside")


def test_pages_reload_when_the_output_or_the_problems_are_others(
    preview: Preview, small_office: Office
) -> None:
    states = [preview.state]
    preview.tell("")
    assert preview.state == states[0]
    for problems in ("wrong", "wrong", "still wrong", ""):
        preview.tell(problems)
        states.append(preview.state)
    assert len(set(states)) == 4
    assert states[1] == states[2]
    small_office.replaced("A nail backed out.", "Two nails.")
    assert packet_of(small_office).made
    preview.tell("")
    assert preview.state not in states


def test_a_page_of_an_earlier_run_reloads(preview: Preview) -> None:
    assert Preview(preview.folder, "outside").state != preview.state


def test_only_files_of_the_copy_are_published(preview: Preview) -> None:
    names = preview.published()
    assert {"index.html", "packet.json"} <= names
    assert not [name for name in names if name.startswith(("office/", "outside/", "."))]


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"files": 3}', '{"files'])
def test_a_broken_list_publishes_nothing(preview: Preview, text: str) -> None:
    (preview.folder / ".packet-built.json").write_text(text)
    assert preview.published() == frozenset()


def test_a_page_without_problems_has_no_bar() -> None:
    page = with_preview(PAGE, "ab-1", "")
    assert page.partition(b"</head>")[2] == PAGE.partition(b"</head>")[2]
    assert page.count(b'data-state="ab-1"') == 1


def test_problems_stand_above_the_page_as_text() -> None:
    page = with_preview(PAGE, "ab-1", "job.yaml:3:9: </pre><script>alert(1)</script> & {{ x }}")
    bar = re.search(
        rb"<body dir='ltr'>(<div class=\"preview-problems\".*</div>\n?)\n<p>Good", page, re.DOTALL
    )
    assert bar
    assert b"the page below is the last good one" in bar[1]
    assert b"<script" not in bar[1]
    assert bar[1].count(b"<pre") == bar[1].count(b"</pre>") == 1
    assert b"alert&#40;1&#41;" in bar[1]
