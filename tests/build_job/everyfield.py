"""A job whose every free-text field is filled, each with a text of its own."""

import copy
import json
import types
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

import yaml
from pydantic import BaseModel, StringConstraints

from packet.photos.log import LoggedPhoto, PhotoLog
from packet.record.job import JobRecord
from packet.record.office import Office as OfficeCard
from packet.workspace import Workspace
from tests.support.office import NUMBER, demo_text
from tests.support.pictures import picture

#: Text fields that hold the name of something else, where only some words are accepted; and the reason for no
#: permit, which may not stand beside a permit.
NAMES = frozenset(
    {
        ("JobHead", "number"),
        ("JobHead", "number"),
        ("Basis", "code"),
        ("Basis", "programs"),
        ("Basis", "practices"),
        ("Basis", "no_permit"),
        ("Edge", "sides"),
        ("WayOut", "requirement"),
        ("Correction", "requirement"),
        ("CodeItem", "code"),
        ("CodeItem", "figure"),
        ("Document", "proves"),
        ("LoggedPhoto", "proves"),
        ("LoggedPhoto", "file"),
    }
)

#: What the demo job has no need of, so that the record below has an entry of every kind. Its wind class is
#: any text, which is none that a rule accepts: that differs, and wants a way out.
MORE = {
    "ways_out": [{"requirement": "shingle-wind-class", "kind": "accepted", "on": "2026-03-20", "text": "-"}],
    "explained": {"edge-length:E1": "-"},
    "temporary": [{"id": "T1", "where": "-", "what": "-", "put_on": "2026-03-16"}],
    "ventilation": {
        "vents": [
            {"id": "VT1", "what": "-", "place": "high", "state": "new", "pieces": 2, "free_sq_in_each": 50}
        ]
    },
    "detached": [{"id": "DT1", "what": "-", "off": "2026-03-16", "state": "replaced"}],
    "punch_list": [{"id": "PL1", "what": "-"}],
    "undocumented": [{"what": "-", "why": "-"}],
    "permissions": [{"id": "AP1", "kind": "affidavit"}],
    "approvals": [{"id": "PA1", "valid_from": "2026-01-01", "valid_until": "2026-12-31"}],
    "code_items": [{"id": "CI1", "code": "irc-2018"}],
    "callbacks": [{"id": "CB1", "on": "2026-05-02", "told": "-", "ours": "not our work"}],
}

#: The same, inside parts that the demo job has.
MORE_INSIDE: dict[tuple[str, str], Any] = {
    ("dry_in", "sealed_deck"): {"way": "tape on the joints"},
    ("dry_in", "ice_barrier"): {"product": "-"},
    ("deck", "boards"): [
        {
            "id": "BD1",
            "plane": "MS",
            "where": "-",
            "size": "-",
            "width": "5-1/2 in",
            "pieces": 2,
            "length": "14 ft",
            "nail": {"size": "2-1/2 x 0.131", "shank": "smooth"},
            "why": "-",
        }
    ],
    ("roof", "worked_before"): [{"id": "EW1", "on": "2025-12-01", "area": "40 sq ft"}],
    ("deck", "clips"): {"kind": "-", "each_space": 1},
    ("deck", "over_boards"): {"laid": "spaced", "thickness": "3/4 in", "width": "3-1/2 in", "gap": "5 in"},
    ("deck", "renailed"): {"planes": ["MN"], "nail": {"size": "2-3/8 x 0.113", "shank": "ring"}},
    ("covering", "low_slope"): [{"id": "LS1", "plane": "DR", "product": "-"}],
    ("roof", "ties"): [
        {"id": "TIE1", "where": "-", "kind": "clip", "nails": "3", "state": "new", "note": "-"}
    ],
    ("roof", "sections"): [{"id": "SEC1", "title": "-", "planes": ["MS", "MN"]}],
    ("roof", "forms"): [
        {
            "id": "SHOP",
            "form": "gable",
            "front": "south",
            "at": ["100 ft", "0 ft"],
            "length": "20 ft",
            "depth": "16 ft",
            "pitch": "6:12",
            "planes": {"front": {"id": "SS", "title": "-"}, "back": {"id": "SN", "title": "-"}},
        }
    ],
}

