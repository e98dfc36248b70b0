"""Only what this kind of work is asked for may print "not recorded"."""

import pytest

from packet.record.job import JobRecord
from packet.review.expected import PARTS, absent, expected
from packet.text import load_words
from packet.workspace import packaged


def record(kind: str, status: str) -> JobRecord:
    return JobRecord.model_validate(
        {
            "job": {"number": "1", "kind": kind, "status": status},
            "property": {
                "street": "1 Reed Row",
                "town": "Pellam Reach",
                "state": "South Carolina",
                "time_zone": "America/New_York",
            },
            "cause": {"what": "A nail."},
        }
    )


@pytest.mark.parametrize("kind", ["patch", "section", "re-roof", "recover"])
def test_a_planned_job_is_asked_for_nothing_yet(kind: str) -> None:
    assert expected(record(kind, "planned")) == ()


def test_a_job_under_way_is_asked_only_for_what_opening_shows() -> None:
    asked = expected(record("section", "under way"))
    assert {"roof.old.bend_test", "dry_in.weather"} <= set(asked)
    assert not {"tested", "clean_up.magnet", "warranty", "bought"} & set(asked)


def test_a_patch_is_not_asked_for_ventilation_and_a_re_roof_is() -> None:
    assert "ventilation" not in expected(record("patch", "closed"))
    assert "ventilation" in expected(record("re-roof", "closed"))


def test_new_over_old_asks_for_bend_test_and_match_and_a_re_roof_does_not() -> None:
    bend = {"roof.old.bend_test", "roof.old.match_tried", "tie_in"}
    assert bend <= set(expected(record("patch", "closed")))
    assert not bend & set(expected(record("re-roof", "closed")))


def test_what_is_absent_is_named_once_by_its_outermost_part() -> None:
    missing = absent(record("patch", "closed"))
    assert {"roof", "tested", "warranty"} <= set(missing)
    assert not {"roof.old", "tested.result"} & set(missing)


def test_every_absent_part_has_words() -> None:
    words = load_words([packaged("shared")])
    for part in PARTS:
        assert words[f"record_parts.{part.path}"]


def test_every_part_is_a_place_of_the_record() -> None:
    for part in PARTS:
        model = JobRecord
        *above, last = part.path.split(".")
        for name in above:
            field = model.model_fields[name].annotation
            model = next(arm for arm in getattr(field, "__args__", (field,)) if hasattr(arm, "model_fields"))
        assert last in model.model_fields, part.path
