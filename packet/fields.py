"""Field types of every record we read: strict models, measures with units, ids, dates, money.

A scalar arrives as the text that was typed; each type here turns it into a value or refuses it with one of
the codes in ``shared/words/problems.yaml``.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, GetJsonSchemaHandler, StringConstraints
from pydantic.fields import FieldInfo
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from packet import units
from packet.readers import EVERYONE, OFFICE, Reader

_KEY, _QUOTED = "readers", "quoted"

#: Marks of our own on a field, which no schema for an editor carries.
MARKS = frozenset({_KEY, _QUOTED})

#: Spellings that one field remembers.
_MOST_PARSED = 512


def leaf(
    default: Any = ..., *, readers: tuple[Reader, ...] = OFFICE, quoted: bool = False, **rest: Any
) -> Any:
    """Declare a field with its readers, a description and an example.

    Args:
        default: Default of the field; required when left out.
        readers: Copies that may carry the leaf [reader names].
        quoted: It repeats a name, or what a person, a paper or a label said: its words are not the
            contractor's own.
        rest: Passed on to pydantic's ``Field`` (description, examples, min_length …).
    """
    extra = {**rest.pop("json_schema_extra", {}), _KEY: list(readers), _QUOTED: quoted}
    return Field(default, json_schema_extra=extra, **rest)


def everyone(default: Any = ..., **rest: Any) -> Any:
    """Declare a field that every copy may carry."""
    return leaf(default, readers=EVERYONE, **rest)


def readers_of(info: FieldInfo) -> tuple[Reader, ...]:
    """Return the readers declared for a field; the office alone when nothing is declared."""
    extra = info.json_schema_extra
    if isinstance(extra, dict) and _KEY in extra:
        return tuple(extra[_KEY])  # type: ignore[arg-type]
    return OFFICE


def is_quoted(info: FieldInfo) -> bool:
    """Return whether a field repeats the words of somebody else."""
    extra = info.json_schema_extra
    return isinstance(extra, dict) and bool(extra.get(_QUOTED))


class Strict(BaseModel):
    """A frozen model that refuses unknown keys, so that a misspelt key is never silently dropped."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)


def refuse(code: str, found: Any, accepted: str = "") -> PydanticCustomError:
    """Return the error that carries a problem code, what was found and what is accepted."""
    return PydanticCustomError(code, "{found}", {"found": str(found), "accepted": accepted})


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise refuse("wrong-kind", type(value).__name__, "one line of text")
    return value


