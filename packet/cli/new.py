"""``packet new``: a new job, with a commented record that holds as it is."""

import click

from packet.cli.asking import given_or_asked, may_ask, said
from packet.cli.each import here
from packet.cli.report import the_workspace

QUESTIONS = {
    "number": "Job number, which is also the name of its folder",
    "street": "House number and street",
    "town": "Town or city",
    "county": "County, or Enter",
    "state": "State",
    "time_zone": "Time zone of the house, for example America/New_York",
    "kind": "Kind of work: patch, section, re-roof or recover",
}
OPTIONAL = frozenset({"county"})
HABITS = ("code", "deck-nail", "underlayment", "drip-edge", "shingle-nail")


@click.command(
    name="new",
    help="Begin a job: asks a few questions and writes its record.\n\nExample: packet new --number 26-042",
)
@click.option("--number", help="Job number; also the name of the job's folder.")
@click.option("--street", help="House number and street.")
@click.option("--town", help="Town or city.")
@click.option("--county", help="County; may be left out.")
@click.option("--state", help="State.")
@click.option("--time-zone", help="Time zone of the house, for example America/New_York.")
@click.option("--kind", help="Kind of work: patch, section, re-roof or recover.")
@click.option(
    "--confirm",
    multiple=True,
    type=click.Choice(HABITS),
    help="Confirm for this job what the office usually uses; may be given again.",
)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but questions and problems.")
def command(confirm: tuple[str, ...], quiet: bool, **given: str | None) -> None:
    """Make a job, check it, and say what comes next."""
    from packet.cli.check import headline, open_items
    from packet.record.load import read_office
    from packet.reference import Library
    from packet.starting.answers import free_number
    from packet.starting.habits import confirmable, offers
    from packet.starting.job import make_job
    from packet.starting.writing import typed
    from packet.text import load_words

    workspace = the_workspace()
    card = read_office(workspace.office_file)
    offered = offers(card, Library.load(workspace.shared_folders()))
    wrong = confirmable(confirm, offered)
    if wrong:
        raise click.UsageError("\n".join(f"{problem.file}: {said(problem)}" for problem in wrong))
    usual = card.value.usual
    asks = may_ask()
    answers = given_or_asked(
        given,
        QUESTIONS,
        ask=asks,
        offered={name: value for name in QUESTIONS if (value := getattr(usual, name, None))},
        optional=OPTIONAL,
        also={"number": lambda number: free_number(workspace.jobs, number)},
    )
    missing = [name for name in QUESTIONS if name not in answers and name not in OPTIONAL]
    if missing:
        flags = ", ".join(f"--{name.replace('_', '-')}" for name in missing)
        raise click.UsageError(f"Give {flags}; or run this on a terminal, where it asks for them.")
    confirmed = {*confirm}
    for offer in offered if asks else ():
        if offer.habit.id not in confirmed and click.confirm(f"{offer.question}: on this job?", err=True):
            confirmed.add(offer.habit.id)
    folder, closeout = make_job(workspace, answers, offered, confirmed)
    if quiet:
        return
    shown = here(folder)
    number = typed(folder.name)
    lines = open_items(closeout, load_words(workspace.shared_folders()))
    click.echo(f"{folder.name}: made {shown / 'job.yaml'}, {shown / 'photos.yaml'}, {shown / 'photos'}")
    for offer in offered:
        state = "confirmed for this job" if offer.habit.id in confirmed else "a remark, not confirmed"
        click.echo(f"  {offer.question}: {state}")
    click.echo(headline(folder.name, lines))
    click.echo(f"Next: open {typed(str(shown / 'job.yaml'))}; packet check {number}; packet build {number}")
