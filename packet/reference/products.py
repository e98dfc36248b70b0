"""Product sheets: what one bundle, roll, box or piece gives, each figure with where it was read."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, Self

from pydantic import BeforeValidator, ValidationInfo, field_validator, model_validator

from packet.fields import Line, Prose, Quantity, Slug, Strict, refuse
from packet.figure import Mark, Source
from packet.reference.models import REASON_MISSING, TableSource
from packet.units import fraction_text
from packet.uses import PurchaseUnit, Use

#: Codes of problems; their sentences are in ``shared/words/problems.yaml``.
OUT_OF_RANGE, BAD_COUNT, LOCATOR_MISSING = "out-of-range", "bad-count", "locator-missing"


@dataclass(frozen=True)
class Gives:
    """What a figure of a sheet may say.

    Attributes:
        unit: Unit key of the figure.
        most: Greatest value that any goods have; more is a slip of unit or digit [unit].
        whole: Whether it counts things that do not come in parts.
    """

    unit: str
    most: int
    whole: bool = False


class FigureCell(Strict):
    """A figure as written in full; what it leaves out is the sheet's own.

    Attributes:
        value: The figure; None when it was not read.
        source: Id of its document when that is not the sheet's.
        locator: Its place there.
        checked: How well it was read.
        reason: Why there is no value.
    """

    value: Quantity | None = None
    source: Slug | None = None
    locator: Line | None = None
    checked: Mark | None = None
    reason: Prose | None = None

    @model_validator(mode="after")
    def _complete(self) -> Self:
        if self.value is None and self.reason is None:
            raise refuse(REASON_MISSING, "", "value, or reason, saying why there is none")
        if self.source is not None and self.locator is None:
            raise refuse(LOCATOR_MISSING, self.source)
        return self


def _cell(typed: Any) -> Any:
    """Return a figure in full; a bare number is its value, and nothing behind the colon lacks its reason."""
    return {"value": typed} if typed is None or isinstance(typed, str) else typed


Cell = Annotated[FigureCell | None, BeforeValidator(_cell)]


class ProductFigures(Strict):
    """The figures of a sheet by name; a sheet leaves out what its goods do not have."""

    cover_sq_ft: Annotated[Cell, Gives("sq_ft", 10_000)] = None
    length_ft: Annotated[Cell, Gives("ft", 1_000)] = None
    width_in: Annotated[Cell, Gives("in", 240)] = None
    height_in: Annotated[Cell, Gives("in", 240)] = None
    pieces_each: Annotated[Cell, Gives("piece", 100_000, whole=True)] = None
    exposure_in: Annotated[Cell, Gives("in", 48)] = None
    most_exposure_in: Annotated[Cell, Gives("in", 48)] = None
    nails_a_pound: Annotated[Cell, Gives("per_lb", 2_000)] = None
    spots_each: Annotated[Cell, Gives("spot", 100_000, whole=True)] = None
    weight_lb_each: Annotated[Cell, Gives("lb", 5_000)] = None
    free_sq_in_a_ft: Annotated[Cell, Gives("sq_in_a_ft", 1_000)] = None

    @field_validator("*")
    @classmethod
    def _in_range(cls, cell: FigureCell | None, info: ValidationInfo) -> FigureCell | None:
        value = cell.value if cell else None
        gives = PRODUCT_FIGURES[str(info.field_name)]
        if value is None:
            return cell
        if not 0 < value <= gives.most:
            raise refuse(OUT_OF_RANGE, fraction_text(value), f"above 0 and at most {gives.most:,}")
        if gives.whole and value.denominator != 1:
            raise refuse(BAD_COUNT, fraction_text(value), "80")
        return cell

    def given(self) -> Mapping[str, FigureCell]:
        """Return the figures that the sheet names, in the order of the vocabulary."""
        cells = {name: getattr(self, name) for name in PRODUCT_FIGURES}
        return {name: cell for name, cell in cells.items() if cell is not None}


#: Every figure a sheet may carry, with its unit and range.
PRODUCT_FIGURES: Mapping[str, Gives] = {
    name: next(item for item in info.metadata if isinstance(item, Gives))
    for name, info in ProductFigures.model_fields.items()
}

#: Figures of which the first can't be larger than the second.
NOT_ABOVE: tuple[tuple[str, str], ...] = (
    ("exposure_in", "most_exposure_in"),
    ("exposure_in", "height_in"),
    ("most_exposure_in", "height_in"),
)


class ProductFile(Strict):
    """A sheet as it is written: goods by kind and size, never by maker.

    Attributes:
        use: What of the roof the goods are usually for; None when the takeoff has no such line.
        unit: Unit they are bought in; every figure is of one such unit.
        source: Where the sheet was read; a figure may name another place.
    """

    product: Slug
    title: Line
    use: Use | None = None
    unit: PurchaseUnit
    source: TableSource
    checked: Mark
    figures: ProductFigures = ProductFigures()
    note: Prose | None = None


@dataclass(frozen=True)
class ProductFigure:
    """One figure of a sheet.

    Attributes:
        name: Its name in the vocabulary, ``width_in``.
        value: Exact value [unit].
        unit: Unit key.
        source: Where it was read, and how well.
    """

    name: str
    value: Fraction
    unit: str
    source: Source


@dataclass(frozen=True)
class Product:
    """A product sheet ready for use.

    Attributes:
        figures: Figures that were read, by name.
        missing: Figures that were not read, by name, with the reason.
        source: Where the sheet as a whole was read.
    """

    id: str
    title: str
    use: Use | None
    unit: PurchaseUnit
    figures: Mapping[str, ProductFigure]
    missing: Mapping[str, str]
    source: Source
    note: str


def product_of(file: ProductFile, cited: Callable[[str, str, Mark], Source]) -> Product:
    """Return the product of a sheet.

    Args:
        file: The sheet.
        cited: Returns a source for an id, a locator and a mark.
    """
    figures, missing = {}, {}
    for name, cell in file.figures.given().items():
        if cell.value is None:
            missing[name] = cell.reason or ""
        else:
            source = cited(
                cell.source or file.source.id,
                cell.locator or file.source.locator,
                cell.checked or file.checked,
            )
            figures[name] = ProductFigure(name, cell.value, PRODUCT_FIGURES[name].unit, source)
    whole = cited(file.source.id, file.source.locator, file.checked)
    return Product(file.product, file.title, file.use, file.unit, figures, missing, whole, file.note or "")
