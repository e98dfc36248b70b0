"""Errors of pydantic, and faults found by our own checks → problems with a line and a column.

pydantic's errors are told apart by their stable ``type``, never by their wording. A type that pydantic does
not know is one of our own codes, raised with ``fields.refuse``.
"""

import math
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, get_args

import yaml
from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails
from pydantic_core.core_schema import ErrorType

from packet.problems import Catalogue, Problem, nearest, path_text
from packet.schema_walk import field_at, keys_at, literals_at
from packet.yamlread import Document, read_yaml
from packet.yamlread.document import Loc
from packet.yamlread.faults import in_quotes

#: Types that pydantic itself gives to an error.
_PYDANTIC = frozenset(get_args(ErrorType))

_LIST = "a list, each entry on a line of its own behind a hyphen"
_KEYS = "keys with their values, indented below"

#: What is wanted where pydantic met another kind of value.
_WANTED: Mapping[str, str] = {
    "string_type": "one line of text",
    "list_type": _LIST,
    "tuple_type": _LIST,
    "set_type": _LIST,
    "frozen_set_type": _LIST,
    "model_type": _KEYS,
    "model_attributes_type": _KEYS,
    "dict_type": _KEYS,
    "dataclass_type": _KEYS,
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "decimal_type": "a number",
    "decimal_parsing": "a number",
}

#: The end of a range that a number missed: pydantic's type, and the words before the limit in its context.
_RANGES: Mapping[str, tuple[str, str]] = {
    "greater_than": ("above", "gt"),
    "greater_than_equal": ("at least", "ge"),
    "less_than": ("below", "lt"),
    "less_than_equal": ("at most", "le"),
}

#: Sizes: our code, the words around the limit in pydantic's context.
_SIZES: Mapping[str, tuple[str, str, str, tuple[str, str]]] = {
    "string_too_long": ("too-long", "at most", "max_length", ("character", "characters")),
    "string_too_short": ("too-short", "at least", "min_length", ("character", "characters")),
    "too_long": ("too-many-entries", "at most", "max_length", ("entry", "entries")),
    "too_short": ("too-few-entries", "at least", "min_length", ("entry", "entries")),
}

Model = type[BaseModel]


def read_catalogue(path: Path) -> Catalogue:
    """Return the sentences of every problem code.

    Args:
        path: ``shared/words/problems.yaml``.

    Raises:
        Refused: The file can't be read.
    """
    entries: Mapping[str, Mapping[str, str | None]] = read_yaml(path).value
    return {code: {name: text or "" for name, text in entry.items()} for code, entry in entries.items()}


def locate(
    document: Document, code: str, loc: Loc, found: str = "", values: Mapping[str, str] | None = None
) -> Problem:
    """Return the problem of a value by its path in the record; an absent one at its nearest ancestor."""
    line, column = document.place(loc)
    words = {"key": _last_key(loc), "accepted": "", **(values or {})}
    return Problem(code, document.path, line, column, path_text(document.resolve(loc)), found, words)


def from_validation(error: ValidationError, document: Document, model: Model) -> tuple[Problem, ...]:
    """Return a validation's errors as problems in the file that was validated.

    Args:
        error: What pydantic raised for ``document.value``.
        document: The file.
        model: The model it was held against; its fields give the accepted keys and the examples.
    """
    details = [detail for detail in error.errors(include_url=False) if not _follows(detail, document)]
    problems = [_problem(detail, document, model) for detail in details]
    meant = {_beside(p, p.values["nearest"]) for p in problems if p.code == "unknown-key"}
    return tuple(dict.fromkeys(p for p in problems if p.code != "missing" or p.at not in meant))


def _follows(detail: ErrorDetails, document: Document) -> bool:
    """Return whether an error only follows from others: a list that is long enough, with entries refused."""
    rows = document.at(detail["loc"])
    return (
        detail["type"] == "too_short" and isinstance(rows, list) and len(rows) >= detail["ctx"]["min_length"]
    )


def _beside(problem: Problem, key: str) -> str:
    """Return the path of a key beside the one that a problem names; a key misspelt is not missing as well."""
    return f"{problem.at.removesuffix(problem.found)}{key}"


