"""Rows ready to use: with their document, and matched against what is known of a job."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from packet.figure import DECIDING_MARKS, Mark
from packet.reference.models import CodeFile, Reading, RowEntry, Whose
from packet.reference.vocabulary import ASKS, Form, Kind, Nail
from packet.reference.when import Facts, When, plain

RowValue = Fraction | tuple[str, ...] | tuple[Nail, ...] | None


@dataclass(frozen=True)
class InPlace:
    """A row of an amendment that takes the place of one of the edition's where it applies.

    Attributes:
        row: Id of the amendment's row.
        says: Whose amendment, and where it stands.
    """

    row: str
    says: str


@dataclass(frozen=True)
class CodeRow:
    """One limit of one document and edition.

    Attributes:
        id: Id of the row, unique among all codes.
        code: Id of the code.
        whose: Law, maker, program or practice.
        asks: What it limits.
        kind: At most, at least, one of, present.
        value: Number in ``unit``, words or nails; None when it was not read, or when ``kind`` is present.
        unit: Unit of a number; "" otherwise.
        added_to: Fact the value is added to once the fact is known; "" for none.
        when: Conditions.
        locator: Place in the document.
        source: Id in sources.yaml.
        checked: How well it was read.
        reason: Why there is no value; "" when there is.
        superseded: What took its place; "" when it stands.
        note: Plain note; "" for none.
        reading: The office's own reading that lifted it.
        eased_by: Rows that take its place where they apply.
        amended_by: Rows of an amendment that ask less, and take its place where they apply.
        in_doubt: One of those rows may apply and may not decide: this one can then confirm and not accuse.
        authority: Who adopted it, where that is named; "" otherwise.
    """

    id: str
    code: str
    whose: Whose
    asks: str
    kind: Kind
    value: RowValue
    unit: str
    added_to: str
    when: When
    locator: str
    source: str
    checked: Mark
    reason: str = ""
    superseded: str = ""
    note: str = ""
    reading: Reading | None = None
    eased_by: tuple[str, ...] = ()
    amended_by: tuple[InPlace, ...] = ()
    in_doubt: bool = False
    authority: str = ""

    @property
    def form(self) -> Form:
        """Whether limits of this kind are numbers, words or nails."""
        return ASKS[self.asks].form

    @property
    def may_decide(self) -> bool:
        """Whether the row may decide a result: well enough read, stated, and still in force."""
        stated = self.value is not None or self.kind == "present"
        return self.checked in DECIDING_MARKS and stated and not self.superseded

    @property
    def adopted_by(self) -> str:
        """Who adopted it: as the code's file names them, or as the office's reading does."""
        return self.authority or (self.reading.authority if self.reading else "")

    @property
    def caution(self) -> bool:
        """Whether it decides from a restatement, to be confirmed against the adopted text."""
        return self.may_decide and self.checked == "seen_secondary"


@dataclass(frozen=True)
class CannotTell:
    """A row that may or may not apply, because facts are unknown."""

    row: CodeRow
    missing: tuple[str, ...]


@dataclass(frozen=True)
class Match:
    """Rows that apply, and rows of which it can't be told."""

    rows: tuple[CodeRow, ...]
    cannot_tell: tuple[CannotTell, ...]


def row_of(id: str, entry: RowEntry, code: CodeFile) -> CodeRow:
    """Return a row with its document."""
    return CodeRow(
        id=id,
        code=code.code,
        whose=code.whose,
        asks=entry.asks,
        kind=entry.kind,
        value=entry.value,
        unit=entry.unit or "",
        added_to=entry.added_to or "",
        when=entry.when,
        locator=entry.locator,
        source=entry.source or code.document_id,
        checked=entry.checked,
        reason=entry.reason or "",
        superseded=entry.superseded or "",
        note=entry.note or "",
        eased_by=entry.eased_by,
        authority=entry.authority or "",
    )


def lifted(row: CodeRow, reading: Reading) -> CodeRow:
    """Return the row as the office read it: its value, its section, the mark ``office``."""
    return replace(
        row, value=reading.value, locator=reading.section, checked="office", reason="", reading=reading
    )


def match(rows: Iterable[CodeRow], facts: Facts) -> Match:
    """Return the rows whose conditions hold, and apart from them the rows of which it can't be told.

    Args:
        rows: Rows to judge.
        facts: What is known of the job; None or absence stands for unknown.

    Raises:
        ValueError: A name is no fact.
    """
    known = plain(facts)
    applying, open_rows = [], []
    for row in rows:
        holds, missing = row.when.judge(known)
        if row.added_to and row.added_to not in known and holds is not False:
            holds, missing = None, tuple(dict.fromkeys((*missing, row.added_to)))
        if holds:
            applying.append(_at(row, known.get(row.added_to)))
        elif holds is None:
            open_rows.append(CannotTell(row, missing))
    return Match(tuple(_amended(tuple(_eased(applying)), open_rows)), tuple(open_rows))


def _eased(rows: Sequence[CodeRow]) -> Iterator[CodeRow]:
    """Yield the rows that still stand: one that is eased by a row that was read drops out."""
    decides = {row.id: row.may_decide for row in rows if not row.superseded}
    for row in rows:
        easing = [decides[id] for id in row.eased_by if id in decides]
        if not any(easing):
            yield replace(row, in_doubt=bool(easing))


def _amended(rows: Sequence[CodeRow], open_rows: Sequence[CannotTell]) -> Iterator[CodeRow]:
    """Yield the rows, those of an edition superseded where an amendment's row that was read applies."""
    decides = {item.row.id: False for item in open_rows} | {row.id: row.may_decide for row in rows}
    for row in rows:
        changes = [change for change in row.amended_by if change.row in decides]
        by = next((change.says for change in changes if decides[change.row]), "")
        yield replace(row, superseded=row.superseded or by, in_doubt=row.in_doubt or bool(changes and not by))


def _at(row: CodeRow, base: object) -> CodeRow:
    """Return the row with its value added to the fact it builds on."""
    if not isinstance(row.value, Fraction) or not isinstance(base, Fraction):
        return row
    return replace(row, value=row.value + base)
