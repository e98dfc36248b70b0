"""Weight of roofing: what a tear-off sends to disposal, and what the layers put on the roof."""

from fractions import Fraction

from packet.calc.domain import zero_or_more
from packet.figure import Number

DISPOSAL_WEIGHT = "squares * layers * lb_a_square"
TONS = "weight_lb / 2000"
DEAD_LOAD = "layers * lb_a_square / 100"


def disposal_weight(squares: Number, layers: int, lb_a_square: Number) -> Number:
    """Return the weight of the covering that is torn off.

    Source: house rule; squares times layers times the weight of a square. Layers of different weight are
    counted one by one and added. Published weights of a square run from 180 to 480 lb, so it is the record's.

    Args:
        squares: Area torn off [square], 0 or more.
        layers: Layers of that weight [layer], 0 or more.
        lb_a_square: Weight of one layer [lb/square], 0 or more.

    Returns:
        Weight [lb], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> disposal_weight(20, 2, 250)
        10000
    """
    zero_or_more(squares=squares, layers=layers, lb_a_square=lb_a_square)
    return squares * layers * lb_a_square


def tons(weight_lb: Number) -> Number:
    """Return a weight in short tons, in which disposal is weighed.

    Source: definition; a short ton is 2,000 lb.

    Args:
        weight_lb: Weight [lb], 0 or more.

    Returns:
        Weight [ton], exact when the input is.

    Raises:
        OutOfRange: The weight is below 0.

    Example:
        >>> tons(9000)
        Fraction(9, 2)
    """
    zero_or_more(weight_lb=weight_lb)
    return weight_lb * Fraction(1, 2000)


def dead_load(layers: int, lb_a_square: Number) -> Number:
    """Return the load of layers of covering on the roof.

    Source: house rule; a square is 100 sq ft, and layers add. Layers of other weights are added one by one.

    Args:
        layers: Layers of that weight [layer], 0 or more.
        lb_a_square: Weight of one layer [lb/square], 0 or more.

    Returns:
        Load on the slope [psf], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> dead_load(2, 250)
        Fraction(5, 1)
    """
    zero_or_more(layers=layers, lb_a_square=lb_a_square)
    return layers * lb_a_square * Fraction(1, 100)
