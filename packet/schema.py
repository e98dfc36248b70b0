"""The JSON Schema of the files an office writes."""

from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from packet.fields import MARKS
from packet.photos.log import PhotoLog
from packet.record.job import JobRecord
from packet.record.office import Office

MODELS: dict[str, type[BaseModel]] = {"job": JobRecord, "photos": PhotoLog, "office": Office}
DIALECT = "https://json-schema.org/draft/2020-12/schema"


class _ForEditors(GenerateJsonSchema):
    """An editor reads ``number: 26`` as a number, while the record reads every scalar as the text typed."""

    schema_dialect = DIALECT

    def str_schema(self, schema: core_schema.StringSchema) -> JsonSchemaValue:
        """Admit a number where text is wanted."""
        described = super().str_schema(schema)
        if "pattern" not in described and described.get("type") == "string":
            described["type"] = ["string", "number"]
        return described


def _without_marks(value: Any) -> Any:
    """Return a schema without our own marks: who may read what, and whose words it holds."""
    if isinstance(value, dict):
        return {
            key: _without_marks(item)
            for key, item in value.items()
            if not (key in MARKS and isinstance(item, list | bool))
        }
    return [_without_marks(item) for item in value] if isinstance(value, list) else value


def schema_of(kind: str) -> dict[str, Any]:
    """Return the schema of ``job``, ``photos`` or ``office``, with a description for every field."""
    described: dict[str, Any] = MODELS[kind].model_json_schema(schema_generator=_ForEditors)
    clean: dict[str, Any] = _without_marks(described)
    return {"$schema": DIALECT, **clean}
