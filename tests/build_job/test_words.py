"""Every word a template asks for by name is in the catalogue, also where no demo job leads."""

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from packet.review.catalogue import CATALOGUE
from packet.text import load_words
from packet.workspace import packaged
from packet.yamlread import read_yaml

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


def leaves(tree: Mapping[str, Any], at: str = "") -> set[str]:
    """Keys of all texts of a tree."""
    found: set[str] = set()
    for key, value in tree.items():
        found |= leaves(value, f"{at}{key}.") if isinstance(value, Mapping) else {f"{at}{key}"}
    return found


#: What the nailing card reads besides its own words.
READ_BY_THE_CARD = ("requirements", "hidden_by", "whose", "shanks", "sealed_deck_ways")


def test_the_nailing_card_has_the_same_words_in_english_and_spanish() -> None:
    folder = packaged("shared") / "words"
    english, spanish = (read_yaml(folder / f"{name}.yaml").value for name in ("en", "es"))
    assert leaves(spanish["card"]) == leaves(english["card"])
    assert len(leaves(english["card"])) > 50
    for group in READ_BY_THE_CARD:
        assert leaves(spanish[group]) == leaves(english[group]), group
    assert set(spanish["requirements"]) >= {requirement.id for requirement in CATALOGUE}
    empty = {name for name, text in spanish["card"].items() if not text}
    assert empty == set()


def test_a_translation_lies_over_the_english_words_and_leaves_the_rest() -> None:
    words = load_words([packaged("shared")])
    spanish = words["translations.es"]
    assert spanish["card.title"] == "Tarjeta de clavado"
    assert spanish["units.in"] == "pulg."
    assert spanish["kinds.patch"] == words["kinds.patch"] == "patch repair"
    assert list(words["translations"]) == ["es"]


def test_an_offices_language_stands_beside_the_packaged_ones(tmp_path: Path) -> None:
    (tmp_path / "words").mkdir()
    (tmp_path / "words" / "pl.yaml").write_text("card: {title: Karta gwoździ}\n", encoding="utf-8")
    (tmp_path / "words" / "es.yaml").write_text("card: {title: Tarjeta de clavos}\n", encoding="utf-8")
    (tmp_path / "words" / "notes.yaml").write_text("not: a language\n", encoding="utf-8")
    found = load_words([packaged("shared"), tmp_path])["translations"]
    assert {name: said["card.title"] for name, said in found.items()} == {
        "es": "Tarjeta de clavos",
        "pl": "Karta gwoździ",
    }
    assert found["es.card.job"] == "Trabajo"
    assert found["pl.card.job"] == "Job"
