"""The benchmark runs, and what it measures is what it says; no time is asserted."""

from pathlib import Path

import pytest

from tests.bench.build import PACKET, make_office, measure, probe, python
from tests.bench.table import rows, shown


@pytest.mark.bench
def test_bench_prints_its_table(tmp_path: Path) -> None:
    table = rows(measure(tmp_path))
    print(f"\n{shown(table)}")
    assert {row.what for row in table if row.aim is not None} == {
        "unchanged, in the process",
        "unchanged, a command",
        "it imported",
        "packet --help",
        "pages of a copy, warm",
        "3 demo jobs, unchanged",
    }


def test_an_unchanged_packet_imports_nothing_that_makes_pages(tmp_path: Path) -> None:
    office = make_office(tmp_path / "office")
    python(office, *PACKET, "build")
    assert "unchanged" in python(office, *PACKET, "build")
    assert probe("unchanged", office)["imported"] == []


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], ["build", "--help"]])
def test_help_imports_nothing_heavy(tmp_path: Path, arguments: list[str]) -> None:
    code = (
        f"import sys; from packet.cli.main import status; status({arguments}); print(*sys.modules, sep='\\n')"
    )
    imported = set(python(tmp_path, "-c", code).splitlines())
    assert "click" in imported
    assert imported & {"mkdocs", "jinja2", "pydantic", "yaml", "PIL", "filelock", "packet.closeout"} == set()
