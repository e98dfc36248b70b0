"""One measurement in a process of its own: ``python -m tests.bench.probe NAME OFFICE``; prints JSON."""

import json
import resource
import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

from packet.workspace import Workspace

ROUNDS = 9

#: What an unchanged packet must not wait for.
HEAVY = ("mkdocs", "material", "markdown", "jinja2", "pydantic", "yaml", "PIL", "packet.site.engine")


def timed(work: Callable[[], Any]) -> float:
    """Return how long a piece of work takes [s]."""
    begun = perf_counter()
    work()
    return perf_counter() - begun


def paired(floor: Callable[[], Any], work: Callable[[], Any]) -> dict[str, float]:
    """Return the medians of a floor and of the work it is the floor of, run in turn, and of their ratio."""
    floor(), work()
    pairs = [(timed(floor), timed(work)) for _ in range(ROUNDS)]
    return {
        "floor_s": median(floor_s for floor_s, _ in pairs),
        "work_s": median(work_s for _, work_s in pairs),
        "ratio": median(work_s / floor_s for floor_s, work_s in pairs),
    }


def peak_mib() -> float:
    """Return the most memory this process has held [MiB].

    Linux hands the peak of a parent on to ``getrusage`` of its child, so the child's own count is read there.
    """
    status = Path("/proc/self/status")
    if status.is_file():
        line = next(line for line in status.read_text().splitlines() if line.startswith("VmHWM:"))
        return int(line.split()[1]) / 1024
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / 1024**2 if sys.platform == "darwin" else most / 1024


def series(workspace: Workspace) -> dict[str, Any]:
    """Build a first packet, a second one and one where nothing has changed, all in this process."""
    from packet.build import build

    job = workspace.job_folders()[0]
    told: list[tuple[str, float]] = []

    def fresh() -> tuple[float, dict[str, float]]:
        shutil.rmtree(workspace.out, ignore_errors=True)
        told.clear()
        begun = perf_counter()
        made = build(workspace, job, tell=lambda step: told.append((step, perf_counter())))
        ended = perf_counter()
        assert made.made
        ends = [at for _, at in told[1:]] + [ended]
        return ended - begun, {step: end - at for (step, at), end in zip(told, ends, strict=True)}

    first_s, first_steps = fresh()
    peak = peak_mib()
    second_s, second_steps = fresh()
    unchanged = []
    for _ in range(ROUNDS):
        begun = perf_counter()
        assert not build(workspace, job).made
        unchanged.append(perf_counter() - begun)
    return {
        "first_s": first_s,
        "first_steps_s": first_steps,
        "second_s": second_s,
        "second_steps_s": second_steps,
        "unchanged_s": median(unchanged),
        "peak_mib": peak,
        "peak_after_two_mib": peak_mib(),
    }


def unchanged(workspace: Workspace) -> dict[str, Any]:
    """Run the command where nothing has changed, and tell what it imported."""
    from packet.cli.main import status

    taken_s = timed(lambda: status(["build", "--quiet"]))
    heavy = [name for name in HEAVY if name in sys.modules]
    return {"work_s": taken_s, "imported": heavy, "modules": len(sys.modules), "peak_mib": peak_mib()}


def pages(workspace: Workspace) -> dict[str, Any]:
    """Pages of the outside copy through the whole engine, against both floors; photos left out."""
    from packet.closeout.assemble import assemble
    from packet.closeout.redact import redact
    from packet.site.engine import build_site
    from packet.site.links import broken_links
    from packet.site.pages import make_pages
    from packet.text import load_words
    from tests.bench.floor import pages_floor

    closeout, _ = assemble(workspace, workspace.job_folders()[0])
    words = load_words(workspace.shared_folders())
    copy = redact(closeout, "outside")
    folders = workspace.template_folders()
    scratch = workspace.root / "scratch"
    # Stand-ins, so that links to photos and drawings are sound: copying is no work on pages.
    files: dict[str, bytes | Path] = {"packet.json": b"{}"}
    files |= {photo[size]: b"" for photo in copy["photos"] for size in ("large", "small")}
    files |= {f"drawings/{name}.svg": b"" for name in ("roof-plan", "roof-plan-phone")}

    def site() -> None:
        build_site(
            site_name=words["packet.name"],
            language="en",
            pages=make_pages(copy, folders, words),
            files=files,
            theme_dir=folders[-1] / "theme",
            assets_dir=folders[-1] / "assets",
            epoch=1_773_792_000,
            site_dir=_empty(scratch / "site"),
        )

    bare = pages_floor(copy, folders, words, apart=False)
    apart = pages_floor(copy, folders, words, apart=True)
    found = {
        "pages": len(make_pages(copy, folders, words)),
        "bare": paired(lambda: bare(_empty(scratch / "bare")), site),
        "apart": paired(lambda: apart(_empty(scratch / "apart")), site),
        "templates_s": median(timed(lambda: make_pages(copy, folders, words)) for _ in range(ROUNDS)),
        "links_s": median(timed(lambda: broken_links(scratch / "site")) for _ in range(ROUNDS)),
    }
    for name in ("bare", "apart"):
        assert len(list((scratch / name).glob("*.html"))) == found["pages"]
    return found


def photos(workspace: Workspace) -> dict[str, Any]:
    """Facts and renditions of every original, against their floor."""
    from packet.photos.facts import read_facts
    from packet.photos.renditions import render_all
    from tests.bench.floor import photos_floor

    originals = sorted(path for path in workspace.jobs.rglob("*.jp*g") if path.is_file())
    cache = workspace.root / "scratch" / "photos"

    def rendered() -> None:
        named = [(path.stem, path, read_facts(path).sha256) for path in originals]
        assert len(render_all(named, _empty(cache))) == len(originals)

    measured = paired(lambda: photos_floor(originals), rendered) if originals else {}
    mib = sum(path.stat().st_size for path in originals) / 1024**2
    return {"photos": len(originals), "mib": mib, **measured, "peak_mib": peak_mib()}


def _empty(folder: Path) -> Path:
    """Return a folder that is not there, its parent made."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.parent.mkdir(parents=True, exist_ok=True)
    return folder


PROBES: dict[str, Callable[[Workspace], dict[str, Any]]] = {
    "series": series,
    "unchanged": unchanged,
    "pages": pages,
    "photos": photos,
}

if __name__ == "__main__":
    print(json.dumps(PROBES[sys.argv[1]](Workspace(Path.cwd()))))
