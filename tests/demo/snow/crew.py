"""Who took the photos of demo job 26-067, and on which days."""

from dataclasses import dataclass

from ..log_entry import TAM, Entry

JORY, MARLO, OWNER = "Jory Kemp", "Marlo Quist", "the owner"
WINTER, LOOKED = "2026-02-14", "2026-04-08"
FIRST, SECOND, THIRD, FOURTH = "2026-04-20", "2026-04-21", "2026-04-22", "2026-04-23"


@dataclass(frozen=True)
class Taken(Entry):
    """A photo of this crew; ``when`` is empty where nobody knows the time."""

    @property
    def set_by(self) -> str:
        """Who wrote the entry: Tam Oduya, and Jory Kemp for those Tam took."""
        return JORY if self.taken_by == TAM else TAM
