"""Tiny HEIC photos for tests: no encoder is at hand, so two were made once and lie in ``tests/photos/data``."""

from pathlib import Path
from typing import Literal

DATA = Path(__file__).resolve().parents[1] / "photos" / "data"


def heic(path: Path, kind: Literal["turned", "no-notes"] = "turned", *, more: bytes = b"") -> Path:
    """Write a HEIC of four quarters; ``more`` goes into a part that readers pass over, so that the bytes differ.

    ``turned`` was taken with the phone on its side at 2026:03:16 10:15:00 -04:00 and holds a position;
    ``no-notes`` holds nothing but the picture.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    part = (8 + len(more)).to_bytes(4, "big") + b"free" + more if more else b""
    path.write_bytes((DATA / f"{kind}.heic").read_bytes() + part)
    return path
