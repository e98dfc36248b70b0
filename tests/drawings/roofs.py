"""Roofs to draw, by hand, in feet, x east and y north."""

import copy
import math
from typing import Any

from tests.drawings.formed import L_FORMS, T_PLAN, geometry_of

Geometry = dict[str, Any]
Corners = list[list[float]]

#: Length on a 6:12 slope for one foot of run; along a hip or valley for one foot of run.
SLOPE, HIP = math.sqrt(1.25), 1.5


def plane(
    id: str, title: str, facing: str, outline: Corners, *, part: bool = False, pitch: str = "6:12"
) -> Any:
    return {
        "id": id,
        "title": title,
        "facing": facing,
        "pitch": pitch,
        "outline": outline,
        "worked": False,
        "part_worked": part,
    }


def edge(id: str, kind: str, line: Corners, length_ft: float) -> Any:
    return {"id": id, "kind": kind, "line": line, "length_ft": length_ft}


#: L plan with a shed dormer at the valley; worked on both sides of the valley.
DEMO: Geometry = {
    "planes": [
        plane("MS", "front, south", "south", [[0, 0], [20, 0], [32, 12], [0, 12]], part=True),
        plane("MN", "back, north", "north", [[44, 24], [0, 24], [0, 12], [32, 12]]),
        plane("WW", "wing, west", "west", [[20, 0], [20, -16], [32, -16], [32, 12]], part=True),
        plane("WE", "wing, east", "east", [[44, -16], [44, 24], [32, 12], [32, -16]]),
        plane("DR", "dormer", "south", [[14, 4], [24, 4], [24, 12], [14, 12]], pitch="3:12"),
    ],
    "edges": [
        edge("E1", "valley", [[20, 0], [32, 12]], 12 * HIP),
        edge("E2", "hip", [[32, 12], [44, 24]], 12 * HIP),
        edge("E3", "ridge", [[32, 12], [0, 12]], 32),
        edge("E4", "ridge", [[32, -16], [32, 12]], 28),
        edge("E5", "eave", [[0, 0], [20, 0]], 20),
        edge("E6", "eave", [[44, 24], [0, 24]], 44),
        edge("E7", "eave", [[20, 0], [20, -16]], 16),
        edge("E8", "eave", [[44, -16], [44, 24]], 40),
        edge("E9", "rake", [[0, 12], [0, 0]], 12 * SLOPE),
        edge("E10", "rake", [[0, 24], [0, 12]], 12 * SLOPE),
        edge("E11", "rake", [[20, -16], [32, -16]], 12 * SLOPE),
        edge("E12", "rake", [[32, -16], [44, -16]], 12 * SLOPE),
        edge("E13", "eave", [[14, 4], [24, 4]], 10),
        edge("E14", "rake", [[14, 12], [14, 4]], 8.25),
        edge("E15", "rake", [[24, 4], [24, 12]], 8.25),
        edge("E16", "pitch break", [[24, 12], [14, 12]], 10),
    ],
    "areas": [
        {
            "id": "A1",
            "plane": "MS",
            "outline": [[16, 0], [20, 0], [28.05, 8.05], [24, 8.05], [24, 4], [16, 4]],
        },
        {"id": "A2", "plane": "WW", "outline": [[20, 0], [20, -5], [23.58, -5], [28.05, 3], [28.05, 8.05]]},
    ],
    "openings": [{"id": "O1", "plane": "MS", "outline": [[14, 4], [24, 4], [24, 12], [14, 12]]}],
    "marks": [
        {"id": "V1", "label": "valley", "at": [22, 2]},
        {"id": "C1", "label": "sidewall", "at": [24, 5.8]},
        {"id": "K1", "label": "kick-out", "at": [24, 4]},
        {"id": "H1", "label": "headwall", "at": [19, 4]},
        {"id": "B1", "label": "pipe boot", "at": [32, 18.6]},
    ],
}

