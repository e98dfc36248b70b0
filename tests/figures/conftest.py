"""A roof of a cold place: vents, an ice barrier and boards beside what the demo record has."""

from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from tests.support.office import Office, demo_text

VENTS = """\
ventilation:
  attic_area: 1296 sq ft
  climate_zone: 6
  vapor_retarder: class II
  vents:
    - {id: VT1, what: ridge vent, place: high, state: new, length: 31 ft 6 in, free_sq_in_each: 18, below_top: 2 in}
    - {id: VT2, what: roof vent, place: high, state: reused, pieces: 6, free_sq_in_each: 50, below_top: 2 ft 6 in}
    - {id: VT3, what: soffit strip, place: low, state: new, length: 64 ft, free_sq_in_each: 9}
    - {id: VT4, what: gable louver, place: high, state: closed, pieces: 2, free_sq_in_each: 60}
"""
BARRIER = "{product: self-adhered sheet, standard: ASTM D1970, up_slope: 5 ft, overhang: 14 in}"
BOARDS = """\
[{id: BD1, plane: MS, where: at the eave, size: 1x6, width: 5-1/2 in, pieces: 6, length: 54 ft, why: rot},
     {id: BD2, plane: WW, where: at the rake, size: 1x8, width: 7-1/4 in, pieces: 1, length: 13 ft, why: rot}]"""


@pytest.fixture
def cold(tmp_path: Path) -> Office:
    office = Office(tmp_path / "cold", demo_text())
    return office.changed("dry_in.ice_barrier", BARRIER).changed("deck.boards", BOARDS).added(VENTS)


@pytest.fixture
def winter(cold: Office) -> Closeout:
    return cold.closeout()
