"""Which kind of picture a file is, told by its content, and whether it ends before its picture does."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Literal

Kind = Literal["JPEG", "PNG", "HEIF"]

#: Kinds read here, by the names the picture library gives them, with the endings each goes by.
ENDINGS: dict[Kind, tuple[str, ...]] = {
    "JPEG": (".jpg", ".jpeg", ".jpe", ".jfif"),
    "PNG": (".png",),
    "HEIF": (".heic", ".heif", ".hif"),
}
#: What is installed to open HEIC photos.
HEIC_EXTRA = "roof-closeout-packet[heic]"
#: Bytes at the start of a file that tell its kind.
HEAD_BYTES = 64

_PNG = b"\x89PNG\r\n\x1a\n"
#: The segment of a JPEG that holds the camera's notes, and how they begin there.
_NOTES, _NOTES_LEAD = 0xE1, b"Exif\0\0"
#: Brands of pictures coded as phones do it; other pictures in the same container carry none of them.
_HEIF_BRANDS = frozenset({b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"hevm", b"hevs"})
#: The name of the part that names an item.
_ITEM = b"infe"
#: The parts of such a file that hold the picture; one that reaches beyond the end is cut off.
_HEIF_PARTS = frozenset({b"ftyp", b"meta", b"mdat", b"moov", b"free", b"skip", b"uuid"})


def kind_of(head: bytes) -> Kind | None:
    """Return the kind of a file from its first bytes, or None when it is no photo we read.

    Args:
        head: The file's first ``HEAD_BYTES`` bytes, or all of it.
    """
    if head.startswith(b"\xff\xd8\xff"):
        return "JPEG"
    if head.startswith(_PNG):
        return "PNG"
    if head[4:8] == b"ftyp":
        size = min(int.from_bytes(head[:4], "big"), len(head))
        brands = {head[8:12], *(head[at : at + 4] for at in range(16, size - 3, 4))}
        if brands & _HEIF_BRANDS:
            return "HEIF"
    return None


def is_cut_off(data: bytes) -> bool:
    """Return whether a photo ends before its picture does, told without decoding it."""
    kind = kind_of(data[:HEAD_BYTES])
    if kind == "JPEG":
        return _jpeg_is_cut_off(data)
    return _heif_is_cut_off(data) if kind == "HEIF" else b"IEND" not in data


def _jpeg_is_cut_off(data: bytes) -> bool:
    """Step over the segments to where the picture starts and look for its end mark.

    The small picture among the camera's notes has an end of its own; inside a picture the two bytes of the
    end mark can't occur.
    """
    ends = [end for _, _, end in _segments(data)]
    return data.find(b"\xff\xd9", max(ends, default=2)) < 0


def jpeg_notes(head: bytes) -> bytes | None:
    """Return the camera's notes of a JPEG as they stand in it; None when its start does not hold them whole.

    Args:
        head: The first bytes of the file.
    """
    if kind_of(head) != "JPEG":
        return None
    found = (head[start:end] for name, start, end in _segments(head) if name == _NOTES and end <= len(head))
    return next((notes for notes in found if notes.startswith(_NOTES_LEAD)), None)


def _segments(data: bytes) -> Iterator[tuple[int, int, int]]:
    """Yield the segments of a JPEG before its picture: name, where its data starts, and where it ends."""
    at = 2
    while data[at : at + 1] == b"\xff" and data[at + 1 : at + 2] != b"\xda":
        if data[at + 1 : at + 2] == b"\xff":
            at += 1
            continue
        end = at + 2 + int.from_bytes(data[at + 2 : at + 4], "big")
        yield int.from_bytes(data[at + 1 : at + 2]), at + 4, end
        at = end


def _heif_is_cut_off(data: bytes) -> bool:
    """Step over the parts; what a phone puts behind them, such as a short film, is not looked at."""
    seen, end = set(), 0
    for name, _, end in _parts(data):
        if name not in _HEIF_PARTS:
            break
        seen.add(name)
        if end > len(data):
            return True
    return b"meta" not in seen


def heif_names_are_text(data: bytes) -> bool:
    """Return whether the items of a HEIC have names that are text.

    The library that opens them takes that for granted, and a damaged name would end the whole program.
    """
    meta = next((data[start:end] for name, start, end in _parts(data) if name == b"meta"), b"")
    at = meta.find(_ITEM)
    while at >= 0:
        end = at - 4 + int.from_bytes(meta[at - 4 : at], "big")
        first = at + (14 if meta[at + 4 : at + 5] > b"\x02" else 12)  # behind version, flags, number and lock
        try:
            meta[first:end].decode("utf-8")
        except UnicodeDecodeError:
            return False
        at = meta.find(_ITEM, at + 4)
    return True


def _parts(data: bytes) -> Iterator[tuple[bytes, int, int]]:
    """Yield the outermost parts of a HEIC: name, where it starts, and where it says that it ends."""
    at = 0
    while at + 8 <= len(data):
        size = int.from_bytes(data[at : at + 4], "big")
        if size == 1:
            size = int.from_bytes(data[at + 8 : at + 16], "big")
        end = len(data) if size == 0 else at + max(size, 8)
        yield data[at + 4 : at + 8], at, end
        at = end


@lru_cache(maxsize=1)
def heif_version() -> str:
    """Return the version of the library that opens HEIC photos, or an empty text when it is not installed."""
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("pi-heif")
    except PackageNotFoundError:
        return ""


@lru_cache(maxsize=1)
def opens_heif() -> bool:
    """Return whether HEIC photos can be opened here; makes the picture library able to, if so."""
    try:
        import pi_heif
    except ImportError:
        return False
    pi_heif.register_heif_opener(thumbnails=False)
    return True
