"""Sdist and wheel hold the program, its data and nothing else."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.utils import canonicalize_name

from tests.packaging.conftest import Distributions
from tests.support.office import ROOT

#: The demo office's card; an office brings its own.
CARD = "office.yaml"


def files_of(folder: Path) -> dict[str, bytes]:
    """Return the files of a folder of the checkout by their path in it."""
    paths = (path.relative_to(folder) for path in folder.rglob("*") if path.is_file())
    kept = (path for path in paths if not any(part.startswith((".", "__pycache__")) for part in path.parts))
    return {path.as_posix(): (folder / path).read_bytes() for path in kept}


def below(held: dict[str, bytes], folder: str) -> dict[str, bytes]:
    """Return the files an archive holds below a folder, by their path in it."""
    return {name.removeprefix(folder): data for name, data in held.items() if name.startswith(folder)}


def data_of(name: str) -> dict[str, bytes]:
    """Return what of ``shared`` or ``templates`` has to ship."""
    files = files_of(ROOT / name)
    return {path: data for path, data in files.items() if (name, path) != ("shared", CARD)}


@pytest.mark.parametrize("name", ["shared", "templates"])
def test_wheel_and_sdist_hold_every_file_of_the_data(distributions: Distributions, name: str) -> None:
    wanted = data_of(name)
    assert len(wanted) > 10
    assert below(dict(distributions.wheel), f"packet/_{name}/") == wanted
    assert below(dict(distributions.sdist), f"{name}/") == wanted


def test_the_demo_offices_card_is_in_neither(distributions: Distributions) -> None:
    assert (ROOT / "shared" / CARD).is_file()
    for held in (distributions.wheel, distributions.sdist):
        assert [name for name in held if name.endswith(CARD)] == []


def test_wheel_holds_the_program_and_its_data_only(distributions: Distributions) -> None:
    program = {f"packet/{path}" for path in files_of(ROOT / "packet")}
    data = {f"packet/_{name}/{path}" for name in ("shared", "templates") for path in data_of(name)}
    about = {name for name in distributions.wheel if name.partition("/")[0].endswith(".dist-info")}
    assert set(distributions.wheel) == program | data | about
    assert "packet/py.typed" in program


def test_wheel_of_the_sdist_is_the_wheel_of_the_checkout(distributions: Distributions) -> None:
    assert distributions.wheel_of_sdist == distributions.wheel


def test_sdist_holds_what_a_build_needs_and_no_job(distributions: Distributions) -> None:
    tops = {name.partition("/")[0] for name in distributions.sdist}
    allowed = {"packet", "shared", "templates", "README.md", "LICENSE", "constraints.txt", "pyproject.toml"}
    assert tops - {"PKG-INFO", ".gitignore"} == allowed
    assert {name for name in distributions.sdist if name.endswith((".pyc", ".jpg"))} == set()


def test_no_machine_path_is_in_the_wheel(distributions: Distributions) -> None:
    here = str(ROOT).encode()
    assert [name for name, data in distributions.wheel.items() if here in data] == []


def test_the_command_and_the_requirements_are_declared_in_the_wheel(distributions: Distributions) -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    about = {
        Path(name).name: data.decode() for name, data in distributions.wheel.items() if ".dist-info/" in name
    }
    assert f"packet = {project['scripts']['packet']}" in about["entry_points.txt"].splitlines()
    required = [line for line in about["METADATA"].splitlines() if line.startswith("Requires-Dist: ")]
    plain = {
        canonicalize_name(re.split("[<>]", line.split()[1])[0]) for line in required if "extra ==" not in line
    }
    assert plain == {canonicalize_name(re.split("[<>]", wanted)[0]) for wanted in project["dependencies"]}