#: A porch with a pointed roof, which the demo house does not have.
POINTED = {
    "id": "TR", "title": "-", "shape": "triangle", "lower": "8 ft", "top_at": "4 ft", "run": "4 ft",
    "pitch": "4:12", "facing": "north", "at": ["0 ft", "60 ft"],
}  # fmt: skip

#: A plane taped corner by corner, which it does not have either.
CORNERS = {
    "id": "OUT", "title": "-", "shape": "outline", "pitch": "4:12", "facing": "north", "at": ["0 ft", "90 ft"],
    "outline": [["0 ft", "0 ft"], ["8 ft", "0 ft"], ["8 ft", "5 ft"], ["3 ft", "5 ft"]],
}  # fmt: skip

#: The goods of one line, delivery by delivery; they come to what the demo job says was delivered.
DELIVERIES = [
    {"id": "DL1", "on": "2026-03-16", "ticket": "-", "quantity": "5", "lot": "-"},
    {"id": "DL2", "on": "2026-03-17", "ticket": "-", "quantity": "2", "lot": "-"},
]

#: What the office usually uses, but for its free texts.
USUAL = {
    "deck_nail": {"size": "2-3/8 x 0.113", "shank": "ring"},
    "underlayment": {"fasteners": {"at_laps": "6 in", "between": "12 in"}},
    "shingle_nail": {"length": "1-1/2 in", "shank": "0.120 in", "head": "3/8 in"},
}

#: A taped edge that is too short, so that there is something to explain.
SHORT = "15 ft"

Place = tuple[str | int, ...]
TextOf = Callable[[Place], str]


def demo_data() -> dict[str, Any]:
    """Return the demo record as plain data, every scalar as typed."""
    data: dict[str, Any] = yaml.load(demo_text(), Loader=yaml.BaseLoader) | copy.deepcopy(MORE)
    for (part, name), value in copy.deepcopy(MORE_INSIDE).items():
        data[part][name] = value
    data["roof"]["planes"] += [dict(POINTED), copy.deepcopy(CORNERS)]
    data["bought"][0]["deliveries"] = copy.deepcopy(DELIVERIES)
    data["roof"]["edges"][0]["measured"] = SHORT
    data["inspections"][0]["corrections"] = [{"asked": "-"}]
    return data


def photo_data() -> list[dict[str, Any]]:
    """Return three photos: for everyone, for the office alone as written, and as nothing is written."""
    both = ["outside", "office"]
    return [
        {
            "id": "P01",
            "file": "photos/P01.jpg",
            "stage": "before",
            "shows": "-",
            "readers": both,
            "plane": "MS",
        },
        {"id": "P02", "file": "photos/P02.jpg", "stage": "deck", "shows": "-", "readers": ["office"]},
        {"id": "P03", "file": "photos/P03.jpg", "stage": "done", "shows": "-", "proves": ["deck-nail"]},
    ]


def _members(hint: Any) -> tuple[Any, ...]:
    """Return the alternatives of a type, without None."""
    if get_origin(hint) in (Union, types.UnionType):
        return tuple(member for arm in get_args(hint) for member in _members(arm))
    if get_origin(hint) is Annotated and get_origin(get_args(hint)[0]) in (Union, types.UnionType):
        return _members(get_args(hint)[0])
    return () if hint is type(None) else (hint,)


def is_text(hint: Any) -> bool:
    """Tell whether a type takes any text a person types."""
    if get_origin(hint) is not Annotated:
        return False
    kind, *rules = get_args(hint)
    return kind is str and all(isinstance(rule, StringConstraints) and not rule.pattern for rule in rules)


def is_model(hint: Any) -> bool:
    """Tell whether a type is a model of its own."""
    return isinstance(hint, type) and issubclass(hint, BaseModel)


def text_fields(model: type[BaseModel], seen: frozenset[type] = frozenset()) -> set[tuple[str, str]]:
    """Return model and name of each field below a model that takes free text."""
    found: set[tuple[str, str]] = set()
    for name, hint in get_type_hints(model, include_extras=True).items():
        if name not in model.model_fields:
            continue
        for member in _members(hint):
            for part in (member, *get_args(member)) if get_origin(member) in (tuple, dict) else (member,):
                for inner in _members(part):
                    if is_text(inner):
                        found.add((model.__name__, name))
                    elif is_model(inner) and inner not in seen:
                        found |= text_fields(inner, seen | {model})
    return found - NAMES


