"""The order list: what to buy for a job, line by line, and as a file that a supplier's office can read."""

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from packet.text import Words, figure_number, unit_text
from packet.units import decimal_text

#: Columns of the file in order; their heads are words under ``order``.
COLUMNS = (
    "for", "item", "product", "to_buy", "unit", "ordered", "need", "need_unit", "pounds",
    "allowance", "why", "note",
)  # fmt: skip

#: A cell that begins with one of these would be worked out as a formula by a spreadsheet; the wide forms too.
_WORKED_OUT = frozenset(
    "=+-@\t\r\n\N{FULLWIDTH EQUALS SIGN}\N{FULLWIDTH PLUS SIGN}"
    "\N{FULLWIDTH HYPHEN-MINUS}\N{FULLWIDTH COMMERCIAL AT}"
)
_AS_TEXT = "'"

#: Places of a length, which pages show in feet and inches and the file in feet.
_FEET_DECIMALS = 2


@dataclass(frozen=True)
class Ordered:
    """One line of the order list; figures by their ids, "" where there is none.

    Attributes:
        use: What the goods are for; "" for goods of no line of the takeoff.
        items: What was written down for it.
        products: Product sheets its figures were read from.
        unit: Unit they are bought in; "" where lines differ.
        need: Figure of the need with its allowance.
        to_buy: Figure of whole units to buy.
        ordered: Figure of what was ordered.
        pounds: Figure of what the nails needed weigh; "" for other goods.
        allowances: Figure of the percent, and its reason.
        missing: Why there is nothing to buy, as keys of ``takeoff.missing``.
        more: What to order beyond what was ordered, as a figure is shown; None when that is enough, when
            nothing was ordered, and once the job is closed.
    """

    use: str
    items: tuple[str, ...]
    products: tuple[str, ...]
    unit: str
    need: str
    to_buy: str
    ordered: str
    pounds: str
    allowances: tuple[tuple[str, str], ...]
    missing: tuple[str, ...]
    more: Mapping[str, Any] | None = None


def order_lines(copy: Mapping[str, Any]) -> tuple[Ordered, ...]:
    """Return what to buy in the order a roof is built, then goods that belong to no line of the takeoff.

    Args:
        copy: A redacted copy, as in ``packet.json``.
    """
    bought = {line["id"]: line for line in copy["record"]["bought"]}
    lines = [
        _of_takeoff(line, [bought[id] for id in line["goods"]], more_to_order(copy, line))
        for line in copy["takeoff"]
    ]
    return (*lines, *_others(bought.values(), copy["figures"]))


def order_csv(copy: Mapping[str, Any], words: Words) -> bytes:
    """Return the order list as a CSV file (RFC 4180): a row of heads, then a row for each line.

    It begins with a byte mark, by which spreadsheets know that it is UTF-8.

    Args:
        copy: A redacted copy, as in ``packet.json``.
        words: Words of the packet's language.
    """
    file = io.StringIO(newline="")
    writer = csv.writer(file)
    writer.writerow([words[f"order.{name}"] for name in COLUMNS])
    writer.writerows(_row(line, copy["figures"], words) for line in order_lines(copy))
    return file.getvalue().encode("utf-8-sig")


def more_to_order(copy: Mapping[str, Any], line: Mapping[str, Any]) -> Mapping[str, Any] | None:
    """Return by how many units an order falls short of what there is to buy, as a figure is shown.

    Args:
        copy: A redacted copy, as in ``packet.json``.
        line: A line of its takeoff.
    """
    if copy["record"]["job"]["status"] == "closed" or not line["to_buy"] or not line["planned"]:
        return None
    buy, ordered = (copy["figures"][line[name]] for name in ("to_buy", "planned"))
    short = buy["value"] - ordered["value"]
    return {"value": short, "unit": buy["unit"], "decimals": ordered["decimals"]} if short > 0 else None


