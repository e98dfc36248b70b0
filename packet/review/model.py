"""Types of the review."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from packet.figures.rules import Limit
from packet.record.job import JobRecord

Word = Literal["meets", "differs", "not_recorded", "does_not_apply", "not_verified"]

#: What is done to a work area, in order.
Step = Literal["opened", "dried_in", "covered"]

#: How near a photo was taken: ``wide`` shows where it is, ``close`` what it is.
View = Literal["wide", "close"]

#: In the place of the stage that hides something: nothing does, and a photo of any later stage shows it.
NEVER_HIDDEN = "nothing"

#: Worst first: the word of a requirement is the worst word of its parts.
WORST_FIRST: tuple[Word, ...] = ("differs", "not_recorded", "not_verified", "meets", "does_not_apply")


@dataclass(frozen=True)
class Answer:
    """What the record says to one question.

    Attributes:
        value: A number in the question's unit, a word, or a nail (length in, shank in, kind of shank); None
            when nothing was recorded.
        figures: Ids of the figures that show it.
        text: Words that show it.
    """

    value: object = None
    figures: tuple[str, ...] = ()
    text: str = ""


@dataclass(frozen=True)
class Question:
    """One thing a requirement asks: the name rules use for it, and how the record answers.

    Attributes:
        asks: Name that rows in ``shared/codes/`` limit.
        answer: Reads the answer.
        maker: Reads what the maker printed, and where.
        present: The thing only has to be there; no rule limits it.
        when: Whether it is asked of this record; of every one when None.
    """

    asks: str
    answer: Callable[[JobRecord], Answer]
    maker: Callable[[JobRecord], Limit | None] | None = None
    present: bool = False
    when: Callable[[JobRecord], bool] | None = None


@dataclass(frozen=True)
class Requirement:
    """One requirement of the catalogue.

    Attributes:
        id: Stable id; photos name it in ``proves``.
        questions: What it asks.
        shown_at: Stage that shows it.
        hidden_by: Stage that hides it.
        asked_by: Readers who ask.
        applies: Returns "" when it applies, else the key of the reason why not.
        kinds: Kinds of work that ask it.
        subjects: Ids it is judged for one by one; the whole job when None.
        if_ruled: Asked only where a rule the job rests on limits it, or the record answers it.
        stages: Returns the stage that shows it and the one that hides it, where the record decides that.
        if_answered: Kinds of work that do not ask it, and judge it when the record or a photo answers.
        by_plane: Its subjects are planes: a photo proves it that names the requirement and shows the plane.
        views: Views that are both wanted, as the log states them: ``wide`` shows where, ``close`` what.
        papers: A paper of the record proves it as well as a photo.
        office_only: Only the office's copy carries it.
    """

    id: str
    questions: tuple[Question, ...]
    shown_at: str
    hidden_by: str
    asked_by: tuple[str, ...]
    applies: Callable[[JobRecord], str]
    kinds: frozenset[str] = frozenset({"patch", "section", "re-roof", "recover"})
    subjects: Callable[[JobRecord], tuple[str, ...]] | None = None
    if_ruled: bool = False
    stages: Callable[[JobRecord], tuple[str, str]] | None = None
    if_answered: frozenset[str] = frozenset()
    by_plane: bool = False
    views: tuple[View, ...] = ()
    papers: bool = False
    office_only: bool = False


@dataclass(frozen=True)
class Part:
    """One question of a requirement: its limits, the answer, and the word for it."""

    asks: str
    limits: tuple[Limit, ...]
    governing: str
    answer: Answer
    word: Word


@dataclass(frozen=True)
class Missed:
    """Why a photo proves nothing: it was taken after a layer was covered, or before it could be seen.

    Attributes:
        photo: Id of the photo.
        side: After or before.
        step: What was done then.
        at: Day or time of it.
        area: Work area it was done to; "" for the whole job.
    """

    photo: str
    side: Literal["after", "before"]
    step: Step
    at: date
    area: str = ""


@dataclass(frozen=True)
class Result:
    """The result of one requirement for one subject.

    Attributes:
        requirement: Id of the requirement.
        subject: Sheet or detail it was judged for; "" for the whole job.
        word: The worst word of its parts.
        parts: Its questions.
        evidence: Photos that prove it.
        papers: Documents that prove it.
        stated: Those of ``evidence`` whose time rests on what somebody said: a weaker proof.
        late: Photos that name it but show no proof: another stage, or taken after the layer was covered.
        missed: What those of ``late`` missed whose stage is the right one.
        due: The job, or the area it lies in, has passed the stage that hides it.
        open: It is due, and differs or is not recorded, and no way out is given.
        reason: Why it was not recorded, in the record's words, or the key of why it does not apply.
        why_not_proven: Key of why nothing proves it: no value, no photo, no wide or no close one, or only
            photos from another time or of none.
        way_out: Place of its way out in the record's list.
    """

    requirement: str
    subject: str
    word: Word
    parts: tuple[Part, ...]
    evidence: tuple[str, ...]
    late: tuple[str, ...]
    due: bool
    open: bool
    shown_at: str
    hidden_by: str
    asked_by: tuple[str, ...]
    reason: str = ""
    why_not_proven: str = ""
    way_out: int | None = None
    papers: tuple[str, ...] = ()
    stated: tuple[str, ...] = ()
    missed: tuple[Missed, ...] = ()


@dataclass(frozen=True)
class Finding:
    """Two facts that do not agree, with both values; nothing is silently mended."""

    code: str
    subject: str
    figures: tuple[str, ...] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    explanation: str = ""

    @property
    def id(self) -> str:
        """Id by which the record explains it, ``edge-length:E1``."""
        return f"{self.code}:{self.subject}"
