"""``packet schema``: the schema of each file, as JSON on the standard output."""

import json

import pytest

from packet.schema import MODELS, schema_of
from tests.cli.conftest import Run
from tests.support.office import Office


@pytest.mark.parametrize("kind", MODELS)
def test_a_schema_is_printed_for_each_file(job_office: Office, run: Run, kind: str) -> None:
    ran = run(job_office.root, "schema", "--of", kind)
    assert (ran.code, ran.err) == (0, "")
    assert json.loads(ran.out) == schema_of(kind)


def test_the_records_schema_is_the_usual_one_and_quiet_puts_it_on_one_line(
    job_office: Office, run: Run
) -> None:
    ran = run(job_office.root, "schema", "--quiet")
    assert ran.out.count("\n") == 1
    assert json.loads(ran.out) == schema_of("job")


def test_it_needs_no_office(job_office: Office, run: Run) -> None:
    assert run(job_office.root.parent, "schema").code == 0
