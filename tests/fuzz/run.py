"""``python -m tests.fuzz.run --minutes 60``: changed records, photos and measures, until the time is up.

Every case is made from the seed and its number, so that ``--seed S --only N`` runs one again. A fault is kept,
made as small as it goes, in a folder of its own below ``--keep``, and printed.
"""

import argparse
import faulthandler
import hashlib
import json
import resource
import sys
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import monotonic

from tests.fuzz import measures
from tests.fuzz.cases import KINDS, Case, case, demos
from tests.fuzz.judge import Bench, Fault
from tests.fuzz.shrink import smallest

#: Pages are filled for one accepted record in so many.
DEEP_EVERY = 12
#: Texts read as measures with each case.
MEASURES_A_CASE = 40
#: A case that does not come back at all ends the run with a traceback after this long [s].
HANGS_AFTER_S = 300
#: Memory of the run [bytes]; a case that takes more is a fault.
MOST_MEMORY = 4_000_000_000
#: Between two lines of progress [s].
TOLD_EVERY_S = 60.0


@dataclass
class Tally:
    """What a run did.

    Attributes:
        cases: Cases by what was changed.
        texts: Texts read as measures.
        faults: Faults by signature, with how often each was met.
        slowest_s: Longest case [s].
        answers: Exit codes and problem codes met.
    """

    cases: Counter[str] = field(default_factory=Counter)
    texts: int = 0
    faults: Counter[str] = field(default_factory=Counter)
    slowest_s: float = 0.0
    answers: Counter[str] = field(default_factory=Counter)

    def line(self) -> str:
        """Return the state in one line."""
        return (
            f"{sum(self.cases.values()):,} cases, {self.texts:,} texts, {len(self.faults)} kinds of fault, "
            f"slowest {self.slowest_s:.1f} s"
        )


def fuzz(
    root: Path,
    keep: Path,
    seed: int,
    seconds: float,
    *,
    first: int = 0,
    most: int | None = None,
    kind: str = "",
) -> Tally:
    """Run cases until the time is up.

    Args:
        root: Checkout whose demo jobs are changed.
        keep: Folder for faults; made when one is met.
        seed: Seed of the run.
        seconds: How long to run [s].
        first: Number of the first case.
        most: Run no more cases than this.
        kind: Make changes of this kind only.
    """
    tally, base = Tally(), demos(root)
    until, told, number = monotonic() + seconds, monotonic(), first
    with TemporaryDirectory(prefix="fuzz-") as folder:
        bench = Bench(Path(folder), base)
        while monotonic() < until and (most is None or number < first + most):
            faulthandler.dump_traceback_later(HANGS_AFTER_S, exit=True)
            begun = monotonic()
            made = case(base, seed, number, kind)
            fault = bench.judge(made.job, made.files, deep=number % DEEP_EVERY == 0)
            tally.slowest_s = max(tally.slowest_s, monotonic() - begun)
            tally.cases[made.kind] += 1
            if fault:
                _kept(fault, made, bench, keep, tally)
            _read_measures(seed, number, keep, tally)
            number += 1
            if monotonic() - told > TOLD_EVERY_S:
                told = monotonic()
                print(tally.line(), flush=True)
        faulthandler.cancel_dump_traceback_later()
        tally.answers = bench.seen
    return tally


def _read_measures(seed: int, number: int, keep: Path, tally: Tally) -> None:
    dice = Random(f"{seed}:{number}:measures")
    for _ in range(MEASURES_A_CASE):
        text = measures.words(dice)
        tally.texts += 1
        for kind in measures.PARSERS:
            fault = measures.judged(kind, text)
            if fault and not tally.faults[fault.signature]:
                _write(
                    keep,
                    fault,
                    f"seed {seed}, case {number}",
                    {"text.txt": text.encode("utf-8", "surrogatepass")},
                )
            if fault:
                tally.faults[fault.signature] += 1


def _kept(fault: Fault, made: Case, bench: Bench, keep: Path, tally: Tally) -> None:
    """Count a fault, and keep it as small as it goes when it is the first of its kind."""
    tally.faults[fault.signature] += 1
    if tally.faults[fault.signature] > 1:
        return
    deep = fault.kind == "pages"

    def shows(files: object) -> bool:
        faulthandler.dump_traceback_later(HANGS_AFTER_S, exit=True)
        found = bench.judge(made.job, files, deep=deep)  # type: ignore[arg-type]
        return found is not None and found.signature == fault.signature

    seen = bench.seen.copy()
    small = smallest(made.files, shows)
    bench.seen = seen  # a search is no part of the run
    _write(
        keep, fault, f"seed {made.seed}, case {made.number}, job {made.job}, {made.kind}", small, made.files
    )


def _write(
    keep: Path, fault: Fault, where: str, small: dict[str, bytes], whole: dict[str, bytes] | None = None
) -> None:
    name = hashlib.sha256(fault.signature.encode()).hexdigest()[:8]
    folder = keep / f"{fault.kind.replace(' ', '-')}-{name}"
    for below, files in (("small", small), ("whole", whole or {})):
        for file, data in files.items():
            path = folder / below / file
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
    (folder / "why.txt").write_text(
        f"{fault.signature}\n{where}\n\n{fault.detail[:20_000]}\n", encoding="utf-8", errors="replace"
    )
    print(f"FAULT {fault.signature}\n  {where}\n  kept in {folder}", flush=True)


def main() -> int:
    """Run from the command line; 1 when a fault was met."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.fuzz.run", description=(__doc__ or "").splitlines()[0]
    )
    parser.add_argument("--minutes", type=float, default=1.0)
    parser.add_argument("--seed", type=int, default=None, help="default: another one each time")
    parser.add_argument("--only", type=int, default=None, help="run the case of this number and no other")
    parser.add_argument(
        "--kind", choices=sorted(set(KINDS)), default="", help="make changes of this kind only"
    )
    parser.add_argument("--keep", type=Path, default=Path("fuzz-faults"), help="folder for what is found")
    chosen = parser.parse_args()
    seed = chosen.seed if chosen.seed is not None else Random().randrange(10**6)
    print(f"seed {seed}", flush=True)
    first, most = (chosen.only, 1) if chosen.only is not None else (0, None)
    begun = monotonic()
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, resource.getrlimit(resource.RLIMIT_AS)[1]))
    root = Path(__file__).resolve().parents[2]
    tally = fuzz(root, chosen.keep, seed, chosen.minutes * 60, first=first, most=most, kind=chosen.kind)
    print(
        json.dumps(
            {"cases": tally.cases, "answers": dict(tally.answers.most_common()), "faults": tally.faults},
            indent=1,
        )
    )
    print(f"seed {seed}: {tally.line()} in {(monotonic() - begun) / 60:.1f} minutes")
    return 1 if tally.faults else 0


if __name__ == "__main__":
    sys.exit(main())
