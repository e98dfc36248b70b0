"""Where rafters stand, and on how many a panel bears."""

from fractions import Fraction

from packet.calc.deck.framing import framing_lines, supports, widest_space


def test_lines_run_both_ways_from_the_one_that_was_measured() -> None:
    assert framing_lines(5, 24, 0, 10) == (1, 3, 5, 7, 9)
    assert framing_lines(Fraction(1, 2), 16, 0, 4) == (Fraction(1, 2), Fraction(11, 6), Fraction(19, 6))


def test_an_eight_foot_sheet_bears_on_five_trusses_two_feet_apart() -> None:
    lines = framing_lines(0, 24, 0, 40)
    assert supports(lines, 0, 8, 0.0625) == 5
    assert supports(lines, 1, 9, 0.0625) == 4
    # an end over the edge of a member still bears
    assert supports(lines, 0.05, 8, 0.0625) == 5


def test_the_widest_space_under_a_panel_is_between_two_members_next_to_each_other() -> None:
    lines = [0, 2, Fraction(19, 4), 7, 9, 13]
    assert widest_space(lines, 0, 8, 0.0625) == (2, Fraction(19, 4))
    # the last space, of 4 ft, is under the next panel
    assert widest_space(lines, 7, 13, 0.0625) == (9, 13)
    # of two alike, the first
    assert widest_space([0, 2, 4], 0, 4, 0.0625) == (0, 2)


def test_a_panel_on_one_member_spans_nothing() -> None:
    assert widest_space([0, 8], 2, 10, 0.0625) is None
    assert widest_space([], 0, 8, 0.0625) is None
