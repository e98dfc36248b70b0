"""Phrases as the file of avoided words writes them: what each sign stands for, and what is no phrase."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.reference.phrases import parse_phrase, words_in
from packet.units import NotAMeasure


def found(phrase: str, text: str) -> list[str]:
    return [text[start:end] for start, end in parse_phrase(phrase).spans(text)]


@pytest.mark.parametrize(
    ("phrase", "text", "hits"),
    [
        ("act of god", "An Act of God, he said.", ["Act of God"]),
        ("act of god", "An act of goddess.", []),
        ("act of god", "A pact of god.", []),
        ("leak proof", "A leak-proof, leak \n proof, leakproof roof.", ["leak-proof", "leak \n proof"]),
        ("leak|storm proof", "storm proof and leak proof", ["storm proof", "leak proof"]),
        ("waive~", "waive waives waived waiving waiver", ["waive", "waives", "waived", "waiving"]),
        ("certify~", "certify certifies certified certificate", ["certify", "certifies", "certified"]),
        ("lap~", "lap laps lapped lapping lapse", ["lap", "laps", "lapped", "lapping"]),
        ("will not? leak", "It will leak. It will not leak. It will now leak.", ["will leak", "will not leak"]),
        ("won't leak", "It won’t leak; it won't leak.", ["won’t leak", "won't leak"]),
        ("rated N mph", "rated 130 mph, rated 130mph, rated 110+ mph", ["rated 130 mph", "rated 130mph", "rated 110+ mph"]),
        ("N years", "thirty years, 7-1/2 years, 1,000 years, many years", ["thirty years", "1/2 years", "1,000 years"]),
        ("holds .. mph", "holds to a b c mph", ["holds to a b c mph"]),
        ("holds .. mph", "holds to a b c d mph", []),
        ("holds .. mph", "It holds. At 20 mph it rained.", []),
        ("holds .. mph", "It holds (to 0.5) mph", ["holds (to 0.5) mph"]),
        ("policy pays", "The policy's pays", []),
        ("policy", "The policy's end", ["policy"]),
        ("póliza paga", "Su Póliza paga", ["Póliza paga"]),
    ],
)  # fmt: skip
def test_a_phrase_is_found_where_its_words_stand(phrase: str, text: str, hits: list[str]) -> None:
    assert found(phrase, text) == hits


@pytest.mark.parametrize(
    "text",
    ["", " ", "N", ".. mph", "holds ..", "not? leak", "leak not?", "a||b", "leak!", "leak-proof", "#", "a~~", "(a|b)"],
)  # fmt: skip
def test_what_is_no_phrase_is_refused(text: str) -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse_phrase(text)
    assert (refused.value.code, refused.value.found) == ("bad-phrase", text)


WORDS = st.text("abcdefghij", min_size=1, max_size=6)


@given(st.lists(WORDS, min_size=1, max_size=5), st.text(max_size=40), st.text(max_size=40))
def test_a_phrase_of_plain_words_is_found_in_any_text_that_holds_it(
    words: list[str], before: str, after: str
) -> None:
    """And that text holds one of the words by which a phrase is looked up."""
    text = f"{before} {' '.join(words)} {after}"
    phrase = parse_phrase(" ".join(words))
    spans = [(start, end) for start, end in phrase.spans(text) if start <= len(before) + 1 < end]
    assert spans
    assert set(phrase.needles) & set(words_in(text))


@pytest.mark.parametrize(
    "unit", ["holds ", "holds-", "a", "holds a ", "holds, (", "9", "holds 9", "'s holds "]
)
def test_no_text_is_slow_to_search(unit: str) -> None:
    """A record takes 4,000 characters; a hostile one may not hold up a build."""
    phrase = parse_phrase("holds .. a|b|holds? .. N mph")
    text = (unit * 4000)[:4000]
    start = time.perf_counter()
    assert list(phrase.spans(text)) == []
    assert time.perf_counter() - start < 2
