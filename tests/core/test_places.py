"""Where a sensor could be: the places on record once each, and every other one; who waits for a label."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
OTHER_PHONE = "dfedcba9876543210"


@pytest.fixture
def disputed(core):
    """Two phones have pulled the same sensor."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job.codes[0], how="scanned")
    Driver(core, device=OTHER_PHONE).force("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    return job


def test_two_phones_that_pulled_one_sensor_give_one_answer_to_tap(core, disputed):
    unit = core("unit", unit=home(OUTER))
    assert [claim["words"] for claim in unit["claims"]] == ["in hand"]


def test_it_may_turn_out_to_be_anywhere_else(core, disputed):
    unit = core("unit", unit=home(OUTER))
    words = [line["words"] for line in unit["elsewhere"]]
    assert "fitted at left outer of Blue estate" in words
    assert "at the parts counter" in words
    place = next(line for line in unit["elsewhere"] if line["position"] == INNER)
    disputed.fact("unit_seen", unit=home(OUTER), place="fitted", position=INNER, how="scanned")
    assert place["job"] == disputed.job
    assert core("unit", unit=home(OUTER))["where"] == "fitted at right inner"


def test_a_position_is_settled_at_a_job_that_has_it(core, disputed):
    """The vehicle's last job may be about its other bumper."""
    layouts = {entry["id"]: entry for entry in core("layouts")}
    front = Driver(core, device="d0000000000000fff", job="jfront")
    front.fact(
        "job_opened", vehicle={"id": "v1", "name": "Blue estate", "vin": ""}, complaint="", layout="front-4",
        part="PS-1", positions=layouts["front-4"]["positions"],
    )  # fmt: skip
    places = core("unit", unit=home(OUTER))["elsewhere"]
    assert {line["job"] for line in places if line["position"] == INNER} == {disputed.job}


def test_a_sensor_whose_label_went_out_of_use_waits_for_another(core, disputed):
    disputed.fact("unit_seen", unit=home(OUTER), place="out", position="", how="scanned")
    assert core("unlabelled") == []
    disputed.fact("label_voided", unit=home(OUTER), code=disputed.codes[0], reason="torn")
    assert [(line["id"], line["was"]) for line in core("unlabelled")] == [
        (home(OUTER), disputed.codes[0][:3] + "-" + disputed.codes[0][3:])
    ]
    disputed.fact("unit_labelled", unit=home(OUTER), code=disputed.codes[1], how="scanned")
    assert core("unlabelled") == []
