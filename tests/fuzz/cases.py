"""A case: an office whose files were changed, made from a seed and a number alone."""

import io
from dataclasses import dataclass
from pathlib import Path
from random import Random

import piexif
from PIL import PngImagePlugin

from tests.fuzz.likely import LIKELY_CHANGES
from tests.fuzz.text_changes import BYTES_CHANGES, ENCODINGS, TEXT_CHANGES
from tests.fuzz.tree_changes import TREE_CHANGES, parsed, written
from tests.support.pictures import exif, quarters

#: The office's own card, beside the files of the job folder.
CARD = "office.yaml"


@dataclass(frozen=True)
class Case:
    """Files of an office that differ from those of the demo job.

    Attributes:
        seed: Seed of the run.
        number: Number of the case in the run.
        job: Which demo job it is made of.
        kind: What was changed: values (likely ones), structure, text, bytes, photos.
        files: Changed files of the job folder by name; the office's card under its own name.
    """

    seed: int
    number: int
    job: str
    kind: str
    files: dict[str, bytes]


@dataclass(frozen=True)
class Demo:
    """A demo job with small photos in the place of its own: name → bytes."""

    name: str
    files: dict[str, bytes]


def demos(root: Path) -> list[Demo]:
    """Return every demo job of a checkout; photos are small, and their digests are taken off the log."""
    card = (root / "shared" / "office.yaml").read_bytes()
    made = []
    for folder in sorted(path.parent for path in (root / "jobs").glob("*/job.yaml")):
        log = folder / "photos.yaml"
        lines = log.read_text(encoding="utf-8").split("\n") if log.is_file() else ["photos: []"]
        files = {
            CARD: card,
            "job.yaml": (folder / "job.yaml").read_bytes(),
            "photos.yaml": "\n".join(line for line in lines if "sha256:" not in line).encode(),
        }
        for number, path in enumerate(sorted((folder / "photos").glob("*.*"))):
            files[f"photos/{path.name}"] = small_photo(number, png=path.suffix == ".png")
        made.append(Demo(folder.name, files))
    return made


def small_photo(number: int, *, png: bool = False) -> bytes:
    """Return a picture with the notes of a camera, each number another one."""
    target = io.BytesIO()
    image = quarters((24 + number % 7, 18))
    notes = exif(taken=f"2026:03:16 10:{number % 60:02}:00", orientation=1 + number % 8)
    if png:
        text = PngImagePlugin.PngInfo()
        text.add_text("Comment", "by a crew member")
        text.add_itxt("Title", "Dach \u5c4b", zip=True)
        image.save(target, "PNG", exif=notes, pnginfo=text)
    else:
        image.save(target, "JPEG", quality=60, exif=notes, progressive=bool(number % 3), comment=b"crew")
    return target.getvalue()


#: Kinds of change, as often as they are made.
KINDS = ("values", "values", "values", "structure", "structure", "text", "text", "bytes", "photos")


def case(base: list[Demo], seed: int, number: int, kind: str = "") -> Case:
    """Return a case, of one kind or of any; the same seed and number give the same bytes."""
    dice = Random(f"{seed}:{number}")
    demo = dice.choice(base)
    kind = dice.choice(
        ("values", "values", "values", "structure", "structure", "text", "text", "bytes", "photos")
    )
    names = ("job.yaml", "job.yaml", "job.yaml", "photos.yaml", "photos.yaml", CARD)
    times = dice.choice((1, 1, 1, 2, 3, 6))
    if kind == "photos":
        return Case(seed, number, demo.name, kind, _photos(demo, dice, times))
    name = dice.choice(names)
    data = demo.files[name]
    if kind in ("structure", "values"):
        tree, changes = parsed(data), TREE_CHANGES if kind == "structure" else LIKELY_CHANGES
        for _ in range(times):
            dice.choice(changes)(tree, dice)
        data = written(tree, dice)
    elif kind == "text":
        text = data.decode()
        for _ in range(times):
            text = dice.choice(TEXT_CHANGES)(text, dice)[:3_000_000]
        data = text.encode("utf-8", "surrogatepass")
    else:
        for _ in range(times):
            data = dice.choice((*BYTES_CHANGES, *ENCODINGS))(data, dice)
    return Case(seed, number, demo.name, kind, {name: data})


def _photos(demo: Demo, dice: Random, times: int) -> dict[str, bytes]:
    """Return one to three photos with changed bytes, as PNG or JPEG, or with camera notes that make no sense."""
    names = [name for name in demo.files if name.startswith("photos/")]
    changed: dict[str, bytes] = {}
    for name in dice.sample(names, min(dice.choice((1, 1, 3)), len(names))):
        png = dice.random() < 0.4
        data = _odd_notes(dice) if dice.random() < 0.3 else small_photo(dice.randrange(60), png=png)
        for _ in range(times if dice.random() < 0.9 else 0):
            data = dice.choice(BYTES_CHANGES)(data, dice)
        changed[name] = data
    return changed


def _odd_notes(dice: Random) -> bytes:
    """Return a JPEG whose time, offset and position are other things than a camera writes."""
    words = (
        b"",
        b"\0",
        b"0000:00:00 00:00:00",
        b"9999:99:99 99:99:99",
        b"2026-03-16",
        b"\xff\xfe",
        b"+25:00",
        b"-04:00\0\0",
        b"x" * 500,
    )
    notes = piexif.load(exif())
    notes["Exif"][piexif.ExifIFD.DateTimeOriginal] = dice.choice(words)
    notes["Exif"][piexif.ExifIFD.OffsetTimeOriginal] = dice.choice(words)
    notes["0th"][piexif.ImageIFD.Orientation] = dice.choice((0, 1, 6, 9, 65535))
    if dice.random() < 0.5:
        notes["GPS"] = {piexif.GPSIFD.GPSLatitude: ((33, 0), (0, 0), (1, 0))}
    target = io.BytesIO()
    quarters((20, 16)).save(target, "JPEG", exif=piexif.dump(notes))
    return target.getvalue()
