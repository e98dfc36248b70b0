"""Wind: the design speed both ways, ultimate and nominal."""

from packet.calc.wind import NOMINAL_SPEED, nominal_speed
from packet.figure import FigureSet, Source
from packet.record.job import JobRecord

SPEED_RULE = Source("ibc-2018", "International Building Code", "2018", "Equation 16-33", "seen")


def wind_figures(record: JobRecord, figures: FigureSet) -> None:
    """Add the nominal speed that belongs to an ultimate design speed."""
    basis = record.basis
    if basis and basis.wind_speed and basis.wind_kind == "ultimate":
        speed = figures.as_term("ultimate_mph", "basis.wind_speed")
        nominal = nominal_speed(speed.value)
        figures.computed("basis.wind_nominal", nominal, "mph", NOMINAL_SPEED, [speed], sources=[SPEED_RULE])
