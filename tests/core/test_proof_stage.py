"""Tests that only wait for more clean ones are proof, and the stage says so."""

from tests.core.driver import Driver


def test_counting_clean_tests_after_cleaning_is_the_stage_prove(core):
    job = Driver(core).begin()
    job.test("rear-left-inner", came_and_went=True)
    job.photograph()
    assert job.view()["stage"] == "swap"

    job.fact("cleaned", position="rear-left-inner", note="")
    job.test()
    for _ in range(20):
        view = job.view()
        if view["proof"]["settled"] or view["moves"][0]["move"] == "retest":
            break
        job.test()

    assert view["moves"][0]["move"] == "retest"
    assert view["stage"] == "prove"
    assert view["proof"]["clean_in_a_row"] > 1

    job.tap()
    assert job.step()["form"] == "test"
    assert job.view()["stage"] == "prove"
