"""Pages in, a whole site out, or the reasons why not."""

import json
import logging
import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from jinja2 import Environment

from packet.site.engine import Page, SiteFailed
from packet.site.links import broken_links

Build = Callable[..., Path]
Read = Callable[[Path], dict[str, bytes]]


def test_a_site_holds_its_pages_its_files_and_nothing_it_does_not_need(build: Build) -> None:
    site = build()
    names = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    hashed = {name for name in names if ".min." in name}
    assert names - hashed == {
        "index.html",
        "scope.html",
        "photos/P-01.png",
        "data/packet.json",
        "search/search_index.js",
        "search/search_index.json",
        "assets/stylesheets/all.css",
        "assets/stylesheets/type.css",
        "assets/javascripts/iframe-worker.js",
        "assets/images/favicon.png",
    }
    assert sorted(name.split(".")[0] for name in hashed) == [
        "assets/javascripts/bundle",
        "assets/javascripts/workers/search",
        "assets/stylesheets/main",
    ]
    assert not any(path.name.startswith(".") for path in site.parent.iterdir()), "a working folder was left"


def test_every_address_of_a_built_site_is_good_and_asks_no_network(build: Build) -> None:
    site = build()
    assert broken_links(site) == []
    text = (site / "index.html").read_text()
    for unwanted in ("unpkg.com", "googleapis", "gstatic", "generator"):
        assert unwanted not in text
    assert text.count('href="assets/stylesheets/') == 2, (
        "the theme's sheet and the one that imports the other"
    )
    assert "sourceMappingURL" not in "".join(p.read_text() for p in site.rglob("*.min.*"))


def test_search_index_holds_table_cells(build: Build) -> None:
    text = (build() / "search" / "search_index.js").read_text()
    index = json.loads(text.removeprefix("var __index = "))
    hits = [entry["location"] for entry in index["docs"] if "zanzibar" in entry["text"]]
    assert hits == ["scope.html#deck"]


@pytest.mark.parametrize(
    ("body", "word"),
    [
        ("# A\n\n[x](nowhere.md)\n", "nowhere.md"),
        ("# A\n\n[x](#nothing)\n", "nothing"),
        ("# A\n\n[x](scope.md#nothing)\n", "nothing"),
        ("# A\n\n[x](/scope.html)\n", "/scope.html"),
        ("# A\n\n[x](scope)\n", "scope"),
        ("# A\n\n![x](photos/P-99.png)\n", "P-99"),
    ],
)
def test_a_bad_link_in_markdown_fails_the_build_with_its_reason(build: Build, body: str, word: str) -> None:
    other = Page("scope", "Scope", "# Scope\n")
    with pytest.raises(SiteFailed) as failed:
        build(Page("index", "Front", body), other)
    assert any(word in reason and "index.md" in reason for reason in failed.value.reasons)


def test_a_quiet_logger_hides_no_warning_and_is_left_as_it_was(build: Build) -> None:
    logger = logging.getLogger("mkdocs")
    logger.setLevel(logging.CRITICAL)
    logger.disabled = True
    try:
        with pytest.raises(SiteFailed):
            build(Page("index", "Front", "[x](nowhere.md)"))
        assert (logger.level, logger.disabled, logger.handlers) == (logging.CRITICAL, True, [])
    finally:
        logger.setLevel(logging.NOTSET)
        logger.disabled = False


def test_a_failed_build_does_not_change_the_next_one(build: Build, contents: Read) -> None:
    good = contents(build())
    with pytest.raises(SiteFailed):
        build(Page("index", "Front", "[x](nowhere.md)"))
    assert contents(build()) == good


def test_a_bad_theme_template_is_named_with_its_line(build: Build, look: Path) -> None:
    (look / "theme" / "main.html").write_text(
        '{% extends "base.html" %}\n\n{% block content %}\n{{ nothing.here }}\n{% endblock %}\n'
    )
    with pytest.raises(SiteFailed, match=r"main\.html:4: "):
        build()
    (look / "theme" / "main.html").write_text(
        '{% extends "base.html" %}\n{% block content %}{{ 1 / 0 }}{% endblock %}\n'
    )
    with pytest.raises(SiteFailed, match=r"main\.html:2: division"):
        build()
    (look / "theme" / "main.html").write_text('{% extends "base.html" %}\n{% block %}\n')
    with pytest.raises(SiteFailed):
        build()


