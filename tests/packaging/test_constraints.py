"""``constraints.txt`` holds all that an installation with tests pulls in, in the versions installed here."""

import tomllib
from collections.abc import Iterator
from importlib import metadata

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.support.office import ROOT

LINES = (ROOT / "constraints.txt").read_text(encoding="utf-8").splitlines()
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
ASKED = [Requirement(line) for line in [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]]]


def pins() -> dict[str, str]:
    """Return the pinned versions by canonical name."""
    parts = (line.partition("==") for line in LINES)
    return {canonicalize_name(name): version for name, _, version in parts}


def required_by(name: str, extras: set[str]) -> Iterator[Requirement]:
    """Yield what an installed distribution requires here."""
    for line in metadata.requires(name) or ():
        wanted = Requirement(line)
        if wanted.marker is None or any(
            wanted.marker.evaluate({"extra": extra}) for extra in (extras or {""})
        ):
            yield wanted


def pulled_in() -> dict[str, str]:
    """Return every distribution an installation with tests needs, with the version installed here."""
    found: dict[str, str] = {}
    waiting = list(ASKED)
    while waiting:
        wanted = waiting.pop()
        name = canonicalize_name(wanted.name)
        if name not in found:
            found[name] = metadata.version(name)
            waiting += required_by(name, set(wanted.extras))
    return found


def test_every_line_pins_one_version_once() -> None:
    assert all(len(line.split("==")) == 2 and line == line.strip() and "*" not in line for line in LINES)
    assert len(pins()) == len(LINES)


def test_everything_an_installation_pulls_in_is_pinned_as_installed() -> None:
    pinned = pins()
    needed = pulled_in()
    assert len(needed) > len(ASKED)
    assert {name: pinned.get(name) for name in needed} == needed


def test_pins_are_versions_the_project_accepts() -> None:
    pinned = pins()
    refused = [
        str(wanted) for wanted in ASKED if pinned[canonicalize_name(wanted.name)] not in wanted.specifier
    ]
    assert refused == []


def test_nothing_is_pinned_that_nobody_asks_for() -> None:
    """A pin may be asked for on another system only, so conditions are left out here."""
    asked = {canonicalize_name(wanted.name) for wanted in ASKED}
    for name in pulled_in():
        asked |= {canonicalize_name(Requirement(line).name) for line in metadata.requires(name) or ()}
    assert set(pins()) - asked == set()
