"""Goods and other things that photos of the demo jobs show, beside what their entries say."""

from collections.abc import Mapping
from dataclasses import replace

from .log_entry import Entry

VALLEY: Mapping[str, tuple[str, ...]] = {
    "P07": ("CO1",),
    "P13": ("CO1",),
    "P15": ("PANELS",),
    "P19": ("STRIP",),
    "P21": ("FELT",),
    "P22": ("DRIP",),
    "P24": ("STEP",),
    "P25": ("SHINGLES",),
    "P27": ("CEMENT",),
    "P33": ("SHINGLES", "PANELS", "FELT", "STRIP", "STEP", "CEMENT", "DRIP"),
}
HIP: Mapping[str, tuple[str, ...]] = {
    "P14": ("PANELS",),
    "P15": ("DECK-NAILS",),
    "P19": ("renailed-way",),
    "P20": ("TAPE",),
    "P25": ("renailed-way",),
    "P27": ("DRIP-EDGE",),
    "P29": ("FELT",),
    "P32": ("CAP-NAILS",),
    "P36": ("STARTER",),
    "P37": ("NAILS",),
    "P40": ("HOOD",),
    "P42": ("CAPS",),
    "P43": ("RIDGE-VENT",),
    "P44": ("SOFFIT",),
    "P50": ("BOOTS",),
}
SNOW: Mapping[str, tuple[str, ...]] = {
    "P18": ("BOARDS10", "BOARDS8"),
    "P22": ("BASE",),
    "P24": ("ICE",),
    "P25": ("DRIP",),
    "P26": ("FELT",),
}


def with_goods(entries: tuple[Entry, ...], goods: Mapping[str, tuple[str, ...]]) -> tuple[Entry, ...]:
    """Return log entries with the goods that each shows."""
    return tuple(replace(entry, proves=(*entry.proves, *goods.get(entry.id, ()))) for entry in entries)