def test_a_favicon_of_our_own_takes_the_place_of_the_theme_s(build: Build, look: Path) -> None:
    (look / "assets" / "images").mkdir()
    (look / "assets" / "images" / "favicon.svg").write_text("<svg/>")
    site = build()
    assert [path.name for path in (site / "assets" / "images").iterdir()] == ["favicon.svg"]
    assert 'rel="icon" href="assets/images/favicon.svg"' in (site / "index.html").read_text()


def test_a_photo_is_copied_and_a_missing_one_is_an_error_of_ours(build: Build, tmp_path: Path) -> None:
    (tmp_path / "web.png").write_bytes(b"web")
    site = build(files={"photos/P-01.png": tmp_path / "web.png"})
    assert (site / "photos" / "P-01.png").read_bytes() == b"web"
    assert not (site / "photos" / "P-01.png").samefile(tmp_path / "web.png")
    with pytest.raises(FileNotFoundError):
        build(files={"photos/P-01.png": tmp_path / "none.png"})


def test_an_edited_theme_template_is_used_at_once(build: Build, look: Path) -> None:
    before = (build() / "index.html").read_text()
    with (look / "theme" / "main.html").open("a") as file:
        file.write('{% block content %}<p id="new">{{ page.content }}</p>{% endblock %}\n')
    after = (build() / "index.html").read_text()
    assert '<p id="new">' not in before
    assert '<p id="new">' in after


def test_building_b_does_not_change_a(build: Build, contents: Read) -> None:
    other = (
        Page("index", "Other front", "# Other\n\n[care](care.md)\n"),
        Page("care", "Care", "# Care\n\n## Gutters\n"),
    )
    first = contents(build())
    second = contents(build(*other, site_name="Packet 26-042", files={}, epoch=86_400, language="de"))
    assert contents(build()) == first
    assert contents(build(*other, site_name="Packet 26-042", files={}, epoch=86_400, language="de")) == second
    assert b"26-041" not in b"".join(second.values())


def test_two_folders_give_the_same_bytes(build: Build, look: Path, tmp_path: Path, contents: Read) -> None:
    here = contents(build())
    there = tmp_path / "another office" / "its look"
    shutil.copytree(look, there)
    moved = build(
        theme_dir=there / "theme",
        assets_dir=there / "assets",
        site_dir=tmp_path / "deep er" / "out [1]" / "x",
    )
    assert contents(moved) == here


def test_another_process_and_hash_seed_give_the_same_bytes(
    build: Build, look: Path, contents: Read, tmp_path: Path
) -> None:
    here = contents(build())
    code = """
import sys
from pathlib import Path
sys.path.insert(0, sys.argv[1])
from conftest import EPOCH, FILES, PAGES
from packet.site.engine import build_site
look = Path(sys.argv[2])
build_site(site_name="Packet 26-041", language="en", pages=PAGES, files=FILES, theme_dir=look / "theme",
           assets_dir=look / "assets", epoch=EPOCH, site_dir=Path(sys.argv[3]))
"""
    site = tmp_path / "elsewhere"
    arguments = [sys.executable, "-c", code, str(Path(__file__).parent), str(look), str(site)]
    root = str(Path(__file__).parents[2])
    subprocess.run(arguments, check=True, env={**os.environ, "PYTHONHASHSEED": "7", "PYTHONPATH": root})
    assert contents(site) == here


