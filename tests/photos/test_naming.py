"""Ids follow on and are never given twice; file names are ones that every computer can hold."""

from datetime import UTC, datetime
from itertools import islice

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.photos.clock import instant, offset_at
from packet.photos.log import photo_path
from packet.photos.naming import following_ids, free_name, plain_name
from tests.support.office import ROOT


@pytest.mark.parametrize(
    ("ids", "texts", "following"),
    [
        ([], [], ["P01", "P02"]),
        (["P01", "P32", "P07"], [], ["P33", "P34"]),
        (["P99"], [], ["P100", "P101"]),
        (["P001", "P009"], [], ["P010", "P011"]),
        (["P08", "P9"], [], ["P10", "P11"]),
        (["ROOF-1", "ROOF-2", "X7"], [], ["ROOF-3", "ROOF-4"]),
        (["7", "8"], [], ["9", "10"]),
        (["FRONT", "BACK"], [], ["P01", "P02"]),
        (["P32", "P33X"], [], ["P33", "P34"]),
        (["P32"], ["# - id: P35, taken out\n"], ["P36", "P37"]),
        (["P32"], ["sha256: 00P41aa, XP42, P43-A, P044, P2000"], ["P33", "P34"]),
        ([], ["# as in: - id: P01\n"], ["P01", "P02"]),
        (["A" * 20 + "9999"], [], ["P01", "P02"]),
    ],
)
def test_ids_follow_the_highest_one(ids: list[str], texts: list[str], following: list[str]) -> None:
    assert list(islice(following_ids(ids, texts), 2)) == following


@given(st.lists(st.from_regex(r"[A-Z0-9-]{1,24}", fullmatch=True), max_size=30))
def test_an_id_is_never_given_twice(ids: list[str]) -> None:
    new = list(islice(following_ids(ids), 20))
    assert len({*ids, *new}) == len(set(ids)) + 20
    assert all(len(id) <= 24 for id in new)


@pytest.mark.parametrize(
    ("name", "plain"),
    [
        ("IMG_0412.JPG", "IMG_0412.JPG"),
        ("IMG 0412 (2).jpeg", "IMG 0412 (2).jpeg"),
        ("Dach Süd.jpg", "Dach Süd.jpg"),
        ("a#1?*:b\\c.jpg", "a-1---b-c.jpg"),
        ("no ending", "no ending.jpg"),
        ("picture.png", "picture.png.jpg"),
        ("nul.jpg", "photo-nul.jpg"),
        ("....", "photo.jpg"),
        ("\u202egpj.jpg", "gpj.jpg"),
        ("x" * 300 + ".jpg", "x" * 150 + ".jpg"),
    ],
)
def test_a_name_is_made_plain(name: str, plain: str) -> None:
    assert plain_name(name, "JPEG") == plain


@given(
    st.binary(max_size=300).map(lambda raw: raw.decode("utf-8", errors="surrogateescape"))
    | st.text(max_size=300)
)
def test_any_name_becomes_one_that_stays_in_the_job_folder(name: str) -> None:
    plain = plain_name(name, "HEIF")
    assert photo_path(ROOT, f"photos/{plain}") == ROOT / "photos" / plain
    assert len(plain.encode()) <= 160
    assert plain == plain.strip(" .")


def test_names_are_told_apart_by_more_than_capitals() -> None:
    assert free_name("IMG_1.JPG", set()) == "IMG_1.JPG"
    assert free_name("IMG_1.JPG", {"img_1.jpg"}) == "IMG_1-2.JPG"
    assert free_name("IMG_1.JPG", {"img_1.jpg", "img_1-2.jpg"}) == "IMG_1-3.JPG"


@pytest.mark.parametrize(
    ("moment", "offset"),
    [
        (datetime(2026, 3, 8, 1, 59, 59), "-05:00"),
        (datetime(2026, 3, 8, 2, 30), None),  # never shown: clocks went from 2:00 to 3:00
        (datetime(2026, 3, 8, 3, 0), "-04:00"),
        (datetime(2026, 11, 1, 0, 59, 59), "-04:00"),
        (datetime(2026, 11, 1, 1, 30), None),  # shown twice
        (datetime(2026, 11, 1, 2, 0), "-05:00"),
        (datetime(1850, 1, 1), None),  # before there were offsets in whole minutes
    ],
)
def test_an_offset_is_derived_only_where_the_clock_leaves_no_doubt(
    moment: datetime, offset: str | None
) -> None:
    assert offset_at(moment, "America/New_York") == offset


def test_zones_east_and_of_half_hours_are_written_as_a_log_has_them() -> None:
    assert offset_at(datetime(2026, 1, 1), "Asia/Kolkata") == "+05:30"
    assert offset_at(datetime(2026, 1, 1), "America/St_Johns") == "-03:30"


def test_an_instant_is_counted_in_utc() -> None:
    assert instant(datetime(2026, 3, 16, 8), "-04:00", "UTC") == datetime(2026, 3, 16, 12, tzinfo=UTC)
    assert instant(datetime(2026, 3, 16, 8), None, "America/New_York") == datetime(
        2026, 3, 16, 12, tzinfo=UTC
    )
    assert instant(datetime(1, 1, 1), "+14:00", "UTC") < datetime(1, 1, 2, tzinfo=UTC)
    assert instant(datetime(1, 1, 1), None, "Asia/Tokyo") < datetime(1, 1, 2, tzinfo=UTC)
