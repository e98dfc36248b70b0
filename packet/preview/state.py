"""What an open page has to know: which build it shows, and the problems of the latest one."""

import hashlib
import json
import secrets
import threading
from pathlib import Path

from packet.build import RECEIPT_NAME
from packet.readers import Reader


class Preview:
    """One copy of a job's output, and a state that changes whenever its pages should be loaded again."""

    def __init__(self, folder: Path, reader: Reader) -> None:
        self.folder, self.reader = folder, reader
        self.problems = ""
        self._run, self._number = secrets.token_hex(4), 0  # a page left open by an earlier run reloads too
        self._mark = self._output_mark()
        self._changed = threading.Condition()
        self._closed = False

    @property
    def state(self) -> str:
        """Name of the present state."""
        return f"{self._run}-{self._number}"

    def tell(self, problems: str) -> None:
        """Note how a build ended; pages reload when there is other output, or another text above them.

        Args:
            problems: What is shown above the pages; empty when all is well.
        """
        mark = self._output_mark()
        with self._changed:
            if (problems, mark) != (self.problems, self._mark):
                self.problems, self._mark = problems, mark
                self._number += 1
                self._changed.notify_all()

    def wait(self, seen: str, patience_s: float) -> str:
        """Return the present state once it is another than the one seen, or when patience ends."""
        with self._changed:
            self._changed.wait_for(lambda: self._closed or self.state != seen, patience_s)
            return self.state

    def close(self) -> None:
        """Let all waiting pages go."""
        with self._changed:
            self._closed = True
            self._changed.notify_all()

    def published(self) -> frozenset[str]:
        """Return the paths of the copy's files as the build listed them; none when there is no output yet."""
        start = f"{self.reader}/"
        try:
            listed = json.loads((self.folder / RECEIPT_NAME).read_bytes())["files"]
            return frozenset(name.removeprefix(start) for name in listed if name.startswith(start))
        except (OSError, ValueError, KeyError, TypeError):
            return frozenset()

    def _output_mark(self) -> str:
        """Return what tells one output from another."""
        try:
            return hashlib.sha256((self.folder / RECEIPT_NAME).read_bytes()).hexdigest()
        except OSError:
            return ""
