"""Photos taken of the roof: the house, the worked area in each state, the valley and the dormer's wall."""

import math
import random

from PIL import Image, ImageDraw, ImageFilter

from . import materials as m
from .camera import Shot, Vector, plus, shaded
from .flat import Flat, grain, speckled
from .garden import house, mailbox, number_plate, outdoors, reduce, shrub, street
from .house import CHEEK_V_FT, EAVE_FT, PLANES, SLOPE, Plane, State, dormer, east_wall, lay_slope, slope
from .tools import finish, lay_tape, tape

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


def wall_foot_before() -> Image.Image:
    """P04: the step flashing cut short above the valley."""
    shot = Shot((28.3, 1.9, 14.5), (24.3, 5.0, 11.75), 33, portrait=True)
    flats = closer(shot, "before", {"MS": (21.5, 2, 29, 9.5), "WW": (-8, 1.5, 1.5, 9.5)}, 20)
    flats["WW"].line([(-48, 53), (-38, 42), (-25, 28)], (46, 38, 30), 7, 120, 2)
    cheek = east_wall(30, flashed=False)
    _old_flashing(cheek)
    settle(shot, flats, cheek=shaded(cheek.picture, 0.95))
    return finish(reduce(shot), focus=(0.28, 0.9), blur_px=4)


def _old_flashing(cheek: Flat) -> None:
    cut = 17.0
    for k in range(16, -1, -1):
        x = cut + k * 5.03
        low = x / 2
        cheek.poly(
            [(x, low - 0.5), (x + 7.2, low + 3.1), (x + 5.6, low + 6.3), (x - 1.6, low + 2.7)],
            (148, 146, 140),
        )
        cheek.line([(x, low - 0.5), (x - 1.6, low + 2.7)], (84, 80, 74), 0.3)
    cheek.poly([(2, 1), (cut - 0.6, cut / 2 - 0.4), (cut - 2.2, cut / 2 + 2.8), (2, 5.2)], (34, 27, 22))
    cheek.skin(
        [(2, 1), (cut - 0.6, cut / 2 - 0.4), (cut - 2.2, cut / 2 + 2.8), (2, 5.2)],
        m.wood(cheek.size, cheek.ppi, "wet sheathing", ((30, 22, 17), (74, 52, 36))),
    )
    cheek.line([(0, 5.4), (cut - 1.5, cut / 2 + 3.6)], (226, 226, 218), 0.5)
    for k in range(9):
        x = 1.5 + k * 1.9
        cheek.line([(x, x / 2 + 4), (x + 0.2, x / 2 + 5.6 + k % 3)], (66, 54, 44), 0.9, 90, 0.5)
    cheek.line([(cut - 0.4, cut / 2 - 0.6), (cut - 2.1, cut / 2 + 2.9)], (216, 214, 206), 0.35)


def _worked(state: State, marks: str = "") -> Image.Image:
    shot = Shot((25.4, -7.2, 18.6), (22.8, 3.6, 11.3), 62)
    flats = closer(shot, state, {"MS": (13, 0, 30, 11), "WW": (-10, 0, 7.5, 11)}, 11, marks)
    if state == "felt":
        _roll(flats["WW"])
    settle(shot, flats)
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
        lay_tape(flats["MS"], 16.6 * 12, 1.3 * 12, 48, wide_in=1.25, finest=4)
    settle(shot, flats)
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


def _new_wall(*, upright_tape: bool) -> Image.Image:
    cheek = east_wall(40, flashed=False, back_in=8.5)
    for k in range(17, -1, -1):
        x = 1.2 + k * 5.03
        low = x / 2
        shape = [(x, low), (x + 7.2, low + 3.6), (x + 5.4, low + 7.15), (x - 1.8, low + 3.55)]
        cheek.line([shape[3], shape[0]], (30, 30, 34), 0.6, 120, 0.15)
        tone = 198 + (k * 37) % 17
        cheek.poly(shape, (tone, tone + 3, tone + 6))
        cheek.line([shape[0], shape[1], shape[2], shape[3], shape[0]], (132, 136, 140), 0.12)
        cheek.line([(x + 0.4, low + 0.4), (x - 1.2, low + 3.6)], (236, 239, 241), 0.22)
        cheek.disc(x + 4.6, low + 5.8, 0.16, (120, 124, 128))
    if upright_tape:
        x = 17.0
        strip = tape(cheek.ppi, 0, 7.2)
        a = math.radians(26.565)
        base = (x, x / 2)
        along = (-math.sin(a), math.cos(a))
        cheek.put(strip, base[0] + along[0] * 3.6 + 0.45, base[1] + along[1] * 3.6 + 0.22, 90 + 26.565, 0.1)
    return speckled(cheek.picture, grain("metal wall", cheek.size, (200, 200)), 7)