@dataclass(frozen=True)
class Parsed:
    """Annotation that reads a scalar with one of the parsers in ``units``.

    Attributes:
        parse: Parser taking the typed text.
        examples: Accepted spellings, for the editor's schema.
        schema_types: JSON types an editor should accept.
    """

    parse: Callable[[str], Any]
    examples: tuple[str | int, ...]
    schema_types: tuple[str, ...] = ("string",)

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> CoreSchema:
        """Validate with the parser, turning its refusal into a located error."""
        parse = lru_cache(_MOST_PARSED)(self.parse)  # a roof says "24 in" and "6:12" over and over

        def validate(value: Any) -> Any:
            try:
                return parse(_text(value))
            except units.NotAMeasure as error:
                accepted = self.examples if error.accepted == units.LENGTH_FORMS else error.accepted
                raise refuse(error.code, error.found, "; ".join(map(str, accepted))) from None

        return core_schema.no_info_plain_validator_function(validate)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Describe the field as text with examples."""
        kinds: Any = self.schema_types[0] if len(self.schema_types) == 1 else list(self.schema_types)
        return {"type": kinds, "examples": list(self.examples)}


def length(least: str, most: str, *examples: str) -> Parsed:
    """Return a length field with a declared range, both ends as a roofer would write them."""
    low, high = units.parse_length(least).inches, units.parse_length(most).inches
    return Parsed(
        lambda text: units.parse_length(text, least_in=low, most_in=high),
        examples or ("12 ft 6 in", "12' 6\"", "12.5 ft", "6-1/2 in"),
    )


def _area(text: str) -> units.Area:
    return units.parse_area(text, least=Fraction(1, 10))  # what covers nothing, or holds nothing, is no area


Length = Annotated[units.Length, length("1/64 in", "1000 ft")]
Coordinate = Annotated[units.Length, length("-1000 ft", "1000 ft", "4 ft 6 in", "0 ft", "-12 ft")]
Spacing = Annotated[units.Length, length("1/4 in", "10 ft", "6 in", "16 in oc", "24 oc")]
Exposure = Annotated[units.Length, length("2 in", "12 in", "5-5/8 in", "5 in")]
Thickness = Annotated[units.Length, length("1/64 in", "12 in", "15/32 in", "1/2 in", "0.019 in")]
Pitch = Annotated[units.Pitch, Parsed(units.parse_pitch, ("6:12", "6/12", "6 on 12"))]
Area = Annotated[units.Area, Parsed(_area, ("32.8 sq ft", "1 square"))]
SomeArea = Annotated[units.Area, Parsed(units.parse_area, ("12 sq ft", "0 sq ft"))]  # none is an answer too
Speed = Annotated[units.Speed, Parsed(units.parse_speed, ("130 mph",))]
NailSize = Annotated[units.NailSize, Parsed(units.parse_nail_size, ("2-3/8 x 0.113", "2-1/2 in x 0.131 in"))]
Count = Annotated[int, Parsed(units.parse_count, (4, 1988), ("integer", "string"))]
Quantity = Annotated[Fraction, Parsed(units.parse_quantity, ("5", "3-1/2", "0.5"), ("number", "string"))]


def _percent(text: str) -> Fraction:
    return units.parse_quantity(text.removesuffix("%").rstrip(), most=100)


Percent = Annotated[Fraction, Parsed(_percent, ("8 %", "12.5 %"), ("number", "string"))]

Line = Annotated[str, StringConstraints(min_length=1, max_length=200)]
Prose = Annotated[str, StringConstraints(min_length=1, max_length=4000)]


def _id(value: Any) -> str:
    text = _text(value)
    if not re.fullmatch(r"[A-Z0-9-]{1,24}", text):
        raise refuse("bad-id", text, "capital letters, digits and hyphens, for example S1 or MS")
    return text


Id = Annotated[str, BeforeValidator(_id), StringConstraints(pattern=r"^[A-Z0-9-]{1,24}$")]


def _slug(value: Any) -> str:
    text = _text(value)
    if not re.fullmatch(r"[a-z0-9]+(?:-[a-z0-9]+)*", text):
        raise refuse("bad-id", text, "small letters, digits and hyphens, for example irc-2021-deck-edge")
    return text


Slug = Annotated[str, BeforeValidator(_slug)]


def _date(value: Any) -> date:
    text = _text(value)
    if re.fullmatch(r"\d{4}-\d\d-\d\d", text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            pass
    raise refuse("bad-date", text, "a day as year-month-day, for example 2026-03-16")


class _DateText:
    """Schema of a day: text in an editor, a date in the record."""

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(_date)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": "string", "format": "date", "examples": ["2026-03-16"]}


Day = Annotated[date, _DateText()]


def _moment(text: str) -> datetime:
    if re.fullmatch(r"\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d)?", text):
        try:
            return datetime.fromisoformat(text)
        except ValueError:
            pass
    raise units.NotAMeasure("bad-date", text, ("a time as 2026-03-16T08:12:30",))


Moment = Annotated[datetime, Parsed(_moment, ("2026-03-16T08:12:30",))]


def _day_or_time(text: str) -> date:
    """Return a day, or the time on the wall where the hour is known; a ``datetime`` is a ``date`` too."""
    try:
        return _date(text) if re.fullmatch(r"\d{4}-\d\d-\d\d", text) else _moment(text)
    except (PydanticCustomError, units.NotAMeasure):
        accepted = ("a day as 2026-03-16", "a time at the house as 2026-03-16T15:30")
        raise units.NotAMeasure("bad-date", text, accepted) from None


DayOrTime = Annotated[date, Parsed(_day_or_time, ("2026-03-16", "2026-03-16T15:30"))]


def _offset(text: str) -> str:
    match = re.fullmatch(r"([+-])(\d\d):(\d\d)", text)
    if not match or int(match[2]) > 14 or int(match[3]) > 59:
        raise units.NotAMeasure("bad-date", text, ("an offset from UTC as -04:00",))
    return text


Offset = Annotated[str, Parsed(_offset, ("-04:00", "+00:00"))]


@dataclass(frozen=True)
class Money:
    """An amount in an ISO currency; a Decimal, and text in JSON."""

    amount: Decimal
    currency: str

    @property
    def text(self) -> str:
        """The amount as printed, ``USD 4,860.00``."""
        return f"{self.currency} {self.amount:,.2f}"


def _money(text: str) -> Money:
    accepted = ("a currency and an amount, for example USD 4860.00",)
    match = re.fullmatch(r"([A-Z]{3}) ?(\d{1,3}(?:,\d{3})*|\d{1,9})(\.\d\d)?", text)
    if not match:
        raise units.NotAMeasure("bad-money", text, accepted)
    try:
        return Money(Decimal(match[2].replace(",", "") + (match[3] or "")), match[1])
    except InvalidOperation:
        raise units.NotAMeasure("bad-money", text, accepted) from None


MoneyAmount = Annotated[Money, Parsed(_money, ("USD 4860.00",))]


_ZONES = (
    "a city's zone: America/New_York, America/Chicago, America/Denver, America/Phoenix, America/Los_Angeles"
)


def _zone(value: Any) -> str:
    text = _text(value)
    try:
        # EST is in the list of names too, but knows no summer time; a city does
        if not re.fullmatch(r"UTC|[A-Za-z0-9_+-]{1,30}(/[A-Za-z0-9_+-]{1,30}){1,2}", text):
            raise ZoneInfoNotFoundError
        ZoneInfo(text)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise refuse("bad-time-zone", text, _ZONES) from None
    return text


TimeZone = Annotated[str, BeforeValidator(_zone)]
