"""What is answered to a question or given by a flag, held against the field that it goes to."""

import re
import unicodedata
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, get_args

from pydantic import BaseModel, ValidationError, create_model

from packet.fields import Strict
from packet.located import from_validation
from packet.problems import Problem, Refused
from packet.record.house import House, JobHead, Kind
from packet.record.load import same_name
from packet.record.office import Office
from packet.snippet import FORBIDDEN
from packet.starting.writing import as_yaml
from packet.yamlread import parse_yaml

KINDS: tuple[str, ...] = get_args(Kind)

#: Longest number of a job; it is also the name of folders and of a zip, and Windows counts the whole path.
MOST_LETTERS = 60

#: Names that Windows keeps for devices, with or without an ending.
_DEVICES = re.compile(r"(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])(\..*)?", re.IGNORECASE)

#: Where an answer goes.
_FIELDS: Mapping[str, type[BaseModel]] = {
    "number": JobHead,
    "kind": JobHead,
    **dict.fromkeys(("street", "town", "county", "state", "time_zone"), House),
    **dict.fromkeys(("name", "address", "phone"), Office),
}

#: What makes a name unfit for a folder on some computer: how to tell, and the reason.
_UNSAFE: tuple[tuple[re.Pattern[str], str], ...] = (
    (re.compile(r".*[\\/]", re.DOTALL), "a stroke parts folders"),
    (re.compile(r'.*[<>:"|?*]'), 'Windows takes none of < > : " | ? *'),
    (re.compile(r"\."), "a dot at the start hides a folder"),
    (re.compile(r"-"), "a hyphen at the start reads as a flag"),
    (re.compile(r".*\.$"), "Windows drops a dot at the end"),
    (re.compile(rf"{_DEVICES.pattern}$", re.IGNORECASE), "Windows keeps that name for a device"),
    (re.compile(rf".{{{MOST_LETTERS + 1}}}"), f"it has more than {MOST_LETTERS} letters"),
)


def flag_of(name: str) -> str:
    """Return the flag that gives an answer, ``--time-zone``."""
    return f"--{name.replace('_', '-')}"


def example_of(name: str) -> str:
    """Return what an answer may look like, from its field."""
    return str((_FIELDS[name].model_fields[name].examples or [""])[0])


def accepted(name: str, text: str) -> str:
    """Return an answer as it is written down: without spaces around it.

    Args:
        name: Name of the question, which is the key that the answer goes to.
        text: What was typed.

    Raises:
        Refused: The field does not take it; the problem's file is the flag's name.
    """
    here = Path(flag_of(name))
    hidden = FORBIDDEN.search(text) or re.search(r"[\r\n\t]", text)
    if hidden:
        raise Refused(Problem("control-character", here, found=f"U+{ord(hidden[0]):04X}"))
    text = text.strip()
    if not text:
        values = {"example": example_of(name)}
        raise Refused(Problem("answer-missing", here, found=name.replace("_", " "), values=values))
    if name == "number":
        text = _safe(text, here)
    info = _FIELDS[name].model_fields[name]
    kind: Any = Annotated[(info.annotation, *info.metadata)] if info.metadata else info.annotation
    field: dict[str, Any] = {name: (kind, ...)}
    model = create_model("Answer", __base__=Strict, **field)
    document = parse_yaml(f"{name}: {as_yaml(text)}\n".encode(), here)
    try:
        model.model_validate({name: text})
    except ValidationError as error:
        raise Refused(from_validation(error, document, model)) from None
    return text


def free_number(jobs: Path, number: str) -> str:
    """Return a job's number when no job has it.

    Raises:
        Refused: A folder has that name, or one that some systems take for the same.
    """
    taken = next((path for path in jobs.iterdir() if same_name(path.name) == same_name(number)), None)
    if taken is not None:
        raise Refused(Problem("job-exists", Path(flag_of("number")), found=taken.name))
    return number


def _safe(text: str, here: Path) -> str:
    """Return a job's number when it can be a folder's name on every system."""
    text = unicodedata.normalize("NFC", text)
    why = next((reason for pattern, reason in _UNSAFE if pattern.match(text)), "")
    if why:
        raise Refused(Problem("job-name-unsafe", here, found=text, values={"why": why}))
    return text
