"""Records of other houses than the demo's."""

from pathlib import Path

from tests.support.office import Office

#: A hip roof with triangles, a chimney, a skylight and a porch of another pitch; little of it is whole.
HIP_ROOF = (Path(__file__).parent / "hip_roof.yaml").read_text(encoding="utf-8")


def fits_any_pitch(office: Office) -> Office:
    """Make the demo's shape hold at every pitch: both slopes worked whole, no dormer and no opening for it."""
    office.changed("covering.areas", "[{id: A1, plane: MS}, {id: A2, plane: WW}]")
    of_dormer = (
        "  openings:",
        "    - {id: O1,",
        "    - {id: DR,",
        *(f"    - {{id: E{n}," for n in range(13, 17)),
    )
    lines = office.text.splitlines(keepends=True)
    kept = [line for line in lines if not line.startswith(of_dormer)]
    assert len(kept) == len(lines) - len(of_dormer)
    return office.write("".join(kept))
