"""``packet figures``: every figure of a job, with its working."""

import json

import pytest

from packet.closeout.redact import redact
from tests.cli.conftest import Run
from tests.support.arithmetic import evaluate
from tests.support.office import Office


@pytest.fixture
def goods(job_office: Office) -> Office:
    """The demo record with 7 - 1 - 1 - 1/2 = 4-1/2 bundles laid."""
    for name, amount in (("delivered", "7"), ("returned", "1"), ("left", "1"), ("scrap", "1/2")):
        job_office.changed(f"bought.SHINGLES.{name}", amount)
    return job_office


def test_json_is_the_figures_of_the_offices_packet(job_office: Office, run: Run) -> None:
    ran = run(job_office.root, "figures", "26-041", "--json")
    assert (ran.code, ran.err) == (0, "")
    assert json.loads(ran.out) == redact(job_office.closeout(), "office")["figures"]


def test_json_holds_enough_to_compute_a_figure_again(goods: Office, run: Run) -> None:
    figure = json.loads(run(goods.root, "figures", "26-041", "--json").out)["bought.SHINGLES.laid"]
    terms = {term["symbol"]: term["value"] for term in figure["working"]["terms"]}
    assert (figure["value"], figure["unit"]) == (4.5, "bundle")
    assert evaluate(figure["working"]["formula"], terms) == 4.5


def test_a_line_shows_value_unit_and_working(goods: Office, run: Run) -> None:
    lines = run(goods.root, "figures", "26-041").out.splitlines()
    by_id = {line.split()[0]: line for line in lines}
    assert len(by_id) == len(goods.closeout().figures)
    assert "4 1/2 bundles" in by_id["bought.SHINGLES.laid"]
    assert by_id["bought.SHINGLES.laid"].endswith("= delivered - returned - left - scrap")
    assert by_id["edge.E1.length"].split()[1] == "18′"
    assert "=" not in by_id["roof.planes.MS.run"]


def test_quiet_leaves_the_workings_out(goods: Office, run: Run) -> None:
    ran = run(goods.root, "figures", "26-041", "--quiet")
    assert "4 1/2 bundles" in ran.out
    assert "=" not in ran.out


def test_open_items_do_not_fail_it(job_office: Office, run: Run) -> None:
    assert run(job_office.changed("deck.edge_spacing", "8 in").root, "figures", "26-041").code == 0


def test_a_bad_record_exits_2_and_prints_no_figure(job_office: Office, run: Run) -> None:
    ran = run(job_office.changed("deck.edge_spacing", "8").root, "figures", "26-041", "--json")
    assert (ran.code, ran.out) == (2, "")
    assert "error[no-unit]" in ran.err


def test_a_job_must_be_named(job_office: Office, run: Run) -> None:
    ran = run(job_office.root, "figures")
    assert ran.code == 2
    assert "JOB" in ran.err
