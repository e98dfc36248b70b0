"""``packet products``: the product sheets there are, packaged and the office's own."""

import json
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Any, get_args

import click

from packet.cli.report import the_workspace
from packet.snippet import visible
from packet.uses import Use

if TYPE_CHECKING:
    from packet.reference.products import Product, ProductFigure
    from packet.text import Words
    from packet.workspace import Workspace

USES: tuple[str, ...] = get_args(Use)

#: Places of a number that no tape shows; a sheet's zeros at the end say nothing more.
_MOST_DECIMALS = 3


@click.command(
    name="products",
    help="""List the product sheets, and what one of each gives.

    A bought line names a sheet by its id under product. Sheets lie in shared/products/, those that come with
    the program and the office's own; a use is written as in the record. All are listed when none is named.

    Example: packet products roofing nails
    """,
)
@click.argument("use", nargs=-1)
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option("-q", "--quiet", is_flag=True, help="Print ids alone.")
def command(use: tuple[str, ...], as_json: bool, quiet: bool) -> None:
    """Print sheets by what they are for, in the order a roof is built."""
    from packet.reference import Library
    from packet.text import load_words

    workspace = the_workspace()
    wanted = _known_use(" ".join(use))
    library = Library.load(workspace.shared_folders())
    words = load_words(workspace.shared_folders())
    sheets = [library.product(id) for id in library.product_ids()]
    sheets = [sheet for sheet in sheets if not wanted or sheet.use == wanted]
    sheets.sort(key=lambda sheet: (USES.index(sheet.use) if sheet.use else len(USES), sheet.id))
    own = {sheet.id for sheet in sheets if _is_own(sheet.id, workspace)}
    if as_json:
        data = [_data(sheet, sheet.id in own) for sheet in sheets]
        click.echo(json.dumps(data, indent=2, ensure_ascii=False))
        return
    for line in (sheet.id for sheet in sheets) if quiet else _lines(sheets, own, words):
        click.echo(line)
    if not sheets:
        click.echo(f"No sheet is for {wanted}; an office adds its own in shared/products/.", err=True)


def _known_use(typed: str) -> str:
    """Return a use as the record writes it; a hyphen will do for a space.

    Raises:
        click.UsageError: There is no such use.
    """
    from packet.problems import nearest

    use = " ".join(typed.replace("-", " ").split()).lower()
    if use and use not in USES:
        near = nearest(use, USES)
        meant = f' Did you mean "{near}"?' if near else ""
        raise click.UsageError(f'"{visible(typed)}" is no use.{meant} Write one of: {", ".join(USES)}.')
    return use


def _is_own(id: str, workspace: "Workspace") -> bool:
    return any((folder / "products" / f"{id}.yaml").is_file() for folder in workspace.shared_folders()[1:])


def _lines(sheets: "Sequence[Product]", own: set[str], words: "Words") -> Iterator[str]:
    """Yield a heading for each use, and under it each sheet with its figures."""
    heading = None
    for sheet in sheets:
        title = words["uses"][sheet.use] if sheet.use else "Of no line of the takeoff"
        if title != heading:
            if heading is not None:
                yield ""
            yield title
            heading = title
        unit = words["units_one"].get(sheet.unit) or words["units"][sheet.unit]
        office = "; the office's sheet" if sheet.id in own else ""
        yield f"  {sheet.id}: {visible(sheet.title)}; bought by the {unit}{office}"
        for name, figure in sheet.figures.items():
            yield f"    {name}: {_amount(figure, words)} ({words['marks'][figure.source.checked]})"
        for name, reason in sheet.missing.items():
            yield f"    {name}: not on the sheet ({visible(reason)})"


def _amount(figure: "ProductFigure", words: "Words") -> str:
    """Return the number of a figure with its unit."""
    from packet.text import unit_text
    from packet.units import tape_text

    shown: Mapping[str, Any] = {"value": figure.value, "unit": figure.unit}
    number = tape_text(figure.value) if figure.unit == "in" else _number(figure.value)
    return f"{number} {unit_text(shown, words)}".rstrip()


def _number(value: Fraction) -> str:
    from packet.text import decimal

    text = decimal(value, 0 if value.denominator == 1 else _MOST_DECIMALS)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _data(sheet: "Product", own: bool) -> dict[str, Any]:
    """Return a sheet as plain data."""
    return {
        "id": sheet.id,
        "title": sheet.title,
        "use": sheet.use,
        "unit": sheet.unit,
        "own": own,
        "figures": {
            name: {
                "value": float(figure.value),
                "unit": figure.unit,
                "mark": figure.source.checked,
                "document": figure.source.document,
                "edition": figure.source.edition,
                "locator": figure.source.locator,
            }
            for name, figure in sheet.figures.items()
        },
        "missing": dict(sheet.missing),
        "note": sheet.note,
    }
