"""What each kind of work is asked for; only these parts print "not recorded" when they are absent."""

from dataclasses import dataclass
from typing import Literal

from packet.record.house import Kind
from packet.record.job import JobRecord
from packet.review.answers import at

From = Literal["opened", "closed"]

_ALL: frozenset[Kind] = frozenset({"patch", "section", "re-roof", "recover"})
_LEAKED: frozenset[Kind] = frozenset({"patch", "section"})
_WHOLE: frozenset[Kind] = frozenset({"re-roof", "recover"})
_LARGE: frozenset[Kind] = frozenset({"section", "re-roof", "recover"})


@dataclass(frozen=True)
class Part:
    """A part of the record by its path.

    Attributes:
        path: Dotted path, as ``roof.old.bend_test``.
        kinds: Kinds of work that are asked for it.
        since: Asked once the roof was opened, or once the job is closed.
    """

    path: str
    kinds: frozenset[Kind]
    since: From


PARTS: tuple[Part, ...] = (
    Part("cause.how_known", _LEAKED, "opened"),
    Part("roof", _ALL, "opened"),
    Part("roof.old", _ALL, "opened"),
    Part("roof.old.age_years", _ALL, "opened"),
    Part("roof.old.condition", _ALL, "opened"),
    Part("roof.old.bend_test", _LEAKED, "opened"),
    Part("roof.old.match_tried", _LEAKED, "opened"),
    Part("basis", _ALL, "opened"),
    Part("dry_in.weather", _ALL, "opened"),
    Part("people.crew", _ALL, "opened"),
    Part("dry_in", _LARGE, "closed"),
    Part("drip_edge", _WHOLE, "closed"),
    Part("details", _LARGE, "closed"),
    Part("covering", _ALL, "closed"),
    Part("tie_in", _LEAKED, "closed"),
    Part("ventilation", _WHOLE, "closed"),
    Part("bought", _ALL, "closed"),
    Part("tested", _LEAKED, "closed"),
    Part("tested.result", _LEAKED, "closed"),
    Part("clean_up.magnet", _ALL, "closed"),
    Part("clean_up.gutters", _ALL, "closed"),
    Part("clean_up.walk_through", _ALL, "closed"),
    Part("inspections", _ALL, "closed"),
    Part("warranty", _ALL, "closed"),
)


def absent(record: JobRecord) -> tuple[str, ...]:
    """Return the expected parts that are not there; a part inside an absent one is not named too."""
    missing = [path for path in expected(record) if not at(record, path)]
    return tuple(path for path in missing if not any(path.startswith(f"{other}.") for other in missing))


def expected(record: JobRecord) -> tuple[str, ...]:
    """Return the paths of the parts this job is asked for as it stands."""
    since: frozenset[From] = {
        "planned": frozenset[From](),
        "under way": frozenset[From]({"opened"}),
        "closed": frozenset[From]({"opened", "closed"}),
    }[record.job.status]
    return tuple(part.path for part in PARTS if record.job.kind in part.kinds and part.since in since)
