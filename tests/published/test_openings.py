"""Which openings come off a plane's area."""

import pytest

from tests.support.office import Office


@pytest.mark.parametrize(
    ("along", "up", "net_sq_ft"),
    [
        ("10 ft", "3 ft", 318.8),
        ("10 ft", "2 ft 11 in", None),
        ("6 ft", "5 ft", 318.8),
        ("3 ft", "3 ft", None),
    ],
)
def test_openings_under_30_sq_ft_are_left_in(
    job_office: Office, along: str, up: str, net_sq_ft: float | None
) -> None:
    """Estimating in Building Construction, ch. 14, p. 181: openings under 30 sq ft are not deducted (seen).

    The plane is a trapezoid of 20 and 32 ft over 12 ft of run at 6 in 12: 26 x 12 x 1.118034 = 348.83 sq ft.
    """
    job_office.changed("roof.openings.O1.along", along).changed("roof.openings.O1.up", up)
    job_office.changed("roof.planes.DR.eave_height", "11 ft 2 in")  # its roof may stand over the plane
    figures = job_office.closeout().figures
    net = figures.get("plane.MS.net_area")
    assert (round(float(net.value), 1) if net else None) == net_sq_ft
    assert float(figures["plane.MS.area"].value) == pytest.approx(348.83, abs=0.005)
