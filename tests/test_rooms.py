"""The import order of the house, read off the syntax tree: a room imports only from rooms to its left."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "packet"

#: From left to right; of two rooms inside one bar neither imports the other.
BARS: tuple[tuple[str, ...], ...] = (
    (
        "problems",
        "snippet",
        "placing",
        "units",
        "text",
        "figure",
        "readers",
        "fields",
        "uses",
        "yamlread",
        "located",
        "schema_walk",
        "environ",
        "partial",
        "reading",
    ),
    ("workspace",),
    ("record", "reference", "photos"),
    ("calc",),
    ("figures",),
    ("review",),
    ("closeout",),
    ("drawings",),
    ("site", "paper"),
    ("schema",),
    ("build", "starting"),
    ("archive", "handover", "holding", "planning", "preview"),
    ("cli",),
)
#: In the leftmost bar rooms may use one another, as long as none uses itself by a detour.
LEFTMOST = frozenset(BARS[0])
PLACE = {room: number for number, bar in enumerate(BARS) for room in bar}

#: Rooms that may import fewer others than their place allows.
ONLY = {"calc": {"units", "figure"}}

#: Libraries that one room alone may import.
ALONE = {"mkdocs": "site", "PIL": "photos", "click": "cli"}
PURE = ("calc", "units", "figure", "figures")
FILES = frozenset({"os", "io", "pathlib", "shutil", "tempfile", "time", "random", "socket", "subprocess"})


def room(path: Path) -> str:
    """Return the room of a module; the package's own two files belong to none."""
    name = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
    return "" if name.startswith("__") else name


MODULES = [path for path in sorted(PACKAGE.rglob("*.py")) if room(path)]


def imported(path: Path) -> Iterator[str]:
    """Yield the dotted names a module imports, wherever in it the import stands."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import hides its room"
            yield from (f"{node.module}.{name.name}" for name in node.names)


def rooms_used(path: Path) -> set[str]:
    """Return the other rooms a module imports; ``packet`` alone gives the version and is no room."""
    parts = [name.split(".") for name in imported(path)]
    used = {names[1] for names in parts if names[0] == "packet" and len(names) > 1}
    return {name for name in used if not name.startswith("__")} - {room(path)}


def test_every_room_there_is_has_a_place() -> None:
    assert {room(path) for path in MODULES} <= PLACE.keys()
    assert len(MODULES) > 60


@pytest.mark.parametrize("path", MODULES, ids=[str(p.relative_to(PACKAGE)) for p in MODULES])
def test_a_room_imports_only_from_rooms_to_its_left(path: Path) -> None:
    mine = room(path)
    wrong = {
        used
        for used in rooms_used(path)
        if PLACE[used] > PLACE[mine] or (PLACE[used] == PLACE[mine] and mine not in LEFTMOST)
    }
    assert not wrong
    assert rooms_used(path) <= ONLY.get(mine, PLACE.keys())


def test_the_leftmost_rooms_do_not_go_in_circles() -> None:
    uses: dict[str, set[str]] = {name: set() for name in LEFTMOST}
    for path in MODULES:
        if room(path) in LEFTMOST:
            uses[room(path)] |= rooms_used(path) & LEFTMOST
    placed: set[str] = set()
    while ready := {name for name, others in uses.items() if name not in placed and others <= placed}:
        placed |= ready
    assert placed == LEFTMOST


@pytest.mark.parametrize(("library", "home"), ALONE.items())
def test_a_library_is_imported_by_one_room(library: str, home: str) -> None:
    homes = {room(p) for p in MODULES if library in {name.partition(".")[0] for name in imported(p)}}
    assert homes <= {home}


def test_mkdocs_is_imported_by_one_module() -> None:
    having = [p.name for p in MODULES if any(name.partition(".")[0] == "mkdocs" for name in imported(p))]
    assert having == ["engine.py"]


@pytest.mark.parametrize("name", PURE)
def test_rooms_that_compute_touch_no_file_clock_or_chance(name: str) -> None:
    for path in (path for path in MODULES if room(path) == name):
        assert not {module.partition(".")[0] for module in imported(path)} & FILES, path


def test_only_the_command_prints() -> None:
    for path in (path for path in MODULES if room(path) != "cli"):
        calls = [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(node, ast.Call)]
        assert not [c for c in calls if isinstance(c.func, ast.Name) and c.func.id == "print"], path
