"""Photos taken of the roof: the house, the worked area in each state and the valley."""

import math
import random

from PIL import Image, ImageDraw, ImageFilter

from .camera import Shot, Vector, plus, shaded
from .dormer import dormer, east_wall
from .flat import Flat
from .garden import house, mailbox, number_plate, outdoors, reduce, shrub, street
from .house import PLANES, SLOPE, Plane, State, lay_slope, slope
from .tools import finish, lay_tape

Window = tuple[float, float, float, float]
ACROSS_DEG = math.degrees(math.atan(1 / SLOPE))  # square to the valley, on either slope


def on_roof(plane: Plane, u_ft: float, v_ft: float, lift_ft: float = 0.0) -> Vector:
    """Return the place in space of a point on a slope."""
    place, along, upward = PLANES[plane]
    return plus(plus(plus(place, along, u_ft), upward, v_ft), (0, 0, lift_ft))


def closer(
    shot: Shot, state: State, windows: dict[Plane, Window], ppi: float, marks: str = ""
) -> dict[Plane, Flat]:
    """Draw the surroundings, and return sharp pictures of the two slopes to draw on."""
    outdoors(shot)
    house(shot, state, ppi=4)
    return {plane: slope(plane, state, window, ppi, marks) for plane, window in windows.items()}


def settle(
    shot: Shot, flats: dict[Plane, Flat], *, cheek: Image.Image | None = None, flashed: bool = True
) -> None:
    """Lay the sharp slopes and stand the dormer on them."""
    for plane, flat in flats.items():
        lay_slope(shot, plane, flat)
    dormer(shot, ppi=14, cheek=cheek, flashed=flashed)


def bare_wall(state: State) -> Image.Image:
    """Return the dormer's east wall between stripping and shingling: no flashing stands on it."""
    return shaded(east_wall(8, flashed=False, back_in=8.5 if state == "felt" else 0).picture, 0.94)


def street_view() -> Image.Image:
    """P01: the front from the street."""
    shot = Shot((10, -64, 5.6), (21, -8, 8.0), 44)
    outdoors(shot, near=(12, -38, 0))
    street(shot)
    house(shot, "before")
    number_plate(shot, (37.4, -15.05, 5), 1.7, 1.1, "18")
    for index, (x, y) in enumerate(
        [(3, -1), (7.6, -1), (12, -1), (24, -17), (29, -17), (35, -17), (41, -17)]
    ):
        shrub(shot, (x, y, 0), 3.6, 2.7, f"shrub {index}")
    mailbox(shot, (11, -50, 0), "18")
    return finish(reduce(shot))


def _from_ground(state: State) -> Image.Image:
    shot = Shot((-3, -41, 5.8), (20.2, 0, 9.6), 33)
    outdoors(shot, near=(6, -18, 0))
    house(shot, state, ppi=8)
    for index, (x, y) in enumerate([(3, -1), (7.6, -1), (12, -1)]):
        shrub(shot, (x, y, 0), 3.6, 2.7, f"shrub {index}")
    return finish(reduce(shot), warm=(1.02, 1, 0.97) if state == "before" else (1.0, 1.0, 0.99))


def slope_before() -> Image.Image:
    """P02: the slope before the work."""
    return _from_ground("before")


def slope_done() -> Image.Image:
    """P29: the slope after the work, same viewpoint."""
    return _from_ground("done")


def _worked(state: State, marks: str = "") -> Image.Image:
    shot = Shot((25.4, -7.2, 18.6), (22.8, 3.6, 11.3), 62)
    flats = closer(shot, state, {"MS": (13, 0, 30, 11), "WW": (-10, 0, 7.5, 11)}, 11, marks)
    if state == "felt":
        _roll(flats["WW"])
    settle(shot, flats, cheek=bare_wall(state))
    return finish(reduce(shot))


