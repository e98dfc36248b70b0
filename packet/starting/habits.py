"""What the office usually uses, offered for a new job: a habit is written down only where it is confirmed."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from packet.problems import Problem, Refused, nearest
from packet.reading import ReadFile
from packet.record.office import Office
from packet.reference import Library


@dataclass(frozen=True)
class Habit:
    """A habit: its name in a flag, the keys below ``usual`` it is made of, and the words that offer it."""

    id: str
    keys: tuple[str, ...]
    asks: str


HABITS: tuple[Habit, ...] = (
    Habit("code", ("code", "authority"), "Code"),
    Habit("deck-nail", ("deck_nail",), "Deck nail"),
    Habit("underlayment", ("underlayment",), "Underlayment"),
    Habit("drip-edge", ("drip_edge",), "Drip edge"),
    Habit("shingle-nail", ("shingle_nail",), "Shingle nail"),
)


#: What is said after a value that would not tell what it is.
_AFTER: Mapping[str, str] = {
    "shank": " shank",
    "head": " head",
    "at_laps": " at laps",
    "between": " between them",
}


@dataclass(frozen=True)
class Offer:
    """A habit of this office, in the office's own words.

    Attributes:
        habit: The habit.
        value: What the office's card says: text by key, or plain text.
    """

    habit: Habit
    value: Any

    @property
    def question(self) -> str:
        """The offer in a few words: ``Deck nail 2-3/8 x 0.113, ring shank``."""
        return f"{self.habit.asks} {', '.join(_words(self.value))}"


def offers(card: ReadFile[Office], library: Library) -> tuple[Offer, ...]:
    """Return the habits that an office's card names, in the order of the work.

    Raises:
        Refused: The card's usual code is none that is known.
    """
    usual: Mapping[str, Any] = card.document.value.get("usual") or {}
    code = usual.get("code")
    if code and code not in library.code_ids():
        near = nearest(code, library.code_ids()) or ""
        raise Refused(card.problem("unknown-code", ("usual", "code"), code, nearest=near))
    known = (habit for habit in HABITS if all(usual.get(key) for key in habit.keys))
    return tuple(Offer(habit, _value(habit, usual)) for habit in known)


def confirmable(ids: Iterable[str], offered: Collection[Offer]) -> tuple[Problem, ...]:
    """Return the problems of habits that are confirmed although the office's card names none."""
    known = {offer.habit.id for offer in offered}
    return tuple(
        Problem("no-such-habit", Path("--confirm"), found=habit.id, values={"key": " and ".join(habit.keys)})
        for habit in HABITS
        if habit.id in {*ids} - known
    )


def _value(habit: Habit, usual: Mapping[str, Any]) -> Any:
    return {key: usual[key] for key in habit.keys} if len(habit.keys) > 1 else usual[habit.keys[0]]


def _words(value: Any, key: str = "") -> Collection[str]:
    if isinstance(value, Mapping):
        return [word for name, item in value.items() if item is not None for word in _words(item, name)]
    return [f"{' '.join(str(value).split())}{_AFTER.get(key, '')}"]
