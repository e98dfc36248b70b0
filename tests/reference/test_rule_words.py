"""Whatever a rule may limit or depend on has its words, and no word is left over."""

import pytest

from packet.reference.vocabulary import ASKS
from packet.reference.when import FACTS
from packet.text import Words, load_words
from packet.workspace import packaged


@pytest.fixture(scope="module")
def words() -> Words:
    return load_words([packaged("shared")])


def test_everything_a_rule_limits_has_a_name(words: Words) -> None:
    names = words["rule_list.asks"]
    assert set(names) == {asks.replace(".", "_") for asks in ASKS}
    assert len({names[key] for key in names}) == len(ASKS), "two things under one name"


def test_every_fact_has_words(words: Words) -> None:
    assert set(words["facts"]) == FACTS


def test_every_unit_of_a_limit_has_words(words: Words) -> None:
    assert {ask.unit for ask in ASKS.values()} - {"", "each"} <= set(words["units"])
