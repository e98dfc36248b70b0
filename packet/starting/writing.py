"""Templates of the files that a beginning writes, and values put into YAML as what they are: text."""

import errno
import os
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import yaml
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from packet.problems import Problem
from packet.workspace import packaged
from packet.yamlread.faults import in_quotes

#: Wide enough that no value is ever broken into two lines, which a commented line would lose.
_ONE_LINE = 1_000_000


def start_folder() -> Path:
    """Return the packaged folder of templates for files that an office begins with."""
    return packaged("templates") / "start"


def filled(name: str, values: Mapping[str, Any]) -> str:
    """Return a file's text from its template; every typed value goes through the filter ``yaml``."""
    environment = Environment(
        loader=FileSystemLoader(start_folder()),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        autoescape=False,  # noqa: S701 - YAML, not HTML
    )
    environment.filters |= {"yaml": as_yaml, "quoted": quoted, "after_colon": after_colon, "typed": typed}
    return environment.get_template(name).render(values)


def as_yaml(value: Any) -> str:
    """Return text, or keys with text, as YAML on one line that stands inside brackets as well.

    Example:
        >>> as_yaml("#30 felt"), as_yaml("12:30"), as_yaml("Town, north side")
        ("'#30 felt'", "'12:30'", "'Town, north side'")
    """
    dumped = yaml.safe_dump(
        [_flat(value)], default_flow_style=True, sort_keys=False, allow_unicode=True, width=_ONE_LINE
    )
    return dumped.strip().removeprefix("[").removesuffix("]")


def quoted(text: str) -> str:
    """Return text in quotation marks, where more words, commas among them, may be typed in its place."""
    return in_quotes(" ".join(text.split()))


def typed(text: str) -> str:
    """Return a word as it is typed after a command: in quotation marks when it has a space or a sign."""
    return text if re.fullmatch(r"[\w./\\:~+=@-]+", text) else f'"{text}"'


def after_colon(value: str | None) -> str:
    """Return a value with the space that parts it from its key; nothing when there is no value."""
    return f" {as_yaml(value)}" if value else ""


def _flat(value: Any) -> Any:
    """Return a value without what is empty, each text on one line."""
    if isinstance(value, Mapping):
        return {key: _flat(item) for key, item in value.items() if item is not None}
    return " ".join(str(value).split())


def not_writable(path: Path, error: OSError) -> Problem:
    """Return the problem of a file or folder that can't be written."""
    reason = os.strerror(error.errno or errno.EIO).lower()
    return Problem("not-writable", path, values={"reason": reason})
