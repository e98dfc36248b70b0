"""What one file cannot know of itself: names, sources and rows that other files hold."""

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from packet.problems import Problem, nearest
from packet.reading import ReadFile
from packet.reference.match import CodeRow
from packet.reference.models import CodeFile, Reading, form_of
from packet.reference.products import NOT_ABOVE, ProductFile
from packet.units import fraction_text

#: Locator of every row that no document stands behind.
COMMON_PRACTICE = "common practice, no published source"


def unknown_source(
    read: ReadFile[Any], loc: tuple[str | int, ...], id: str, sources: Collection[str]
) -> Problem:
    """Return the problem of an id that names no document."""
    return read.problem("unknown-source", loc, id, nearest=nearest(id, sources) or "")


def code_problems(
    id: str, read: ReadFile[Any], codes: Collection[str], sources: Collection[str]
) -> Iterator[Problem]:
    """Return what is wrong with a code's file beside the other files.

    Args:
        id: Name of the file, which is the code's id.
        read: The file.
        codes: Every code there is.
        sources: Every document there is.
    """
    code: CodeFile = read.value
    if code.code != id:
        yield read.problem("name-mismatch", ("code",), code.code, accepted=id)
    if code.source is not None and code.source not in sources:
        yield unknown_source(read, ("source",), code.source, sources)
    if code.amends is not None and code.amends not in codes:
        near = nearest(code.amends, codes) or ""
        yield read.problem("unknown-code", ("amends",), code.amends, accepted=", ".join(codes), nearest=near)
    # Another code's longer name wins: irc-2021-coast-x is a row of irc-2021-coast, never one of irc-2021.
    longer = tuple(f"{other}-" for other in codes if other.startswith(f"{id}-"))
    for name, entry in code.rows.items():
        if not name.startswith(f"{id}-") or name.startswith(longer):
            yield read.problem_of_key("row-id", ("rows", name), accepted=f"{id}-…")
        if entry.source is not None and entry.source not in sources:
            yield unknown_source(read, ("rows", name, "source"), entry.source, sources)
        others = [row for row in code.rows if row != name]
        for number, easing in enumerate(entry.eased_by):
            if easing not in others:
                near = nearest(easing, others) or ""
                yield read.problem("unknown-row", ("rows", name, "eased_by", number), easing, nearest=near)
        if (entry.checked == "common_practice") != (entry.locator == COMMON_PRACTICE):
            yield read.problem(
                "practice-unmarked", ("rows", name, "checked"), entry.checked, accepted=COMMON_PRACTICE
            )


def product_problems(id: str, read: ReadFile[Any], sources: Collection[str]) -> Iterator[Problem]:
    """Return what is wrong with a product sheet beside the other files, and between its figures.

    Args:
        id: Name of the file, which is the product's id.
        read: The file.
        sources: Every document there is.
    """
    sheet: ProductFile = read.value
    cells = sheet.figures.given()
    if sheet.product != id:
        yield read.problem("name-mismatch", ("product",), sheet.product, accepted=id)
    if sheet.source.id not in sources:
        yield unknown_source(read, ("source", "id"), sheet.source.id, sources)
    if (sheet.checked == "common_practice") != (sheet.source.locator == COMMON_PRACTICE):
        yield read.problem("practice-unmarked", ("checked",), sheet.checked, accepted=COMMON_PRACTICE)
    for name, cell in cells.items():
        loc = ("figures", name)
        if cell.source is not None and cell.source not in sources:
            yield unknown_source(read, (*loc, "source"), cell.source, sources)
        checked, locator = cell.checked or sheet.checked, cell.locator or sheet.source.locator
        own = cell.checked is not None or cell.locator is not None
        if own and (checked == "common_practice") != (locator == COMMON_PRACTICE):
            yield read.problem("practice-unmarked", (*loc, "checked"), checked, accepted=COMMON_PRACTICE)
    for name, limit in NOT_ABOVE:
        low, high = (cells[key].value if key in cells else None for key in (name, limit))
        if low is not None and high is not None and low > high:
            yield read.problem(
                "figure-above-limit",
                ("figures", name),
                fraction_text(low),
                limit=limit,
                most=fraction_text(high),
            )


def reading_problems(
    read: ReadFile[Any], row: CodeRow | None, row_ids: Collection[str], earlier: Mapping[str, ReadFile[Any]]
) -> Iterator[Problem]:
    """Return what is wrong with an office's reading of a row.

    Args:
        read: The reading.
        row: The row it names, as packaged; None when there is none.
        row_ids: Every row there is.
        earlier: Readings already taken, by row.
    """
    reading: Reading = read.value
    if reading.row in earlier:
        yield read.problem("reading-twice", ("row",), reading.row, other=earlier[reading.row].path.name)
    elif row is None:
        yield read.problem("unknown-row", ("row",), reading.row, nearest=nearest(reading.row, row_ids) or "")
    elif row.superseded or row.checked == "common_practice":
        yield read.problem("reading-not-liftable", ("row",), reading.row)
    elif row.kind == "present" and reading.value is not None:
        yield read.problem("value-not-wanted", ("value",))
    elif row.kind != "present" and (reading.value is None or form_of(reading.value) != row.form):
        wanted = {"number": f"a number ({row.unit})", "words": "a list of words", "nails": "a list of nails"}
        yield read.problem("reading-value", ("value",), accepted=wanted[row.form])
