"""Each leaf carries a mark of its own: the copy for others holds those it may hold, and no other."""

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import piexif
import piexif.helper
import pytest
from PIL import Image, PngImagePlugin

from packet.build import build
from packet.readers import READERS
from tests.build_job.everyfield import Place, job_of, write_job
from tests.build_job.pages import all_strings, packed, searchable
from tests.support.pictures import quarters

#: The start of the places that only the office may read. Everything else that is typed is for everyone.
PRIVATE = (
    ("record", "people", "owner"),
    ("record", "money"),
    ("office", "usual"),
    ("record", "documents", "D1"),
    ("record", "documents", "D-PRIVATE"),
    ("record", "documents", "D4"),
    ("record", "documents", "D6"),
    ("photos", "P-PRIVATE"),
    ("photos", "P03"),
    ("photos", "P01", "set_by"),
    ("photos", "P04", "set_by"),
)

#: Typed where only numbers and days go; for the office alone.
AMOUNTS = {"contract": "USD 731,025,431.07", "invoice": "USD 642,187,309.11", "paid": "USD 538,410,276.13"}
PRIVATE_DAY = "1987-06-05"
PRIVATE_TIME = "1991-02-03T04:05:06"
PRIVATE_IDS = ("D-PRIVATE", "P-PRIVATE")
PRIVATE_NUMBERS = (
    *(packed(text.removeprefix("USD ")) for text in AMOUNTS.values()),
    *(packed(text) for text in (PRIVATE_DAY, "June 5, 1987", PRIVATE_TIME, "1991:02:03", "February 3, 1991")),
    *(packed(id) for id in PRIVATE_IDS),
)


class Marks:
    """Marks with a sign in the middle, so that a search has to look through punctuation."""

    def __init__(self) -> None:
        self._number = 0

    def __call__(self, place: Place) -> str:
        self._number += 1
        return f"Cq{self._number:04}-x.{self._number:04}vj"


@dataclass(frozen=True)
class Marked:
    """A packet in which every typed text, file name and camera note has a mark."""

    texts: dict[Place, str]
    files: dict[str, str]
    never: dict[str, str]
    packet: Path

    def found(self, reader: str, marks: dict[Any, str]) -> set[Any]:
        """Return the keys of the marks found anywhere in a copy, names of files included."""
        paths = sorted(path for path in (self.packet / reader).rglob("*") if path.is_file())
        assert paths
        everything = "\n".join(
            f"{packed(str(path.relative_to(self.packet)))}\n{searchable(path)}" for path in paths
        )
        return {key for key, mark in marks.items() if packed(mark) in everything}


def _camera_notes(path: Path, mark: Marks, never: dict[str, str]) -> None:
    """Write a photo with a mark in every place a camera or a program may write into."""

    def note(kind: str) -> str:
        return never.setdefault(f"{path.stem} {kind}", mark(()))

    path.parent.mkdir(parents=True, exist_ok=True)
    if path.suffix == ".png":
        notes = PngImagePlugin.PngInfo()
        notes.add_text("Comment", note("text"))
        notes.add_itxt("XML:com.adobe.xmp", note("xmp"))
        notes.add_text("Author", note("packed text"), zip=True)
        quarters((64, 48)).save(path, pnginfo=notes)
        return
    tags: dict[str, dict[int, Any]] = {
        "0th": {
            piexif.ImageIFD.ImageDescription: note("description").encode(),
            piexif.ImageIFD.Artist: note("artist").encode(),
            piexif.ImageIFD.Copyright: note("copyright").encode(),
            piexif.ImageIFD.XPComment: note("comment").encode("utf-16-le"),
        },
        "Exif": {
            piexif.ExifIFD.UserComment: piexif.helper.UserComment.dump(note("user comment")),
            piexif.ExifIFD.MakerNote: note("maker").encode(),
            piexif.ExifIFD.DateTimeOriginal: b"2026:03:09 09:10:00",
            piexif.ExifIFD.OffsetTimeOriginal: note("offset").encode(),
        },
        "GPS": {
            piexif.GPSIFD.GPSLatitudeRef: b"N",
            piexif.GPSIFD.GPSLatitude: ((33, 1), (12, 1), (3456, 100)),
            piexif.GPSIFD.GPSAreaInformation: note("place").encode(),
        },
    }
    image = quarters((64, 48))
    image.save(
        path, "JPEG", exif=piexif.dump(tags), comment=note("jpeg comment"), xmp=note("jpeg xmp").encode()
    )


@pytest.fixture(scope="module")
def marked(tmp_path_factory: pytest.TempPathFactory) -> Marked:
    mark = Marks()
    never: dict[str, str] = {}
    never["folder"] = mark(())
    root = tmp_path_factory.mktemp("office") / never["folder"]
    files: dict[str, str] = {}

    def change(record: dict[str, Any]) -> None:
        record["money"] |= AMOUNTS
        record["documents"][2] |= {"id": "D-PRIVATE", "date": PRIVATE_DAY}
        record["ways_out"][0]["photo"] = "P-PRIVATE"

    def name(id: str, ending: str) -> str:
        files[id] = mark(())
        return f"photos/{files[id]} of the Ówner{ending}"

    both = ["outside", "office"]
    photos = [
        {"id": "P01", "file": name("P01", ".jpg"), "stage": "before", "shows": "-", "readers": both},
        {"id": "P-PRIVATE", "file": name("P-PRIVATE", ".jpg"), "stage": "deck", "shows": "-",
         "readers": ["office"], "taken_at": PRIVATE_TIME, "offset": "-05:00", "proves": ["deck-nail", "S1"]},
        {"id": "P03", "file": name("P03", ".jpg"), "stage": "done", "shows": "-", "proves": ["deck-nail"]},
        {"id": "P04", "file": name("P04", ".png"), "stage": "done", "shows": "-", "readers": both},
    ]  # fmt: skip
    filling = write_job(root, mark, photos=photos, change=change)
    workspace, job = job_of(root)
    for photo in photos:
        _camera_notes(job / str(photo["file"]), mark, never)
    for path in (job / "job.yaml", job / "photos.yaml", workspace.office_file):
        never[f"remark in {path.name}"] = mark(())
        path.write_text(
            f"{path.read_text(encoding='utf-8')}\n# {never[f'remark in {path.name}']}\n", encoding="utf-8"
        )
    never["note beside the record"], never["its name"] = mark(()), mark(())
    (job / f"{never['its name']}.txt").write_text(never["note beside the record"])
    return Marked(filling.texts, files, never, build(workspace, job).folder)


