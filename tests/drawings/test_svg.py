import math
from xml.etree import ElementTree

import pytest

from packet.drawings import svg


@pytest.mark.parametrize(
    ("value", "text"),
    [(12.0, "12"), (1 / 3, "0.33"), (2.5, "2.5"), (-0.001, "0"), (-1.005, "-1"), (100.0, "100"), (0, "0")],
)
def test_a_number_is_written_one_way(value: float, text: str) -> None:
    assert svg.number(value) == text


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_that_is_none_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="must be finite"):
        svg.number(value)


def test_attributes_keep_their_order_however_they_are_given() -> None:
    first = svg.element("circle", r=1, cy=2, cx=3, class_="dot", id="a")
    second = svg.element("circle", id="a", class_="dot", cx=3, cy=2, r=1)
    assert svg.render(first) == svg.render(second) == '<circle id="a" class="dot" cx="3" cy="2" r="1"/>\n'


def test_an_unknown_attribute_is_refused() -> None:
    with pytest.raises(ValueError, match="stroke has no place"):
        svg.element("line", stroke="red")


def test_text_and_attributes_are_escaped_and_stay_on_one_line() -> None:
    nasty = 'a <b> & "c"\n\td\x00\x0b\ud800'
    text = svg.render(svg.element("g", [svg.element("text", nasty, data_edge=nasty)]))
    assert text.splitlines() == [
        "<g>",
        ' <text data-edge="a &lt;b&gt; &amp; &quot;c&quot; d\ufffd\ufffd\ufffd">'
        "a &lt;b&gt; &amp; &quot;c&quot; d\ufffd\ufffd\ufffd</text>",
        "</g>",
    ]
    child = ElementTree.fromstring(text)[0]
    assert child.text == child.get("data-edge") == 'a <b> & "c" d\ufffd\ufffd\ufffd'


def test_ids_come_from_content_and_never_collide() -> None:
    ids = [
        svg.ident(a, b)
        for a, b in (("x", "a b"), ("x", "a_20_b"), ("x", "a-b"), ("x", "ab"), ("x", "\u00e4"))
    ]
    assert len(set(ids)) == len(ids)
    assert all(id.isascii() and " " not in id for id in ids)
    assert svg.ident("plane", "MS") == "plane-MS"


def test_a_path_closes_only_the_runs_that_are_closed() -> None:
    runs = [([(0.0, 0.0), (1.0, 0.0), (1.0, 1.0)], True), ([(2.0, 2.0), (3.0, 3.0)], False)]
    assert svg.render(svg.path(runs)) == '<path d="M0 0L1 0L1 1ZM2 2L3 3"/>\n'
