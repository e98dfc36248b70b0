"""The count of a whole sheet and the nails placed on it agree."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.framing import framing_lines
from packet.calc.deck.nails import Schedule, nail_rows
from packet.calc.fasteners import sheet_nails

F = Fraction
FRAMES = st.sampled_from([F(12), F(16), F(96, 5), F(24), F(32), F(48)])
SPACINGS = st.integers(24, 192).map(lambda n: F(n, 8))


def placed(along_ft: F, up_ft: F, frame_in: F, edge_in: F, field_in: F) -> int:
    sheet = ((F(0), F(0)), (along_ft, F(0)), (along_ft, up_ft), (F(0), up_ft))
    lines = framing_lines(0, frame_in, 0, along_ft)
    return sum(len(row.nails) for row in nail_rows(sheet, lines, F(1, 16), Schedule(edge_in, field_in)))


def meets_the_edge_distance(up_ft: F, spacing_in: F) -> bool:
    """Return whether whole spaces end between the outer nails and the edges: the rows differ by one nail there."""
    nailed = 12 * up_ft - 2 * F(3, 8)
    return -(-12 * up_ft // spacing_in) != -(-nailed // spacing_in)


@given(FRAMES, st.integers(2, 6), st.integers(24, 64).map(lambda n: F(n, 12)), SPACINGS, SPACINGS)
def test_a_sheet_over_whole_spaces_has_the_nails_it_is_counted_for(
    frame_in: F, spaces: int, up_ft: F, edge_in: F, field_in: F
) -> None:
    along_ft = spaces * frame_in / 12
    counted = sheet_nails(along_ft, up_ft, frame_in, edge_spacing_in=edge_in, field_spacing_in=field_in)
    ends = 2 * meets_the_edge_distance(up_ft, edge_in)
    between = (spaces - 1) * meets_the_edge_distance(up_ft, field_in)
    assert placed(along_ft, up_ft, frame_in, edge_in, field_in) == counted - ends - between


@pytest.mark.parametrize("frame_in", [F(12), F(16), F(96, 5), F(24), F(48)])
@pytest.mark.parametrize("edge_in", [3, 4, 6])
@pytest.mark.parametrize("field_in", [3, 4, 6, 8, 12])
def test_on_a_4_by_8_sheet_both_give_one_number_at_every_spacing_of_the_trade(
    frame_in: F, edge_in: int, field_in: int
) -> None:
    counted = sheet_nails(8, 4, frame_in, edge_spacing_in=edge_in, field_spacing_in=field_in)
    assert placed(F(8), F(4), frame_in, F(edge_in), F(field_in)) == counted
