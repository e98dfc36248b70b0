"""The sheet before the job: the same copy through other templates, and what is not written down yet."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from packet.closeout.orderlist import order_csv
from packet.reading import read_model
from packet.site.engine import Page
from packet.site.pages import PageList, page_filters
from packet.site.templating import make_environment, render
from packet.text import Words

#: The list of pages; an office's own list stands in for the packaged one.
LIST_NAME = "plan/plan.yaml"

Copy = Mapping[str, Any]


@dataclass(frozen=True)
class Question:
    """One thing the sheet asks for.

    Attributes:
        id: Key of its sentence, under ``plan.questions`` of the words.
        page: Page that lacks it.
        missing: Tells whether a copy lacks it.
    """

    id: str
    page: str
    missing: Callable[[Copy], bool]


def _part(copy: Copy, *path: str) -> Any:
    """Return a part of the record, or None where it or a part above it is not there."""
    found: Any = copy["record"]
    for name in path:
        found = found.get(name) if found else None
    return found


def _order_lines(copy: Copy) -> list[Any]:
    """Return the lines of the order list: what was computed, and goods of no computed use."""
    return [*copy["takeoff"], *(bought for bought in copy["record"]["bought"] if not bought["use"])]


#: Days of papers that come before the work.
BEFORE_THE_WORK = frozenset({"application_before_work"})

#: What is asked, in the order of the pages.
QUESTIONS: tuple[Question, ...] = (
    Question("begins", "index", lambda copy: not _part(copy, "dates", "started")),
    Question("crew", "index", lambda copy: not _part(copy, "people", "crew")),
    Question("roof", "to-buy", lambda copy: not _part(copy, "roof")),
    Question("areas", "to-buy", lambda copy: not _part(copy, "covering", "areas")),
    Question("goods", "to-buy", lambda copy: any(not line["to_buy"] for line in copy["takeoff"])),
    Question("ordered", "to-buy", lambda copy: any(not line["planned"] for line in _order_lines(copy))),
    Question("deck_nail", "nailing-card", lambda copy: not _part(copy, "deck", "nail")),
    Question("shingle_nail", "nailing-card", lambda copy: not _part(copy, "covering", "nail")),
    Question("basis", "permits", lambda copy: not _part(copy, "basis")),
    Question(
        "permit",
        "permits",
        lambda copy: not (_part(copy, "basis", "permit") or _part(copy, "basis", "no_permit")),
    ),
    Question(
        "papers",
        "permits",
        lambda copy: any(
            check["key"] in BEFORE_THE_WORK and not check["day"]
            for duty in copy["duties"]
            for check in duty["days"]
        ),
    ),
    Question("duties", "permits", lambda copy: any(duty["missing"] for duty in copy["duties"])),
    Question("built", "access-and-safety", lambda copy: not _part(copy, "property", "built")),
    Question("paint", "access-and-safety", lambda copy: copy["access"]["lead"] == "ask_areas"),
    Question("asbestos", "access-and-safety", lambda copy: copy["access"]["asbestos"] == "suspect"),
)


def open_questions(copy: Copy) -> tuple[Question, ...]:
    """Return what the record lacks of all that these pages show.

    Args:
        copy: A redacted copy, as in ``packet.json``.
    """
    return tuple(question for question in QUESTIONS if question.missing(copy))


def plan_pages(copy: Copy, template_folders: Sequence[Path], words: Words) -> tuple[Page, ...]:
    """Return the pages of the sheet as Markdown.

    Args:
        copy: A redacted copy, as in ``packet.json``.
        template_folders: The office's templates first, then the packaged ones.
        words: Words of the packet's language.

    Raises:
        Refused: A template or the list of pages is bad, with its file and line.
    """
    path = next(found for folder in template_folders if (found := folder / LIST_NAME).is_file())
    listed = read_model(path, PageList).value.pages
    environment = make_environment(template_folders, words, filters=page_filters(copy, words))
    asked = [{"id": question.id, "page": question.page} for question in open_questions(copy)]
    made = []
    for number, page in enumerate(listed, 1):
        sheet = {"name": page.name, "number": number, "count": len(listed)}
        values = {
            "copy": copy,
            "sheet": sheet,
            "questions": asked,
            "listed": [page.name for page in listed],
            "before_the_work": BEFORE_THE_WORK,
        }
        body = render(environment, f"plan/{page.name}.md.j2", values)
        made.append(Page(page.name, words[page.title], body))
    return tuple(made)


def plan_files(copy: Copy, words: Words) -> dict[str, bytes | Path]:
    """Return the files beside the pages: the order list for a spreadsheet.

    Args:
        copy: A redacted copy, as in ``packet.json``.
        words: Words of the packet's language.
    """
    return {"order-list.csv": order_csv(copy, words)}
