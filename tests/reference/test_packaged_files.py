"""Every packaged file parses, and keeps what it says of itself."""

from pathlib import Path

import pytest

from packet.figure import DECIDING_MARKS
from packet.problems import Refused
from packet.reference import Library
from packet.reference.checks import COMMON_PRACTICE
from packet.workspace import packaged

SHARED = packaged("shared")
CODES = sorted(path.stem for path in (SHARED / "codes").glob("*.yaml"))
TABLES = sorted(path.stem for path in (SHARED / "tables").glob("*.yaml"))


def explained(refused: Refused) -> str:
    return "\n".join(
        f"{p.file.name}:{p.line}: {p.code} {p.at} {p.found} {dict(p.values)}" for p in refused.problems
    )


def test_the_shelves_hold_what_the_issue_asks_for(library: Library) -> None:
    assert {"irc-2009", "irc-2015", "irc-2018", "irc-2021", "irc-2024", "arma-hand-seal"} <= set(
        library.code_ids()
    )
    assert {"nail_sizes", "nails_per_pound", "roll_goods", "wind_classes", "seal_spots"} <= set(
        library.table_names()
    )


@pytest.mark.parametrize("code", CODES)
def test_every_code_parses_and_its_rows_can_be_cited(library: Library, code: str) -> None:
    try:
        file, everything = library.code(code), library.all_rows([code])
    except Refused as refused:
        pytest.fail(explained(refused))
    rows = [row for row in everything if row.code == code]
    assert len(rows) == len(file.rows) > 0
    assert not {row.code for row in everything} - {code, file.amends}, "one code brings along one other"
    for row in rows:
        source = library.source(row)
        assert source.document
        assert source.locator == row.locator
        assert source.checked == row.checked
        assert row.checked != "office", "only an office's reading carries that mark"
        assert (row.value is not None) or row.reason or row.kind == "present"
        assert not (
            row.whose == "practice" and row.checked == "common_practice" and row.locator != COMMON_PRACTICE
        )


@pytest.mark.parametrize("name", TABLES)
def test_every_table_meets_its_invariants_and_sums(library: Library, name: str) -> None:
    try:
        table = library.table(name)
    except Refused as refused:
        pytest.fail(explained(refused))
    assert len(table.rows) == len(table.file.rows) > 0
    assert table.file.sums, "a lost digit would go unseen"
    numbers = {name for name, unit in table.file.units.items() if unit not in ("word", "source", "mark")}
    assert numbers <= set(table.file.sums) | {"class"}, "every column of numbers is summed"


def test_row_ids_are_unique_over_all_codes(library: Library) -> None:
    ids = [row.id for row in library.all_rows(library.code_ids())]
    assert len(ids) == len(set(ids))
    for id in ids:
        assert library.row(id).id == id


def test_every_document_is_cited_and_every_citation_is_a_document(library: Library) -> None:
    cited = {row.source for row in library.all_rows(library.code_ids())}
    cited |= {library.code(code).source for code in library.code_ids()}
    cited |= {row.source.id for name in library.table_names() for row in library.table(name).rows}
    cited |= {library.table(name).file.source.id for name in library.table_names()}
    cited |= {note.source for note in library.care().values()}
    cited |= {fact.source for fact in library.access_facts().values()}
    cited |= {note.source for note in library.requirement_notes().values()}
    cited |= {group.source for file in library.avoided() for group in file.groups.values()}
    for product in map(library.product, library.product_ids()):
        cited |= {product.source.id, *(figure.source.id for figure in product.figures.values())}
    known = set(Library.load([SHARED])._sources)
    assert cited <= known
    assert known - cited == set(), "sources.yaml lists a document that nothing cites"


def test_no_packaged_word_names_a_machine_path_or_the_shop_floor_of_this_project() -> None:
    for path in SHARED.rglob("*.yaml"):
        text = path.read_text(encoding="utf-8").lower()
        for word in ("/tmp", "/work", "/root", "transcript", "seed document", "pypi", "npmjs"):
            assert word not in text, f"{word} in {path}"


def test_stages_follow_the_order_of_the_work(library: Library) -> None:
    stages = library.stages()
    assert [stage.id for stage in stages] == [
        "before", "stripped", "deck", "dried-in", "edges", "covering", "done",
    ]  # fmt: skip
    order = {stage.id: number for number, stage in enumerate(stages)}
    for stage in stages:
        if stage.hidden_by is not None:
            assert order[stage.hidden_by] > order[stage.id]
    assert stages[-1].hidden_by is None
    assert stages[-1].latest is None


def test_care_notes_are_sourced_and_the_dangerous_ones_are_there(library: Library) -> None:
    notes = library.care()
    for note in notes.values():
        assert library.care_source(note).document
        assert len(note.says) > 40
    cautions = {id for id, note in notes.items() if note.kind == "caution"}
    assert {"stay-off", "ladder-foot", "power-lines", "heat", "lead-paint", "asbestos", "sagging"} <= cautions


def test_marks_that_may_decide_are_the_ones_agreed() -> None:
    assert {"seen", "derived", "office", "seen_secondary"} == DECIDING_MARKS


def test_loading_opens_no_file_that_is_not_asked_for(library: Library) -> None:
    assert set(library.digests()) == {"packaged/sources.yaml"}
    library.rows(["irc-2021"], "deck.nail.field_spacing", {"panel_thickness_in": 0.46875})
    assert set(library.digests()) == {"packaged/codes/irc-2021.yaml", "packaged/sources.yaml"}


def test_digests_follow_the_bytes_and_not_the_folder(tmp_path: Path) -> None:
    import shutil
    from hashlib import sha256

    copy = tmp_path / "elsewhere"
    shutil.copytree(SHARED, copy)
    here, there = Library.load([SHARED]), Library.load([copy])
    for library in (here, there):
        library.table("wind_classes")
        library.stages()
        library.care()
    assert here.digests() == there.digests()
    assert here.digests()["packaged/stages.yaml"] == sha256((SHARED / "stages.yaml").read_bytes()).hexdigest()

    with (copy / "tables" / "wind_classes.yaml").open("a", encoding="utf-8") as file:
        file.write("# read again\n")
    changed = Library.load([copy])
    changed.table("wind_classes")
    key = "packaged/tables/wind_classes.yaml"
    assert changed.digests()[key] != here.digests()[key]
