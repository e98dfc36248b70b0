"""Deck: framing lines, the cut-out a rule leads to, pieces cut to the roof's lines, nails to a schedule.

Places are on the slope of one plane, in feet: u along the lowest edge, v up the slope. Framing runs up the
slope; panels lie with their strength along u.
"""
