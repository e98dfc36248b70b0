"""``packet start``: the folder of an office, made or completed."""

from pathlib import Path

import click

from packet.cli.asking import given_or_asked, may_ask

CARD = {
    "name": "Name of the office, as it should be printed (Enter: later)",
    "address": "Postal address (Enter: later)",
    "phone": "Telephone for calls when it leaks (Enter: later)",
}


@click.command(
    name="start",
    help="Make the folder of an office, or what of it is missing.\n\nExample: packet start my-office",
)
@click.argument("folder", metavar="DIR", type=click.Path(path_type=Path))
@click.option("--name", help="Name of the office, as it should be printed.")
@click.option("--address", help="Postal address.")
@click.option("--phone", help="Telephone for calls when it leaks.")
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but questions and problems.")
def command(folder: Path, name: str | None, address: str | None, phone: str | None, quiet: bool) -> None:
    """Make an office and say what was made and what comes next."""
    from packet.problems import Refused
    from packet.record.load import read_office
    from packet.starting.office import start_office
    from packet.starting.writing import typed
    from packet.workspace import Workspace

    office = Workspace(folder)
    given = {"name": name, "address": address, "phone": phone}
    card_is_there = office.office_file.exists()
    asks = may_ask() and not card_is_there
    unasked = [key for key in CARD if not given[key] and not asks and not card_is_there]
    card = given_or_asked(given, CARD, ask=asks, optional=frozenset(CARD))
    started = start_office(folder, card)
    if quiet:
        return
    if unasked:
        flags = ", ".join(f"--{key}" for key in unasked)
        fill_in = f"fill in {', '.join(unasked)} in {office.office_file}"
        click.echo(
            f"Nothing was asked and nothing read, for this is no terminal: give {flags}, or {fill_in}.",
            err=True,
        )
    click.echo(f"The office in {folder}:")
    for path in started.made:
        click.echo(f"  made           {path}")
    for path in started.left:
        click.echo(f"  left as it was {path}")
    if started.old:
        click.echo(f"{', '.join(started.old)}: from another version; delete and start again to renew.")
    if card_is_there and any(given.values()):
        click.echo("shared/office.yaml was there: what was given for it was not written.")
    try:
        read_office(office.office_file)
        fill = ""
    except Refused as refused:
        keys = ", ".join(dict.fromkeys(problem.at for problem in refused.problems if problem.at))
        fill = f"{f'fill in {keys}' if keys else 'mend what is wrong'} in {office.office_file}, then "
    away = "" if folder.resolve() == Path.cwd() else f"cd {typed(str(folder))}, then "
    click.echo(f"Next: {fill}{away}packet new")
