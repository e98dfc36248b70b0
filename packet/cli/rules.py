"""``packet rules``: the rows a job rests on, whether they decide, and what to do about each."""

import json
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Any

import click

from packet.cli.report import chosen, the_workspace

if TYPE_CHECKING:
    from packet.closeout.rests_on import Rested
    from packet.text import Words


@click.command(
    name="rules",
    help="List the rules a job rests on, and what to do about each.\n\nExample: packet rules 26-041",
)
@click.argument("job")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option("-q", "--quiet", is_flag=True, help="Print the rules without the files to fill in.")
def command(job: str, as_json: bool, quiet: bool) -> None:
    """Print the rows, grouped by whose rule they are."""
    from packet.closeout.assemble import assemble
    from packet.closeout.rests_on import rests_on
    from packet.reference import Library
    from packet.text import load_words

    workspace = the_workspace()
    folder = chosen(workspace, [job])[0]
    closeout, _ = assemble(workspace, folder)
    items = rests_on(closeout, Library.load(workspace.shared_folders()))
    words = load_words(workspace.shared_folders())
    if as_json:
        click.echo(json.dumps([_data(item, words) for item in items], indent=2, ensure_ascii=False))
        return
    click.echo(f"{folder.name}: {_head(items, words)}")
    if closeout.record.basis is None:
        click.echo(words["rule_list.no_basis"])
    for line in _rows(items, words):
        click.echo(line)
    if not quiet:
        authority = closeout.record.basis.authority if closeout.record.basis else ""
        for line in _files(items, authority, words):
            click.echo(line)


def _head(items: "Sequence[Rested]", words: "Words") -> str:
    decide = [item for item in items if item.decides]
    caution = sum(item.mark == "seen_secondary" for item in decide)
    text: str = words["rule_list.one_rule" if len(items) == 1 else "rule_list.head"]
    silent = len(items) - len(decide)
    return text.format(number=len(items), decide=len(decide), caution=caution, silent=silent)


def _rows(items: "Sequence[Rested]", words: "Words") -> Iterator[str]:
    """Yield the rows of each of the four places under its heading, a few lines a row."""
    heading = ""
    for item in items:
        if item.whose != heading:
            heading = item.whose
            yield ""
            yield words[f"whose.{heading}"]
        yield f"  {_name(item, words)}: {limit_text(item, words)}"
        yield f"    {rule_text(item)} [{item.row}]"
        yield f"    {mark_text(item, words)}; {words[f'rule_list.{state_of(item)}']}"
        if _read_in(item):
            yield f"    {words['rule_list.read_in']}: {_read_in(item)}"
        if item.authority:
            yield f"    {words['labels.amendment_of']}: {item.authority}"
        for note in item.notes:
            yield f"    {note}"
        yield f"    {words['rule_list.to_do']}: {'; '.join(_steps(item, words))}"


def _name(item: "Rested", words: "Words") -> str:
    return str(words[f"rule_list.asks.{item.asks.replace('.', '_')}"])


def limit_text(item: "Rested", words: "Words") -> str:
    """Return what a row asks, in words and numbers."""
    if item.kind == "present":
        return str(words["rule_list.has_to_be_there"])
    if item.value is None:
        return str(words["rule_list.not_read"])
    return f"{words[f'limits.{item.kind}']} {_value_text(item, words)}"


def _value_text(item: "Rested", words: "Words") -> str:
    from packet.closeout.rests_on import nails_of, number_of, words_of

    number = number_of(item)
    if number is not None:
        return f"{_number(number)} {_unit(item, words)}".rstrip()
    nails = [
        f"{_number(nail.length_in)} × {_number(nail.shank_in)} in {words[f'shanks.{nail.shank}']}"
        for nail in nails_of(item)
    ]
    return f" {words['rule_list.or']} ".join([*nails, *words_of(item)])


def _unit(item: "Rested", words: "Words") -> str:
    return str(words[f"units.{item.unit}"]) if item.unit not in ("", "each") else ""


def _number(value: Fraction) -> str:
    """Return a tape's fraction where it is one, else the decimals it was printed with."""
    from packet.units import decimal_text, tape_text

    return tape_text(value) if 64 % value.denominator == 0 else decimal_text(value, 3)