def _problem(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    kind = detail["type"]
    if kind not in _PYDANTIC:
        return _own(detail, document, model)
    for kinds, makes in _MAKERS:
        if kind in kinds:
            return makes(detail, document, model)
    return _general(detail, document, model)


def _own(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    """Return the problem of a code of ours; ``below`` in its context names a place inside the value."""
    context = dict(detail.get("ctx", {}))
    below, found = context.pop("below", ()), str(context.pop("found", ""))
    loc = (*detail["loc"], *below)
    if detail["type"] == "wrong-kind":
        return _wrong_kind(loc, str(context.get("accepted", "")), document)
    if detail["type"] == "duplicate-id":
        loc = _second(document, loc, found)
    values = {name: str(value) for name, value in context.items()}
    return locate(document, detail["type"], loc, found or document.words(loc), values)


def _second(document: Document, loc: Loc, found: str) -> tuple[str | int, ...]:
    """Return the place of the id that a list carries for the second time."""
    rows = document.at(loc)
    if isinstance(rows, list):
        bearers = [n for n, row in enumerate(rows) if isinstance(row, dict) and row.get("id") == found]
        if len(bearers) > 1:
            return (*loc, bearers[1], "id")
    return tuple(loc)


def _missing(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    loc = detail["loc"]
    if detail["type"] == "union_tag_not_found":
        loc = (*loc, str(detail["ctx"]["discriminator"]).strip("'"))
    parent, key = loc[:-1], str(loc[-1])
    line, column = document.place(parent, key=True)
    above = document.resolve(parent)
    info = field_at(model, loc)
    values = {
        "key": key,
        "parent": path_text(above),
        "example": _example(key, info.examples if info else None),
    }
    values["about"] = (info.description or "") if info else ""
    return Problem("missing", document.path, line, column, path_text((*above, key)), values=values)


def _example(key: str, examples: list[Any] | None) -> str:
    """Return a line of YAML that fills a key; the key alone where nobody gave an example of one line."""
    if not examples:
        return f"{key}:"
    if isinstance(examples[0], dict | list):
        flow = yaml.safe_dump(examples[0], default_flow_style=True, sort_keys=False, width=math.inf)
        return f"{key}: {flow.strip()}"
    words = str(examples[0])
    plain = words[:1].isalnum() and ": " not in words and " #" not in words
    return f"{key}: {words if plain else in_quotes(words)}"


def _unknown_key(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    loc = detail["loc"]
    line, column = document.place(loc, key=True)
    key, known = str(loc[-1]), keys_at(model, loc[:-1])
    beside = document.at(loc[:-1])
    free = [name for name in known if not (isinstance(beside, dict) and name in beside)]
    values = {"key": key, "accepted": ", ".join(free) or "none", "nearest": nearest(key, free) or ""}
    return Problem("unknown-key", document.path, line, column, path_text(document.resolve(loc)), key, values)


def _not_one_of(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    loc = tuple(detail["loc"])
    if detail["type"] == "union_tag_invalid":
        loc = (*loc, str(detail["ctx"]["discriminator"]).strip("'"))
    accepted = literals_at(model, loc) or (str(detail["ctx"].get("expected", "")),)
    value = document.at(loc)
    if not isinstance(value, str):
        return _wrong_kind(loc, f"one of: {', '.join(accepted)}", document)
    return locate(
        document,
        "not-one-of",
        loc,
        value,
        {"accepted": ", ".join(accepted), "nearest": nearest(value, accepted) or ""},
    )


def _kind(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    return _wrong_kind(detail["loc"], _WANTED[detail["type"]], document)


def _wrong_kind(loc: Loc, wanted: str, document: Document) -> Problem:
    value = document.at(loc)
    if value is None:
        info = {"accepted": wanted, "found_kind": "nothing"}
        return locate(document, "no-value", loc, "", info)
    kind = "a list" if isinstance(value, list) else "keys with values" if isinstance(value, dict) else "text"
    return locate(document, "wrong-kind", loc, document.words(loc), {"accepted": wanted, "found_kind": kind})


def _range(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    words, name = _RANGES[detail["type"]]
    values = {"accepted": f"{words} {detail['ctx'][name]}"}
    return locate(document, "out-of-range", detail["loc"], document.words(detail["loc"]), values)


def _size(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    code, words, name, units = _SIZES[detail["type"]]
    limit = detail["ctx"][name]
    values = {"accepted": f"{words} {limit} {units[0] if limit == 1 else units[1]}"}
    return locate(document, code, detail["loc"], document.words(detail["loc"]), values)


def _general(detail: ErrorDetails, document: Document, model: Model) -> Problem:
    """Return the problem of a type without words of its own: the field's description tells what is wanted."""
    info = field_at(model, detail["loc"])
    examples = "; ".join(str(example) for example in (info.examples or [])) if info else ""
    values = {
        "accepted": examples,
        "about": (info.description or "") if info else "",
        "reason": detail["type"],
    }
    return locate(document, "not-accepted", detail["loc"], document.words(detail["loc"]), values)


_Maker = Callable[[ErrorDetails, Document, Model], Problem]
_MAKERS: tuple[tuple[frozenset[str], _Maker], ...] = (
    (frozenset({"missing", "union_tag_not_found"}), _missing),
    (frozenset({"extra_forbidden"}), _unknown_key),
    (frozenset({"literal_error", "enum", "union_tag_invalid"}), _not_one_of),
    (frozenset(_WANTED), _kind),
    (frozenset(_RANGES), _range),
    (frozenset(_SIZES), _size),
)


def _last_key(loc: Loc) -> str:
    return next((step for step in reversed(loc) if isinstance(step, str)), "the file")
