"""The search of a packet finds what pages say; it does not index the lettering of drawings."""

import html
import re

from packet.readers import READERS
from packet.text import load_words
from tests.build_job.conftest import Filled
from tests.build_job.pages import search_index
from tests.support.office import ROOT


def test_the_lettering_of_a_drawing_is_not_in_the_search_index(plain: Filled) -> None:
    said_by_drawings_alone = load_words([ROOT / "shared"])["drawing"]["arrow"]
    for reader in READERS:
        copy = plain.packet / reader
        indexed = html.unescape(" ".join(f"{entry['title']} {entry['text']}" for entry in search_index(copy)))
        assert "plain" in indexed
        assert said_by_drawings_alone not in indexed
        for name in ("roof-plan", "roof-plan-phone"):
            drawing = (copy / "drawings" / f"{name}.svg").read_text(encoding="utf-8")
            assert said_by_drawings_alone in " ".join(re.findall(r"<text [^>]*>([^<]+)</text>", drawing))
