"""A move that takes a sensor from a position which it leaves empty pulls it there first."""

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def test_a_sensor_whose_old_place_stays_empty_is_pulled_before_it_is_fitted(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job._label_for({"unit": home(OUTER)}), how="scanned")
    job.fact("unit_moved", unit=home(OUTER), place="scrapped", how="tapped", note="")
    job.fact("move_started", move="home", fitted={OUTER: home(INNER)}, position="", reason="")
    assert job.step()["expects"]["do"] == "pull"
    assert job.step()["expects"]["position"] == INNER
    job.guided()
    assert job.core("state")["vehicles"]["v1"]["holds"][OUTER] == home(INNER)
