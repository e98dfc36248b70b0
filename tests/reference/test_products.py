"""Product sheets: every packaged figure can be cited, and an office's sheets stand beside them."""

from collections.abc import Callable
from fractions import Fraction
from math import floor, pi
from pathlib import Path
from typing import get_args

import pytest

from packet.figure import DECIDING_MARKS
from packet.problems import Problem, Refused
from packet.reference import PRODUCT_FIGURES, Library
from packet.text import load_words
from packet.uses import Use
from packet.workspace import packaged

F = Fraction
Write = Callable[[str, str], Path]
Load = Callable[[], Library]
Problems = Callable[[], list[Problem]]
SHEETS = sorted(path.stem for path in (packaged("shared") / "products").glob("*.yaml"))

OWN = """\
product: laminated-long
title: laminated shingle of our yard, bundle
use: shingles
unit: bundle
source: {id: yard-wrapper, locator: "wrapper, side panel"}
checked: office
figures:
  width_in: 39-3/8
  exposure_in: 5-5/8
  most_exposure_in: {value: 5-5/8, locator: "wrapper, back"}
  pieces_each: 21
  cover_sq_ft: {value: null, reason: rubbed off}
note: Read in the yard.
"""
OWN_SOURCES = "yard-wrapper:\n  document: Wrapper of the shingle in our yard\n  edition: 2026\n"


@pytest.fixture
def own(write: Write) -> Callable[[str], Path]:
    """Write the office's sources and a sheet of its own."""

    def sheet(text: str) -> Path:
        write("sources.yaml", OWN_SOURCES)
        return write("products/laminated-long.yaml", text)

    return sheet


# What ships


@pytest.mark.parametrize("id", SHEETS)
def test_every_packaged_figure_can_be_cited(library: Library, id: str) -> None:
    try:
        product = library.product(id)
    except Refused as refused:
        pytest.fail(str(refused))
    assert product.id == id
    assert product.title
    for name, figure in product.figures.items():
        assert figure.name == name
        assert figure.value > 0
        assert figure.unit == PRODUCT_FIGURES[name].unit
        assert library.document(figure.source.id).document == figure.source.document
        assert figure.source.locator
        assert figure.source.checked != "office", "only an office's own sheet carries that mark"
    assert all(product.missing.values())
    assert not product.figures.keys() & product.missing.keys()


def test_there_is_a_sheet_for_every_line_of_the_takeoff(library: Library) -> None:
    assert set(library.product_ids()) == set(SHEETS)
    assert {library.product(id).use for id in SHEETS} - {None} == set(get_args(Use))


def test_every_unit_of_a_figure_has_a_word() -> None:
    words = load_words([packaged("shared")])["units"]
    assert {gives.unit for gives in PRODUCT_FIGURES.values()} <= set(words)


def number(library: Library, id: str, name: str) -> Fraction:
    return library.product(id).figures[name].value


@pytest.mark.parametrize(
    ("id", "name", "value", "mark"),
    [
        ("three-tab-english", "width_in", 36, "seen"),
        ("three-tab-english", "exposure_in", 5, "seen"),
        ("laminated-metric", "width_in", F(315, 8), "derived"),
        ("laminated-metric", "height_in", F(53, 4), "seen_secondary"),
        ("laminated-metric", "exposure_in", F(45, 8), "seen_secondary"),
        ("felt-15", "length_ft", 144, "seen"),
        ("felt-30", "length_ft", 72, "seen"),
        ("synthetic", "cover_sq_ft", 1000, "seen_secondary"),
        ("joint-tape-4", "width_in", 4, "seen"),
        ("drip-edge-10", "length_ft", 10, "seen_secondary"),
        ("drip-edge-8", "length_ft", 8, "seen_secondary"),
        ("caps-three-tab", "pieces_each", 3, "seen_secondary"),
        ("roofing-nails-1-1-4", "nails_a_pound", 190, "seen_secondary"),
        ("roofing-nails-1-1-2", "nails_a_pound", 165, "seen_secondary"),
        ("roofing-nails-1-3-4", "nails_a_pound", 145, "seen_secondary"),
        ("roofing-nails-1-1-2-second-page", "nails_a_pound", 140, "seen_secondary"),
        ("deck-panel-4x8", "cover_sq_ft", 32, "seen_secondary"),
        ("ridge-vent-4", "free_sq_in_a_ft", 18, "memory"),
        ("soffit-strip", "free_sq_in_a_ft", 9, "seen_secondary"),
    ],
)
def test_figures_are_the_published_ones_with_their_marks(
    library: Library, id: str, name: str, value: Fraction | int, mark: str
) -> None:
    figure = library.product(id).figures[name]
    assert (figure.value, figure.source.checked) == (value, mark)


