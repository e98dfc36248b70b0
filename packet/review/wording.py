"""Wording: what a typed note says that a packet does not say, with a plain way to say it; nothing is refused.

Held against the list is every text that goes out in each copy. Words of somebody else are let stand: fields
declared as quoted, and what stands in quotation marks.
"""

import re
from collections.abc import Iterator, Mapping, Sequence

from pydantic import BaseModel

from packet.fields import is_quoted, readers_of
from packet.photos.taken import TakenPhoto
from packet.readers import OFFICE, READERS, Reader
from packet.record.job import JobRecord
from packet.reference import Library
from packet.reference.avoid import Avoided, AvoidFile, avoided_in
from packet.review.catalogue import BY_ID
from packet.review.model import Finding
from packet.review.places import WORDING, step_name

#: Copies that leave the office; a finding shows the words, so a text that one of them lacks is not looked at.
_GO_OUT = frozenset(READERS) - frozenset(OFFICE)

#: Spans in quotation marks. A mark behind a digit is inches or feet, one inside a word an apostrophe.
_QUOTATION = re.compile(
    r"(?<![\w\"])\"(?=\S)[^\"\n]*\"|“[^”\n]*”|«[^»\n]*»|„[^“”\n]*[“”]"
    r"|(?<!\w)['‘](?=\S)(?:[^'’\n]|(?<=\w)['’](?=\w))*['’](?!\w)"
)


def wording_findings(record: JobRecord, photos: Sequence[TakenPhoto], library: Library) -> Iterator[Finding]:
    """Yield one finding for each text with words to avoid: what was written, and the plain way.

    Its subject is the place of the text in the record, such as ``found.F1.done``, or the id of the photo
    whose caption it is.

    Args:
        record: The job record.
        photos: Its captioned photos.
        library: Where the list of words is, the packaged one and the office's.
    """
    files = library.avoided()
    withheld = {photo.entry.id for photo in photos if not _goes_out(photo.entry.readers)}
    captions = ((photo.entry.id, photo.entry.shows) for photo in photos if photo.entry.id not in withheld)
    for subject, text in (*_texts(record, "", withheld), *captions):
        found = own_words_avoided(text, files)
        if found:
            yield Finding(WORDING, subject, (), _words(found))


def own_words_avoided(text: str, files: Sequence[AvoidFile]) -> tuple[Avoided, ...]:
    """Return the avoided phrases of a text that do not stand in quotation marks."""
    found = avoided_in(text, files)
    quoted = [match.span() for match in _QUOTATION.finditer(text)] if found else []
    return tuple(hit for hit in found if not any(a <= hit.start and hit.end <= b for a, b in quoted))


def _words(found: Sequence[Avoided]) -> Mapping[str, str]:
    """Return what a finding shows: each phrase as written, what it does, and the plain way to say it."""
    said = (f"“{' '.join(hit.written.split())}” {hit.title}. {hit.plainly}" for hit in found)
    return {f"phrase_{number:02}": text for number, text in enumerate(dict.fromkeys(said), 1)}


def _texts(value: object, place: str, withheld: set[str]) -> Iterator[tuple[str, str]]:
    """Yield the texts of a part of the record that the contractor worded, each with its place."""
    if isinstance(value, str):
        yield place, value
    elif isinstance(value, BaseModel):
        if _goes_out(getattr(value, "readers", READERS)) and _is_asked_outside(value):
            for name, info in type(value).model_fields.items():
                if _goes_out(readers_of(info)) and not is_quoted(info):
                    yield from _texts(getattr(value, name), f"{place}.{name}".removeprefix("."), withheld)
    elif isinstance(value, tuple):
        for index, entry in enumerate(value):
            yield from _texts(entry, f"{place}.{step_name(getattr(entry, 'id', index))}", withheld)
    elif isinstance(value, Mapping):
        for key, entry in value.items():
            if _key_goes_out(str(key), withheld):
                yield from _texts(entry, f"{place}.{step_name(key)}", withheld)


def _goes_out(readers: Sequence[Reader]) -> bool:
    return _GO_OUT.issubset(readers)


def _is_asked_outside(entry: BaseModel) -> bool:
    """Return whether an entry is not on a requirement that is the office's alone."""
    name = getattr(entry, "requirement", None)
    return not (isinstance(name, str) and _is_the_offices(name))


def _key_goes_out(key: str, withheld: set[str]) -> bool:
    """Return whether what is said of a requirement or a finding goes out, and is not itself on wording."""
    subject = key.partition(":")[2]
    return not (_is_the_offices(key) or subject in withheld or key.startswith(f"{WORDING}:"))


def _is_the_offices(name: str) -> bool:
    requirement = BY_ID.get(name.partition(":")[0])
    return requirement is not None and requirement.office_only