class Filling:
    """Fills every free-text field of plain data.

    Attributes:
        texts: What was filled in, by its place.
        fields: Model and field, by place.
    """

    def __init__(self, text_of: TextOf) -> None:
        self._text_of = text_of
        self.texts: dict[Place, str] = {}
        self.fields: dict[Place, tuple[str, str]] = {}

    def fill(self, model: type[BaseModel], data: dict[str, Any], at: Place) -> None:
        """Fill one mapping in place."""
        for name, hint in get_type_hints(model, include_extras=True).items():
            if name not in model.model_fields or (model.__name__, name) in NAMES:
                continue
            for member in _members(hint):
                if is_text(member):
                    data[name] = self._text(model, name, (*at, name))
                elif is_model(member) and isinstance(data.get(name), dict):
                    self.fill(member, data[name], (*at, name))
                elif get_origin(member) is tuple and isinstance(data.get(name), list):
                    self._entries(model, name, get_args(member)[0], data[name], (*at, name))
                elif get_origin(member) is dict and isinstance(data.get(name), dict):
                    for key in data[name]:
                        data[name][key] = self._text(model, name, (*at, name, key))

    def _entries(self, model: type[BaseModel], name: str, hint: Any, entries: list[Any], at: Place) -> None:
        for index, entry in enumerate(entries):
            place = (*at, entry.get("id", index) if isinstance(entry, dict) else index)
            if is_text(hint):
                entries[index] = self._text(model, name, place)
            elif isinstance(entry, dict):
                self.fill(next(m for m in _members(hint) if _is_kind(m, entry)), entry, place)

    def _text(self, model: type[BaseModel], name: str, at: Place) -> str:
        self.fields[at] = (model.__name__, name)
        self.texts[at] = self._text_of(at)
        return self.texts[at]


def _is_kind(model: type[BaseModel], entry: dict[str, Any]) -> bool:
    """Tell whether an entry's shape or form is the one a model stands for."""
    hints = get_type_hints(model)
    told = ((hints[name], entry[name]) for name in ("shape", "form") if name in hints)
    return all(get_origin(hint) is not Literal or value in get_args(hint) for hint, value in told)


def write_job(
    root: Path,
    text_of: TextOf,
    *,
    photos: list[dict[str, Any]] | None = None,
    change: Callable[[dict[str, Any]], None] = lambda record: None,
) -> Filling:
    """Write an office with one job, its texts given by their places.

    Args:
        root: Folder of the office.
        text_of: Returns the text of a place.
        photos: Entries of the log, instead of three plain ones.
        change: Changes the record's data before it is filled.
    """
    filling = Filling(text_of)
    record, log = demo_data(), {"photos": photos or photo_data()}
    card = {"name": "-", "address": "-", "phone": "-", "usual": copy.deepcopy(USUAL)}
    change(record)
    filling.fill(JobRecord, record, ("record",))
    filling.fill(OfficeCard, card, ("office",))
    filling.fill(PhotoLog, log, ())
    job = root / "jobs" / NUMBER
    for path, data in (
        (job / "job.yaml", record),
        (job / "photos.yaml", log),
        (root / "shared" / "office.yaml", card),
    ):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")
    for photo in log["photos"]:
        path = job / photo["file"]
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(_one_picture())
    return filling


@cache
def _one_picture() -> bytes:
    """Return a photo; a second one would differ, since a colour profile holds the time it was made."""
    with TemporaryDirectory() as folder:
        return picture(Path(folder, "P.jpg")).read_bytes()


def job_of(root: Path) -> tuple[Workspace, Path]:
    """Return what a build of the written job needs."""
    return Workspace(root), root / "jobs" / NUMBER


def all_text_fields() -> set[tuple[str, str]]:
    """Return every free-text field of the three files."""
    return text_fields(JobRecord) | text_fields(OfficeCard) | text_fields(LoggedPhoto)


def numbered(text: str) -> TextOf:
    """Return texts with a running number in the place of ``{}``."""
    numbers: Iterator[int] = iter(range(1, 10_000))
    return lambda place: text.format(f"{next(numbers):04}")