def _roll(flat: Flat) -> None:
    x, y, ppi = 12.0, 66.0, flat.ppi
    high, wide = round(7 * ppi), round(36 * ppi)
    roll = Image.new("RGBA", (wide, high))
    pen = ImageDraw.Draw(roll)
    for row in range(high):
        tone = round(26 + 62 * math.sin(math.pi * (row + 1) / (high + 1)) ** 1.4)
        pen.line([(0, row), (wide, row)], fill=(tone, tone, tone, 255))
    band = Flat((0, 0, 25, 6), ppi, (232, 226, 206))
    band.text("D226 TYPE II", 12.5, 3.9, 2.1, (150, 36, 30), bold=0.1)
    band.text("No. 30 asphalt felt", 12.5, 1.4, 1.3, (40, 40, 40), bold=0.06)
    roll.paste(band.picture, (round(5.5 * ppi), round(0.5 * ppi)))
    flat.put(roll, x, y, 43, 1.2)


def stripped_wide() -> Image.Image:
    """P06: the stripped area."""
    return _worked("stripped")


def dried_in() -> Image.Image:
    """P21: everything under felt."""
    return _worked("felt")


def _front(state: State, marks: str) -> Image.Image:
    shot = Shot((24.6, -4.4, 17.6), (21.9, 3.3, 11.3), 58)
    flats = closer(shot, state, {"MS": (13.5, 0, 29, 10), "WW": (-9, 0, 6, 10)}, 14)
    flats["MS"] = slope("MS", state, (13.5, 0, 29, 10), 14, marks)
    if state == "stripped":
        lay_tape(flats["MS"], 16 * 12, 1.3 * 12, 60, wide_in=1.25, finest=4)
    settle(shot, flats, cheek=bare_wall(state))
    return finish(reduce(shot))


def front_rot() -> Image.Image:
    """P07: rot on the front slope, marks S1 and S2."""
    return _front("stripped", "chalk")


def front_sheets() -> Image.Image:
    """P13: new sheets on the front slope."""
    return _front("deck", "crayon")


def _wing(state: State, marks: str) -> Image.Image:
    shot = Shot((15.2, -3.9, 17.0), (23.6, 0.4, 10.9), 56)
    flats = closer(shot, state, {"MS": (13, 0, 26, 5), "WW": (-11, 0, 9, 11)}, 13)
    flats["WW"] = slope("WW", state, (-11, 0, 9, 11), 13, marks)
    if state == "stripped":
        lay_tape(flats["WW"], 4, 1.1 * 12, 48, wide_in=1.25, finest=4)
    settle(shot, flats)
    return finish(reduce(shot))


def wing_rot() -> Image.Image:
    """P08: rot on the wing, marks S3 and S4."""
    return _wing("stripped", "chalk")


def wing_sheets() -> Image.Image:
    """P14: new sheets on the wing."""
    return _wing("deck", "crayon")


def valley_sheet() -> Image.Image:
    """P19: the self-adhered sheet, 36 in across."""
    shot = Shot((20.35, -1.5, 13.4), (21.75, 1.75, 10.35), 56)
    flats = closer(shot, "membrane", {"MS": (17, 0, 25, 5), "WW": (-5, 0, 4.5, 5)}, 24)
    middle = 2.0 * 12  # v of the valley point under the tape [in]
    out = 18 / math.sqrt(1 + 1 / SLOPE**2)
    low_u = 240 + middle / SLOPE
    lay_tape(
        flats["MS"], low_u - out, middle + out / SLOPE, 18, angle_deg=-ACROSS_DEG, wide_in=1.25, finest=8
    )
    lay_tape(
        flats["WW"], -middle / SLOPE, middle, 18.6, angle_deg=ACROSS_DEG, from_in=18, wide_in=1.25, finest=8
    )
    settle(shot, flats)
    return finish(reduce(shot), focus=(0.2, 0.85), blur_px=4)


