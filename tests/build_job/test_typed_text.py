"""What was typed stands on the pages letter for letter, and nothing that was typed becomes markup."""

import json
import re
from collections.abc import Callable, Iterator
from itertools import cycle
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from markdown import Markdown

from packet.closeout.redact import redact
from packet.readers import READERS
from packet.site.blocks import parted
from packet.site.engine import MARKDOWN_EXTENSIONS
from packet.site.pages import make_pages
from packet.snippet import FORBIDDEN
from packet.text import load_words
from tests.build_job.conftest import Filled
from tests.build_job.everyfield import TextOf, all_text_fields
from tests.build_job.pages import (
    ADDRESSES,
    RUNS,
    Event,
    all_strings,
    attributes,
    events,
    page_events,
    search_index,
    strings,
    text_content,
    tree,
)
from tests.conftest import SMALLEST
from tests.support.office import Office

#: Texts that mean something to YAML, Jinja, Markdown, HTML, a script or a table; ``@`` is a number.
NASTY = (
    "<script>alert(@)</script>", "</script><script>@", "<img src=x onerror=alert(@)>",
    "<b onclick='x'>@</b>", "<!-- @ -->", "-->@<!--", "<![CDATA[@]]>", "<?php @ ?>",
    "<details open ontoggle=x>@", "</td></tr></table>@", "</dd></dl></div></figure>@",
    "\" onmouseover=\"alert(@)\" x=\"", "' onfocus='@' autofocus='", "`@`", "```\n@\n```",
    "[@](javascript:alert(1))", "![@](http://127.0.0.1/x.png)", "[@][ref]\n\n[ref]: javascript:x",
    "<javascript:@>", "https://example.org/@", "<https://example.org/@>", "mail@example.org",
    "{{ @ }}", "{{ config.items() }} @", "{% raw %}@{% endraw %}", "{# @ #}",
    "{: #@ .x onclick=y }", "{ #@ }", "@ {: .x }", "# @", "## @ ##", "- @", "* @", "+ @", "1. @",
    "1) @", "> @", "    @ indented", "\t@ tab", "---\n@", "@\n===", "@\n---", "***@***", "__@__",
    "_@_", "*@*", "~~@~~", "^@^", "==@==", "| @ | x |\n|---|---|", "a | @", "\\@\\", "\\*@\\*",
    "\\\\@", "&amp; @", "&lt;@&gt;", "&#60;@&#62;", "&copy@", "&@;", "@ & @", "% @", "$@$", "::: @",
    "!!! note\n    @", "??? @", "--8<-- @", "[[@]]", "[^@]", "[^1]: @", "*[@]: x", ":smile: @",
    "@ (c) -- ... 'q' \"q\"", "<@", ">@", "@<", "&@", "^M@", "@  ", "  @", "@  two  spaces   ",
    "@\n", "\n@", "@\n\n@b", "é@ñ", "😀@👩\u200d🔧", "שלום @ עולם", "مرحبا @", "汉字@", "e\u0301@\u0301",
    "\u00a0@\u00a0", "\u2003@", "\ufdd0@", "\U0001fffe@", "x" * 90 + "@" + "y" * 90, "@" + "<" * 60,
    "0.@e10", "null @", "true@", "#@", "@:", "? @", "!@", "%@", "@ # no remark", "'@", '"@',
    "@'s \"own\"", "data-block=\"0\" @", "<div data-block=\"0\"></div>@", "klzzwxh:0001@",
)  # fmt: skip

#: Text that no page shows, by model and field.
UNPRINTED = {
    ("LoggedPhoto", "set_by"): "who wrote the entry is the office's matter, kept in its data",
    ("Promise", "term"): "a last day stands in its place",
    ("Bought", "lot"): "the lot is printed with the shingle",
    ("Opening", "what"): "kept in the data",
}

TOKEN = re.compile(r"zq\d{4}qz")


def marked(texts: Iterator[str]) -> TextOf:
    """Return texts in which ``@`` became a number of their own."""
    count = iter(range(1, 10_000))
    return lambda place: next(texts).replace("@", f"zq{next(count):04}qz")


class Masks:
    """Puts the plain words of one packet in the place of the typed text of another."""

    def __init__(self, typed: Filled, plain: Filled) -> None:
        self._texts: dict[str, tuple[str, str]] = {}
        for place, text in typed.filling.texts.items():
            for token in TOKEN.findall(text):
                self._texts[token] = (text, plain.filling.texts[place])

    def text(self, text: str, made: Callable[[str], str] = str) -> str:
        """Return a text with plain words; ``made`` is what became of typed text on its way here."""
        for token in dict.fromkeys(TOKEN.findall(text)):
            typed, word = self._texts[token]
            text = text.replace(made(typed), word)
        return text

    def events(self, found: list[Event]) -> list[Event]:
        """Return events with plain words, tags as they are: text that became a tag stays one."""
        return [
            (kind, self.text(text) if kind == "text" else text, tuple((n, self.text(v)) for n, v in pairs))
            for kind, text, pairs in found
        ]


