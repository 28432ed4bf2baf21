"""What stays at a position when its job is closed belongs there on the vehicle's next job."""

from tests.core.driver import Driver
from tests.core.driver import home


def test_a_unit_left_deliberately_is_not_asked_about_again(core):
    first = Driver(core).begin()
    first.test("rear-right-outer")
    first.exchange(
        rear_left_outer=home("rear-right-outer"),
        rear_right_outer=home("rear-left-outer"),
    )
    first.test("rear-left-outer")
    first.new_unit("rear-left-outer")
    first.guided()
    first.test()
    first.finish()
    kinds = [event["kind"] for event in first.events]
    assert "left_deliberately" in kinds

    second = Driver(core, device="d00000000000000b2", job="j000000000002")
    second.codes = first.codes[10:]
    second.begin()
    second.test("rear-left-inner")
    second.new_unit("rear-left-inner", unit="u00000000new2")
    second.guided()
    second.test()
    second.finish()

    assert "left_deliberately" not in [event["kind"] for event in second.events]
    assert second.step()["id"] == "done"


def original_in_stock_behind_a_spare(core):
    """Give a job whose fault was the wiring, with a spare still where the good original was pulled."""
    job = Driver(core).begin()
    spare, place = "u0000000spare", "rear-right-outer"
    job.labels[spare] = job.codes[-1]
    job.fact(
        "unit_added", unit=spare, part="PS-1", serial="", code=job.codes[-1], how="scanned", place="stock"
    )
    job.test(place)
    job.exchange(rear_right_outer=spare)
    job.fact("unit_moved", unit=home(place), place="stock", how="scanned", note="")
    job.test(place)
    job.fact("circuit_repaired", cause="circuit:" + place, what="plug cleaned")
    for _ in range(12):
        step = job.step()
        if step["form"] == "test":
            job.test()
        elif step["id"] in ("move", "seat", "walk"):
            job.tap()
    return job


def test_the_good_original_in_stock_is_offered_its_place_back(core):
    job = original_in_stock_behind_a_spare(core)
    assert job.step()["id"] == "home.stock"
    job.tap()
    job.guided()
    assert job.step()["form"] == "test"
    job.test()
    assert core("state")["vehicles"]["v1"]["holds"]["rear-right-outer"] == home("rear-right-outer")


def test_a_spare_that_stays_is_said_once(core):
    job = original_in_stock_behind_a_spare(core)
    job.tap("second")
    assert job.step()["id"] == "close"
    assert job.events[-1]["kind"] == "left_deliberately"
