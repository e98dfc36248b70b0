"""A small office whose packet is built, for tests of what is done with a packet afterwards."""

import shutil
from pathlib import Path

from packet.build import Built, build
from tests.conftest import SMALLEST
from tests.support.office import NUMBER, Office
from tests.support.pictures import picture

#: Entry of the one photo.
PHOTO = {
    "id": "P01",
    "file": "photos/P01.jpg",
    "stage": "done",
    "shows": "Done.",
    "readers": ["outside", "office"],
}


def built_office(root: Path, record: str = SMALLEST) -> Office:
    """Return an office with one job and one photo, built."""
    office = Office(root, record)
    picture(office.job / "photos" / "P01.jpg", size=(320, 240))
    office.log(PHOTO)
    build(office.workspace, office.job)
    return office


def copied(office: Office, root: Path) -> Office:
    """Return a copy of an office with its output; a packet does not depend on where it lies."""
    shutil.copytree(office.root, root / "copy")
    copy = Office.__new__(Office)
    copy.root, copy.job = root / "copy", root / "copy" / "jobs" / NUMBER
    return copy


def packet_of(office: Office) -> Built:
    """Return an office's packet, built when it is not current."""
    return build(office.workspace, office.job)
