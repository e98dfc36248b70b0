"""Every code that this room can refuse with has its sentences in the catalogue."""

import ast
from pathlib import Path

import packet.reference
from packet.located import read_catalogue
from packet.workspace import packaged

#: Calls whose first argument is a problem's code.
_REFUSALS = {"problem", "problem_of_key", "Problem", "TableFault"}


def codes_in(source: str) -> set[str]:
    tree = ast.parse(source)
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and node.args]
    found = {
        node.args[0].value
        for node in calls
        if (getattr(node.func, "attr", None) or getattr(node.func, "id", None)) in _REFUSALS
        and isinstance(node.args[0], ast.Constant)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign) and all(_is_code_name(target) for target in node.targets):
            found |= {part.value for part in ast.walk(node.value) if isinstance(part, ast.Constant)}
    return {code for code in found if isinstance(code, str) and "-" in code and " " not in code}


def _is_code_name(target: ast.expr) -> bool:
    names = target.elts if isinstance(target, ast.Tuple) else [target]
    return all(
        isinstance(name, ast.Name) and name.id.isupper() and not name.id.startswith("_") for name in names
    )


def test_every_code_has_words() -> None:
    room = Path(packet.reference.__file__).parent
    codes = set[str]().union(*(codes_in(path.read_text(encoding="utf-8")) for path in room.glob("*.py")))
    assert {"shadows-packaged", "table-sum", "empty-condition", "reason-missing", "row-id"} <= codes
    assert codes - set(read_catalogue(packaged("shared") / "words" / "problems.yaml")) == set()
