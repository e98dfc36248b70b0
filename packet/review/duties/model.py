"""Types of the review of inspections and certificates."""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from packet.figure import Source

DutyWord = Literal["needed", "not_needed", "cannot_tell", "not_verified"]
DayWord = Literal["in_order", "same_day", "out_of_order", "not_recorded", "not_due"]
StandingWord = Literal["valid", "not_valid", "not_recorded", "not_due"]


@dataclass(frozen=True)
class Bound:
    """One end of what a rule asks of a fact: a number, a day, or words.

    Attributes:
        kind: at_least, at_most, above, below or is.
        figure: Id of the figure of a number; "" otherwise.
        day: A day; None otherwise.
        words: Words that a fact may be; empty otherwise.
    """

    kind: str
    figure: str = ""
    day: date | None = None
    words: tuple[str, ...] = ()


@dataclass(frozen=True)
class Reason:
    """A fact of the job a rule looked at: what it is here, and what the rule asks of it.

    Attributes:
        fact: Name of the fact, as in ``facts`` of the words.
        figure: Id of its figure; "" when it is no number.
        day: Its day; None when it is none.
        word: Its word; "" when it is none.
        subject: Roof section it is of; "" for the job.
        bounds: What the rule asks.
    """

    fact: str
    figure: str
    day: date | None
    word: str
    subject: str
    bounds: tuple[Bound, ...]


@dataclass(frozen=True)
class Rule:
    """A row that was looked at, what it answers, and how well it was read.

    Attributes:
        row: Id of the row.
        answer: needed or not_needed.
        applies: Its conditions hold here; otherwise a fact is missing.
        decides: It was read well enough to decide.
        caution: It decides from a restatement.
        note: The rule in plain words.
        source: Where it was read.
    """

    row: str
    answer: DutyWord
    applies: bool
    decides: bool
    caution: bool
    note: str
    source: Source


@dataclass(frozen=True)
class DayCheck:
    """Two days held against each other.

    Attributes:
        key: What is compared, as in ``duties.days`` of the words.
        word: How they stand.
        day: Day of the paper or the visit.
        against: Day of the work, or of another visit, it is held against.
        paper: Id of the paper or the visit; "" when there is none.
    """

    key: str
    word: DayWord
    day: date | None
    against: date | None
    paper: str = ""


@dataclass(frozen=True)
class Stated:
    """One thing an affidavit states, as far as this record holds it.

    Attributes:
        key: What is stated, as in ``duties.stated`` of the words.
        recorded: The record holds it.
        figures: Ids of its figures.
        text: The record's words for it.
        photos: Photos that show it.
        planes: Planes of the work that no photo shows.
    """

    key: str
    recorded: bool
    figures: tuple[str, ...] = ()
    text: str = ""
    photos: tuple[str, ...] = ()
    planes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Duty:
    """An inspection, a permit or a certificate: whether this job needs it, and why.

    Attributes:
        id: Stable id.
        word: needed, not_needed, cannot_tell, not_verified.
        stated: The record itself says so; no rule was needed.
        reasons: Facts the rules looked at.
        missing: Facts without which it can't be told.
        rules: Rows looked at.
        days: Days compared; empty when it is not needed.
        stated_facts: What an affidavit states.
        evidence: Ids of papers and visits.
    """

    id: str
    word: DutyWord
    stated: bool
    reasons: tuple[Reason, ...]
    missing: tuple[str, ...]
    rules: tuple[Rule, ...]
    days: tuple[DayCheck, ...]
    stated_facts: tuple[Stated, ...]
    evidence: tuple[str, ...]


@dataclass(frozen=True)
class Standing:
    """Whether a product's approval was valid on every day of the work.

    Attributes:
        approval: Id of the approval.
        word: valid, not_valid, not_recorded, not_due.
        first: First day of the work.
        last: Last day of the work; None while it goes on.
    """

    approval: str
    word: StandingWord
    first: date | None
    last: date | None
