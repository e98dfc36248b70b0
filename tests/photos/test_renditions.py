"""Published copies: upright, small, without a word of metadata, the same bytes every time."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import piexif
import pytest
from PIL import Image

from packet.photos.renditions import LARGE_PX, SMALL_PX, Rendition, render, render_all
from tests.support.pictures import QUARTERS, picture

#: JPEG changes a flat colour by a few steps.
NEAR = 12


def rendered(original: Path, cache: Path) -> Rendition:
    cache.mkdir(exist_ok=True)
    return render(original, "a" * 64, cache)


def paths(rendition: Rendition) -> tuple[Path, Path]:
    return rendition.large, rendition.small


def markers(data: bytes) -> set[int]:
    """Return the second byte of every segment's marker up to the picture itself."""
    found, at = set(), 2
    while data[at] == 0xFF and data[at + 1] != 0xDA:
        found.add(data[at + 1])
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return found


@pytest.mark.parametrize("profile", [True, False], ids=["with a profile", "without one"])
@pytest.mark.parametrize("orientation", [1, 6])
def test_published_copies_hold_no_metadata(tmp_path: Path, orientation: int, profile: bool) -> None:
    original = picture(tmp_path / "P1.jpg", orientation=orientation, profile=profile)
    secret = [b"Exif", b"written by", b"PELICAN", b"2026:03:16", *([b"ICC_PROFILE"] if profile else [])]
    assert all(word in original.read_bytes() for word in secret)
    assert piexif.load(str(original))["GPS"]
    for path in paths(rendered(original, tmp_path / "cache")):
        data = path.read_bytes()
        assert not [word for word in secret if word in data]
        assert markers(data) <= {0xE0, 0xDB, 0xC0, 0xC4}  # no APP1, no APP2, no comment
        with Image.open(path) as image:
            assert not image.getexif()
            assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
        assert piexif.load(str(path))["GPS"] == {}


@pytest.mark.parametrize("orientation", range(1, 9))
def test_published_copies_are_upright(tmp_path: Path, orientation: int) -> None:
    original = picture(tmp_path / "P1.jpg", size=(96, 64), orientation=orientation)
    for path in paths(rendered(original, tmp_path / "cache")):
        with Image.open(path) as image:
            assert image.size == (96, 64)
            seen = [image.getpixel((x, y)) for y in (16, 48) for x in (24, 72)]
        for colour, wanted in zip(seen, QUARTERS, strict=True):
            assert isinstance(colour, tuple)
            assert all(abs(a - b) <= NEAR for a, b in zip(colour, wanted, strict=True)), (orientation, seen)


def test_a_large_photo_is_made_smaller_and_a_small_one_is_not_blown_up(tmp_path: Path) -> None:
    for name, size, large, small in (
        ("wide", (3200, 2400), (LARGE_PX, 1200), (SMALL_PX, 360)),
        ("tiny", (40, 30), (40, 30), (40, 30)),
        ("strip", (2000, 3), (LARGE_PX, 2), (SMALL_PX, 1)),
    ):
        made = rendered(picture(tmp_path / f"{name}.jpg", size=size), tmp_path / name)
        sizes = [Image.open(path).size for path in paths(made)]
        assert sizes == [large, small], name


def test_the_same_original_gives_the_same_bytes_in_any_cache(tmp_path: Path) -> None:
    original = picture(tmp_path / "P1.jpg", size=(900, 700), orientation=8)
    first = [path.read_bytes() for path in paths(rendered(original, tmp_path / "one"))]
    second = [path.read_bytes() for path in paths(rendered(original, tmp_path / "two"))]
    assert first == second


def test_two_threads_at_one_photo_write_the_same_whole_file(tmp_path: Path) -> None:
    original = picture(tmp_path / "P1.jpg", size=(900, 700))
    alone = [path.read_bytes() for path in paths(rendered(original, tmp_path / "alone"))]
    cache = tmp_path / "both"
    cache.mkdir()
    with ThreadPoolExecutor(4) as pool:
        made = list(pool.map(lambda _: render(original, "a" * 64, cache), range(8)))
    assert {tuple(path.read_bytes() for path in paths(one)) for one in made} == {tuple(alone)}
    assert not list(cache.glob("*.part"))


def test_one_photo_logged_twice_is_rendered_for_both_ids(tmp_path: Path) -> None:
    original = picture(tmp_path / "P1.jpg")
    made = render_all([("P1", original, "b" * 64), ("P2", original, "b" * 64)], tmp_path / "cache")
    assert made["P1"] == made["P2"]


def test_a_rendition_that_lies_in_the_cache_is_not_made_again(tmp_path: Path) -> None:
    original = picture(tmp_path / "P1.jpg")
    made = rendered(original, tmp_path / "cache")
    made.large.write_bytes(b"kept")
    original.unlink()
    assert rendered(original, tmp_path / "cache").large.read_bytes() == b"kept"


@pytest.mark.parametrize("mode", ["RGBA", "LA", "P", "L", "CMYK", "1", "I;16"])
def test_pictures_of_every_mode_become_plain_colour(tmp_path: Path, mode: str) -> None:
    suffix = "jpg" if mode == "CMYK" else "png"
    original = tmp_path / f"P1.{suffix}"
    Image.new(mode, (40, 30)).save(original)
    with Image.open(rendered(original, tmp_path / "cache").large) as image:
        assert image.mode == "RGB"


def test_what_is_transparent_is_shown_on_white_paper(tmp_path: Path) -> None:
    original = tmp_path / "P1.png"
    Image.new("RGBA", (40, 30), (255, 0, 0, 0)).save(original)
    with Image.open(rendered(original, tmp_path / "cache").large) as image:
        assert image.getpixel((20, 15)) == (255, 255, 255)


def test_a_damaged_profile_does_not_keep_a_photo_out(tmp_path: Path) -> None:
    original = tmp_path / "P1.jpg"
    Image.new("RGB", (40, 30), "navy").save(original, icc_profile=b"not a profile at all")
    with Image.open(rendered(original, tmp_path / "cache").large) as image:
        assert image.mode == "RGB"
        assert "icc_profile" not in image.info