def test_threads_build_one_after_another(build: Build, contents: Read) -> None:
    alone = contents(build())
    sites: list[Path] = []
    threads = [threading.Thread(target=lambda: sites.append(build())) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [contents(site) == alone for site in sites] == [True, True, True]


@pytest.mark.parametrize("before", ["1700000000", None])
def test_the_build_date_is_given_back(
    build: Build, monkeypatch: pytest.MonkeyPatch, before: str | None
) -> None:
    if before is None:
        monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    else:
        monkeypatch.setenv("SOURCE_DATE_EPOCH", before)
    build()
    assert os.environ.get("SOURCE_DATE_EPOCH") == before


def test_pages_take_their_date_from_the_epoch(build: Build, look: Path) -> None:
    (look / "theme" / "main.html").write_text(
        '{% extends "base.html" %}{% block footer %}{{ build_date_utc }}{% endblock %}'
    )
    assert "2026-03-18 00:00:00" in (build() / "index.html").read_text()


def test_headings_are_never_anchored_by_their_words(build: Build) -> None:
    body = "# Front\n\n## Phone 843&#45;555&#45;0142\n\n## Two\n"
    text = (build(Page("index", "Front", body), files={}) / "index.html").read_text()
    assert 'id="part"' in text
    assert 'id="part_2"' in text
    assert 'id="phone' not in text


def test_markdown_inside_html_is_read_where_a_page_asks_for_it(build: Build) -> None:
    block = "<div{}>\n*slanted*\n</div>\n"
    plain = (build(Page("index", "Front", block.format("")), files={}) / "index.html").read_text()
    asked = (
        build(Page("index", "Front", block.format(' markdown="1"')), files={}) / "index.html"
    ).read_text()
    assert "*slanted*" in plain
    assert "<em>slanted</em>" in asked


@pytest.mark.parametrize("title", ["<b>", "a & b", 'say "x"', "</title>"])
def test_titles_that_would_be_read_as_markup_are_refused(build: Build, title: str) -> None:
    with pytest.raises(SiteFailed, match="title"):
        build(Page("index", title, "# A"))
    with pytest.raises(SiteFailed, match="title"):
        build(site_name=title)


@pytest.mark.parametrize(
    "name", ["../out.txt", "/etc/x", "a//b", ".hidden", "a/../../b", "index.html", "notes.md"]
)
def test_files_that_would_leave_the_site_or_hide_a_page_are_refused(build: Build, name: str) -> None:
    with pytest.raises(ValueError, match="names a site cannot hold"):
        build(files={name: b""})


@pytest.mark.parametrize("names", [("front",), ("index", "index"), ("index", "A b"), ("index", "../x")])
def test_page_names_are_plain_and_single_and_one_is_the_index(build: Build, names: tuple[str, ...]) -> None:
    with pytest.raises(ValueError, match="site"):
        build(*(Page(name, "T", "# T") for name in names))


def test_a_folder_that_holds_something_is_not_emptied(build: Build, tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "notes.txt").write_text("keep")
    with pytest.raises(FileExistsError):
        build(site_dir=tmp_path / "mine")
    assert (tmp_path / "mine" / "notes.txt").read_text() == "keep"


def test_theme_settings_are_read_and_limited(build: Build, look: Path) -> None:
    settings = look / "theme" / "theme.yml"
    settings.write_text("palette: {scheme: slate}\nfeatures: [search.highlight]\n")
    site = build()
    assert 'data-md-color-scheme="slate"' in (site / "index.html").read_text()
    assert "search.highlight" in (site / "index.html").read_text()
    assert broken_links(site) == []
    assert not (site / "theme.yml").exists()
    settings.write_text("font: {text: Roboto}\n")
    with pytest.raises(SiteFailed, match=r"theme\.yml"):
        build()


def test_assets_without_the_search_shim_are_refused(build: Build, look: Path) -> None:
    (look / "assets" / "javascripts" / "iframe-worker.js").unlink()
    with pytest.raises(SiteFailed, match="iframe-worker"):
        build()


def test_importing_the_engine_imports_no_mkdocs() -> None:
    code = "import sys, packet.site.engine; sys.exit('mkdocs' in sys.modules or 'material' in sys.modules)"
    root = Path(__file__).parents[2]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0


def test_the_second_site_compiles_no_template(
    build: Build, look: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    build()
    compiled: list[str] = []
    compile_template = Environment.compile

    def watched(self: Environment, source: str, name: str, filename: str, *rest: object) -> object:
        compiled.append(name)
        return compile_template(self, source, name, filename, *rest)  # type: ignore[call-overload]

    monkeypatch.setattr(Environment, "compile", watched)
    build()
    assert compiled == []
    shutil.copytree(look / "theme", tmp_path / "office theme")
    build(theme_dir=tmp_path / "office theme")
    assert compiled == ["main.html"], "the theme package's templates are shared by every theme folder"


def test_anchors_inside_html_blocks_can_be_linked_to(build: Build) -> None:
    block = '<div id="S1">sheet</div>'
    site = build(
        Page("index", "Front", f"{block}\n\n[a](#S1) [b](scope.md#S2)\n"),
        Page("scope", "S", '<p id="S2">x</p>'),
    )
    assert broken_links(site) == []
    assert block in (site / "index.html").read_text()
