"""Changing any measured value of the demo record changes figures; none is read and then dropped."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel

from packet import units
from packet.figure import Figure
from packet.record.load import read_record
from tests.support.office import DEMO_JOB, Office, demo_text

#: What another value of each kind looks like in a record; every step keeps the demo record sound.
OTHER: dict[type, Callable[[Any], str]] = {
    units.Length: lambda value: f"{float(value.inches + Fraction(1, 4))} in",
    # a steeper plane is narrower beside its valley, and what was worked there would reach past it
    units.Pitch: lambda value: f'"{float(value.rise_in_12 - Fraction(1, 2))}:12"',
    units.Area: lambda value: f"{float(value.square_feet + 1)} sq ft",
    units.Speed: lambda value: f"{float(value.mph + 1)} mph",
    int: lambda value: str(value + 1),
    Fraction: lambda value: str(float(value + Fraction(1, 8))),
}


def measured(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Yield the path and value of every measure, count and amount of a record, entries by their id."""
    if isinstance(value, BaseModel):
        for name in type(value).model_fields:
            yield from measured(getattr(value, name), f"{path}.{name}".lstrip("."))
    elif isinstance(value, tuple):
        for index, entry in enumerate(value):
            yield from measured(entry, f"{path}.{getattr(entry, 'id', index)}")
    elif isinstance(value, units.NailSize) or (type(value) in OTHER and not isinstance(value, bool)):
        yield path, value


def changes(path: str, value: Any) -> Iterator[tuple[str, str, str]]:
    """Yield a name, the path, and another value for it."""
    if isinstance(value, units.NailSize):
        length, shank = float(value.length_in), float(value.shank_in)
        yield f"{path}.length", path, f"{length + 0.125} x {shank}"
        yield f"{path}.shank", path, f"{length} x {shank + 0.005:.3f}"
    else:
        kind = Fraction if path.startswith("bought.") and isinstance(value, int) else type(value)
        yield path, path, OTHER[kind](value)


READ, _ = read_record(DEMO_JOB)
assert READ
RECORD = READ.value
LEAVES = [change for path, value in measured(RECORD) for change in changes(path, value)]

#: Measures that geometry and goods are computed from, by the start and the end of their paths.
COMPUTED_FROM = (
    ("roof.planes.", (".lower", ".upper", ".upper_starts", ".run", ".pitch")),
    ("roof.openings.", (".along", ".up")),
    ("roof.eave_height", ("",)),
    ("covering.areas.", (".0", ".1")),
    ("deck.sheets.", (".along", ".up")),
    ("bought.", (".delivered", ".returned", ".left", ".scrap", ".cover_each")),
    ("basis.wind_speed", ("",)),
    ("tie_in.s", ("",)),
)


@cache
def before() -> dict[str, Figure]:
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        return dict(Office(Path(folder), demo_text()).closeout().figures)


def test_the_walk_finds_every_kind_of_measure() -> None:
    kinds = {type(value) for _, value in measured(RECORD)}
    assert kinds == {*OTHER, units.NailSize}
    assert len(LEAVES) > 150


@pytest.mark.parametrize(("name", "path", "text"), LEAVES, ids=[name for name, _, _ in LEAVES])
def test_changing_a_measured_value_changes_its_figure(
    job_office: Office, name: str, path: str, text: str
) -> None:
    after = job_office.changed(path, text).closeout().figures
    changed = {id for id in {*before(), *after} if before().get(id) != after.get(id)}
    assert name in changed
    if any(path.startswith(start) and path.endswith(ends) for start, ends in COMPUTED_FROM):
        assert any((after.get(id) or before()[id]).working for id in changed), changed
