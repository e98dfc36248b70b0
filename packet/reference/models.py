"""The files of ``shared/`` as they are written: strict models, so that a misspelt key is never dropped."""

import re
from fractions import Fraction
from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Discriminator, Tag, ValidationInfo, field_validator, model_validator

from packet.fields import Count, Day, Line, Prose, Quantity, Slug, Strict, refuse
from packet.figure import Mark
from packet.problems import nearest
from packet.reference.vocabulary import ASKS, UNITS, Form, Kind, Nail
from packet.reference.when import RowWhen, When

Whose = Literal["law", "maker", "program", "practice"]

#: Codes of problems; their sentences are in ``shared/words/problems.yaml``.
BAD_ID, NOT_ONE_OF, WRONG_KIND = "bad-id", "not-one-of", "wrong-kind"
REASON_MISSING, UNIT_MISSING, VALUE_NOT_WANTED = "reason-missing", "unit-missing", "value-not-wanted"


def _table_name(value: Any) -> str:
    if not isinstance(value, str) or not re.fullmatch(r"[a-z0-9]+(?:_[a-z0-9]+)*", value):
        raise refuse(BAD_ID, value, "small letters, digits and underscores, for example roll_goods")
    return value


TableName = Annotated[str, BeforeValidator(_table_name)]


class SourceEntry(Strict):
    """A published document: one edition of it."""

    document: Line
    edition: Line
    publisher: Line | None = None
    address: Line | None = None


class SourcesFile(Strict):
    """``sources.yaml`` under one key, so that ids are checked like any other value."""

    sources: dict[Slug, SourceEntry]


def _form(value: Any) -> Form:
    if not isinstance(value, list):
        return "number"
    return "nails" if any(isinstance(item, dict) for item in value) else "words"


RowValue = Annotated[
    Annotated[Quantity, Tag("number")]
    | Annotated[tuple[Line, ...], Tag("words")]
    | Annotated[tuple[Nail, ...], Tag("nails")],
    Discriminator(_form),
]

_KINDS_OF: dict[Form, frozenset[Kind]] = {
    "number": frozenset({"at_most", "at_least", "present"}),
    "words": frozenset({"one_of", "present"}),
    "nails": frozenset({"one_of", "present"}),
}


def form_of(value: object) -> Form:
    """Return whether a value that was read is a number, words or nails."""
    if isinstance(value, Fraction):
        return "number"
    return "nails" if isinstance(value, tuple) and value and isinstance(value[0], Nail) else "words"


def _ask(value: Any) -> Any:
    if isinstance(value, str) and value not in ASKS:
        raise refuse(NOT_ONE_OF, value, nearest(value, ASKS) or ", ".join(ASKS))
    return value


class RowEntry(Strict):
    """One limit as a document states it.

    Attributes:
        added_to: A fact that the value is added to: a nail that goes through the deck and 1/8 in past it.
        superseded: What took the rule's place; a superseded rule decides nothing.
        eased_by: Rows of the same file that ask less where their conditions hold; this one then stands back.
        authority: Who adopted the row; one that asks less than the edition it amends has to name it.
    """

    asks: Annotated[Line, BeforeValidator(_ask)]
    kind: Kind
    value: RowValue | None = None
    unit: Line | None = None
    added_to: Literal["panel_thickness_in"] | None = None
    when: RowWhen = RowWhen()
    locator: Line
    source: Slug | None = None
    checked: Mark
    reason: Prose | None = None
    superseded: Prose | None = None
    eased_by: tuple[Slug, ...] = ()
    authority: Line | None = None
    note: Prose | None = None

    @field_validator("kind")
    @classmethod
    def _kind_suits(cls, kind: Kind, info: ValidationInfo) -> Kind:
        ask = ASKS.get(info.data.get("asks", ""))
        if ask and kind not in _KINDS_OF[ask.form]:
            raise refuse(NOT_ONE_OF, kind, ", ".join(sorted(_KINDS_OF[ask.form])))
        return kind

    @field_validator("value")
    @classmethod
    def _value_suits(cls, value: object, info: ValidationInfo) -> object:
        ask = ASKS.get(info.data.get("asks", ""))
        if value is not None and ask and form_of(value) != ask.form:
            wanted = {"number": "a number", "words": "a list of words", "nails": "a list of nails"}
            raise refuse(WRONG_KIND, "", wanted[ask.form])
        return value

    @field_validator("unit")
    @classmethod
    def _unit_suits(cls, unit: str | None, info: ValidationInfo) -> str | None:
        ask = ASKS.get(info.data.get("asks", ""))
        if unit is not None and ask and unit != ask.unit:
            raise refuse(NOT_ONE_OF, unit, ask.unit or "no unit: it is limited by words")
        return unit

    @model_validator(mode="after")
    def _complete(self) -> Self:
        number = ASKS[self.asks].form == "number"
        if self.kind == "present":
            if self.value is not None:
                raise refuse(VALUE_NOT_WANTED, "", "no value: the rule only asks that it is there")
        elif self.value is None and self.reason is None:
            raise refuse(REASON_MISSING, "", "reason, saying why the value is not given")
        elif number and self.unit is None:
            raise refuse(UNIT_MISSING, "", ASKS[self.asks].unit)
        return self


