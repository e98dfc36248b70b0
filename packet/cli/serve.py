"""``packet serve``: one copy of a job in the browser, built again whenever its files change."""

import time
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING, cast

import click

from packet.cli.progress import progress
from packet.cli.report import chosen, problems_text, the_workspace
from packet.problems import Refused
from packet.readers import READERS, Reader
from packet.workspace import Workspace

if TYPE_CHECKING:
    from packet.preview.state import Preview

#: An editor's own file may come and go while a build looks at the folder; then it looks again.
_LOOKS, _PAUSE_S = 5, 0.2


@click.command(
    name="serve",
    help="Show a job's packet in the browser, rebuilt on change.\n\n"
    "Only this computer can open the address. The page reloads by itself when the job's folder, shared/ or "
    "templates/ change; mistakes in them are shown above the last good page. Stop with Ctrl-C."
    "\n\nExample: packet serve 26-041",
)
@click.argument("job")
@click.option(
    "--copy", "reader", type=click.Choice(READERS), default="outside", show_default=True, help="Whose copy."
)
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    help="Port of the address; 0 for any.  [default: 8000, or the next that is free]",
)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but the address and problems.")
def command(job: str, reader: str, port: int | None, quiet: bool) -> int:
    """Serve until stopped by hand and return the exit code, which is then 0."""
    from packet.preview.server import PORTS, PortTaken, serving
    from packet.preview.state import Preview
    from packet.preview.watching import Watch
    from packet.site.publish import recover

    workspace = the_workspace()
    folder = chosen(workspace, [job])[0]
    recover(workspace.out)
    preview = Preview(workspace.out / folder.name, cast("Reader", reader))
    try:
        with serving(preview, PORTS if port is None else (port,)) as address:
            watch = Watch((folder, *_office_folders(workspace)))
            _rebuild(workspace, folder, preview, quiet)
            click.echo(f"{folder.name}: {address}")
            if not quiet:
                click.echo(f"  the {reader} copy, rebuilt on change; stop with Ctrl-C")
            while True:
                watch.wait()
                _rebuild(workspace, folder, preview, quiet)
    except PortTaken as taken:
        message = f"port {taken.port} {taken.why}; choose another one, for example --port {taken.other}"
        raise click.BadParameter(message, param_hint="--port") from taken
    except KeyboardInterrupt:
        if not quiet:
            click.echo("\nStopped.")
        return 0


def _office_folders(workspace: Workspace) -> tuple[Path, ...]:
    """Return the folders a packet depends on beside the job's, the office's own also when not there yet."""
    own = (workspace.root / "shared", workspace.root / "templates")
    return tuple(dict.fromkeys((*own, *workspace.shared_folders(), *workspace.template_folders())))


def _rebuild(workspace: Workspace, folder: Path, preview: "Preview", quiet: bool) -> None:
    """Build, print what came of it, and tell the open pages."""
    from packet.build import build

    begun, had_problems = perf_counter(), bool(preview.problems)
    for look in range(1, _LOOKS + 1):
        try:
            with progress(folder.name, quiet=quiet) as tell:
                made = build(workspace, folder, tell=tell).made
            break
        except Refused as refused:
            text = problems_text(refused.problems, of_jobs=1, not_built=[folder.name])
            click.echo(text, err=True)
            preview.tell(text)
            return
        except FileNotFoundError:
            if look == _LOOKS:
                raise
            time.sleep(_PAUSE_S)
    preview.tell("")
    if not quiet and (made or had_problems):
        click.echo(f"{folder.name}: {'built' if made else 'unchanged'} in {perf_counter() - begun:.1f} s")