GABLE: Geometry = {
    "planes": [
        plane("S", "street side", "south", [[0, 0], [36.5, 0], [36.5, 13], [0, 13]]),
        plane("N", "yard side", "north", [[36.5, 26], [0, 26], [0, 13], [36.5, 13]], part=True),
    ],
    "edges": [
        edge("E1", "ridge", [[0, 13], [36.5, 13]], 36.5),
        edge("E2", "eave", [[0, 0], [36.5, 0]], 36.5),
        edge("E3", "eave", [[36.5, 26], [0, 26]], 36.5),
        edge("E4", "rake", [[0, 13], [0, 0]], 13 * SLOPE),
        edge("E5", "rake", [[0, 26], [0, 13]], 13 * SLOPE),
        edge("E6", "rake", [[36.5, 0], [36.5, 13]], 13 * SLOPE),
        edge("E7", "rake", [[36.5, 13], [36.5, 26]], 13 * SLOPE),
    ],
    "areas": [{"id": "A1", "plane": "N", "outline": [[4, 15], [12, 15], [12, 22], [4, 22]]}],
    "openings": [],
    "marks": [{"id": "B1", "label": "pipe boot", "at": [8, 19]}],
}

HIP_ROOF: Geometry = {
    "planes": [
        plane("S", "front", "south", [[0, 0], [40, 0], [28, 12], [12, 12]]),
        plane("E", "east end", "east", [[40, 0], [40, 24], [28, 12]]),
        plane("N", "back", "north", [[40, 24], [0, 24], [12, 12], [28, 12]]),
        plane("W", "west end", "west", [[0, 24], [0, 0], [12, 12]], part=True),
    ],
    "edges": [
        edge("H1", "hip", [[0, 0], [12, 12]], 12 * HIP),
        edge("H2", "hip", [[40, 0], [28, 12]], 12 * HIP),
        edge("H3", "hip", [[40, 24], [28, 12]], 12 * HIP),
        edge("H4", "hip", [[0, 24], [12, 12]], 12 * HIP),
        edge("R1", "ridge", [[12, 12], [28, 12]], 16),
        edge("E1", "eave", [[0, 0], [40, 0]], 40),
        edge("E2", "eave", [[40, 0], [40, 24]], 24),
        edge("E3", "eave", [[40, 24], [0, 24]], 40),
        edge("E4", "eave", [[0, 24], [0, 0]], 24),
    ],
    "areas": [{"id": "A1", "plane": "W", "outline": [[0, 6], [6, 12], [0, 18]]}],
    "openings": [],
    "marks": [],
}

#: A porch roof against a wall, worked on as a whole.
SMALL: Geometry = {
    "planes": [
        plane("P", "porch", "south-east", [[0, 4.5], [4.5, 0], [8.5, 4], [4, 8.5]], part=True, pitch="3.5:12")
    ],
    "edges": [
        edge("E1", "eave", [[4, 8.5], [8.5, 4]], 4.5 * math.sqrt(2)),
        edge("W1", "headwall", [[0, 4.5], [4.5, 0]], 4.5 * math.sqrt(2)),
    ],
    "areas": [{"id": "A1", "plane": "P", "outline": [[0, 4.5], [4.5, 0], [8.5, 4], [4, 8.5]]}],
    "openings": [],
    "marks": [{"id": "W1", "label": "headwall", "at": [2.25, 2.25]}],
}

ROOFS = {
    "demo": DEMO,
    "gable": GABLE,
    "hip-roof": HIP_ROOF,
    "small": SMALL,
    "t-plan": geometry_of(T_PLAN),
    "l-forms": geometry_of(L_FORMS),
}


def changed(geometry: Geometry, **planes: Any) -> Geometry:
    """Return a copy with fields of its first plane changed."""
    made = copy.deepcopy(geometry)
    made["planes"][0] |= planes
    return made


def crowded() -> Geometry:
    """Return the demo roof with thirty marks around the valley."""
    made = copy.deepcopy(DEMO)
    made["marks"] = [
        {"id": f"M{n}", "label": "place", "at": [18 + n % 6 * 1.5, 1 + n // 6 * 1.5]} for n in range(30)
    ]
    return made
