"""What was measured, as lines of a table: ratios and aims; seconds are for orientation."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

#: Most that is aimed at: ratios to a floor, or seconds.
PAGES_TIMES, HELP_TIMES, UNCHANGED_S, COMMAND_S = 3.0, 5.0, 0.1, 0.6

#: Most of a cold build that a build of unchanged jobs may take.
UNCHANGED_SHARE = 0.25


@dataclass(frozen=True)
class Row:
    """A line of the table.

    Attributes:
        what: What was measured.
        measured: The measure with its unit.
        against: What it was measured against, and what else a reader should know.
        value: The number that is held against the aim, in the aim's unit.
        aim: Most that is aimed at; None when there is no aim.
    """

    what: str
    measured: str
    against: str = ""
    value: float = 0.0
    aim: float | None = None

    @property
    def verdict(self) -> str:
        """Whether the aim is met."""
        return "" if self.aim is None else ("meets" if self.value <= self.aim else "MISSES")


def rows(found: Mapping[str, Any]) -> list[Row]:
    """Return the table of a measurement."""
    return [
        *_whole(found),
        *_starts(found),
        *_pages(found["pages"]),
        *_photos(found),
        *_memory(found),
        *_demos(found["demos"]),
    ]


def shown(table: Sequence[Row]) -> str:
    """Return the table as text."""
    lines = [("measured", "", "aim", "", "against")]
    for row in table:
        aim = "" if row.aim is None else f"{row.aim:g}"
        lines.append((row.what, row.measured, aim, row.verdict, row.against))
    widths = [max(len(line[column]) for line in lines) for column in range(4)]
    cells = ([cell.ljust(width) for cell, width in zip(line, widths, strict=False)] for line in lines)
    return "\n".join("  ".join([*row, line[4]]).rstrip() for row, line in zip(cells, lines, strict=True))


def _whole(found: Mapping[str, Any]) -> Iterator[Row]:
    """Whole packets: as a command, then in one process, then with nothing changed."""
    series = found["series"]
    start = f"fresh out/ and cache, imports and all; load of the machine {found['load']:.1f}"
    yield Row("first packet, a command", f"{found['cold_command_s']:.2f} s", start)
    for name, title in (("first", "first packet in a process"), ("second", "second in the process")):
        steps = series[f"{name}_steps_s"]
        pages_s = sum(taken for step, taken in steps.items() if step not in ("record", "photos"))
        parts = f"record {steps['record']:.2f}, photos {steps['photos']:.2f}, both copies {pages_s:.2f} s"
        yield Row(title, f"{series[f'{name}_s']:.2f} s", f"fresh out/ and cache; {parts}")
    unchanged_s = series["unchanged_s"]
    part = f"{unchanged_s / series['second_s']:.3f} of the second"
    yield Row("unchanged, in the process", f"{unchanged_s:.3f} s", part, unchanged_s, UNCHANGED_S)


def _starts(found: Mapping[str, Any]) -> Iterator[Row]:
    """Commands that should hardly be noticed."""
    command, asked, alone = found["command"], found["help"], found["unchanged"]
    text = f"{command['ratio']:.1f} x bare Python, {alone['peak_mib']:.0f} MiB"
    yield Row("unchanged, a command", f"{command['work_s']:.3f} s", text, command["work_s"], COMMAND_S)
    text = f"of what a build needs; {alone['modules']} modules in all"
    yield Row(
        "it imported", ", ".join(alone["imported"]) or "nothing", text, "mkdocs" in alone["imported"], 0
    )
    text = f"bare Python; {_both(asked)}"
    yield Row("packet --help", f"{asked['ratio']:.1f} x", text, asked["ratio"], HELP_TIMES)


def _pages(pages: Mapping[str, Any]) -> Iterator[Row]:
    """Pages of one copy, warm, photos left out."""
    bare, apart = pages["bare"], pages["apart"]
    text = f"bare Markdown + Jinja; {pages['pages']} pages, {_both(bare)}"
    yield Row("pages of a copy, warm", f"{bare['ratio']:.1f} x", text, bare["ratio"], PAGES_TIMES)
    text = f"the same, HTML blocks kept from Markdown; {_both(apart)}"
    yield Row("", f"{apart['ratio']:.1f} x", text)
    text = f"our page templates alone; the link check takes {pages['links_s']:.3f} s more"
    yield Row("", f"{pages['templates_s']:.3f} s", text)


def _photos(found: Mapping[str, Any]) -> Iterator[Row]:
    """Photo work apart from page work."""
    for name, title in (("photos", "demo photos"), ("phone", "photos of a phone's size")):
        pair = found[name]
        if pair["photos"]:
            size = f"{pair['photos']} photos, {pair['mib']:.1f} MiB"
            text = (
                f"read, digest, half decode on 2 threads; {size}, {_both(pair)}, {pair['peak_mib']:.0f} MiB"
            )
            yield Row(title, f"{pair['ratio']:.1f} x", text)


def _memory(found: Mapping[str, Any]) -> Iterator[Row]:
    series = found["series"]
    text = f"after the second packet {series['peak_after_two_mib']:.0f} MiB"
    yield Row("peak memory, one packet", f"{series['peak_mib']:.0f} MiB", text)


def _demos(demos: Mapping[str, Any]) -> Iterator[Row]:
    """All demo jobs as commands: what the cache, an unchanged job and a second process save."""
    one, two = demos["1"], demos["2"]
    for name, title in (("cold_s", "cold"), ("warm_s", "photo cache warm"), ("unchanged_s", "unchanged")):
        text = f"{one[name] / one['cold_s']:.2f} of cold; two processes {two[name]:.2f} s, {two[name] / one[name]:.2f} x"
        aim = UNCHANGED_SHARE if name == "unchanged_s" else None
        yield Row(
            f"{demos['jobs']} demo jobs, {title}", f"{one[name]:.2f} s", text, one[name] / one["cold_s"], aim
        )
    for name, ending in (("zip_s", ".zip"), ("pdf_s", ".pdf")):
        files = {file: size for file, size in sorted(demos["handed"].items()) if file.endswith(ending)}
        sizes = ", ".join(f"{file} {size / 1e6:.1f} MB" for file, size in files.items())
        yield Row(f"packet {ending[1:]}, all", f"{demos[name]:.2f} s", sizes)


def _both(pair: Mapping[str, float]) -> str:
    return f"{pair['work_s']:.3f} / {pair['floor_s']:.3f} s"
