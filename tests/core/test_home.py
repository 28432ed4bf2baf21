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
