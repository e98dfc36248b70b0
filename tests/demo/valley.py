"""Demo job 26-041: the views of its photos."""

from collections.abc import Callable

from PIL import Image

from . import views_framing as framing
from . import views_inside as inside
from . import views_near as near
from . import views_roof as roof
from . import views_wall as wall
from .photo_list import ENTRIES as ENTRIES


def _hose_test() -> Image.Image:
    return roof.hose_test(inside.attic_inset())


VIEWS: dict[str, Callable[[], Image.Image]] = {
    "P01": roof.street_view,
    "P02": roof.slope_before,
    "P03": inside.ceiling_stain,
    "P04": wall.wall_foot_before,
    "P05": inside.pitch,
    "P06": roof.stripped_wide,
    "P07": roof.front_rot,
    "P08": roof.wing_rot,
    "P09": near.old_nail,
    "P10": framing.open_rafters,
    "P11": framing.rotten_rafter,
    "P12": framing.sistered,
    "P13": roof.front_sheets,
    "P14": roof.wing_sheets,
    "P15": near.grade_stamp,
    "P16": near.ring_nail,
    "P17": near.edge_nails,
    "P18": near.field_nails,
    "P19": roof.valley_sheet,
    "P20": near.felt_lap,
    "P21": roof.dried_in,
    "P22": near.drip_edge,
    "P23": wall.kick_out,
    "P24": wall.step_flashing,
    "P25": near.wrapper,
    "P26": near.six_nails,
    "P27": near.hand_seal,
    "P28": roof.joint,
    "P29": roof.slope_done,
    "P30": inside.attic_dry,
    "P31": _hose_test,
    "P32": inside.lawn,
    "P33": near.delivery_ticket,
}
