"""Records of other houses than the demo's."""

from pathlib import Path

from tests.support.office import Office

#: A hip roof with triangles, a chimney, a skylight and a porch of another pitch; little of it is whole.
HIP_ROOF = (Path(__file__).parent / "hip_roof.yaml").read_text(encoding="utf-8")


def fits_any_pitch(office: Office) -> Office:
    """Make the demo's shape hold at every pitch: both slopes worked whole, the dormer on a level of its own."""
    office.changed("covering.areas", "[{id: A1, plane: MS}, {id: A2, plane: WW}]")
    return office.changed("roof.planes.DR.eave_height", "11 ft 2 in")
