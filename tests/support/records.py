"""Records of other houses than the demo's."""

from pathlib import Path

#: A hip roof with triangles, a chimney, a skylight and a porch of another pitch; little of it is whole.
HIP_ROOF = (Path(__file__).parent / "hip_roof.yaml").read_text(encoding="utf-8")