class DroppedRow(Strict):
    """A row of the amended edition that no longer holds: who adopted that, and where it says so."""

    locator: Line
    authority: Line | None = None


class CodeFile(Strict):
    """One document and edition that limits the work.

    Attributes:
        source: Its id in sources.yaml; left out, it is the code's id, and this file may be the document.
        amends: The edition whose rows come along, and which its own rows add to, tighten or loosen.
        drops: Rows of that edition that no longer hold.
    """

    code: Slug
    title: Line
    edition: Line
    whose: Whose
    source: Slug | None = None
    amends: Slug | None = None
    note: Prose | None = None
    rows: dict[Slug, RowEntry]
    drops: dict[Slug, DroppedRow] = {}

    @property
    def document_id(self) -> str:
        """Id of the document that its rows are cited from."""
        return self.source or self.code


class TableSource(Strict):
    """Where a table was read."""

    id: Slug
    locator: Line


def _unit(value: Any) -> Any:
    if isinstance(value, str) and value not in UNITS:
        raise refuse(NOT_ONE_OF, value, nearest(value, UNITS) or ", ".join(sorted(UNITS)))
    return value


class TableFile(Strict):
    """A published table; cells stay text until their column's unit says what they are."""

    table: TableName
    title: Line
    source: TableSource
    checked: Mark
    units: dict[str, Annotated[Line, BeforeValidator(_unit)]]
    keys: dict[str, Literal["exact", "next_above"]]
    valid: When = When()
    rows: tuple[dict[str, Line | None], ...]
    invariants: tuple[Line, ...] = ()
    sums: dict[str, Quantity] = {}
    note: Prose | None = None


class Reading(Strict):
    """A row the office has read itself in the adopted text: it lifts the row for good."""

    row: Slug
    value: RowValue | None = None
    section: Line
    authority: Line
    read_by: Line
    read_on: Day
    page_image: Line | None = None


class Stage(Strict):
    """A stage of the work, and which of the record's days bound a photo of it."""

    id: Slug
    word: Line
    hidden_by: Slug | None
    earliest: Literal["started", "dried_in", "finished"] | None
    latest: Literal["started", "dried_in", "finished"] | None


class StagesFile(Strict):
    """Stages in the order of the work."""

    stages: tuple[Stage, ...]


class CareApplies(Strict):
    """Houses a note is for."""

    built_before: Count


class CareNote(Strict):
    """One thing the person who lives there should do, leave alone or beware of."""

    kind: Literal["care", "avoid", "caution"]
    when: Slug
    says: Prose
    source: Slug
    locator: Line
    checked: Mark
    applies: CareApplies | None = None
    figures: dict[str, Quantity] = {}


class CareFile(Strict):
    """Care notes of one language."""

    language: Line
    notes: dict[Slug, CareNote]


class RequirementNote(Strict):
    """Where the need for a requirement comes from, and what its photo has in frame."""

    source: Slug
    locator: Line
    checked: Mark
    in_frame: tuple[Line, ...] = ()


class RequirementsFile(Strict):
    """What stands behind each requirement of the catalogue, by its id."""

    requirements: dict[Slug, RequirementNote]