def unspaced(text: str) -> str:
    """Return a text without spaces and line breaks, which a search index puts together."""
    return "".join(text.split())


def assert_same_but_for_the_text(typed: Filled, plain: Filled) -> None:
    """Hold page by page, answer by answer, that only texts differ, and those letter for letter."""
    masks = Masks(typed, plain)
    for reader in READERS:
        copy, twin = typed.packet / reader, plain.packet / reader
        names = {name for name in tree(twin) if name.endswith(".html")}
        assert names == {name for name in tree(copy) if name.endswith(".html")}
        for name in sorted(names):
            assert masks.events(page_events(copy / name)) == page_events(twin / name), name
        for found, wanted in zip(search_index(copy), search_index(twin), strict=True):
            assert found["location"] == wanted["location"]
            for part in ("title", "text"):
                seen = masks.text(unspaced(text_content(events(found[part]))), unspaced)
                assert seen == unspaced(text_content(events(wanted[part])))
                tags = [event[:2] for event in events(found[part]) if event[0] != "text"]
                assert tags == [event[:2] for event in events(wanted[part]) if event[0] != "text"]


@pytest.fixture(scope="module")
def nasty(fill_and_build: Callable[[TextOf], Filled]) -> Filled:
    return fill_and_build(marked(cycle(NASTY)))


def _read_as_markdown(office: Office, street: str, title: str) -> list[Event]:
    """Return the front page as Markdown makes it; only its heading lets typed text meet Markdown."""
    record = SMALLEST.replace("18 Heron Lane", json.dumps(street, ensure_ascii=False))
    record = record.replace(
        "status: closed", f"status: closed, title: {json.dumps(title, ensure_ascii=False)}"
    )
    copy = redact(office.write(record).closeout(), "outside")
    words = load_words(office.workspace.shared_folders())
    front, *_ = make_pages(copy, office.workspace.template_folders(), words)
    apart = parted(front.body)
    numbered_anchors = {"toc": {"slugify": lambda text, separator: "part"}}
    reader = Markdown(extensions=[*MARKDOWN_EXTENSIONS], extension_configs=numbered_anchors)
    return events(apart.whole(reader.convert(apart.text)))


@pytest.mark.parametrize("text", NASTY)
def test_nasty_text_in_a_heading_is_text(small_office: Office, text: str) -> None:
    typed = [text.replace("@", token) for token in ("zq1111qz", "zq2222qz")]
    found = _read_as_markdown(small_office, *typed)
    assert any("".join((typed[0], ": ", typed[1])) in shown for kind, shown, _ in found if kind == "text")
    plain_words = ("plainword", "otherword")
    for written, word in zip(typed, plain_words, strict=True):
        found = [
            (kind, shown.replace(written, word), tuple((n, v.replace(written, word)) for n, v in pairs))
            for kind, shown, pairs in found
        ]
    assert found == _read_as_markdown(small_office, *plain_words)


def test_every_free_text_field_is_filled(plain: Filled) -> None:
    assert set(plain.filling.fields.values()) == all_text_fields()
    assert len(plain.filling.texts) > len(NASTY), "each text stands in some place"


def test_every_text_is_printed_on_a_page(plain: Filled) -> None:
    pages = "\n".join(
        "\n".join(strings(page_events(path))) for path in (plain.packet / "office").glob("*.html")
    )
    missing = {place for place, text in plain.filling.texts.items() if text not in pages}
    habits = {place for place in plain.filling.texts if place[:2] == ("office", "usual")}
    assert len(habits) > 10
    assert habits <= missing, "what the office usually uses is no fact of a job"
    missing -= habits
    assert {place for place in missing if plain.filling.fields[place] not in UNPRINTED} == set()
    assert len(missing) < 20


def test_nasty_text_changes_nothing_but_the_text(nasty: Filled, plain: Filled) -> None:
    assert_same_but_for_the_text(nasty, plain)


def test_nasty_text_is_on_the_pages_letter_for_letter(nasty: Filled, plain: Filled) -> None:
    def pages(filled: Filled) -> str:
        paths = sorted((filled.packet / "office").glob("*.html"))
        return "\0".join("\0".join(strings(page_events(path))) for path in paths)

    shown, twin = pages(nasty), pages(plain)
    for place, text in nasty.filling.texts.items():
        word = plain.filling.texts[place]
        assert shown.count(text) >= twin.count(word), (place, text)


