"""Every calculator says what it returns, by whose rule, in which unit, and shows one worked example."""

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Iterator
from types import ModuleType

import pytest

import packet.calc
import packet.units

PARTS = ("Source:", "Args:", "Returns:", "Example:")


def modules(package: ModuleType) -> list[ModuleType]:
    found = pkgutil.walk_packages(package.__path__, package.__name__ + ".")
    return [package, *(importlib.import_module(info.name) for info in found)]


def public_functions(package: ModuleType) -> Iterator[Callable[..., object]]:
    for module in modules(package):
        for name, value in vars(module).items():
            if inspect.isfunction(value) and value.__module__ == module.__name__ and not name.startswith("_"):
                yield value


def faults(function: Callable[..., object]) -> list[str]:
    text = inspect.getdoc(function) or ""
    found = [f"no {part}" for part in PARTS if part not in text]
    if [part for part in PARTS if part in text] != sorted(
        (part for part in PARTS if part in text), key=text.index
    ):
        found.append("parts out of order")
    source = re.search(r"Source: (.+)", text)
    if not source or len(source[1]) < 15:
        found.append("source names no document and no reason")
    if ">>>" not in text:
        found.append("no worked example")
    for name in inspect.signature(function).parameters:
        entry = re.search(rf"^ +{name}: (.+(?:\n {{8,}}.+)*)", text, re.MULTILINE)
        if not entry or not re.search(r"\[[^\]]+\]|Compass word|Place\b", entry[1]):
            found.append(f"{name} has no unit")
    returns = re.search(r"Returns:\n(.+(?:\n {4,}.+)*)", text)
    if not returns or not re.search(r"\[[^\]]+\]", returns[1]):
        found.append("the returned value has no unit")
    return found


CALCULATORS = {f"{f.__module__}.{f.__name__}": f for f in public_functions(packet.calc)}


def test_the_walk_finds_the_calculators() -> None:
    assert "packet.calc.takeoff.covering.bundles" in CALCULATORS
    assert len({f.__module__ for f in CALCULATORS.values()}) >= 8


@pytest.mark.parametrize("name", CALCULATORS)
def test_calculator_names_source_units_and_example(name: str) -> None:
    assert faults(CALCULATORS[name]) == []


@pytest.mark.parametrize(
    "module", [*modules(packet.calc), *modules(packet.units)], ids=lambda module: module.__name__
)
def test_examples_in_docstrings_are_true(module: ModuleType) -> None:
    result = doctest.testmod(module)
    assert result.failed == 0
    expected = sum(1 for f in CALCULATORS.values() if f.__module__ == module.__name__)
    assert result.attempted >= expected


def test_a_poor_docstring_is_found() -> None:
    def area(width_ft: float) -> float:
        """Return an area.

        Source: rule

        Args:
            width_ft: Width.

        Returns:
            Area.
        """
        return width_ft

    assert faults(area) == [
        "no Example:",
        "source names no document and no reason",
        "no worked example",
        "width_ft has no unit",
        "the returned value has no unit",
    ]
