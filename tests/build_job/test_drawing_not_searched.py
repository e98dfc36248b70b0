"""The search of a packet finds what pages say; it does not index the lettering of drawings."""

import html
import re

from packet.text import load_words
from tests.build_job.pages import search_index
from tests.support.filled import Filled
from tests.support.office import ROOT


def test_the_lettering_of_a_drawing_is_not_in_the_search_index(plain: Filled) -> None:
    words = load_words([ROOT / "shared"])["drawing"]
    for copy in plain.copies.values():
        drawings = sorted((copy / "drawings").glob("*.svg"))
        assert [drawing.name for drawing in drawings] == ["roof-plan-phone.svg", "roof-plan.svg"]
        indexed = html.unescape(" ".join(f"{entry['title']} {entry['text']}" for entry in search_index(copy)))
        for drawing in drawings:
            texts = re.findall(r"<text [^>]*>([^<]+)</text>", drawing.read_text(encoding="utf-8"))
            dimensions = [text for text in texts if text.startswith(words["edge_eave"] + " ")]
            assert words["arrow"] in texts
            assert dimensions
            for text in (words["arrow"], *dimensions):
                assert text not in indexed
