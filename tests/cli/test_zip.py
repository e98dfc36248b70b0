"""``packet zip``: what it prints, what it writes, and how it exits."""

import re
import shutil
import zipfile
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.support.office import Office


def outside_out(root: Path) -> dict[str, bytes]:
    """Return every file of an office that is not output."""
    return {
        str(path): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file() and not path.is_relative_to(root / "out")
    }


def test_it_builds_zips_and_says_where_and_how_big(small_office: Office, run: Run) -> None:
    before = outside_out(small_office.root)
    ran = run(small_office.root, "zip", "26-041")
    assert (ran.code, ran.err) == (0, "")
    first, second = ran.out.splitlines()
    assert re.fullmatch(r"26-041: zipped in \d+\.\d s", first)
    file = small_office.root / "out" / "26-041-outside.zip"
    with zipfile.ZipFile(file) as archive:
        count = len(archive.namelist())
    assert second == f"  out/26-041-outside.zip  {round(file.stat().st_size / 1000)} kB, {count} files"
    assert outside_out(small_office.root) == before


def test_what_changed_since_the_build_is_in_the_zip(small_office: Office, run: Run) -> None:
    assert run(small_office.root, "zip", "--quiet").out == ""
    small_office.replaced("A nail backed out.", "Two nails backed out.")
    assert run(small_office.root, "zip").code == 0
    with zipfile.ZipFile(small_office.root / "out" / "26-041-outside.zip") as archive:
        assert b"Two nails backed out" in archive.read("26-041-outside/packet.json")


def test_the_offices_copy_is_zipped_only_when_asked_for_and_with_a_caution(
    small_office: Office, run: Run
) -> None:
    small_office.added('people: {owner: {name: R. Sorrel, phone: "843-555-0177"}}')
    assert run(small_office.root, "zip").err == ""
    assert [path.name for path in (small_office.root / "out").glob("*.zip")] == ["26-041-outside.zip"]
    for quiet in ([], ["--quiet"]):
        ran = run(small_office.root, "zip", "--copy", "office", *quiet)
        assert ran.code == 0
        assert ran.err.startswith("Caution: the office's copy holds the owner's telephone, money")
    held = {
        reader: zipfile.ZipFile(small_office.root / "out" / f"26-041-{reader}.zip").read(
            f"26-041-{reader}/packet.json"
        )
        for reader in ("outside", "office")
    }
    assert b"843-555-0177" in held["office"]
    assert b"843-555-0177" not in held["outside"]


def test_a_bad_record_leaves_the_earlier_zip_and_the_other_jobs_are_zipped(
    small_office: Office, run: Run
) -> None:
    run(small_office.root, "zip")
    earlier = (small_office.root / "out" / "26-041-outside.zip").read_bytes()
    other = small_office.root / "jobs" / "26-042"
    shutil.copytree(small_office.job, other)
    (other / "job.yaml").write_text(small_office.text.replace("26-041", "26-042"), encoding="utf-8")
    small_office.changed("job.kind", "pach")
    ran = run(small_office.root, "zip")
    assert ran.code == 2
    assert "jobs/26-041/job.yaml:1:" in ran.err
    assert "1 error in 1 of 2 jobs. Nothing was built for 26-041." in ran.err
    assert (small_office.root / "out" / "26-041-outside.zip").read_bytes() == earlier
    assert (small_office.root / "out" / "26-042-outside.zip").is_file()


@pytest.mark.parametrize("arguments", [["26-099"], ["--copy", "homeowner"]])
def test_a_job_or_copy_that_is_none_exits_2(small_office: Office, run: Run, arguments: list[str]) -> None:
    ran = run(small_office.root, "zip", *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert not (small_office.root / "out").exists()
