"""The note beside the folder: what it says, and that it opens as plain text anywhere."""

from typing import Any

from packet.handover.note import note
from packet.text import load_words
from packet.workspace import packaged

CARD = {"name": "Pike and Gannet Roofing", "phone": "843-555-0142", "hours": "weekdays 7 to 5"}


def copy_of(**changed: Any) -> dict[str, Any]:
    return {
        "packet": {"reader": changed.get("reader", "outside")},
        "office": {**CARD, **changed.get("office", {})},
        "record": {
            "job": {"number": "26-041", "revision": 2},
            "property": {"street": changed.get("street", "18 Heron Lane"), "town": "Pellam Reach"},
        },
    }


def made(**changed: Any) -> bytes:
    words = load_words([packaged("shared")])
    return note(copy_of(**changed), "26-041-outside", [packaged("templates")], words)


def test_it_names_job_house_folder_and_whom_to_call() -> None:
    lines = made().decode("ascii").split("\r\n")
    assert lines[:2] == ["Closeout packet 26-041, revision 2", "18 Heron Lane, Pellam Reach"]
    assert "UNZIP FIRST, THEN OPEN index.html" in lines
    assert lines[-3:] == ["Questions: Pike and Gannet Roofing, 843-555-0142", "weekdays 7 to 5", ""]
    text = " ".join(lines)
    assert "Open the folder 26-041-outside and double-click index.html" in text
    assert "Ask us for the PDF" in text


def test_it_fits_old_viewers_that_neither_wrap_lines_nor_guess_their_ends() -> None:
    text = made(street="18 Heron Lane, the house behind the boatyard, second gate on the left hand side")
    assert max(len(line) for line in text.split(b"\r\n")) <= 68
    assert text.count(b"\n") == text.count(b"\r\n") == text.count(b"\r")


def test_letters_beyond_ascii_are_marked_as_such() -> None:
    assert not made().startswith(b"\xef\xbb\xbf")
    text = made(street="18 Calle Peñón")
    assert text.startswith(b"\xef\xbb\xbf")
    assert "18 Calle Peñón, Pellam Reach" in text.decode("utf-8-sig")


def test_typed_text_stands_letter_for_letter() -> None:
    street = "18 <b>Heron</b> &amp; {{ copy }} *Lane*"
    assert street in made(street=street).decode("ascii")


def test_the_offices_copy_says_whose_it_is() -> None:
    line = b"the office's copy, not to be passed on\r\n"
    assert line in made(reader="office")
    assert line not in made()


def test_a_firm_without_hours_has_no_empty_line_for_them() -> None:
    assert made(office={"hours": ""}).endswith(b"843-555-0142\r\n")
