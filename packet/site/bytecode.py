"""Compiled templates kept in memory, shared by every build in the process."""

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket


class MemoryCache(BytecodeCache):
    """Jinja bytecode kept in a dictionary; Jinja itself checks it against the template's source.

    Compiling the theme's templates takes about half of a site's time, and the second job of a batch
    has the same templates as the first. Nothing is written to disk: code read back from a folder that
    others may write to is code of theirs.
    """

    def __init__(self) -> None:
        self._compiled: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill a bucket with what was compiled before, if it still fits the source."""
        compiled = self._compiled.get(bucket.key)
        if compiled is not None:
            bucket.bytecode_from_string(compiled)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep what was compiled; one entry a template, so that an edited one replaces its own."""
        self._compiled[bucket.key] = bucket.bytecode_to_string()

    def clear(self) -> None:
        """Forget everything."""
        self._compiled.clear()
