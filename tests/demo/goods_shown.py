"""Goods and other things that photos of the demo jobs show, beside what their entries say."""

from collections.abc import Mapping
from dataclasses import replace

from .log_entry import Entry

VALLEY: Mapping[str, tuple[str, ...]] = {
    "P01": ("house-number",),
    "P04": ("damage-as-found",),
    "P05": ("pitch-and-size",),
    "P06": ("damage-as-found",),
    "P07": ("CO1",),
    "P09": ("old-deck-fastener",),
    "P10": ("framing-spacing",),
    "P13": ("CO1",),
    "P15": ("PANELS",),
    "P19": ("STRIP",),
    "P21": ("FELT",),
    "P22": ("DRIP",),
    "P24": ("STEP",),
    "P25": ("SHINGLES", "shingle-label"),
    "P27": ("CEMENT",),
    "P28": ("new-beside-old",),
    "P30": ("underside",),
    "P32": ("clean-up",),
    "P33": ("SHINGLES", "PANELS", "FELT", "STRIP", "STEP", "CEMENT", "DRIP"),
}
HIP: Mapping[str, tuple[str, ...]] = {
    "P01": ("house-number", "before-planes"),
    "P02": ("before-planes", "damage-as-found"),
    "P03": ("damage-as-found",),
    "P06": ("pitch-and-size",),
    "P13": ("framing-spacing",),
    "P14": ("PANELS",),
    "P15": ("DECK-NAILS",),
    "P19": ("renailed-way",),
    "P20": ("TAPE",),
    "P25": ("renailed-way",),
    "P27": ("DRIP-EDGE",),
    "P29": ("FELT",),
    "P32": ("CAP-NAILS",),
    "P35": ("shingle-label",),
    "P36": ("STARTER", "starter"),
    "P37": ("NAILS",),
    "P40": ("HOOD",),
    "P42": ("CAPS",),
    "P43": ("RIDGE-VENT",),
    "P44": ("SOFFIT",),
    "P45": ("underside",),
    "P47": ("clean-up",),
    "P48": ("finished-planes",),
    "P49": ("finished-planes",),
    "P50": ("BOOTS", "finished-planes"),
    "P51": ("left-with-owner",),
}
SNOW: Mapping[str, tuple[str, ...]] = {
    "P03": ("before-planes",),
    "P06": ("pitch-and-size",),
    "P10": ("damage-as-found",),
    "P11": ("damage-as-found",),
    "P18": ("BOARDS10", "BOARDS8"),
    "P20": ("framing-spacing",),
    "P22": ("BASE",),
    "P24": ("ICE",),
    "P25": ("DRIP",),
    "P26": ("FELT",),
}


def with_goods(entries: tuple[Entry, ...], goods: Mapping[str, tuple[str, ...]]) -> tuple[Entry, ...]:
    """Return log entries with the goods that each shows."""
    return tuple(replace(entry, proves=(*entry.proves, *goods.get(entry.id, ()))) for entry in entries)
