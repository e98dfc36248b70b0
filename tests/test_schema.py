"""The schema an editor gets: every field explained, and no demo file underlined."""

import re
from collections.abc import Callable, Iterator
from typing import Annotated, Any

import pytest
import yaml
from jsonschema import Draft202012Validator
from pydantic import BaseModel, TypeAdapter

from packet.schema import MODELS, schema_of
from tests.support.filled import models
from tests.support.office import DEMO_JOB, ROOT, demo_text
from tests.support.records import HIP_ROOF


class EditorLoader(yaml.SafeLoader):
    """Reads YAML by the rules of YAML 1.2, as editors do: 6:12 is text, 26 and 1.10 are numbers."""


EditorLoader.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("bool", r"true|True|TRUE|false|False|FALSE", "tTfF"),
    ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
    ("int", r"[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+\.[0-9]*)([eE][-+]?[0-9]+)?", "-+.0123456789"),
):
    EditorLoader.add_implicit_resolver(
        f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), list(first)
    )


def as_an_editor_reads(text: str) -> Any:
    return yaml.load(text, Loader=EditorLoader)  # noqa: S506 - a safe loader


def complaints(kind: str, text: str) -> list[str]:
    found = Draft202012Validator(schema_of(kind)).iter_errors(as_an_editor_reads(text))
    return [f"{error.json_path}: {error.message}" for error in found]


def properties(schema: Any, at: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every property of a schema and of the definitions below it."""
    if isinstance(schema, dict):
        for name, described in schema.get("properties", {}).items():
            yield f"{at}.{name}", described
        for key, below in schema.items():
            yield from properties(below, f"{at}.{key}")


def has_example(described: dict[str, Any], schema: dict[str, Any]) -> bool:
    """Return whether a property shows an example: its own, or that of what it may be or holds."""
    if described.get("examples") or "$ref" in described or described.get("default") == {}:
        return True
    below = [
        *described.get("anyOf", ()),
        *described.get("oneOf", ()),
        *described.get("prefixItems", ()),
        described.get("items", {}),
    ]
    return any(has_example(part, schema) for part in below if part.get("type") != "null" and part)


@pytest.mark.parametrize("kind", MODELS)
def test_the_schema_is_one(kind: str) -> None:
    Draft202012Validator.check_schema(schema_of(kind))
    assert schema_of(kind)["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("kind", MODELS)
def test_every_key_is_described_and_has_an_example(kind: str) -> None:
    schema = schema_of(kind)
    known = dict(properties(schema))
    assert len(known) > 2
    assert [name for name, described in known.items() if not described.get("description")] == []
    assert [name for name, described in known.items() if not has_example(described, schema)] == []


def test_the_schema_says_nothing_of_who_may_read_what() -> None:
    assert [name for name, described in properties(schema_of("job")) if "readers" in described] == []
    assert "readers" in schema_of("photos")["$defs"]["LoggedPhoto"]["properties"]


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        ("job", demo_text()),
        ("job", HIP_ROOF),
        ("office", (ROOT / "shared" / "office.yaml").read_text(encoding="utf-8")),
    ],
    ids=["demo", "hip roof", "office"],
)
def test_a_sound_file_is_not_underlined(kind: str, text: str) -> None:
    assert complaints(kind, text) == []


def test_the_demos_photo_log_is_not_underlined() -> None:
    assert complaints("photos", (DEMO_JOB / "photos.yaml").read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("change", "path"),
    [
        (lambda text: text.replace("number: 26-041", "number: 26"), None),
        (lambda text: text.replace("number: 26-041", "number: 1.10"), None),
        (lambda text: text.replace("layers: 1", "layers: '1'"), None),
        (lambda text: text.replace("kind: patch", "kind: pach"), "$.job.kind"),
        (lambda text: text.replace("complaint:", "complaints:"), "$"),
        (
            lambda text: text.replace("run: 12 ft, pitch: 6:12, facing: south", "run: 12, facing: south"),
            "$.roof",
        ),
        (lambda text: text.replace("edge_spacing: 6 in", "edge_spacing: 6"), "$.deck"),
        (lambda text: text.replace("street: 18 Heron Lane", "street: [18]"), "$.property.street"),
    ],
    ids=["number", "decimal", "quoted count", "kind", "key", "plane", "bare spacing", "list"],
)
def test_an_editor_underlines_what_the_record_refuses_and_no_more(
    change: Callable[[str], str], path: str | None
) -> None:
    text = change(demo_text())
    assert text != demo_text()
    found = complaints("job", text)
    assert bool(found) == bool(path)
    assert all(complaint.startswith(path or "") for complaint in found)


def every_model(model: type[BaseModel]) -> Iterator[type[BaseModel]]:
    yield model
    for info in model.model_fields.values():
        for part in (info.annotation, *getattr(info.annotation, "__args__", ())):
            for below in models(part):
                yield from every_model(below)


EXAMPLES = [
    (f"{model.__name__}.{name}", Annotated[(info.annotation, *info.metadata, name)], example)
    for kind in MODELS.values()
    for model in dict.fromkeys(every_model(kind))
    for name, info in model.model_fields.items()
    for example in info.examples or ()
]


def typed(example: Any) -> Any:
    """Return an example as the record reads it: every scalar is text."""
    if isinstance(example, list):
        return [typed(item) for item in example]
    if isinstance(example, dict):
        return {key: typed(item) for key, item in example.items()}
    return str(example)


@pytest.mark.parametrize(("name", "kind", "example"), EXAMPLES, ids=[name for name, _, _ in EXAMPLES])
def test_an_example_is_accepted_where_it_is_shown(name: str, kind: Any, example: Any) -> None:
    assert TypeAdapter(kind).validate_python(typed(example)) is not None


def test_examples_of_every_model_are_tried() -> None:
    assert len(EXAMPLES) > 150
