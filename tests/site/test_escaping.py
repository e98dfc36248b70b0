"""Text typed in a record is shown letter for letter, wherever a template puts it."""

from html.parser import HTMLParser
from pathlib import Path

import markdown
import pytest
from hypothesis import given
from hypothesis import strategies as st
from jinja2 import DictLoader, Environment
from jinja2.exceptions import TemplateRuntimeError
from markupsafe import Markup

from packet.site.engine import MARKDOWN_EXTENSIONS, NESTED_EXTENSION
from packet.site.escaping import ref, said, said_lines
from packet.site.templating import make_environment

#: Places a template puts text in; each names the element whose text content is compared.
PAGE = """# {{ text }} {: #heading }

{{ text }}
{: #paragraph }

Before <em id="inline">{{ text }}</em>, <b title="{{ text }}" id="titled">after</b>.

- {{ text }}
{: #item }

| {{ text }} |
| --- |
| <span id="cell">{{ text }}</span> |

<table><tr><td id="raw">{{ text }}</td></tr></table>

<div markdown="1">
<span id="within">{{ text }}</span>
{{ text }}
{: #mixed }
</div>

<p id="said">{% trans words=text %}{{ words }}{% endtrans %}</p>

<p id="last" title='{{ text }}'>end</p>
"""

NASTY = (
    "<script>alert(1)</script>", "<!-- c -->", "<?php ?>", "]]>", "<b", "&amp; &lt; &#42; &copy",
    "[x](javascript:alert(1))", "![x](http://a.example/b.png)", "http://a.example <http://b.example>",
    "{{ 7 * 7 }}", "{% x %}", "{# x #}", "{: #x .y }", "%s %(a)s %%", "a | b | c", "*a* **b** _c_ __d__",
    "`code` ``` ", "# heading", "- item", "+ item", "* * *", "1. item", "> quote", "::: block", "~~~",
    "=====", "-----", "a\n=====", "a\n    b\n\n\nc", "    indented", "  two  spaces  ", "\ttab", " ", "\n",
    "[^1]: note", "*[A]: abbr", "!!! note", "12' 6\" \N{MULTIPLICATION SIGN} 2-3/8", "\\* \\ \\\\", "a\n",
    "\N{HOUSE BUILDING}\N{VARIATION SELECTOR-16}", "\N{HEBREW LETTER ALEF}\N{ARABIC LETTER BEH} rtl",
    "\u2028\u00a0\ufeff\ufffe", "klzzwxh:0001", "wzxhzdk:0", "stx amp etx",
)  # fmt: skip

typed = st.text(
    st.characters(exclude_categories=("Cc", "Cs"), include_characters="\n\t"), min_size=1, max_size=40
) | st.text(st.sampled_from("<>&*_`#-+|[](){}:!\\\"'=~.1a \n;/@%$^"), min_size=1, max_size=30)


class Elements(HTMLParser):
    """Text content and title by id."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, str]] = []
        self.texts: dict[str, str] = {}
        self.titles: dict[str, str | None] = {}
        self.tags: set[str] = set()
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = dict(attrs)
        self.tags.add(tag)
        self.open.append((tag, values.get("id") or ""))
        if values.get("id"):
            self.texts[str(values["id"])] = ""
            self.titles[str(values["id"])] = values.get("title")

    def handle_endtag(self, tag: str) -> None:
        while self.open and self.open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        for _, name in self.open:
            if name:
                self.texts[name] += data


def page_with(text: str, *, nested: bool) -> Elements:
    environment = make_environment([Path(__file__).parent], {})
    environment.loader = DictLoader({"page.md.j2": PAGE})
    body = environment.get_template("page.md.j2").render(text=text)
    extensions = [*MARKDOWN_EXTENSIONS, *([NESTED_EXTENSION] if nested else [])]
    return Elements(markdown.markdown(body, extensions=extensions))


def assert_shown(text: str, *, nested: bool) -> None:
    plain = page_with("plain", nested=nested)
    seen = page_with(text, nested=nested)
    for name in ("heading", "paragraph", "item", "inline", "cell", "raw", "within", "said"):
        assert seen.texts[name] == text, name
    assert not nested or seen.texts["mixed"].endswith(text)
    assert (seen.titles["titled"], seen.titles["last"]) == (text, text)
    assert seen.tags == plain.tags, "the text made an element"
    assert seen.texts.keys() == plain.texts.keys(), "the text made an id"


@pytest.mark.parametrize("nested", [True, False])
@pytest.mark.parametrize("text", NASTY)
def test_a_nasty_text_is_shown_letter_for_letter(text: str, nested: bool) -> None:
    assert_shown(text, nested=nested)


@pytest.mark.parametrize("nested", [True, False])
@given(text=typed)
def test_any_text_is_shown_letter_for_letter(text: str, nested: bool) -> None:
    assert_shown(text, nested=nested)


@given(typed)
def test_escaped_text_is_ascii_but_for_code_points_without_a_name(text: str) -> None:
    kept = {character for character in said(text) if not character.isascii()}
    assert all(ord(character) & 0xFFFE == 0xFFFE or 0xFDD0 <= ord(character) <= 0xFDEF for character in kept)
    assert not set("<>\"'*_`[](){}|\\~=+!:\n\t") & set(said(text))


@given(typed)
def test_lines_are_kept_as_line_breaks(text: str) -> None:
    shown = markdown.markdown(f"<p>{said_lines(text)}</p>").removeprefix("<p>").removesuffix("</p>")
    assert [Elements(f'<i id="x">{line}</i>').texts["x"] for line in shown.split("<br>")] == text.split("\n")


def test_markup_passes_and_is_never_escaped_twice() -> None:
    assert said(said("a*b")) == "a&#42;b"
    assert said_lines(Markup("<b>\n</b>")) == "<b>\n</b>"


@pytest.mark.parametrize("value", [None, 1.5, True, ["a"], {"a": 1}, b"a"])
def test_a_value_that_needs_words_or_a_filter_is_refused(value: object) -> None:
    with pytest.raises(TemplateRuntimeError, match="printed as it is"):
        said(value)


@pytest.mark.parametrize("name", ["P-01", "photos/P-01.jpg", "plane.MS.area", "sq_ft", "1"])
def test_an_id_and_a_file_name_pass_unchanged(name: str) -> None:
    assert ref(name) == name


@pytest.mark.parametrize(
    "name", ["", "../x", "a/../b", "/x", "//x", "a//b", "a b", "x:y", "#x", "-x", "x.", 'x"', "é", "a\n"]
)
def test_anything_else_is_no_id(name: str) -> None:
    with pytest.raises(TemplateRuntimeError, match="no id"):
        ref(name)


def test_a_plain_environment_would_let_markdown_through() -> None:
    """The reason for our own escaping: HTML escaping leaves a link a link."""
    body = Environment(autoescape=True).from_string("{{ text }}").render(text="[x](javascript:alert)")
    assert "<a " in markdown.markdown(body)
