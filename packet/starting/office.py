"""The folder of an office: made once, and completed when something is missing; no file is ever changed."""

import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from packet.placing import placing
from packet.problems import Refused
from packet.reference import Library
from packet.schema import MODELS, schema_of
from packet.starting.writing import filled, not_writable, start_folder
from packet.workspace import packaged

#: Folders and files of an office. A file's text is its template, filled in when it ends in ``.j2``.
FOLDERS = ("jobs", "shared", "templates")
FILES: Mapping[str, str] = {
    "shared/office.yaml": "office.yaml.j2",
    "templates/README.md": "readme.md",
    ".gitignore": "gitignore.txt",
    ".vscode/settings.json": "settings.json",
}
#: What an office's card must say.
CARD = ("name", "address", "phone")
SCHEMAS: Mapping[str, str] = {f".schemas/{kind}.schema.json": kind for kind in MODELS}


@dataclass(frozen=True)
class Started:
    """What a start did, as paths inside the office.

    Attributes:
        made: Folders and files that were missing and are there now.
        left: Files that were there and were not touched.
        old: Of those, schemas that are not this program's.
    """

    made: tuple[str, ...]
    left: tuple[str, ...]
    old: tuple[str, ...]


def start_office(root: Path, card: Mapping[str, str]) -> Started:
    """Make the folder of an office, or what of it is missing.

    Args:
        root: The office's folder.
        card: Name, address and phone. One that is absent is left empty; nothing is built until it is given.

    Raises:
        Refused: A folder or a file can't be written.
    """
    made = [f"{name}/" for name in FOLDERS if _made_folder(root / name)]
    left, old = [], []
    for name, text in _texts(card).items():
        if _made_file(root / name, text):
            made.append(name)
        else:
            left.append(name)
            if name in SCHEMAS and not _holds(root / name, text):
                old.append(name)
    return Started(tuple(made), tuple(left), tuple(old))


def _texts(card: Mapping[str, str]) -> dict[str, str]:
    library = Library.load((packaged("shared"),))
    values = {
        **dict.fromkeys(CARD, ""),
        **card,
        "codes": [id for id in library.code_ids() if library.code(id).whose == "law"],
    }
    texts = {
        name: filled(template, values)
        if template.endswith(".j2")
        else (start_folder() / template).read_text(encoding="utf-8")
        for name, template in FILES.items()
    }
    schemas = {
        name: json.dumps(schema_of(kind), indent=2, ensure_ascii=False) + "\n"
        for name, kind in SCHEMAS.items()
    }
    return texts | schemas


def _holds(path: Path, text: str) -> bool:
    try:
        return path.read_bytes() == text.encode()
    except OSError:
        return False


def _made_folder(folder: Path) -> bool:
    """Make a folder and those above it; return whether it was missing."""
    try:
        missing = not folder.is_dir()
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Refused(not_writable(folder, error)) from None
    return missing


def _made_file(path: Path, text: str) -> bool:
    """Write a file that is not there yet; return whether it was missing."""
    _made_folder(path.parent)
    try:
        if os.path.lexists(path):
            return False
        with placing(path) as part:  # half a file would be left as it is by the next start
            part.write_bytes(text.encode())
    except OSError as error:
        raise Refused(not_writable(path, error)) from None
    return True
