"""What the papers of a job were printed from, so that an unchanged job is not printed again."""

import hashlib
import json
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

from packet.placing import placing

#: The typesetter, whose version may change the papers; the rest is in the key that a run is given.
_LIBRARY = "typst"


@dataclass(frozen=True)
class Receipt:
    """The receipt of one job's papers.

    Attributes:
        file: Where it lies; without it the papers are printed again.
        papers: The PDFs it speaks of.
        key_now: Returns a digest of all that they are made from; None prints them always.
    """

    file: Path
    papers: Mapping[str, Path]
    key_now: Callable[[], str] | None

    def key(self) -> str:
        """Return what the papers would be printed from now; empty when that can't be told."""
        try:
            return f"{self.key_now()} {_LIBRARY} {version(_LIBRARY)}" if self.key_now else ""
        except OSError:  # printing names the file that can't be read
            return ""

    def holds(self, key: str) -> bool:
        """Return whether the papers were printed from this, and each is still as it was printed."""
        try:
            known = json.loads(self.file.read_bytes())
            return bool(key) and known == {"key": key, "papers": self._digests()}
        except (OSError, ValueError):
            return False

    def write(self, key: str) -> None:
        """Note what the papers were printed from, unless it has changed since; they are whole without it."""
        if key and key == self.key():
            with suppress(OSError):
                self.file.parent.mkdir(parents=True, exist_ok=True)
                said = json.dumps({"key": key, "papers": self._digests()}, indent=0)
                with placing(self.file, durable=False) as part:
                    part.write_text(said, encoding="utf-8", newline="\n")

    def _digests(self) -> dict[str, str]:
        return {name: hashlib.sha256(path.read_bytes()).hexdigest() for name, path in self.papers.items()}
