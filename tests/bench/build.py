"""The benchmark: ``python -m tests.bench.build`` measures, and prints ratios of one run on one machine."""

import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

from tests.bench.demos import measure_demos
from tests.bench.phone import draw_phone_photos
from tests.bench.table import rows, shown

ROOT = Path(__file__).resolve().parents[2]
JOB = "26-041"
PAIRS = 7
PACKET = ("-m", "packet")
ENVIRONMENT = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
ENVIRONMENT |= {"PYTHONPATH": str(ROOT)}


def make_office(folder: Path, *jobs: str) -> Path:
    """Make an office of demo jobs outside the checkout; of the first one when none is named."""
    for job in jobs or (JOB,):
        shutil.copytree(ROOT / "jobs" / job, folder / "jobs" / job)
    (folder / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", folder / "shared")
    return folder


def python(folder: Path, *arguments: str) -> str:
    """Run Python in a folder and return what it printed."""
    done = subprocess.run(
        [sys.executable, *arguments],
        cwd=folder,
        env=ENVIRONMENT,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    if done.returncode:
        raise RuntimeError(f"{arguments}: exit code {done.returncode}\n{done.stdout}{done.stderr}")
    return done.stdout


def seconds(folder: Path, *arguments: str) -> float:
    """Return how long a run of Python takes, start to exit [s]."""
    begun = perf_counter()
    python(folder, *arguments)
    return perf_counter() - begun


def probe(name: str, folder: Path) -> dict[str, Any]:
    """Measure in a process of its own."""
    measured: dict[str, Any] = json.loads(python(folder, "-m", "tests.bench.probe", name))
    return measured


def against_bare(folder: Path, *arguments: str) -> dict[str, float]:
    """Return the medians of bare Python, of a command, and of their ratio, pair by pair."""
    bare = ("-c", "pass")
    seconds(folder, *bare), seconds(folder, *arguments)
    pairs = [(seconds(folder, *bare), seconds(folder, *arguments)) for _ in range(PAIRS)]
    return {
        "floor_s": median(bare_s for bare_s, _ in pairs),
        "work_s": median(work_s for _, work_s in pairs),
        "ratio": median(work_s / bare_s for bare_s, work_s in pairs),
    }


def measure(folder: Path) -> dict[str, Any]:
    """Measure everything, in offices made in an empty folder."""
    office = make_office(folder / "office")
    phone = folder / "phone"
    draw_phone_photos(phone / "jobs" / "00-000" / "photos")
    found: dict[str, Any] = {"load": os.getloadavg()[0], "help": against_bare(office, *PACKET, "--help")}
    found["cold_command_s"] = seconds(office, *PACKET, "build")
    found["series"] = probe("series", office)
    found["command"] = against_bare(office, *PACKET, "build")
    found["unchanged"] = probe("unchanged", office)
    found["pages"] = probe("pages", office)
    found["photos"] = probe("photos", office)
    found["phone"] = probe("photos", phone)
    jobs = [path.name for path in sorted((ROOT / "jobs").iterdir())]
    demos = make_office(folder / "demos", *jobs)
    found["demos"] = measure_demos(demos, lambda office, *words: python(office, *PACKET, *words))
    return found


def main() -> None:
    """Measure and print the table."""
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        print(shown(rows(measure(Path(folder)))))


if __name__ == "__main__":
    main()
