"""What page and paper say of a photo's time: which area it missed, on whose word it rests, by which clock it is right."""

import json
import re
from html import unescape

import pytest

from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.readers import READERS
from packet.site.pages import make_pages
from packet.text import load_words
from tests.paper.conftest import Paper, papers
from tests.support.office import Office, demo_text
from tests.support.pictures import picture

EDGE, FELT = "deck-nail-edge-spacing", "underlayment-fastening"

BOTH = ["outside", "office"]

#: Photos by id: the camera's time ("" for none), and the entry.
PHOTOS = {
    "P1": ("2026:03:16 15:03:00", {"proves": [EDGE], "plane": "MS", "taken_by": "Tam Oduya"}),
    "P2": ("2026:03:17 09:00:00", {"proves": [EDGE], "plane": "MS", "taken_by": "Dov Marrick"}),
    "P3": ("", {"proves": [EDGE], "taken_at": "2026-03-16T11:00", "stated_by": "Dov Marrick, by {by} text & call"}),
    "P4": ("", {"proves": [EDGE], "taken_at": "2026-03-16T11:30"}),
    "P5": ("", {"proves": [EDGE], "taken_at": "2026-03-16T11:45", "readers": ["office"]}),
    "P6": ("2026:03:17 09:10:00", {"proves": [EDGE], "plane": "MS", "readers": ["office"]}),
}  # fmt: skip
CLOCK = {
    "taken_by": "Tam Oduya", "ahead": "4 min", "from": "2026-03-16", "until": "2026-03-16",
    "how": "held beside the phone's network time",
}  # fmt: skip

FOR_ALL = (
    "P2: taken after area A1 was dried in (March 16, 2026, 15:00)",
    "P3: time as stated by Dov Marrick, by {by} text & call, not by the camera: weaker proof",
    "P4: time as written in the log, not by the camera: weaker proof",
    "P1, March 16, 2026, 15:03 (UTC−04:00), by a right clock March 16, 2026, 14:59 (UTC−04:00): this camera's was "
    "4 min ahead (held beside the phone's network time), Tam Oduya",
    "P3, March 16, 2026, 11:00, as stated by Dov Marrick, by {by} text & call",
    "P4, March 16, 2026, 11:30, as written in the log, not by the camera",
)
FOR_OFFICE = (
    "P5: time as written in the log, not by the camera: weaker proof",
    "P6: taken after area A1 was dried in (March 16, 2026, 15:00)",
)
FOR_OTHERS = ("time as stated, not by the camera, in the office's copy: 1",)


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Office:
    """The demo job, its front dried in on the first afternoon, with photos of every kind of time."""
    office = Office(tmp_path_factory.mktemp("times") / "office", demo_text())
    office.changed("covering.areas.A1.dried_in", "2026-03-16T15:00")
    office.changed("covering.areas.A2.opened", "2026-03-17")
    entries = []
    for id, (taken, entry) in PHOTOS.items():
        picture(office.job / "photos" / f"{id}.jpg", taken=taken, offset="-04:00" if taken else "")
        head = {
            "id": id,
            "file": f"photos/{id}.jpg",
            "stage": "deck",
            "shows": f"Photo {id}.",
            "readers": BOTH,
        }
        entries.append({**head, **entry})
    log = json.dumps({"photos": entries, "clocks": [CLOCK]})
    (office.job / "photos.yaml").write_text(log, encoding="utf-8")
    return office


def plain(markup: str) -> str:
    """Return what a page says, without its marks."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", markup)).split())


@pytest.fixture(scope="module")
def said(office: Office) -> dict[str, str]:
    """What the pages of each copy say."""
    closeout, _ = assemble(office.workspace, office.job)
    words = load_words(office.workspace.shared_folders())
    folders = office.workspace.template_folders()
    return {
        reader: plain(" ".join(page.body for page in make_pages(redact(closeout, reader), folders, words)))
        for reader in READERS
    }


@pytest.fixture(scope="module")
def printed(office: Office) -> dict[str, Paper]:
    return papers(office.root)


def close(text: str) -> str:
    """Return text without spaces, quotation marks straight and hyphens gone: lines of paper end anywhere."""
    return re.sub(r"[\s\u00ad-]", "", text.replace("\u2019", "'").replace("−", ""))


def test_a_time_that_nobody_measured_still_meets_and_the_row_says_so(office: Office) -> None:
    result = office.result(EDGE)
    assert (result.word, result.evidence) == ("meets", ("P1", "P3", "P4", "P5"))
    assert (result.stated, result.late) == (("P3", "P4", "P5"), ("P2", "P6"))


@pytest.mark.parametrize("reader", READERS)
def test_pages_say_what_a_photos_time_rests_on(said: dict[str, str], reader: str) -> None:
    for sentence in FOR_ALL:
        assert sentence in said[reader]


@pytest.mark.parametrize("reader", READERS)
def test_paper_says_the_same(printed: dict[str, Paper], reader: str) -> None:
    letters = close(printed[reader].text)
    for sentence in FOR_ALL:
        assert close(sentence) in letters


def test_of_withheld_photos_only_their_number_is_told(
    office: Office, said: dict[str, str], printed: dict[str, Paper]
) -> None:
    for sentence in FOR_OFFICE:
        assert sentence in said["office"]
        assert sentence not in said["outside"]
    for sentence in FOR_OTHERS:
        assert sentence in said["outside"]
        assert close(sentence) in close(printed["outside"].text)
        assert sentence not in said["office"]
    copy = redact(office.closeout(), "outside")
    (row,) = [row for row in copy["results"] if row["requirement"] == EDGE]
    assert (row["stated"], row["stated_elsewhere"]) == (["P3", "P4"], 1)
    assert [miss["photo"] for miss in row["missed"]] == ["P2"]


@pytest.mark.parametrize("reader", READERS)
def test_times_of_areas_stand_with_the_covering(
    said: dict[str, str], printed: dict[str, Paper], reader: str
) -> None:
    assert "A1 MS as the job March 16, 2026, 15:00 as the job" in said[reader]
    assert "A2 WW March 17, 2026 as the job as the job" in said[reader]
    letters = close(printed[reader].text)
    assert close("A1 MS as the job March 16, 2026, 15:00 as the job") in letters


def test_without_times_of_areas_nothing_is_said_of_them(job_office: Office) -> None:
    closeout = job_office.closeout()
    words = load_words(job_office.workspace.shared_folders())
    pages = make_pages(redact(closeout, "outside"), job_office.workspace.template_folders(), words)
    assert not any('id="area-times"' in page.body for page in pages)
