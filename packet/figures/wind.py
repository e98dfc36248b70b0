"""Wind: the design speed both ways, ultimate and nominal."""

from packet.calc.wind import NOMINAL_SPEED, nominal_speed
from packet.figure import FigureSet, Source
from packet.record.job import JobRecord
from packet.reference import Library

#: Where the equation stands.
SPEED_RULE, SPEED_LOCATOR = "ibc-2018", "Equation 16-33"


def wind_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add the nominal speed that belongs to an ultimate design speed."""
    basis = record.basis
    if basis and basis.wind_speed and basis.wind_kind == "ultimate":
        speed = figures.as_term("ultimate_mph", "basis.wind_speed")
        nominal = nominal_speed(speed.value)
        document = library.document(SPEED_RULE)
        source = Source(SPEED_RULE, document.document, document.edition, SPEED_LOCATOR, "seen")
        figures.computed("basis.wind_nominal", nominal, "mph", NOMINAL_SPEED, [speed], sources=[source])