def is_private(place: Place) -> bool:
    return any(place[: len(start)] == start for start in PRIVATE)


def data(marked: Marked, reader: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((marked.packet / reader / "packet.json").read_text(encoding="utf-8"))
    return found


def test_some_texts_are_private_and_some_are_not(marked: Marked) -> None:
    private = {place for place in marked.texts if is_private(place)}
    assert {place[:2] for place in private} >= {("record", "money"), ("record", "people"), ("photos", "P03")}
    assert len(private) > 15
    assert len(marked.texts) - len(private) > 100
    assert len(set(marked.texts.values()) | set(marked.never.values())) == len(marked.texts) + len(
        marked.never
    )


def test_the_copy_for_others_holds_exactly_what_it_may(marked: Marked) -> None:
    allowed = {place for place in marked.texts if not is_private(place)}
    assert marked.found("outside", marked.texts) == allowed


def test_the_office_has_everything_that_was_typed(marked: Marked) -> None:
    kept = {packed(text) for text in all_strings(data(marked, "office"))}
    assert [place for place, mark in marked.texts.items() if packed(mark) not in kept] == []
    assert marked.found("office", marked.files) == set(marked.files)


def test_names_of_originals_stay_in_the_office(marked: Marked) -> None:
    assert marked.found("outside", marked.files) == set()
    names = "\n".join(packed(str(path)) for path in (marked.packet / "office").rglob("*"))
    assert not [mark for mark in marked.files.values() if packed(mark) in names]


@pytest.mark.parametrize("reader", READERS)
def test_notes_in_photos_remarks_and_folders_are_in_no_copy(marked: Marked, reader: str) -> None:
    assert len(marked.never) > 30
    assert marked.found(reader, marked.never) == set()


def test_private_amounts_days_and_ids_are_the_office_s_alone(marked: Marked) -> None:
    marks = {number: number for number in PRIVATE_NUMBERS}
    assert marked.found("outside", marks) == set()
    office = marked.found("office", marks)
    assert {*map(packed, AMOUNTS.values())} <= {f"usd{number}" for number in office}
    assert {
        packed(PRIVATE_DAY),
        packed("June 5, 1987"),
        packed(PRIVATE_TIME),
        *map(packed, PRIVATE_IDS),
    } <= office


def test_the_copy_for_others_has_no_private_key(marked: Marked) -> None:
    outside, office = data(marked, "outside"), data(marked, "office")
    assert [photo["id"] for photo in outside["photos"]] == ["P01", "P04"]
    assert [photo["id"] for photo in office["photos"]] == ["P01", "P-PRIVATE", "P03", "P04"]
    assert [paper["id"] for paper in outside["record"]["documents"]] == ["D2", "D5", "D7"]
    for photo in outside["photos"]:
        assert not {"file", "set_by", "has_place", "readers"} & photo.keys()
    assert all({"file", "set_by", "has_place"} <= photo.keys() for photo in office["photos"])
    assert "owner" not in outside["record"]["people"]
    assert "money" not in outside["record"]
    assert (outside["packet"]["reader"], office["packet"]["reader"]) == READERS


def test_an_open_item_about_a_private_photo_is_not_hidden_from_others(marked: Marked) -> None:
    codes = [finding["code"] for finding in data(marked, "outside")["findings"]]
    assert "photo-time" in codes
    assert codes == [finding["code"] for finding in data(marked, "office")["findings"]]


@pytest.mark.parametrize("reader", READERS)
def test_only_the_photos_of_a_copy_lie_in_it(marked: Marked, reader: str) -> None:
    named = {photo[size] for photo in data(marked, reader)["photos"] for size in ("large", "small")}
    copy = marked.packet / reader
    assert {f"photos/{path.name}" for path in (copy / "photos").iterdir()} == named


@pytest.mark.parametrize("reader", READERS)
def test_published_photos_hold_a_picture_and_nothing_else(marked: Marked, reader: str) -> None:
    paths = sorted((marked.packet / reader / "photos").iterdir())
    assert paths
    for path in paths:
        with Image.open(path) as image:
            image.load()
            assert image.info.keys() <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
            assert not dict(image.getexif())
        assert set(_segments(path.read_bytes())) <= {0xE0, 0xDB, 0xC0, 0xC4}
        assert path.read_bytes().endswith(b"\xff\xd9")


def _segments(data: bytes) -> list[int]:
    """Return the kinds of a JPEG's segments up to its picture."""
    found, at = [], 2
    while data[at + 1] != 0xDA:
        assert data[at] == 0xFF
        found.append(data[at + 1])
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return found
