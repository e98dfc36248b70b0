"""Where rafters stand, and on how many a panel bears."""

from fractions import Fraction

from packet.calc.deck.framing import framing_lines, supports


def test_lines_run_both_ways_from_the_one_that_was_measured() -> None:
    assert framing_lines(5, 24, 0, 10) == (1, 3, 5, 7, 9)
    assert framing_lines(Fraction(1, 2), 16, 0, 4) == (Fraction(1, 2), Fraction(11, 6), Fraction(19, 6))


def test_an_eight_foot_sheet_bears_on_five_trusses_two_feet_apart() -> None:
    lines = framing_lines(0, 24, 0, 40)
    assert supports(lines, 0, 8, 0.0625) == 5
    assert supports(lines, 1, 9, 0.0625) == 4
    # an end over the edge of a member still bears
    assert supports(lines, 0.05, 8, 0.0625) == 5
