"""``packet schema``: the JSON Schema of a record, for an editor that completes and explains."""

import json

import click

KINDS = ("job", "photos", "office")


@click.command(
    name="schema",
    help="Print the JSON Schema of a record, for an editor.\n\nExample: packet schema > job.schema.json",
)
@click.option(
    "--of",
    "kind",
    type=click.Choice(KINDS),
    default="job",
    show_default=True,
    help="Which file it describes.",
)
@click.option("-q", "--quiet", is_flag=True, help="Print on one line.")
def command(kind: str, quiet: bool) -> None:
    """Print a schema."""
    from packet.schema import schema_of

    click.echo(json.dumps(schema_of(kind), indent=None if quiet else 2, ensure_ascii=False))
