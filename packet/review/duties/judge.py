"""Which inspection, permit or certificate a job needs, and why.

Thresholds are conditions of rows in ``shared/codes/`` and are found as every limit is; a row answers
``needed`` or ``not needed``. Each row is enough on its own, so one that holds decides whatever another lacks.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from packet.figure import FigureSet
from packet.figures.rules import code_ids
from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.record.permissions import PermissionKind
from packet.reference import CodeRow, Library
from packet.reference.match import Match
from packet.review.duties.days import DAYS
from packet.review.duties.facts import FLORIDA, TEXAS, Known, final_visit, known_facts
from packet.review.duties.model import Duty, DutyWord, Reason, Rule
from packet.review.duties.reasons import reasons_of
from packet.review.duties.stated import stated

_ANSWERS: Mapping[str, DutyWord] = {"needed": "needed", "not needed": "not_needed"}


@dataclass(frozen=True)
class Wanted:
    """One kind of inspection or certificate.

    Attributes:
        id: Stable id.
        asks: Name that rows limit.
        codes: Codes looked at besides those the record names.
        state: State it is for; "" for every place.
        papers: Kinds of papers that are evidence.
        visits: Purpose of visits that are evidence; "" for none.
        documents: Kinds of documents that are evidence.
        after: Asked only where this other one is not ``not_needed``.
    """

    id: str
    asks: str
    codes: tuple[str, ...] = ()
    state: str = ""
    papers: tuple[PermissionKind, ...] = ()
    visits: str = ""
    documents: tuple[str, ...] = ()
    after: str = ""


KINDS: tuple[Wanted, ...] = (
    Wanted(
        "windstorm-certificate",
        "duty.windstorm_certificate",
        codes=("tx-windstorm",),
        state=TEXAS,
        papers=("windstorm application", "windstorm certificate"),
        visits="windstorm",
    ),
    Wanted(
        "engineer",
        "duty.engineer",
        codes=("tx-windstorm",),
        state=TEXAS,
        papers=("engineer certificate",),
        after="windstorm-certificate",
    ),
    Wanted("section-to-code", "duty.section_to_code", codes=("fl-roof-section",), state=FLORIDA),
    Wanted(
        "affidavit",
        "duty.affidavit",
        codes=("fl-roof-section",),
        state=FLORIDA,
        papers=("affidavit",),
    ),
    Wanted("permit", "duty.permit", documents=("permit",)),
    Wanted("final-visit", "duty.final_visit", codes=("permit-closing",), documents=("inspection",)),
)


def _stated_permit(record: JobRecord) -> DutyWord | None:
    """Return what the record itself says: the building office has given a permit, or asks for none."""
    basis = record.basis
    if basis and basis.permit:
        return "needed"
    return "not_needed" if basis and basis.no_permit else None


#: What the record itself says, by duty; it stands before the rules.
_STATED: Mapping[str, Callable[[JobRecord], DutyWord | None]] = {"permit": _stated_permit}


def duties(
    record: JobRecord, photos: Sequence[TakenPhoto], library: Library, figures: FigureSet
) -> tuple[Duty, ...]:
    """Return what this job needs in the order of ``KINDS``, and why.

    Args:
        record: The job record.
        photos: Its photos.
        library: Published rules.
        figures: The record's figures; takes those of shares and of the thresholds.
    """
    known = known_facts(record, library, figures)
    found: dict[str, Duty] = {}
    for kind in KINDS:
        after = found.get(kind.after)
        if kind.state in ("", known.state) and not (after and after.word == "not_needed"):
            found[kind.id] = _duty(kind, record, photos, known, library, figures)
    return tuple(found.values())


def _duty(
    kind: Wanted,
    record: JobRecord,
    photos: Sequence[TakenPhoto],
    known: Known,
    library: Library,
    figures: FigureSet,
) -> Duty:
    codes = dict.fromkeys((*code_ids(record), *kind.codes))
    match = library.match(codes, kind.asks, known.values)
    by_record = _STATED[kind.id](record) if kind.id in _STATED else None
    word, rows = decide(match)
    word = by_record or word
    missing = dict.fromkeys(fact for item in match.cannot_tell for fact in item.missing)
    if kind.id == "permit":
        missing = dict.fromkeys(("permit_named",))
    reasons: dict[Reason, None] = {}
    for row in rows:
        reasons |= dict.fromkeys(reasons_of(row, known, library, figures))
    return Duty(
        id=kind.id,
        word=word,
        stated=by_record is not None,
        reasons=tuple(reasons),
        missing=tuple(missing) if word == "cannot_tell" else (),
        rules=tuple(_rule(row, library, applies=row in match.rows) for row in rows),
        days=DAYS[kind.id](record) if kind.id in DAYS and word != "not_needed" else (),
        stated_facts=stated(record, photos, figures) if kind.id == "affidavit" else (),
        evidence=_evidence(kind, record),
    )


def decide(match: Match) -> tuple[DutyWord, tuple[CodeRow, ...]]:
    """Return the answer of rows, and the rows it rests on.

    A row from memory never decides: where only such a row holds, the rule is not verified here. Rows that
    hold and answer differently show facts that do not agree, and then it can't be told.
    """
    deciding = [row for row in match.rows if row.may_decide]
    answers = {_answer(row) for row in deciding}
    if len(answers) == 1:
        return answers.pop(), tuple(deciding)
    if answers:
        return "cannot_tell", tuple(deciding)
    open_rows = [item.row for item in match.cannot_tell]
    if match.rows or (open_rows and not any(row.may_decide for row in open_rows)):
        return "not_verified", (*match.rows, *open_rows)
    return "cannot_tell", tuple(open_rows)


def _answer(row: CodeRow) -> DutyWord:
    words = row.value if isinstance(row.value, tuple) else ()
    return next(_ANSWERS[word] for word in words if isinstance(word, str))


def _rule(row: CodeRow, library: Library, *, applies: bool) -> Rule:
    return Rule(
        row=row.id,
        answer=_answer(row),
        applies=applies,
        decides=row.may_decide and applies,
        caution=row.caution and applies,
        note=row.note,
        source=library.source(row),
    )


def _evidence(kind: Wanted, record: JobRecord) -> tuple[str, ...]:
    """Return the ids of the papers and visits of one kind, each once."""
    papers = [paper for paper in record.permissions if paper.kind in kind.papers]
    visits = [visit.id for visit in record.inspections if visit.purpose == kind.visits]
    final = final_visit(record) if kind.id == "final-visit" else None
    named = [paper.document for paper in papers if paper.document]
    # a slip of an earlier visit is no paper of the final one
    there = kind.id != "final-visit" or final is not None
    documents = [paper.id for paper in record.documents if there and paper.kind in kind.documents]
    found = (*(paper.id for paper in papers), *visits, *([final.id] if final else []), *named, *documents)
    return tuple(dict.fromkeys(found))
