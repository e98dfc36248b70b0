"""Every word a template asks for by name is in the catalogue, also where no demo job leads."""

import re
from pathlib import Path

import pytest

from packet.text import load_words
from packet.workspace import packaged

TEMPLATES = packaged("templates")
NAMED = re.compile(r"\bwords\.([a-z_]+(?:\.[a-z_]+)*)")
IN_TEXT = re.compile(r"""\bwords\["([a-z_.-]+)"\]""")

SOURCES = sorted(TEMPLATES.rglob("*.j2"))


@pytest.mark.parametrize("path", SOURCES, ids=[path.relative_to(TEMPLATES).as_posix() for path in SOURCES])
def test_every_word_named_in_a_template_exists(path: Path) -> None:
    words = load_words([packaged("shared")])
    text = path.read_text(encoding="utf-8")
    missing = []
    for key in {*NAMED.findall(text), *IN_TEXT.findall(text)}:
        try:
            words[key]
        except KeyError:
            missing.append(key)
    assert missing == []


def test_templates_do_name_words() -> None:
    assert sum(len(NAMED.findall(path.read_text(encoding="utf-8"))) for path in SOURCES) > 100
