"""Changes that a record may well survive: another value of the same kind, an entry more or less.

What is refused at once never reaches the figures, the review and the pages; these changes do.
"""

import re
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from random import Random
from typing import Any

from packet.schema import schema_of
from tests.fuzz.tree_changes import Place, Tree, TreeChange, places

#: How a value of a kind looks, and others of its kind: ordinary ones, and those at the ends of what is accepted.
KINDS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"\d{4}-\d\d-\d\d", ("2026-03-16", "2026-03-17", "1900-01-01", "2026-12-31", "2028-02-29", "0001-01-01", "9999-12-31")),
    (r"\d{4}-\d\d-\d\d[T ].*", ("2026-03-16T08:12:30", "2026-03-16 00:00", "9999-12-31T23:59:59")),
    (r".*(?:oc|on center)", ("6 in oc", "4 in oc", "12 in oc", "1/4 in oc", "10 ft", "24 oc", "5-63/64 in oc")),
    (r"[\d./ -]+:12", ("6:12", "0:12", "1/4:12", "2:12", "3:12", "4:12", "8-1/2:12", "12:12", "24:12", "120:12", "1/9999:12")),
    (r"-?[\d./' -]+(?:ft|').*", ("1 ft", "0 ft", "12 ft 6 in", "1/64 in", "3-11/64 in", "1000 ft", "-4 ft", "-1000 ft", "23 ft 11-15/16 in")),
    (r"-?[\d./ -]+(?:in|\").*", ("1 in", "2 in", "0.019 in", "15/32 in", "1/64 in", "12 in", "35 in", "36 in", "37 in", "1000 ft", "5-5/8 in")),
    (r"[\d./-]+ x [\d./-]+", ("2-3/8 x 0.113", "2-1/2 x 0.131", "1 x 0.12", "1-1/4 x 0.120", "1/2 x 0.04", "12 x 1/2")),
    (r"[\d.]+ mph", ("90 mph", "110 mph", "130 mph", "140 mph", "180 mph", "1 mph", "300 mph", "129.5 mph")),
    (r"[\d./-]+ (?:sq ft|squares?)", ("1 sq ft", "0 sq ft", "100 sq ft", "3-1/2 squares", "10000 squares")),
    (r"[A-Z]{3} [\d.,]+", ("USD 0", "USD 4860.00", "USD 999,999,999.99", "EUR 12")),
    (r"\d+", ("0", "1", "2", "3", "4", "6", "12", "100", "1988", "1000000")),
    (r"\d+[-./]\d+(?:/\d+)?", ("1/2", "3-1/2", "0.5", "0", "1000000", "1/9999")),
    (r"[+-]\d\d:\d\d", ("-04:00", "+00:00", "+14:00", "-14:59")),
)  # fmt: skip

_PLAIN_ID = re.compile(r"[A-Z0-9-]{1,24}")


@cache
def _choices() -> tuple[tuple[str, ...], ...]:
    """Return the lists of words that fields choose from, as the schemas give them."""

    def walk(node: Any) -> Iterator[tuple[str, ...]]:
        if isinstance(node, dict):
            if isinstance(node.get("enum"), list):
                yield tuple(map(str, node["enum"]))
            for below in node.values():
                yield from walk(below)
        elif isinstance(node, list):
            for below in node:
                yield from walk(below)

    return tuple(
        dict.fromkeys(words for kind in ("job", "photos", "office") for words in walk(schema_of(kind)))
    )


def others(word: str, same_key: list[str]) -> list[str]:
    """Return words that a field which holds this one may hold as well."""
    for looks, words in KINDS:
        if re.fullmatch(looks, word):
            return list(words)
    listed = [other for words in _choices() if word in words for other in words]
    return listed or same_key


def _scalars(tree: Tree) -> list[Place]:
    """Return the places of all text; a stand-in when the tree holds none any more."""
    return [(holder, key) for holder, key in places(tree) if isinstance(holder[key], str)] or [([""], 0)]


def _other_value(tree: Tree, dice: Random) -> None:
    scalars = _scalars(tree)
    holder, key = dice.choice(scalars)
    same = [h[k] for h, k in scalars if k == key]
    holder[key] = dice.choice(others(holder[key], same) or [holder[key]])


def _same_kind(tree: Tree, dice: Random) -> None:
    """Put the value of another key of the same name, or another id of the record, in the place of one."""
    scalars = _scalars(tree)
    ids = [h[k] for h, k in scalars if k == "id" and _PLAIN_ID.fullmatch(h[k])]
    holder, key = dice.choice(scalars)
    if holder[key] in ids and key != "id":
        holder[key] = dice.choice(ids)
    else:
        holder[key] = dice.choice([h[k] for h, k in scalars if k == key])


def _less(tree: Tree, dice: Random) -> None:
    found = places(tree)
    if found:
        holder, key = dice.choice(found)
        del holder[key]


def _entry_more(tree: Tree, dice: Random) -> None:
    """Write an entry of a list once more, under an id of its own where it has one."""
    lists = [holder for holder, _ in places(tree) if isinstance(holder, list)]  # none of them is empty
    if lists:
        rows = dice.choice(lists)
        entry = deepcopy(dice.choice(rows))
        if isinstance(entry, dict) and "id" in entry:
            entry["id"] = f"X{dice.randrange(1000)}"
        rows.insert(dice.randrange(len(rows) + 1), entry)


def _turned(tree: Tree, dice: Random) -> None:
    lists = [holder for holder, _ in places(tree) if isinstance(holder, list) and len(holder) > 1]
    if lists:
        dice.choice(lists).reverse()


LIKELY_CHANGES: tuple[TreeChange, ...] = (
    _other_value, _other_value, _other_value, _other_value, _same_kind, _same_kind, _less, _less, _entry_more, _turned,
)  # fmt: skip
