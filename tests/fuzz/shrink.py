"""The smallest change that still shows a fault."""

from collections.abc import Callable, Mapping
from time import monotonic

Shows = Callable[[Mapping[str, bytes]], bool]

#: Longest search for a smaller case [s].
PATIENCE_S = 40.0


def smallest(files: Mapping[str, bytes], shows: Shows, *, patience_s: float = PATIENCE_S) -> dict[str, bytes]:
    """Return files with all taken away that the fault does not need.

    Args:
        files: Files that show the fault.
        shows: Tells whether other files still show it.
        patience_s: Longest search [s].
    """
    until = monotonic() + patience_s
    kept = dict(files)
    for name in list(kept):
        fewer = {other: data for other, data in kept.items() if other != name}
        if fewer and shows(fewer):
            kept = fewer
    for name in kept:
        for unit in (b"\n", b""):
            kept[name] = _thinner(kept, name, unit, shows, until)
    return kept


def _thinner(files: Mapping[str, bytes], name: str, unit: bytes, shows: Shows, until: float) -> bytes:
    """Take pieces out of one file, large ones first: lines, then bytes."""

    def joined(pieces: list[bytes]) -> bytes:
        return b"".join(pieces)

    data = files[name]
    pieces = data.splitlines(keepends=True) if unit else [bytes([byte]) for byte in data]
    size = max(len(pieces) // 2, 1)
    while size and monotonic() < until:
        at, shrunk = 0, False
        while at < len(pieces) and monotonic() < until:
            fewer = pieces[:at] + pieces[at + size :]
            if shows({**files, name: joined(fewer)}):
                pieces, shrunk = fewer, True
            else:
                at += size
        if not shrunk or size > 1:
            size = size // 2 if size > 1 else 0
    return joined(pieces)