def more_text(more: Mapping[str, Any] | None, words: Words) -> str:
    """Return how much more to order, in words; "" where it is enough."""
    return str(words["order.more"]).format(number=figure_number(more)) if more else ""


def note_of(line: Ordered, words: Words) -> str:
    """Return how much more to order for a line, or why there is nothing to buy; "" where neither is so."""
    if line.more:
        return more_text(line.more, words)
    if not line.missing:
        return ""
    reasons = "; ".join(words[f"takeoff.missing.{name}"] for name in line.missing)
    return f"{words['takeoff.not_computed']} {reasons}"


def as_text(cell: str) -> str:
    """Return typed text as a cell that no spreadsheet works out.

    Example:
        >>> as_text("=1+1"), as_text("1 in nail")
        ("'=1+1", '1 in nail')
    """
    first = cell.lstrip(" ")[:1]
    return _AS_TEXT + cell if first in _WORKED_OUT and first else cell


def _of_takeoff(
    line: Mapping[str, Any], goods: list[Mapping[str, Any]], more: Mapping[str, Any] | None
) -> Ordered:
    missing = tuple(line["missing"])
    if not line["to_buy"] and not missing:
        missing = ("no_goods",) if line["net"] else ("no_need",)
    return Ordered(
        use=line["use"],
        items=tuple(item["item"] for item in goods),
        products=tuple(dict.fromkeys(item["product"] for item in goods if item["product"])),
        unit=line["unit"],
        need=line["need"],
        to_buy=line["to_buy"],
        ordered=line["planned"],
        pounds=line["pounds"],
        allowances=tuple(
            (f"bought.{item['id']}.allowance.percent", item["allowance"]["why"])
            for item in goods
            if item["allowance"]
        ),
        missing=() if line["to_buy"] else missing,
        more=more,
    )


def _others(bought: Any, figures: Mapping[str, Any]) -> Iterator[Ordered]:
    for item in bought:
        if not item["use"]:
            planned = f"bought.{item['id']}.planned"
            products = (item["product"],) if item["product"] else ()
            ordered = planned if planned in figures else ""
            yield Ordered("", (item["item"],), products, item["unit"], "", "", ordered, "", (), ())


def _row(line: Ordered, figures: Mapping[str, Any], words: Words) -> list[str]:
    """Return the cells of one line; numbers are plain, without units or commas."""

    def number(id: str) -> str:
        return plain_number(figures[id]) if id else ""

    def unit(id: str) -> str:
        return (
            ""
            if not id
            else words["units.ft"]
            if figures[id]["unit"] == "ft_in"
            else unit_text(figures[id], words)
        )

    cells = {
        "for": words["uses"][line.use] if line.use else "",
        "item": as_text("; ".join(line.items)),
        "product": as_text("; ".join(line.products)),
        "to_buy": number(line.to_buy),
        "unit": unit(line.to_buy or line.ordered) or (words["units"][line.unit] if line.unit else ""),
        "ordered": number(line.ordered),
        "need": number(line.need),
        "need_unit": unit(line.need),
        "pounds": number(line.pounds),
        "allowance": "; ".join(number(percent) for percent, _ in line.allowances),
        "why": as_text("; ".join(why for _, why in line.allowances)),
        "note": as_text(note_of(line, words)),
    }
    return [cells[name] for name in COLUMNS]


def plain_number(figure: Mapping[str, Any]) -> str:
    """Return the number of a figure as a spreadsheet reads it, as exact as the pages show it; feet in feet.

    Example:
        >>> plain_number({"value": 1601.62, "unit": "sq_ft", "decimals": 1})
        '1601.6'
        >>> plain_number({"value": 49, "unit": "bundle", "decimals": 0})
        '49'
    """
    places = _FEET_DECIMALS if figure["unit"] == "ft_in" else figure["decimals"]
    text = decimal_text(figure["value"], places)
    return text.rstrip("0").rstrip(".") if "." in text else text
