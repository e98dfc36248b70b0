"""A new job given by flags, in an office of its own with or without habits."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from packet.yamlread import read_yaml

GIVEN: Mapping[str, str] = {
    "number": "26-042",
    "street": "12 Marsh Road",
    "town": "Pellam Reach",
    "state": "South Carolina",
    "time-zone": "America/New_York",
    "kind": "patch",
}
CARD = "name: Pike and Gannet\naddress: 4 Slipway Road\nphone: 843-555-0142\n"
USUAL = """\
usual:
  deck_nail: {size: 2-3/8 x 0.113, shank: ring, finish: hot-dip galvanized}
  underlayment: {product: "#30 felt", standard: ASTM D226 Type II, fasteners: {kind: cap nail, at_laps: 6 in, between: 12 in}}
  drip_edge: 0.019 in aluminum
  shingle_nail: {length: 1-1/2 in, shank: 0.120 in, head: 3/8 in}
  town: Usualtown
  county: Usualcounty
  state: Usualstate
  time_zone: America/Chicago
  code: irc-2021
  authority: Town of Pellam Reach, building office
"""


@pytest.fixture
def new_office(tmp_path: Path) -> Path:
    """An office without jobs, whose card names no habits."""
    (tmp_path / "o" / "jobs").mkdir(parents=True)
    (tmp_path / "o" / "shared").mkdir()
    (tmp_path / "o" / "shared" / "office.yaml").write_text(CARD, encoding="utf-8")
    return tmp_path / "o"


@pytest.fixture
def usual_office(new_office: Path) -> Path:
    """An office whose card names every habit."""
    (new_office / "shared" / "office.yaml").write_text(CARD + USUAL, encoding="utf-8")
    return new_office


def flags(**changed: str | None) -> list[str]:
    """Return the flags of a whole job, some changed or left out."""
    given = {**GIVEN, **{name.replace("_", "-"): value for name, value in changed.items()}}
    return [word for name, value in given.items() if value is not None for word in (f"--{name}", value)]


def confirmed(*habits: str) -> list[str]:
    return [word for habit in habits for word in ("--confirm", habit)]


def text_of(office: Path, number: str = "26-042") -> str:
    return (office / "jobs" / number / "job.yaml").read_text(encoding="utf-8")


def record_of(office: Path, number: str = "26-042") -> dict[str, Any]:
    value: dict[str, Any] = read_yaml(office / "jobs" / number / "job.yaml").value
    return value


def left_over(office: Path) -> list[str]:
    return sorted(path.name for path in (office / "jobs").iterdir())
