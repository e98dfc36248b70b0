"""Cut-up roofs of any number of planes: an L with hip ends, two wings and two dormers, again and again."""

from typing import Any

#: Planes of one house, in the order in which they are added; a lot has room for it and a gap beside [ft].
PLANES_A_HOUSE = 12
_LOT_EAST_FT, _LOT_NORTH_FT = 60, 70
_HOUSES_A_ROW = 2


def cut_up(planes: int) -> dict[str, Any]:
    """Return a record, as ``job.yaml`` would be read, of a roof of so many planes, every one covered anew.

    Args:
        planes: 3, 6, or a multiple of 12.
    """
    roof: dict[str, Any] = {
        "eave_height": "9 ft 2 in",
        "forms": [],
        "planes": [],
        "edges": [],
        "openings": [],
    }
    for number in range(max(1, planes // PLANES_A_HOUSE)):
        row, column = divmod(number, _HOUSES_A_ROW)
        corner = (column * _LOT_EAST_FT, row * _LOT_NORTH_FT)
        _house(roof, f"H{number + 1}", corner, min(planes, PLANES_A_HOUSE))
    ids = [plane["id"] for form in roof["forms"] for plane in form["planes"].values()]
    ids += [plane["id"] for plane in roof["planes"]]
    areas = [{"id": f"A{number + 1}", "plane": id} for number, id in enumerate(ids)]
    return {
        "job": {"number": "26-041", "kind": "re-roof", "status": "closed"},
        "property": {
            "street": "5 Sedge Court",
            "town": "Pellam Reach",
            "state": "South Carolina",
            "time_zone": "America/New_York",
        },
        "cause": {"what": "The covering was worn out."},
        "roof": roof,
        "covering": {
            "areas": areas,
            "shingle": {"kind": "laminated", "width": "39-3/8 in", "exposure": "5-5/8 in"},
            "nail": {"length": "1-3/4 in", "shank": "0.120 in", "head": "3/8 in"},
            "nails_each": "6",
        },
    }


def _house(roof: dict[str, Any], id: str, corner: tuple[int, int], planes: int) -> None:
    """Add one house: 3 planes are a gable and a dormer, 6 a hip roof and two, 12 has two wings besides."""
    parts = ("front", "back") if planes == 3 else ("front", "back", "left", "right")
    main = {
        "form": "gable" if planes == 3 else "hip",
        "id": id,
        "front": "south",
        "at": _at(*corner),
        "length": "52 ft",
        "depth": "28 ft",
        "pitch": "6:12",
        "planes": {part: {"id": f"{id}{part[0].upper()}", "title": f"house, {part}"} for part in parts},
    }
    roof["forms"].append(main)
    if planes >= PLANES_A_HOUSE:
        for wing, side, starts in (("P", "front", "20 ft"), ("Q", "back", "28 ft")):
            own = {part: {"id": f"{id}{wing}{part[0].upper()}", "title": f"wing, {part}"}
                   for part in ("left", "right", "end")}  # fmt: skip
            roof["forms"].append(
                {"form": "wing", "id": f"{id}{wing}", "joins": id, "side": side, "starts": starts,
                 "width": "14 ft", "out": "12 ft", "planes": own}
            )  # fmt: skip
    dormers = ((40, 3),) if planes == 3 else ((13, 3), (34, 3))
    for number, (east, north) in enumerate(dormers):
        _dormer(roof, f"{id}D{number + 1}", f"{id}F", (corner[0] + east, corner[1] + north), east)


def _dormer(roof: dict[str, Any], id: str, below: str, corner: tuple[int, int], along_ft: int) -> None:
    """Add a shed dormer that looks south, with the opening under it."""
    roof["planes"].append(
        {
            "id": id,
            "title": "dormer",
            "shape": "rectangle",
            "lower": "6 ft",
            "run": "6 ft",
            "pitch": "2-1/2:12",
            "facing": "south",
            "at": _at(*corner),
            "eave_height": "14 ft",
        }
    )
    kinds = {"lower": "eave", "left": "rake", "right": "rake", "upper": "pitch break"}
    roof["edges"] += [
        {"id": f"{id}-{side.upper()}", "kind": kind, "sides": [f"{id}.{side}"]}
        for side, kind in kinds.items()
    ]
    place = [f"{along_ft} ft", "3 ft 5 in"]
    roof["openings"].append(
        {"id": f"{id}O", "plane": below, "what": "dormer", "at": place, "along": "6 ft", "up": "6 ft 6 in"}
    )


def _at(east_ft: int, north_ft: int) -> list[str]:
    return [f"{east_ft} ft", f"{north_ft} ft"]