def _woven(flat: Flat, upto_course: int) -> None:
    """Cover the first courses at the wall with new shingles, a piece of flashing on each."""
    done = m.shingles(flat, worn=False)
    base = CHEEK_V_FT * 12
    for k in range(10, -1, -1):
        v = base + k * m.EXPOSURE_IN
        if k < upto_course:
            right = 240 + (v + m.EXPOSURE_IN) / SLOPE
            flat.skin([(292, v), (right, v), (right, v + m.EXPOSURE_IN), (292, v + m.EXPOSURE_IN)], done)
        tone = 176 + k * 29 % 26
        flat.line([(288, v + 0.2), (292.2, v + 0.2), (292.2, v + 8)], (14, 14, 16), 0.5, 150, 0.15)
        flat.poly([(288, v + 0.4), (292, v + 0.4), (292, v + 8), (288, v + 8)], (tone, tone + 4, tone + 8))
        flat.line([(288, v + 0.4), (292, v + 0.4), (292, v + 8)], (84, 88, 92), 0.14)
        flat.line([(289.4, v + 0.6), (289.4, v + 8)], (216, 220, 223), 0.5, 160, 0.2)


def step_flashing() -> Image.Image:
    """P23: new step flashing, the tape standing on the roof."""
    shot = Shot((28.2, 3.6, 15.0), (24.0, 5.9, 12.2), 26)
    flats = closer(shot, "felt", {"MS": (22.5, 4, 30, 10.5), "WW": (-10, 4, -1, 11)}, 24)
    _woven(flats["MS"], 3)
    wall = _new_wall(upright_tape=True)
    settle(shot, flats, cheek=wall)
    return finish(reduce(shot), focus=(0.25, 0.85), blur_px=4)


def kick_out() -> Image.Image:
    """P24: the kick-out piece at the foot of the wall."""
    shot = Shot((27.6, 1.5, 14.0), (24.2, 4.5, 11.5), 32, portrait=True)
    flats = closer(shot, "felt", {"MS": (20.5, 1.5, 29, 9.5), "WW": (-8, 1.5, 2, 9.5)}, 24)
    _woven(flats["MS"], 2)
    wall = _new_wall(upright_tape=False)
    settle(shot, flats, cheek=wall)
    foot = EAVE_FT + 2.0
    bend_low, bend_high = (24.03, 4.45, foot + 0.24), (24.03, 4.3, foot + 0.62)
    tip_low, tip_high = (24.4, 3.72, foot - 0.1), (24.44, 3.68, foot + 0.3)
    base = (24.36, 4.5, foot + 0.24)
    shot.fill([bend_low, (24.5, 3.6, foot - 0.2), (24.9, 4.2, foot + 0.1), base], (12, 12, 14), 120, 14)
    shot.fill([bend_low, tip_low, (24.72, 4.0, foot + 0.06), base], (176, 181, 185))
    shot.fill([bend_low, tip_low, tip_high, bend_high], (222, 226, 229))
    shot.fill(
        [bend_low, plus(bend_low, (0.06, -0.12, -0.03)), plus(bend_high, (0.06, -0.12, 0)), bend_high],
        (246, 248, 249),
        190,
        3,
    )
    shot.stroke([bend_high, tip_high, tip_low], (120, 124, 128), 4)
    shot.stroke([bend_low, tip_low, (24.72, 4.0, foot + 0.06), base], (110, 114, 118), 3)
    return finish(reduce(shot), focus=(0.25, 0.88), blur_px=4)


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
