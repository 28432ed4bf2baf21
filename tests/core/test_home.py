"""What stays at a position when its job is closed belongs there on the vehicle's next job."""

from tests.core.driver import Driver
from tests.core.driver import home
from tests.said import english


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
    while first.step()["id"] != "home":
        first.tap()
    good = first.labels[home("rear-left-outer")]
    assert first.step()["second"]["words"] == f"Put {good[:3]}-{good[3:]} back"  # the other one is bad
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


def with_a_spare_in(core, place="rear-right-outer"):
    """Give a job with a spare from stock where the fault showed."""
    job = Driver(core).begin()
    spare = "u0000000spare"
    job.labels[spare] = job.codes[-1]
    job.fact(
        "unit_added", unit=spare, part="PS-1", serial="", code=job.codes[-1], how="scanned", place="stock"
    )
    job.test(place)
    job.exchange(**{place: spare})
    return job


def original_in_stock_behind_a_spare(core):
    """Give a job whose fault was the wiring, with a spare still where the good original was pulled."""
    place = "rear-right-outer"
    job = with_a_spare_in(core, place)
    job.fact("unit_moved", unit=home(place), place="stock", how="scanned", note="")
    job.test(place)
    job.fact("circuit_repaired", cause="circuit:" + place, what="plug cleaned")
    for _ in range(12):
        step = job.step()
        # The move that is proposed brings the original back at once; it is tested with the spare instead.
        if step["form"] == "test" or step["id"] == "move":
            job.test()
        elif step["id"] in ("seat", "walk"):
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


def cured_by_a_spare(core):
    """Give a job whose fault was gone with a spare in."""
    job = with_a_spare_in(core)
    job.test()
    return job


def test_the_sensor_that_a_spare_stands_in_for_is_put_back_to_be_told(core):
    job = cured_by_a_spare(core)
    step = job.step()

    assert step["id"] == "move"
    (start,) = step["action"]["events"]
    assert start["data"]["fitted"] == {"rear-right-outer": home("rear-right-outer")}
    assert english(step["text"]).startswith("All is clean with your spare.")


def test_the_spare_may_stay_all_the_same(core):
    job = cured_by_a_spare(core)
    job.tap("second")

    assert job.step()["id"] == "seat"
    assert "left_deliberately" in [event["kind"] for event in job.events]


def test_one_good_one_that_sits_elsewhere_is_asked_about_as_one(core):
    """Of three in a ring two were bad and are replaced; the third has not come home."""
    job = Driver(core).begin()
    ring = {
        "rear-left-inner": home("rear-left-outer"),
        "rear-left-outer": home("rear-right-outer"),
        "rear-right-outer": home("rear-left-inner"),
    }
    job.test("rear-left-inner", "rear-right-outer")
    job.photograph()
    job.fact("move_started", move="exchange", fitted=ring, position="", reason="")
    job.guided()
    job.test("rear-left-outer", "rear-right-outer")
    job.new_unit("rear-right-outer")
    job.guided()
    job.test("rear-left-outer")
    job.new_unit("rear-left-outer", unit="u00000000new2")
    job.guided()
    job.test()
    while job.step()["id"] != "home":
        job.tap()
    step = job.step()
    good = core("unit", unit=home("rear-left-outer"))["shown"]
    assert step["title"] == "Leave the good one where it is?"
    assert step["text"] == (
        f"{good} sits at left inner. It is the same part and passed there. "
        "Putting it back means one more test."
    )
    assert step["action"]["words"] == "Leave it there"
