"""All demo jobs in one go: cold, warm and unchanged, on one process and on two; then paper and zips."""

import shutil
from collections.abc import Callable
from pathlib import Path
from time import perf_counter
from typing import Any

#: Runs ``packet`` in a folder and returns what it printed.
Packet = Callable[..., str]


def measure_demos(office: Path, packet: Packet) -> dict[str, Any]:
    """Return seconds of whole commands over every demo job, and the sizes of what is handed on.

    Cold is with neither output nor photo cache; warm has the cache; unchanged has both.

    Args:
        office: An office folder of its own with the demo jobs.
        packet: Runs the command in it.
    """
    out = office / "out"

    def seconds(*arguments: str) -> float:
        begun = perf_counter()
        packet(office, *arguments)
        return perf_counter() - begun

    found: dict[str, Any] = {"jobs": len(list((office / "jobs").iterdir()))}
    for processes in ("1", "2"):
        build = ("build", "--processes", processes)
        shutil.rmtree(out, ignore_errors=True)
        cold_s = seconds(*build)
        for folder in (office / "jobs").iterdir():
            shutil.rmtree(out / folder.name)
        found[processes] = {"cold_s": cold_s, "warm_s": seconds(*build), "unchanged_s": seconds(*build)}
    found["zip_s"], found["pdf_s"] = seconds("zip"), seconds("pdf")
    found["handed"] = {path.name: path.stat().st_size for path in out.glob("*.*") if path.is_file()}
    return found