def joint() -> Image.Image:
    """P28: new shingles beside old ones."""
    shot = Shot((15.7, -2.6, 14.0), (16.3, 2.1, 10.4), 54)
    flats = closer(shot, "done", {"MS": (10, 0, 24, 6), "WW": (-5, 0, 4, 6)}, 22)
    settle(shot, flats)
    return finish(reduce(shot), focus=(0.15, 0.9), blur_px=3)


def hose_test(inset: Image.Image) -> Image.Image:
    """P31: water on the valley; the inset shows the helper in the attic."""
    shot = Shot((22.2, -6.4, 17.2), (23.3, 4.2, 11.9), 52, portrait=True)
    flats = closer(shot, "done", {"MS": (14, 0, 32, 12), "WW": (-12, 0, 7, 12)}, 12)
    for plane, flat in flats.items():
        side = -1 if plane == "MS" else 1
        start = 240.0 if plane == "MS" else 0.0
        lean = 1 / SLOPE if plane == "MS" else -1 / SLOPE
        path = [(start + v * lean, v) for v in (-2.0, 110.0)]
        flat.line(path, (38, 40, 44), 22, 150, 3)
        rng = random.Random(f"water {plane}")
        for _ in range(46):
            v = rng.uniform(0, 96)
            off = rng.uniform(0.2, 7) * side
            flat.line(
                [(start + v * lean + off, v), (start + (v + 12) * lean + off * 0.8, v + 12)],
                (198, 212, 222),
                rng.uniform(0.15, 0.5),
                130,
                0.15,
            )
    settle(shot, flats)
    nozzle = on_roof("WW", -6.4, 8.2, 0.55)
    hose = [
        on_roof("WW", u, v, 0.08)
        for u, v in ((5.5, 6), (3.6, 8.2), (1.6, 9.2), (-1.5, 9.4), (-4.4, 10.6), (-6.2, 10.4))
    ] + [nozzle]
    points = [shot.at(point) for point in _curve(hose)]
    pen = ImageDraw.Draw(shot.picture)
    for wide, colour, drop in ((40, (20, 22, 20), 14), (34, (34, 92, 58), 0), (10, (96, 158, 112), -8)):
        pen.line([(x, y + drop) for x, y in points], fill=colour, width=wide, joint="curve")
    x, y = shot.at(nozzle)
    pen.line([(x + 60, y - 10), (x - 26, y + 4)], fill=(190, 160, 70), width=46)
    spray = Image.new("L", shot.picture.size)
    tool = ImageDraw.Draw(spray)
    rng = random.Random("spray")
    goal = shot.at(on_roof("WW", -6.0, 6.6))
    for _ in range(170):
        end = (goal[0] + rng.gauss(0, 70), goal[1] + rng.gauss(0, 46))
        tool.line([(x - 26, y + 4), end], fill=rng.randrange(50, 150), width=rng.choice((2, 3, 5)))
    shot.picture.paste((236, 242, 246), (0, 0), spray.filter(ImageFilter.GaussianBlur(2)))
    picture = reduce(shot)
    frame = Image.new("RGB", (inset.width + 16, inset.height + 16), (244, 242, 234))
    frame.paste(inset, (8, 8))
    picture.paste(frame, (28, picture.height - frame.height - 96))
    return finish(picture)


def _curve(points: list[Vector]) -> list[Vector]:
    """Return a smooth curve through points."""
    out: list[Vector] = []
    for index in range(len(points) - 1):
        p = [points[max(0, min(len(points) - 1, index + k))] for k in (-1, 0, 1, 2)]
        for step in range(14):
            t = step / 14
            weights = (
                (-t + 2 * t**2 - t**3) / 2,
                (2 - 5 * t**2 + 3 * t**3) / 2,
                (t + 4 * t**2 - 3 * t**3) / 2,
                (t**3 - t**2) / 2,
            )
            out.append(
                (
                    sum(w * q[0] for w, q in zip(weights, p, strict=True)),
                    sum(w * q[1] for w, q in zip(weights, p, strict=True)),
                    sum(w * q[2] for w, q in zip(weights, p, strict=True)),
                )
            )
    return [*out, points[-1]]