@pytest.mark.parametrize(
    ("id", "name"),
    [
        ("three-tab-english", "pieces_each"),
        ("laminated-metric", "cover_sq_ft"),
        ("synthetic", "width_in"),
        ("joint-tape-4", "length_ft"),
        ("cap-nails", "pieces_each"),
    ],
)
def test_what_was_not_read_has_a_reason_and_no_value(library: Library, id: str, name: str) -> None:
    product = library.product(id)
    assert name not in product.figures
    assert len(product.missing[name]) > 10


def test_the_remembered_vent_decides_nothing(library: Library) -> None:
    marks = {figure.source.checked for figure in library.product("ridge-vent-4").figures.values()}
    assert not marks & DECIDING_MARKS


# Arithmetic beside what is printed


def test_shingles_a_square_by_their_size(library: Library) -> None:
    """Textbook size (seen) and metric size (seen, weight C): 80 and 65.02 pieces a square."""
    assert F(14_400) / (F(36) * 5) == 80
    for id, pieces in (("three-tab-english", 80), ("laminated-metric", 65.02)):
        cover = number(library, id, "width_in") * number(library, id, "exposure_in")
        assert float(14_400 / cover) == pytest.approx(pieces, abs=0.005)


def test_a_metric_width_is_a_meter_to_the_eighth(library: Library) -> None:
    assert F(round(1000 / 25.4 * 8), 8) == number(library, "laminated-metric", "width_in")


def test_a_cartridge_gives_its_volume_over_that_of_a_spot(library: Library) -> None:
    volume_cu_in = 10.1 * 231 / 128
    assert round(volume_cu_in, 2) == 18.23
    spots = volume_cu_in / (pi / 4 * 1**2 * 1 / 8)
    assert round(spots, 1) == 185.7
    assert floor(spots) == number(library, "cement-10-1-oz", "spots_each") == 185


@pytest.mark.parametrize(
    "id", ["felt-15", "felt-30", "self-adhered-200", "self-adhered-225", "deck-panel-4x8"]
)
def test_cover_is_length_by_width(library: Library, id: str) -> None:
    area = number(library, id, "length_ft") * number(library, id, "width_in") / 12
    assert area == number(library, id, "cover_sq_ft")


def test_a_starter_is_as_long_as_its_shingle(library: Library) -> None:
    assert number(library, "starter-three-tab", "length_ft") * 12 == 36


@pytest.mark.parametrize(
    ("size", "length_in", "per_pound"),
    [("1-1-4", F(5, 4), 218), ("1-1-2", F(3, 2), 186), ("1-3-4", F(7, 4), 152)],
)
def test_nails_of_the_data_sheet_agree_with_its_table(
    library: Library, size: str, length_in: Fraction, per_pound: int
) -> None:
    row = library.table("roofing_nails").lookup(length_in=length_in)
    sheet = number(library, f"roofing-nails-{size}-data-sheet", "nails_a_pound")
    assert sheet == row.number("per_pound") == per_pound


@pytest.mark.parametrize(
    ("covering", "lb"), [("three-tab", 200), ("laminated, 30-year", 250), ("heavy laminated", 480)]
)
def test_weight_of_a_square(library: Library, covering: str, lb: int) -> None:
    """Estimating Asphalt Shingles, trade journal (seen)."""
    row = library.table("covering_weights").lookup(covering=covering)
    assert (row.number("lb_a_square"), row.source.id, row.source.checked) == (lb, "fhb-estimating", "seen")


@pytest.mark.parametrize(
    ("rule", "least", "most", "mark"),
    [
        ("textbook", 5, 8, "seen"),
        ("plain roof", 10, 10, "seen_secondary"),
        ("with valleys or hips", 15, 15, "seen_secondary"),
    ],
)
def test_published_waste(library: Library, rule: str, least: int, most: int, mark: str) -> None:
    """Textbook (seen); roofers' forum and a contractor's note (seen, weight C)."""
    row = library.table("waste_allowances").lookup(rule=rule)
    printed = row.number("least_percent"), row.number("most_percent"), row.source.checked
    assert printed == (least, most, mark)


# An office's own


def test_an_office_sheet_stands_beside_the_packaged_ones(own: Callable[[str], Path], load: Load) -> None:
    own(OWN)
    library = load()
    assert {"laminated-long", "laminated-metric"} <= set(library.product_ids())
    product = library.product("laminated-long")
    assert (product.use, product.unit, product.note) == ("shingles", "bundle", "Read in the yard.")
    assert {name: figure.value for name, figure in product.figures.items()} == {
        "width_in": F(315, 8),
        "pieces_each": 21,
        "exposure_in": F(45, 8),
        "most_exposure_in": F(45, 8),
    }
    assert product.missing == {"cover_sq_ft": "rubbed off"}
    places = {name: figure.source.locator for name, figure in product.figures.items()}
    assert (places["exposure_in"], places["most_exposure_in"]) == ("wrapper, side panel", "wrapper, back")
    source = product.figures["width_in"].source
    assert (source.document, source.checked) == ("Wrapper of the shingle in our yard", "office")


