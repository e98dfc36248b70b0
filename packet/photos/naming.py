"""Ids that follow on those of a log, and file names that every computer can hold."""

import re
import unicodedata
from collections import Counter
from collections.abc import Collection, Iterable, Iterator

from packet.photos.kinds import ENDINGS, Kind

#: Ids of a log that has none yet: P01, P02.
FIRST_PREFIX, FIRST_WIDTH = "P", 2
_LONGEST_ID = 24
#: Digits that leave room for as many photos as a log holds.
_LONGEST_NUMBER = 20
_NUMBERED = re.compile(r"([A-Z0-9-]*?)(\d+)", re.ASCII)

#: A file name is cut to this length [bytes], which leaves room for a number behind it.
_MOST_NAME_BYTES = 150
_RESERVED = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)


def following_ids(ids: Collection[str], texts: Iterable[str] = ()) -> Iterator[str]:
    """Yield ids that follow the highest one, as P33 follows P32; one named in a text counts as used.

    Args:
        ids: Ids of the log, in its order.
        texts: Files that may name an id whose entry was taken out.
    """
    pairs = [match.groups() for id in ids if (match := _NUMBERED.fullmatch(id))]
    pairs = [(prefix, digits) for prefix, digits in pairs if _has_room(prefix, digits)]
    prefix, width, number = FIRST_PREFIX, FIRST_WIDTH, 0
    if pairs:
        prefix = Counter(prefix for prefix, _ in pairs).most_common(1)[0][0]
        digits = max((digits for each, digits in pairs if each == prefix), key=int)
        width, number = len(digits), int(digits)
    if pairs and prefix:  # a log without entries may show an example
        named = re.compile(rf"(?<![\w-]){re.escape(prefix)}(\d{{{width}}})(?![\w-])", re.ASCII)
        number = max([number, *(int(found) for text in texts for found in named.findall(text))])
    while True:
        number += 1
        id = f"{prefix}{number:0{width}}"
        if id not in ids:
            yield id


def _has_room(prefix: str, digits: str) -> bool:
    return len(prefix) + len(digits) < _LONGEST_ID and len(digits) <= _LONGEST_NUMBER


def plain_name(name: str, kind: Kind) -> str:
    """Return a file name with letters, digits and plain marks alone, and an ending that fits its kind.

    Args:
        name: Name of the file as it came; it may be no text at all.
        kind: Kind of its content.
    """
    text = unicodedata.normalize("NFC", name.encode("utf-8", errors="replace").decode())
    text = re.sub(r"[^\w .()+,=@-]", "-", text).strip(" .-") or "photo"
    if not text.lower().endswith(ENDINGS[kind]):
        text += ENDINGS[kind][0]
    if _RESERVED.fullmatch(text):
        text = f"photo-{text}"
    stem, _, ending = text.rpartition(".")
    stem = stem.encode()[:_MOST_NAME_BYTES].decode(errors="ignore").rstrip(" .-")
    return f"{stem}.{ending}"


def free_name(name: str, taken: Collection[str]) -> str:
    """Return a name that no other file has, told apart by capitals or not: IMG_1-2.jpg after IMG_1.jpg.

    Args:
        name: The name wanted.
        taken: Names in the folder, folded.
    """
    stem, _, ending = name.rpartition(".")
    number, free = 1, name
    while free.casefold() in taken:
        number += 1
        free = f"{stem}-{number}.{ending}"
    return free
