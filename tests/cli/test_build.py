"""``packet build``: what it prints, and how it exits."""

import re

import pytest

from packet.readers import READERS
from tests.cli.conftest import Run
from tests.support.office import Office, copy_job


def test_a_bad_record_exits_2_and_builds_nothing(job_office: Office, run: Run) -> None:
    ran = run(job_office.changed("deck.edge_spacing", "6").root, "build")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.rstrip().endswith("1 error in 1 of 1 job. Nothing was built for 26-041.")
    assert not (job_office.root / "out").exists()


def test_open_items_never_fail_a_build_and_the_summary_names_each_copy(job_office: Office, run: Run) -> None:
    copy_job(job_office, "26-042")
    job_office.changed("job.kind", "pach")
    ran = run(job_office.root, "build")
    assert ran.code == 2
    lines = ran.out.splitlines()
    assert re.fullmatch(r"26-042: built in \d+\.\d s", lines[0])
    assert [line.split() for line in lines[1:]] == [[r, f"out/26-042/{r}/index.html"] for r in READERS]
    assert all((job_office.root / line.split()[1]).is_file() for line in lines[1:])
    assert "1 error in 1 of 2 jobs. Nothing was built for 26-041." in ran.err
    assert "\033" not in ran.out + ran.err

    job_office.changed("job.kind", "patch")
    ran = run(job_office.root, "build", "26-042")
    assert (ran.code, ran.err) == (0, "")
    assert re.fullmatch(r"26-042: unchanged in \d+\.\d s", ran.out.splitlines()[0])
    assert run(job_office.root, "build", "26-042", "--quiet").out == ""
    assert run(job_office.root, "check", "26-042").code == 1


@pytest.mark.parametrize("arguments", [["26-099"], ["26-041", "26-099"]])
def test_a_job_that_does_not_exist_stops_before_anything_is_built(
    job_office: Office, run: Run, arguments: list[str]
) -> None:
    ran = run(job_office.root, "build", *arguments)
    assert ran.code == 2
    assert "error[no-such-job]" in ran.err
    assert not (job_office.root / "out").exists()


def test_a_terminal_sees_which_job_is_at_which_step(
    small_office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    copy_job(small_office, "26-042")
    monkeypatch.setattr("packet.cli.progress.sys.stderr.isatty", lambda: True, raising=False)
    shown = run(small_office.root, "build").err
    assert "\r\033[K[2/2] 26-042: reading the record …" in shown
    assert shown.endswith("\r\033[K")
    assert run(small_office.root, "build", "--quiet").err == ""
