"""A process that has the program loaded and, for each line it reads, forks a build that is struck at one act.

An act is anything done to the disk below ``out/``: a file opened for writing, a folder made, a name changed, a name
taken away. The interpreter's own audit events tell of each before it is done, so that no act is forgotten. The blow is a
signal to the build itself, or an error in the place of the act.
"""

import ctypes
import json
import os
import signal
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from packet.build import build
from packet.problems import Refused
from packet.site import publish
from packet.workspace import Workspace

#: Audit events that change the disk; opening counts when it writes.
CHANGES = ("os.rename", "os.remove", "os.rmdir", "os.mkdir", "open")
_WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT

#: Exit code of a build that told its problems, and of one that went wrong.
REFUSED, WRONG = 2, 70


class Striker:
    """Counts acts, names them, and strikes at one."""

    def __init__(self, out: Path, at: int, blow: Callable[[str], None]) -> None:
        self.out, self.at, self.blow = str(out), at, blow
        self.acts: list[str] = []
        self.armed = True

    def hook(self, event: str, arguments: tuple[Any, ...]) -> None:
        if not self.armed or event not in CHANGES:
            return
        path = os.fsdecode(arguments[0]) if isinstance(arguments[0], str | bytes) else ""
        if event == "open" and not (path.startswith(self.out) and arguments[2] & _WRITES):
            return
        self.act(f"{event} {os.path.relpath(path, self.out) if path.startswith('/') else path}")

    def act(self, name: str) -> None:
        self.acts.append(name)
        if len(self.acts) - 1 == self.at:
            self.armed = False
            self.blow(name)


def _blow(kind: str) -> Callable[[str], None]:
    """Return what strikes: a signal by its name, or an error by its number's name."""
    if kind.startswith("SIG"):
        number = getattr(signal, kind)
        return lambda name: os.kill(os.getpid(), number)

    def fail(name: str) -> None:
        import errno

        number = getattr(errno, kind)
        raise OSError(number, os.strerror(number), name)

    return fail


def _struck(order: dict[str, Any]) -> int:
    """Build in this process and return its exit code; the acts go to the file that the order names."""
    root = Path(order["root"])
    striker = Striker(root / "out", order["at"], _blow(order["blow"]))
    exchange = publish.exchange

    def watched_exchange(one: Path, other: Path) -> bool:
        if not order["exchange"]:
            return False
        striker.act("exchange")
        return exchange(one, other)

    publish.exchange = watched_exchange
    sys.addaudithook(striker.hook)
    code = 0
    try:
        build(Workspace(root), root / "jobs" / order["job"], tell=lambda step: striker.act(f"step {step}"))
    except Refused as refused:
        striker.acts.append(f"refused {refused}")
        code = REFUSED
    except KeyboardInterrupt:
        code = 130
    except BaseException as error:
        striker.acts.append(f"wrong {type(error).__name__}: {error}")
        code = WRONG
    striker.armed = False
    Path(order["acts"]).write_text(json.dumps(striker.acts))
    return code


def main(warm: Path) -> None:
    """Read orders, one line of JSON each; answer each with how its build ended, minus the signal that killed it.

    Args:
        warm: An office to build first, so that no child has to load the program.
    """
    build(Workspace(warm), Workspace(warm).job_folders()[0])
    ctypes.CDLL(None)  # loaded once here, not once in every child
    for line in sys.stdin:
        child = os.fork()
        if child == 0:
            os._exit(_struck(json.loads(line)))
        print(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), flush=True)


if __name__ == "__main__":
    # The signals are Python's own again, whatever the parent ignored.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    main(Path(sys.argv[1]))
