"""``packet order``: what to buy for jobs, on the terminal and as a file for a spreadsheet."""

import os
import shutil
import sys
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from packet.cli.each import Told, each_job, here
from packet.cli.report import chosen, the_workspace
from packet.snippet import visible

if TYPE_CHECKING:
    from packet.closeout.orderlist import Ordered
    from packet.text import Words
    from packet.workspace import Workspace

#: Columns of the list on the terminal, by the words of their heads; they are those of the file.
COLUMNS = ("to_buy", "ordered", "need", "for", "item")

#: Where there is no amount, no use or no item.
_NONE = "-"

#: Between columns, before lines that follow one, and the least room the last column gets.
_GAP, _NOTE, _LEAST_ROOM = 2, 4, 24

#: How long a run waits for another one that writes the same list [s].
_PATIENCE_S = 60.0


@dataclass(frozen=True)
class Listed:
    """A list that was written.

    Attributes:
        file: Where it lies.
        lines: The list as it is printed, squares first.
        count: How many lines of goods are on it.
    """

    file: Path
    lines: tuple[str, ...]
    count: int


@click.command(
    name="order",
    help="""List what to buy for jobs, and write the list for a spreadsheet.

    The amounts follow the measures in the record; a job that is only planned will do. The file is
    out/<job>-order.csv; all jobs when none is named.

    Example: packet order 26-041
    """,
)
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Print and write order lists and return the exit code."""
    workspace = the_workspace()
    return each_job(
        chosen(workspace, jobs),
        lambda folder, tell: list_order(workspace, folder, tell),
        lambda made: [f"lines to order: {made.count}", *made.lines, str(here(made.file))],
        quiet=quiet,
        timed=False,
    )


def list_order(workspace: "Workspace", job_folder: Path, tell: Told) -> Listed:
    """Write the order list of one job and return it.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        tell: Told each step as it begins.

    Raises:
        Refused: Problems in a file of the office, or a disk that takes no more; an earlier list stays whole.
    """
    from packet.closeout.assemble import assemble
    from packet.closeout.orderlist import order_csv, order_lines
    from packet.closeout.redact import redact
    from packet.text import load_words

    tell("record")
    closeout, _ = assemble(workspace, job_folder)
    words = load_words(workspace.shared_folders())
    copy = redact(closeout, "office")
    file = workspace.out / f"{job_folder.name}-order.csv"
    _write(file, order_csv(copy, words))
    lines = order_lines(copy)
    figures, width = copy["figures"], _width()
    return Listed(file, (*_squares(figures, words, width), *_table(lines, figures, words, width)), len(lines))


def _squares(figures: Mapping[str, Any], words: "Words", width: int | None) -> list[str]:
    """Return the squares of the roof net and gross, and those worked on where that is a part of it."""
    from packet.text import figure_number, figure_text

    if "roof.squares" not in figures:
        return []
    net, gross = figures["roof.squares"], figures["roof.gross_squares"]
    text = f"{figure_text(net, words)} net, {figure_number(gross)} gross"
    work = figures.get("work.squares")
    part = work is not None and figure_number(work) != figure_number(net)
    more = f", {figure_number(work)} worked on" if work is not None and part else ""
    return _indented(f"{text}{more}", 0, width)


def _write(file: Path, content: bytes) -> None:
    from filelock import FileLock, Timeout

    from packet.placing import placing
    from packet.problems import Problem, Refused

    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        with FileLock(file.with_name(f".lock-{file.stem}"), timeout=_PATIENCE_S), placing(file) as new:
            new.write_bytes(content)
    except Timeout as error:
        raise Refused(Problem("job-busy", file, found=file.name)) from error
    except OSError as error:
        reason = os.strerror(error.errno).lower() if error.errno else str(error)
        raise Refused(Problem("output-unwritable", file, values={"reason": reason})) from error


def _width() -> int | None:
    """Return the width of the terminal less the indent of a job's lines; None where output goes elsewhere."""
    return shutil.get_terminal_size().columns - _GAP if sys.stdout.isatty() else None


def _table(
    lines: Sequence["Ordered"], figures: Mapping[str, Any], words: "Words", width: int | None
) -> Iterator[str]:
    """Yield the list as aligned columns, or stacked in a narrow terminal; nothing is cut, wide lines wrap."""
    from packet.closeout.orderlist import note_of
    from packet.text import figure_text

    if not lines:
        yield words["order.empty"]
        return

    def amount(id: str) -> str:
        return figure_text(figures[id], words) if id else _NONE

    rows = [
        (
            amount(line.to_buy),
            amount(line.ordered),
            amount(line.need),
            words["uses"][line.use] if line.use else _NONE,
            visible("; ".join(line.items)) or _NONE,
        )
        for line in lines
    ]
    heads = tuple(words[f"order.{name}"] for name in COLUMNS)
    widths = [max(map(len, cells)) for cells in zip(heads, *rows, strict=True)][:-1]
    stacked = width is not None and width - sum(widths) - _GAP * len(widths) < _LEAST_ROOM
    if not stacked:
        yield from _aligned(heads, widths, width)
    for line, row in zip(lines, rows, strict=True):
        yield from _stacked(heads, row, width) if stacked else _aligned(row, widths, width)
        notes = [words["order.weigh"].format(weight=amount(line.pounds))] if line.pounds else []
        notes += [f"{amount(percent)}: {visible(why)}" for percent, why in line.allowances]
        for note in filter(None, (*notes, note_of(line, words))):
            yield from _indented(note, _NOTE, width)


def _aligned(cells: Sequence[str], widths: Sequence[int], width: int | None) -> list[str]:
    """Return one row; the last column wraps in its own place."""
    front = "".join(cell.ljust(wide + _GAP) for cell, wide in zip(cells[:-1], widths, strict=True))
    first, *rest = _indented(cells[-1], len(front), width)
    return [front + first.lstrip(" "), *rest]


def _stacked(heads: Sequence[str], cells: Sequence[str], width: int | None) -> list[str]:
    """Return one row as what it is for and the item, and its amounts below, each after its head."""
    title = ": ".join(cell for cell in cells[-2:] if cell != _NONE)
    amounts = zip(heads[:-2], cells[:-2], strict=True)
    below = "; ".join(f"{head} {cell}" for head, cell in amounts if cell != _NONE)
    return [*_indented(title, 0, width), *(_indented(below, _NOTE, width) if below else ())]


def _indented(text: str, indent: int, width: int | None) -> list[str]:
    """Return text in lines that fit the terminal, each with an indent; one line without a width."""
    room = None if width is None else max(_LEAST_ROOM, width - indent)
    lines = [text] if room is None or len(text) <= room else textwrap.wrap(text, room)
    return [" " * indent + line for line in lines]
