"""``packet holds`` over 500 jobs: seconds when nothing was kept, and when nothing changed.

Run ``python -m tests.bench.holds``. Jobs are copies of the demo jobs with their photos; a third is closed.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

from tests.support.office import ROOT
from tests.support.yamltext import with_value

DEMOS = ("26-041", "26-052", "26-067")
STATUSES = ("under way", "under way", "closed")


def make_office(root: Path, jobs: int) -> None:
    """Write an office of so many jobs; photos are linked as hard links where the disk lets it."""
    shutil.copytree(
        ROOT / "shared", root / "shared", ignore=lambda folder, names: set(names) - {"office.yaml"}
    )
    texts = {demo: (ROOT / "jobs" / demo / "job.yaml").read_text(encoding="utf-8") for demo in DEMOS}
    for n in range(jobs):
        demo, number = DEMOS[n % 3], f"30-{n:03}"
        folder = root / "jobs" / number
        (folder / "photos").mkdir(parents=True)
        text = with_value(with_value(texts[demo], "job.number", number), "job.status", STATUSES[n // 3 % 3])
        (folder / "job.yaml").write_text(text, encoding="utf-8")
        shutil.copy(ROOT / "jobs" / demo / "photos.yaml", folder)
        for photo in (ROOT / "jobs" / demo / "photos").iterdir():
            try:
                os.link(photo, folder / "photos" / photo.name)
            except OSError:
                shutil.copy(photo, folder / "photos")


def seconds(root: Path) -> float:
    begun = perf_counter()
    code = "import sys; from packet.cli.main import run; sys.argv = ['packet', 'holds']; run()"
    subprocess.run([sys.executable, "-c", code], cwd=root, stdout=subprocess.DEVNULL, check=True)
    return perf_counter() - begun


def main(jobs: int = 500) -> None:
    with tempfile.TemporaryDirectory(prefix="packet-bench-holds-") as name:
        root = Path(name)
        make_office(root, jobs)
        cold = seconds(root)
        print(f"{jobs} jobs, nothing kept: {cold:.1f} s; unchanged: {seconds(root):.2f} s")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
