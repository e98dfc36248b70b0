"""Whether panel edges want support between the framing, and the clips that takes."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.edge_support import (
    FramingTooWide,
    SpanRating,
    clips_in_span,
    clips_needed,
    clips_on_edge,
    edge_support_needed,
    span_rating,
)
from packet.calc.domain import OutOfRange


@pytest.mark.parametrize(
    ("text", "roof", "floor"), [("32/16", 32, 16), ("24/0", 24, 0), (" 40 / 20 ", 40, 20), ("60/32", 60, 32)]
)
def test_a_span_rating_is_read_as_stamped(text: str, roof: int, floor: int) -> None:
    assert span_rating(text) == SpanRating(roof, floor)


@pytest.mark.parametrize("text", ["20 oc", "32", "32/16/8", "0/16", "a/b", "", "32-16", "132/16", "3٢/16"])
def test_what_is_no_roof_rating_is_refused(text: str) -> None:
    with pytest.raises(OutOfRange, match="no span rating"):
        span_rating(text)


def test_framing_at_the_bare_edge_limit_needs_no_support_and_beyond_it_does() -> None:
    assert not edge_support_needed(28, 28, 32)
    assert edge_support_needed(Fraction(449, 16), 28, 32)
    assert edge_support_needed(32, 28, 32)


def test_framing_beyond_the_stamp_is_too_wide_and_says_both_numbers() -> None:
    with pytest.raises(FramingTooWide, match="framing at 24 in; the panel spans 16 in at most"):
        clips_needed(24, 16, 16)


def test_clips_are_asked_for_only_where_bare_edges_will_not_do() -> None:
    assert [clips_needed(spacing, 20, 24) for spacing in (16, 20, 24)] == [0, 0, 1]
    assert [clips_needed(spacing, 36, 60) for spacing in (32, 47, 48, 60)] == [0, 1, 2, 2]


@pytest.mark.parametrize(
    ("edge_ft", "spacing_in", "each", "clips"),
    [
        (8, 24, 1, 4),  # a sheet over four spans
        (8, 16, 1, 6),
        (8, Fraction(96, 5), 1, 5),
        (8, 48, 2, 4),
        (40, 24, 1, 20),  # a joint along the whole roof
        (41, 24, 1, 21),  # half a span more takes a clip of its own
    ],
)
def test_clips_on_a_joint(edge_ft: int, spacing_in: int | Fraction, each: int, clips: int) -> None:
    assert clips_on_edge(edge_ft, spacing_in, each) == clips


def test_sheets_end_to_end_take_the_clips_of_their_joint() -> None:
    assert 5 * clips_on_edge(8, 24, 1) == clips_on_edge(40, 24, 1)


@given(st.integers(1, 96), st.integers(1, 96), st.integers(0, 40))
def test_every_spacing_is_refused_bare_or_supported(spacing: int, without: int, more: int) -> None:
    if spacing > without + more:
        with pytest.raises(FramingTooWide):
            clips_needed(spacing, without, without + more)
    else:
        expected = 0 if spacing <= without else clips_in_span(spacing)
        assert clips_needed(spacing, without, without + more) == expected


@pytest.mark.parametrize("values", [(0, 24, 24), (24, 0, 24), (24, 24, 20), (float("nan"), 24, 24)])
def test_nonsense_is_refused(values: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange) as refused:
        edge_support_needed(*values)
    assert not isinstance(refused.value, FramingTooWide)
    with pytest.raises(OutOfRange):
        clips_on_edge(8, 24, 0)
