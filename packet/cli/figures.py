"""``packet figures``: every figure of a job with its working."""

import json

import click

from packet.cli.report import chosen, the_workspace


@click.command(
    name="figures",
    help="Print every figure of a job with its working.\n\nExample: packet figures 26-041 --json",
)
@click.argument("job")
@click.option("--json", "as_json", is_flag=True, help="Print JSON, as in the office's packet.json.")
@click.option("-q", "--quiet", is_flag=True, help="Print values without their workings.")
def command(job: str, as_json: bool, quiet: bool) -> None:
    """Print figures."""
    from packet.closeout.assemble import assemble
    from packet.closeout.redact import redact
    from packet.text import figure_text, load_words

    workspace = the_workspace()
    closeout, _ = assemble(workspace, chosen(workspace, [job])[0])
    figures = redact(closeout, "office")["figures"]
    if as_json:
        click.echo(json.dumps(figures, indent=2, ensure_ascii=False))
        return
    words = load_words(workspace.shared_folders())
    for id, figure in figures.items():
        working = figure["working"]
        tail = "" if quiet or not working else f"  = {working['formula']}"
        click.echo(f"{id:<40} {figure_text(figure, words)}{tail}")
