"""Taking HTML blocks out of Markdown's way changes nothing but the time it takes."""

import markdown
import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.site.blocks import parted
from packet.site.engine import MARKDOWN_EXTENSIONS, NESTED_EXTENSION

PARTS = (
    "Some *slanted* prose.",
    "# A heading",
    "- an item\n- another",
    "| a | b |\n| - | - |\n| 1 | 2 |",
    "    indented code",
    '<table id="t">\n<tr><td>*not slanted*</td></tr>\n\n<tr><td>x</td></tr>\n</table>',
    "<div><div>inner</div>\n\n*text*\n</div>",
    '<figure id=\'f\'><img src="x.png" alt="a"></figure>',
    "<section>\n\n<table><tr><td>in</td></tr></table>\n\n</section>",
    "<dl><dt>a</dt><dd>b &#42; c</dd></dl>",
    "<div>tail</div> and *text* after it",
    "before <div>x</div>",
    "  <div>indented a little</div>",
    "<table><tr><td>never closed",
    "</div>",
    "<div>",
    "<p>a paragraph</p>",
    "<!--\n\n<div>in a comment</div>\n\n-->",
    '<svg viewBox="0 0 1 1"><g id="g"/></svg>',
    "<ul>\n<li>x\n</ul>",
    "&#42;text&#42;",
    "<ol>\n \t\n<li>tab\there\r\n</ol>",
    "",
)


@pytest.mark.parametrize("nested", [True, False])
@given(st.lists(st.tuples(st.sampled_from(PARTS), st.sampled_from(["\n", "\n\n", "\n \n"])), max_size=7))
def test_the_result_is_the_same_to_the_last_byte(nested: bool, parts: list[tuple[str, str]]) -> None:
    body = "".join(part + between for part, between in parts)
    extensions = [*MARKDOWN_EXTENSIONS, *([NESTED_EXTENSION] if nested else [])]
    apart = parted(body)
    assert apart.whole(markdown.markdown(apart.text, extensions=extensions)) == markdown.markdown(
        body, extensions=extensions
    )


def test_blocks_are_really_taken_out_and_their_anchors_known() -> None:
    body = (
        "# A\n\n<table id=\"t&amp;u\">\n<tr><td><a name='n'>x</a></td></tr>\n</table>\n<div>y</div>\n\nend\n"
    )
    apart = parted(body)
    assert apart.text == '# A\n\n<div data-block="0"></div>\n<div data-block="1"></div>\n\nend\n'
    assert len(apart.blocks) == 2
    assert apart.anchors() == {"t&u", "n"}


@pytest.mark.parametrize(
    "body",
    [
        "```\n\n<div>x</div>\n\n```\n",
        "~~~\n\n<div>x</div>\n\n~~~\n",
        '<div markdown="1">\n*x*\n</div>\n',
        '<div data-block="0"></div>\n',
    ],
)
def test_a_page_where_a_block_may_be_something_else_is_left_alone(body: str) -> None:
    assert (parted(body).text, parted(body).blocks) == (body, ())
