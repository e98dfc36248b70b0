"""``packet check`` and the goods: a finding is open until it is explained, also while the work goes on."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.support.office import Office
from tests.support.small_roofs import PATCH, bought_alone

LINE = "{{id: A, item: shingle, use: shingles, unit: bundle, cover_each: 30 sq ft, {}}}"


@pytest.mark.parametrize(
    ("status", "line", "id", "facts"),
    [
        ("closed", "delivered: 2", "laid-below-need:A", "60 sq ft; 90.0 sq ft"),
        ("closed", "delivered: 9", "laid-above-need:A", "270 sq ft; 90.0 sq ft"),
        ("under way", "planned: 2", "ordered-below-need:A", "2 bundles; 3 bundles"),
    ],
)
def test_goods_that_do_not_agree_are_open_until_they_are_explained(
    tmp_path: Path, run: Run, status: str, line: str, id: str, facts: str
) -> None:
    office = Office(tmp_path / "goods", bought_alone(PATCH, LINE.format(line)))
    office.changed("job.status", status)
    ran = run(office.root, "check")
    assert (ran.code, ran.out.count(f": A ({facts}) [{id}]")) == (1, 1)
    assert ran.out.count(f'  Explain one in job.yaml:  explained: {{"{id}": "…"}}\n') == 1
    before = ran.out.splitlines()
    office.added(f'explained: {{"{id}": the rest lay on the truck}}')
    after = run(office.root, "check").out.splitlines()
    assert [line for line in before[1:] if id not in line and " at bought[0]." not in line] == after[1:]


def test_goods_that_agree_open_nothing(tmp_path: Path, run: Run) -> None:
    office = Office(tmp_path / "goods", bought_alone(PATCH, LINE.format("planned: 3, delivered: 3")))
    out = run(office.root, "check").out
    assert "need" not in out
    assert "Explain one" not in out


def test_a_mistake_of_the_goods_exits_2_with_its_line(tmp_path: Path, run: Run) -> None:
    office = Office(tmp_path / "goods", bought_alone(PATCH, LINE.format("product: laminated-metrik")))
    ran = run(office.root, "check")
    line, column = office.place("bought.A.product")
    assert ran.code == 2
    assert f"job.yaml:{line}:{column}: error[unknown-product]" in ran.err
    assert 'Did you mean "laminated-metric"?' in ran.err
