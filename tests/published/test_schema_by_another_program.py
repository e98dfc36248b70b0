"""The schema by a program that is not ours: check-jsonschema over every demo record, and over a broken one."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.support.office import ROOT

#: What the schema is of, and where its files are.
FILES = {
    "job": sorted((ROOT / "jobs").glob("*/job.yaml")),
    "photos": sorted((ROOT / "jobs").glob("*/photos.yaml")),
    "office": [ROOT / "shared" / "office.yaml"],
}


def printed_schema(kind: str, folder: Path) -> Path:
    """Write what ``packet schema`` prints, as an office does."""
    done = subprocess.run(
        [sys.executable, "-m", "packet", "schema", "--of", kind], capture_output=True, check=True, cwd=ROOT
    )
    file = folder / f"{kind}.schema.json"
    file.write_bytes(done.stdout)
    return file


def judged(schema: Path, *files: Path) -> "subprocess.CompletedProcess[str]":
    command = [sys.executable, "-m", "check_jsonschema", "--schemafile", str(schema), *map(str, files)]
    return subprocess.run(command, capture_output=True, encoding="utf-8", check=False)


@pytest.mark.parametrize("kind", FILES)
def test_check_jsonschema_finds_every_demo_file_valid(kind: str, tmp_path: Path) -> None:
    done = judged(printed_schema(kind, tmp_path), *FILES[kind])
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize(
    ("old", "new", "named"),
    [
        ("  kind: patch\n", "  kind: pach\n", "$.job.kind"),
        ("complaint:", "complain:", "complain"),
        ("  looked_at: 2026-03-09\n", "  looked_at: March 9\n", "$.dates.looked_at"),
    ],
)
def test_check_jsonschema_names_what_is_wrong(tmp_path: Path, old: str, new: str, named: str) -> None:
    text = (ROOT / "jobs" / "26-041" / "job.yaml").read_text(encoding="utf-8")
    assert text.count(old) == 1
    broken = tmp_path / "job.yaml"
    broken.write_text(text.replace(old, new), encoding="utf-8")
    done = judged(printed_schema("job", tmp_path), broken)
    assert done.returncode == 1
    assert named in done.stdout