def rule_text(item: "Rested") -> str:
    """Return document, edition and section; common practice has no section."""
    section = "" if item.mark == "common_practice" else item.source.locator
    return ", ".join(filter(None, (item.document, item.edition, section)))


def mark_text(item: "Rested", words: "Words") -> str:
    """Return how a row was read, and by whom where the office read it."""
    from packet.text import day_text

    if item.reading:
        text: str = words["rule_list.read_by"]
        day = day_text(item.reading.read_on, words)
        return text.format(who=item.reading.read_by, day=day, authority=item.reading.authority)
    return str(words["rule_list.printed_by_maker" if item.whose == "maker" else f"marks.{item.mark}"])


def _read_in(item: "Rested") -> str:
    """Return where a row was read, when that is not the document itself."""
    read = ", ".join(filter(None, (item.source.document, item.source.edition)))
    same = item.source.document == item.document or item.mark in ("memory", "common_practice", "office")
    return "" if same else read


def state_of(item: "Rested") -> str:
    """Return the key of whether a row decides, under ``rule_list``."""
    if item.superseded:
        return "superseded"
    return "governs" if item.governs else "decides" if item.decides else "does_not_decide"


def _steps(item: "Rested", words: "Words") -> Iterator[str]:
    facts = ", ".join(words[f"facts.{fact}"] for fact in item.missing)
    values = {
        "facts": facts,
        "by": item.superseded,
        "file": _file_name(item),
        "locator": item.source.locator,
        "text": words[f"rule_list.texts.{item.whose}"],
    }
    return (str(words[f"rule_list.steps.{step}"]).format(**values) for step in item.steps)


def _file_name(item: "Rested") -> str:
    return f"shared/readings/{item.row}.yaml"


def _files(items: "Sequence[Rested]", authority: str, words: "Words") -> Iterator[str]:
    """Yield the reading of each row that the office may lift, as a file with its values left open."""
    from packet.closeout.rests_on import liftable

    wanted = [item for item in items if liftable(item)]
    if wanted:
        yield ""
        yield words["rule_list.files"]
    for item in wanted:
        yield ""
        yield f"# {_file_name(item)}"
        yield from _reading(item, authority, words)


def _reading(item: "Rested", authority: str, words: "Words") -> Iterator[str]:
    """Yield the lines of one reading; a rule that only asks for a thing takes no value."""
    said = words["rule_list"]
    yield f"row: {item.row}"
    if item.kind != "present":
        yield f"value:  # {said[f'file_value.{item.form}'].format(unit=_unit(item, words))}".rstrip()
    yield f"section:  # {said['file_section'].format(locator=item.source.locator)}"
    yield f"authority:  # {said['file_authority']}{f': {authority}' if authority else ''}"
    yield f"read_by:  # {said['file_read_by']}"
    yield f"read_on:  # {said['file_read_on']}"
    yield f"# page_image:  # {said['file_page_image']}"


def value_data(item: "Rested") -> Any:
    """Return what a row asks as plain data: a number, nails or words; None where nothing was read."""
    from packet.closeout.rests_on import nails_of, number_of, words_of

    number = number_of(item)
    nails = [
        {"length_in": float(nail.length_in), "shank_in": float(nail.shank_in), "shank": nail.shank}
        for nail in nails_of(item)
    ]
    return float(number) if number is not None else nails or list(words_of(item)) or None


def _data(item: "Rested", words: "Words") -> dict[str, Any]:
    """Return a row as plain data."""
    from packet.closeout.rests_on import liftable

    reading = item.reading
    return {
        "row": item.row,
        "whose": item.whose,
        "asks": item.asks,
        "name": _name(item, words),
        "kind": item.kind,
        "value": value_data(item),
        "unit": item.unit,
        "document": item.document,
        "edition": item.edition,
        "section": item.source.locator,
        "read_in": _read_in(item),
        "mark": item.mark,
        "decides": item.decides,
        "governs": item.governs,
        "missing": list(item.missing),
        "superseded": item.superseded,
        "authority": item.authority,
        "notes": list(item.notes),
        "used_by": list(item.used_by),
        "to_do": [
            {"step": step, "says": says} for step, says in zip(item.steps, _steps(item, words), strict=True)
        ],
        "reading_file": _file_name(item) if liftable(item) else None,
        "read_by": reading.read_by if reading else None,
        "read_on": reading.read_on.isoformat() if reading else None,
    }