@pytest.mark.parametrize("reader", READERS)
def test_nothing_typed_runs(nasty: Filled, reader: str) -> None:
    for path in sorted((nasty.packet / reader).glob("*.html")):
        found = page_events(path)
        for kind, tag, pairs in found:
            if kind == "start" and tag in RUNS:
                assert tag == "script"
                assert not any(TOKEN.search(value) for _, value in pairs)
        for tag, name, value in attributes(found):
            assert not name.startswith("on"), (path.name, tag, name)
            if name in ADDRESSES:
                assert not value.strip().lower().startswith(("javascript:", "data:", "vbscript:")), value
            if name not in ("alt", "content", "aria-label", "title", "data-label"):
                assert not TOKEN.search(value), (path.name, tag, name, value)
        scripts = zip(found, found[1:], strict=False)
        assert not any(a[1] == "script" and TOKEN.search(b[1]) for a, b in scripts if a[0] == "start")
        assert not any(TOKEN.search(text) for kind, text, _ in found if kind not in ("text", "start", "end"))


@pytest.mark.parametrize("reader", READERS)
def test_no_name_title_or_anchor_is_made_of_typed_text(plain: Filled, reader: str) -> None:
    copy = plain.packet / reader
    words = set(plain.filling.texts.values())
    names = " ".join(tree(copy)).lower()
    assert not [word for word in words if word.lower() in names]
    for path in copy.glob("*.html"):
        found = page_events(path)
        for tag, name, value in attributes(found):
            if name in ("id", "name", "class", "for", *ADDRESSES):
                assert not any(word in value for word in words), (path.name, tag, name, value)
        in_title = [b[1] for a, b in zip(found, found[1:], strict=False) if a[:2] == ("start", "title")]
        assert in_title
        assert not any(word in title for title in in_title for word in words)
        navigation = text_content(_inside(found, "nav")) + text_content(_inside(found, "header"))
        assert navigation.strip()
        assert not any(word in navigation for word in words)
    assert not any(word in entry["location"] for entry in search_index(copy) for word in words)


def _inside(found: list[Event], tag: str) -> list[Event]:
    depth, kept = 0, []
    for event in found:
        if event[1] == tag and event[0] in ("start", "end"):
            depth += 1 if event[0] == "start" else -1
        elif depth:
            kept.append(event)
    return kept


def test_the_data_holds_each_text_as_typed(nasty: Filled) -> None:
    kept = set(all_strings(json.loads((nasty.packet / "office" / "packet.json").read_text(encoding="utf-8"))))
    assert [text for text in nasty.filling.texts.values() if text not in kept] == []


@pytest.mark.parametrize("reader", READERS)
def test_drawings_of_nasty_titles_are_drawings_still(nasty: Filled, plain: Filled, reader: str) -> None:
    def shape(folder: Path) -> list[tuple[str, str, list[str]]]:
        paths = sorted((folder / reader / "drawings").glob("*.svg"))
        assert paths
        roots = [(path.name, ElementTree.fromstring(path.read_text(encoding="utf-8"))) for path in paths]
        return [(name, item.tag, sorted(item.attrib)) for name, root in roots for item in root.iter()]

    def kinds(folder: Path) -> set[tuple[str, str]]:
        return {(name, tag) for name, tag, _ in shape(folder)}

    assert kinds(nasty.packet) == kinds(plain.packet)
    for _, tag, names in shape(nasty.packet):
        assert tag.rpartition("}")[2] not in {*RUNS, "foreignObject", "a", "set", "animate"}
        assert not any(name.startswith("on") or name.endswith("href") for name in names)


def _fit_for_a_record(text: str) -> bool:
    return not FORBIDDEN.search(text) and not TOKEN.search(text)


LETTERS = st.characters(exclude_categories=("Cs", "Cc", "Cf", "Zl", "Zp"), exclude_characters="@\ufffe\uffff")
MARKS = st.sampled_from("<>&\"'`*_[](){}#|\\-+=!~:;%$^/.,\n\t \u00a0aB1")
TYPED = st.text(LETTERS | MARKS, min_size=3, max_size=60).filter(_fit_for_a_record)


@settings(
    max_examples=3,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],
    suppress_health_check=[
        HealthCheck.function_scoped_fixture,
        HealthCheck.too_slow,
        HealthCheck.data_too_large,
    ],
)
@given(random=st.randoms(use_true_random=False), pool=st.lists(TYPED, min_size=25, max_size=40))
def test_any_text_at_all_changes_nothing_but_the_text(
    fill_and_build: Callable[[TextOf], Filled], plain: Filled, random: object, pool: list[str]
) -> None:
    from random import Random

    assert isinstance(random, Random)

    def texts() -> Iterator[str]:
        while True:
            text = random.choice(pool)
            place = random.choice((0, len(text), len(text) // 2))
            yield f"{text[:place]}@{text[place:]}"

    assert_same_but_for_the_text(fill_and_build(marked(texts())), plain)
