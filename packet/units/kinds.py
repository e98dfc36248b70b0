"""The measures: an exact value and the words it was typed in.

Two measures are equal when their values are; the typed words take no part.
"""

import math
from dataclasses import dataclass, field
from fractions import Fraction


class NotAMeasure(Exception):
    """A typed text that is no measure of the wanted kind.

    Attributes:
        code: Key in ``shared/words/problems.yaml``.
        found: What was typed; cut when it was too long.
        accepted: Forms to write instead.
    """

    def __init__(self, code: str, found: str, accepted: tuple[str, ...]) -> None:
        self.code = code
        self.found = found
        self.accepted = accepted
        super().__init__(code, found, accepted)


@dataclass(frozen=True, order=True)
class Length:
    """A length [in], exact."""

    inches: Fraction
    text: str = field(compare=False, default="")

    @property
    def feet(self) -> Fraction:
        """The same length [ft], exact."""
        return self.inches / 12


@dataclass(frozen=True, order=True)
class Pitch:
    """A roof pitch: rise [in] in 12 in of level run, exact."""

    rise_in_12: Fraction
    text: str = field(compare=False, default="")

    @property
    def slope_factor(self) -> float:
        """Length along the slope over level run [-]."""
        return math.sqrt(1 + (float(self.rise_in_12) / 12) ** 2)

    @property
    def hip_factor(self) -> float:
        """Length of a hip or valley over the run of its planes [-]; equal pitches at a square corner."""
        return math.sqrt(2 + (float(self.rise_in_12) / 12) ** 2)

    @property
    def angle_deg(self) -> float:
        """Angle above level [degrees]."""
        return math.degrees(math.atan2(float(self.rise_in_12), 12))


@dataclass(frozen=True, order=True)
class Area:
    """An area [sq ft], exact."""

    square_feet: Fraction
    text: str = field(compare=False, default="")

    @property
    def squares(self) -> Fraction:
        """The same area in roofing squares of 100 sq ft."""
        return self.square_feet / 100


@dataclass(frozen=True, order=True)
class Speed:
    """A wind speed [mph], exact; ultimate or nominal is the record's to say."""

    mph: Fraction
    text: str = field(compare=False, default="")


@dataclass(frozen=True)
class NailSize:
    """A nail by length and shank [in], which identify it; a penny size does not."""

    length_in: Fraction
    shank_in: Fraction
    text: str = field(compare=False, default="")
