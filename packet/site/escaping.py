"""Record text inside Markdown and HTML: one filter, and no way around it by accident.

Every character but ASCII letters, digits and single spaces becomes a numeric entity. Such text means nothing
to Markdown, to an HTML parser, to an attribute or to a table row, and reads letter for letter as typed.
"""

import re
from collections.abc import Iterable
from typing import Any

from jinja2 import Undefined
from jinja2.exceptions import TemplateRuntimeError
from markupsafe import Markup

#: Kept: letters, digits, and a space with something before and after it. Spaces at the ends and in runs
#: would be eaten by Markdown, or read as an indented block or a line break.
_NOT_PLAIN = re.compile(r"[^A-Za-z0-9 ]|^ | $|(?<= ) | (?= )")

_REFERENCE = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9._/-]*[A-Za-z0-9])?")

#: No entity can name these code points (the last two of a plane, U+FDD0 to U+FDEF); they stay as they are.
_LAST_TWO, _UNNAMED = 0xFFFE, range(0xFDD0, 0xFDF0)


def said(value: Any) -> Markup:
    """Return text that shows as typed wherever a template puts it.

    Markup passes as it is. A line break becomes an entity too: it is kept in the text and shows as a space.
    Inside Markdown code spans and fences entities are shown as written: use ``<code>``.

    Args:
        value: Text, a whole number or markup.

    Raises:
        TemplateRuntimeError: Anything else: a missing value needs words, a number with places its own filter.

    Example:
        >>> said("2-3/8 * 6")
        Markup('2&#45;3&#47;8 &#42; 6')
    """
    if isinstance(value, Markup):
        return value
    if isinstance(value, str):
        return Markup(_NOT_PLAIN.sub(_entity, value))
    if isinstance(value, int) and not isinstance(value, bool):
        return said(str(value))
    if isinstance(value, Undefined):
        return said(str(value))  # raises, naming what is missing
    message = f"{value!r} was printed as it is; give a missing value words and a number a filter"
    raise TemplateRuntimeError(message)


def said_lines(value: Any) -> Markup:
    r"""Return text as typed with ``<br>`` at each line break.

    Example:
        >>> said_lines("two\nlines")
        Markup('two<br>lines')
    """
    if isinstance(value, Markup) or not isinstance(value, str):
        return said(value)
    return Markup("<br>").join(said(line) for line in value.split("\n"))


def ref(value: Any) -> Markup:
    """Return an id or the path of a published file unchanged, for an anchor, a link or an attribute.

    Raises:
        TemplateRuntimeError: It holds more than letters, digits and ``. _ - /``, or climbs with ``..``.

    Example:
        >>> ref("photos/P-01.jpg")
        Markup('photos/P-01.jpg')
    """
    text = str(value)
    if not _REFERENCE.fullmatch(text) or ".." in text or "//" in text:
        message = f"{text!r} is no id and no published file"
        raise TemplateRuntimeError(message)
    return Markup(text)


def glued(parts: Iterable[Any], between: Any = "") -> str:
    """Return parts put together; as soon as one is markup, the others are escaped and the whole is markup.

    Example:
        >>> glued([Markup("<b>"), "*"])
        Markup('<b>&#42;')
        >>> glued(["a", "*"])
        'a*'
    """
    known = list(parts)
    if any(isinstance(part, Markup) for part in (between, *known)):
        return Markup(said(between)).join(said(part) for part in known)
    return str(between).join(str(part) for part in known)


def _entity(match: re.Match[str]) -> str:
    character = match[0]
    code = ord(character)
    if code in _UNNAMED or code & _LAST_TWO == _LAST_TWO:
        return character
    return f"&#{code};"
