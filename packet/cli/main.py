"""The command itself: commands by name, each imported when it is run, and what its exit codes mean."""

import sys
from importlib import import_module

import click

from packet import __version__

#: Commands in the order of use: the module has the same name, and this is its line of help.
COMMANDS = {
    "start": "Make the folder of an office, or what of it is missing.",
    "new": "Begin a job: asks a few questions and writes its record.",
    "photos": "Take photos from a phone or a card into a job and its log.",
    "check": "Check records and say what is still open.",
    "build": "Build the closeout packet of jobs, one site for each copy.",
    "serve": "Show a job's packet in the browser, rebuilt on change.",
    "zip": "Make the zip of a packet's outside copy, to hand on.",
    "pdf": "Print jobs: a PDF of each copy, a roof card and a nailing card.",
    "plan": "Make the sheet before a job, for the office and the crew.",
    "holds": "List what open jobs wait to be shown, next first.",
    "order": "List what to buy for jobs, and write the list for a spreadsheet.",
    "products": "List the product sheets, and what one of each gives.",
    "figures": "Print every figure of a job with its working.",
    "requirements": "List what is asked: the whole catalogue, or how one job answers it.",
    "rules": "List the rules a job rests on, and what to do about each.",
    "schema": "Print the JSON Schema of a record, for an editor.",
}

EXIT_OPEN, EXIT_BAD, EXIT_INTERNAL = 1, 2, 70


class Commands(click.Group):
    """A group that imports a command when it is run, so that help stays quick."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names of all commands."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return a command by name, or None."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"packet.cli.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write names and help from the table, without importing anything."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="packet")
def packet() -> None:
    """Turn a roofing job's record into a closeout packet.

    Example: packet build 26-041
    """


def run(arguments: list[str] | None = None) -> None:
    """Run and exit: 0 done, 1 something due is open, 2 a bad record or command, 70 a fault of ours."""
    sys.exit(status(arguments))


def status(arguments: list[str] | None = None) -> int:
    """Run the command and return its exit code."""
    try:
        outcome = packet.main(args=arguments, standalone_mode=False)
    except click.exceptions.Exit as done:
        return done.exit_code
    except click.ClickException as error:
        error.show()
        return EXIT_BAD
    except (click.Abort, KeyboardInterrupt):
        click.echo("Stopped.", err=True)
        return 130
    except BrokenPipeError:
        return 0
    except Exception as error:
        from packet.problems import Refused

        if isinstance(error, Refused):
            from packet.cli.report import show_problems

            show_problems(error.problems)
            return EXIT_BAD
        import traceback

        traceback.print_exc()
        click.echo(f"packet {__version__}: a fault of the program, not of your record.", err=True)
        return EXIT_INTERNAL
    return outcome if isinstance(outcome, int) else 0
