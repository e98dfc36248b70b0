"""The catalogue of problems: every code that the program can raise has its sentences."""

import ast
import re
import string
from collections.abc import Iterator
from pathlib import Path

import pytest

import packet
from packet.located import _SIZES, read_catalogue
from packet.workspace import packaged
from packet.yamlread.faults import _SLIPS

SOURCES = Path(packet.__file__).parent
CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")

#: Calls that carry a code as their first argument, and ``locate``, which has the document before it.
CARRIERS = re.compile(
    r"Problem|\w*Fault|_?refuse|NotAMeasure|Kind|PydanticCustomError|problem|problem_of_key|locate"
)
CODE = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")


def constants_in(source: str) -> Iterator[tuple[str, str]]:
    """Return the module's constants that hold a word: ``BAD_ID, KIND = "bad-id", "kind"``."""
    for node in ast.parse(source).body:
        if not isinstance(node, ast.Assign):
            continue
        target = node.targets[0]
        names = target.elts if isinstance(target, ast.Tuple) else [target]
        values = node.value.elts if isinstance(node.value, ast.Tuple) else [node.value]
        for name, value in zip(names, values, strict=False):
            if (
                isinstance(name, ast.Name)
                and isinstance(value, ast.Constant)
                and isinstance(value.value, str)
            ):
                yield name.id, value.value


def codes_in(source: str) -> Iterator[str]:
    """Return the codes of every call that carries one, written there or in a constant of the module."""
    constants = dict(constants_in(source))
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call):
            continue
        name = getattr(node.func, "id", getattr(node.func, "attr", ""))
        carriers = [keyword.value for keyword in node.keywords if keyword.arg == "code"]
        if CARRIERS.fullmatch(name):
            first = 1 if name == "locate" else 0
            carriers += node.args[first : first + 1]
        for carrier in carriers:
            branches = [carrier.body, carrier.orelse] if isinstance(carrier, ast.IfExp) else [carrier]
            for branch in branches:
                if isinstance(branch, ast.Constant) and isinstance(branch.value, str) and branch.value:
                    yield branch.value
                elif isinstance(branch, ast.Name) and branch.id in constants:
                    yield constants[branch.id]


def used_codes() -> dict[str, str]:
    used = {
        code: source.relative_to(SOURCES).as_posix()
        for source in sorted(SOURCES.rglob("*.py"))
        for code in codes_in(source.read_text(encoding="utf-8"))
    }
    used |= {code: "yamlread/faults.py" for code, _, _ in _SLIPS}
    return used | {code: "located.py" for code, *_ in _SIZES.values()}


def test_the_scan_sees_codes_in_every_form() -> None:
    source = (
        'Problem("a-b", file); raise refuse("c", 1); x.refusal(t, code="d-e" if y else self.bad)\n'
        'locate(document, "f-g", loc); Problem(code="h", file=file); other("i"); Problem(entry.code, file)\n'
        'K, L = "j-k", "l"\nrefuse(K, 2); read.problem("m", loc); TableFault("n-o", loc)\n'
    )
    assert sorted(codes_in(source)) == ["a-b", "c", "d-e", "f-g", "h", "j-k", "m", "n-o"]


def test_every_code_that_is_raised_has_its_sentences() -> None:
    used = used_codes()
    assert {"duplicate-key", "missing", "bad-date", "file-unreadable", "no-unit", "tab-indent"} <= set(used)
    assert {code: where for code, where in used.items() if code not in CATALOGUE} == {}


@pytest.mark.parametrize("code", sorted(CATALOGUE))
def test_an_entry_is_one_sentence_that_says_and_one_that_tells_what_to_write(code: str) -> None:
    entry = CATALOGUE[code]
    assert CODE.fullmatch(code)
    assert set(entry) <= {"says", "write", "write_near"}
    assert not entry["says"].endswith(".")
    assert not re.search(r"[.!?] [A-Z]", entry["says"])
    assert re.search(r"[.?}\]]$", entry["write"])
    for text in entry.values():
        assert "\n" not in text
        names = [name for _, name, spec, conversion in string.Formatter().parse(text) if name is not None]
        assert all(re.fullmatch(r"[a-z_]+", name) for name in names)