def test_digests_name_a_sheet_once_it_is_used(own: Callable[[str], Path], load: Load) -> None:
    own(OWN)
    library = load()
    assert not [name for name in library.digests() if "products" in name]
    library.product("laminated-long")
    library.product("felt-15")
    assert [name for name in library.digests() if "products" in name] == [
        "office/products/laminated-long.yaml",
        "packaged/products/felt-15.yaml",
    ]


def test_an_unknown_product_is_no_product(library: Library) -> None:
    with pytest.raises(KeyError):
        library.product("felt-45")


def test_a_sheet_that_shadows_a_packaged_one_is_refused(write: Write, problems: Problems) -> None:
    text = (packaged("shared") / "products" / "felt-15.yaml").read_text(encoding="utf-8")
    path = write("products/felt-15.yaml", text)
    assert [(p.code, p.file, p.found) for p in problems()] == [("shadows-packaged", path, "felt-15")]


def test_a_sheet_under_another_suffix_is_not_passed_over(write: Write, problems: Problems) -> None:
    write("products/felt-45.yml", OWN)
    assert [p.code for p in problems()] == ["wrong-suffix"]


FULL = "  most_exposure_in: {value: 5-5/8, locator: "


@pytest.mark.parametrize(
    ("old", "new", "code", "line", "found"),
    [
        ("product: laminated-long", "product: laminated-short", "name-mismatch", 1, "laminated-short"),
        ("product: laminated-long", "product: Laminated Long", "bad-id", 1, "Laminated Long"),
        ("title: laminated shingle of our yard, bundle\n", "", "missing", 1, ""),
        ("use: shingles", "use: shingels", "not-one-of", 3, "shingels"),
        ("unit: bundle", "unit: bag", "not-one-of", 4, "bag"),
        ("id: yard-wrapper", "id: yard-wraper", "unknown-source", 5, "yard-wraper"),
        ("checked: office", "checked: read", "not-one-of", 6, "read"),
        ("checked: office", "checked: common_practice", "practice-unmarked", 6, "common_practice"),
        ("  width_in:", "  widht_in:", "unknown-key", 8, "widht_in"),
        ("width_in: 39-3/8", "width_in: wide", "bad-quantity", 8, "wide"),
        ("width_in: 39-3/8", "width_in: 0", "out-of-range", 8, "0"),
        ("width_in: 39-3/8", "width_in: -36", "negative", 8, "-36"),
        ("width_in: 39-3/8", "width_in: 393", "out-of-range", 8, "393"),
        ("width_in: 39-3/8", "width_in: 39 in", "bad-quantity", 8, "39 in"),
        ("width_in: 39-3/8", "width_in: [36]", "wrong-kind", 8, ""),
        ("width_in: 39-3/8", "width_in:", "reason-missing", 8, ""),
        ("exposure_in: 5-5/8\n", "exposure_in: 6\n", "figure-above-limit", 9, "6"),
        (FULL, "  height_in: {value: 5-1/2, locator: ", "figure-above-limit", 9, "5-5/8"),
        (FULL, "  most_exposure_in: {value: 5-5/8, source: yard, locator: ", "unknown-source", 10, "yard"),
        (FULL, "  most_exposure_in: {value: 5-5/8, checked: no, locator: ", "not-one-of", 10, "no"),
        (FULL, "  most_exposure_in: {vlaue: 5-5/8, locator: ", "unknown-key", 10, "vlaue"),
        (
            FULL,
            "  most_exposure_in: {value: 5-5/8, checked: common_practice, locator: ",
            "practice-unmarked",
            10,
            "common_practice",
        ),
        (
            'locator: "wrapper, back"}',
            "source: yard-wrapper}",
            "locator-missing",
            10,
            "yard-wrapper",
        ),
        ("pieces_each: 21", "pieces_each: 21-1/3", "bad-count", 11, "21-1/3"),
        ("{value: null, reason: rubbed off}", "{value: null}", "reason-missing", 12, ""),
        ("note: Read", "notes: Read", "unknown-key", 13, "notes"),
    ],
)
def test_a_mistake_in_a_sheet_is_refused_at_its_line(
    own: Callable[[str], Path], problems: Problems, old: str, new: str, code: str, line: int, found: str
) -> None:
    assert old in OWN
    path = own(OWN.replace(old, new, 1))
    first = problems()[0]
    assert (first.code, first.line, first.file, first.found) == (code, line, path, found)


def test_every_mistake_of_a_sheet_comes_in_one_pass(own: Callable[[str], Path], problems: Problems) -> None:
    own(OWN.replace("use: shingles", "use: walls").replace("pieces_each: 21", "pieces_each: 0"))
    assert sorted(p.code for p in problems()) == ["not-one-of", "out-of-range"]
