"""What templates of paper read beside the copy: numbers, workings, days and times as words write them."""

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from datetime import datetime
from typing import Any

from packet.closeout.orderlist import more_text, more_to_order
from packet.closeout.things import thing_of, things
from packet.text import Words, unit_text

#: Filters that write values, by name: the same as on the pages, so that page and paper write a number alike.
Filters = Mapping[str, Callable[..., str]]

#: Parts of a copy whose days paper prints.
_DATED = ("record", "duties", "results")

_NAME_AND_BRACKET = re.compile(r"(?<=[^\W\d])\(")

#: The space in 4′ 6″ or 2 3/8; around a sign of a sum it is another.
_SPACE_IN_NUMBER = re.compile(r"(?<=[\d′]) (?=\d)")

#: A day, or a time at the house.
_DAY = re.compile(r"\d{4}-\d\d-\d\d(?:T\d\d:\d\d:\d\d)?")


def shown(copy: Mapping[str, Any], words: Words, filters: Filters) -> dict[str, Any]:
    """Return the texts of a copy's values.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        words: The text catalogue.
        filters: Filters that write numbers, days, times and workings.
    """
    known = things(copy, words)
    return {
        "figures": {
            id: _figure(figure, copy["figures"], known, words, filters)
            for id, figure in copy["figures"].items()
        },
        "order_more": {line["use"]: more_text(more_to_order(copy, line), words) for line in copy["takeoff"]},
        "days": {text: filters["day"](text) for text in sorted(set(_days([copy[part] for part in _DATED])))},
        "moments": {photo["id"]: filters["moment"](photo) for photo in copy["photos"]},
        "corrected": {photo["id"]: filters["corrected"](photo) for photo in copy["photos"] if photo["clock"]},
    }


def _figure(
    figure: Mapping[str, Any],
    figures: Mapping[str, Any],
    known: Mapping[str, str],
    words: Mapping[str, Any],
    filters: Filters,
) -> dict[str, Any]:
    working = figure["working"]
    return {
        "number": filters["number"](figure),
        "unit": unit_text(figure, words),
        # the name of a root or a rounding stands apart from its bracket
        "formula": _NAME_AND_BRACKET.sub(" (", filters["sum_words"](working)) if working else None,
        "sum": _inside_numbers(filters["sum_numbers"](working)) if working else None,
        "terms": [
            {
                "name": filters["term_words"](term),
                "number": filters["term_number"](term),
                "unit": unit_text(term, words),
                "thing": _thing(term["origin"], figures, known),
                **term["origin"],
            }
            for term in (working["terms"] if working else ())
        ],
    }


def _thing(origin: Mapping[str, str], figures: Mapping[str, Any], known: Mapping[str, str]) -> str:
    """Return what a computed number put into a working is of; "" for numbers of the record itself."""
    figure = figures.get(origin["ref"]) if origin["kind"] == "figure" else None
    return thing_of(origin["ref"], known) if figure and figure["working"] else ""


def _inside_numbers(sum_text: str) -> str:
    """Return a sum in which no line can end inside a number."""
    return _NAME_AND_BRACKET.sub(" (", _SPACE_IN_NUMBER.sub("\u00a0", sum_text))


def _days(value: Any) -> Iterator[str]:
    """Yield the days of a record; typed text may look like one that no calendar has."""
    if isinstance(value, str):
        if _DAY.fullmatch(value):
            with suppress(ValueError):
                datetime.fromisoformat(value)
                yield value
    elif isinstance(value, Mapping | list):
        for item in value.values() if isinstance(value, Mapping) else value:
            yield from _days(item)
