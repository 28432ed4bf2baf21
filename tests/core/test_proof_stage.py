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


def test_no_job_ends_on_a_test_that_shows_a_fault(core):
    """A fault where nobody worked is most likely a false alarm; that is said by a test, not by the close."""
    job = Driver(core).faulted()
    job.start_exchange()
    job.guided()
    job.test("rear-right-inner")
    job.new_unit("rear-right-inner")
    job.guided()
    job.test()
    job.tap()  # all sound at the pole
    assert job.step()["id"] == "home"
    job.tap("second")  # the good one goes home, which wants a test
    job.guided()
    job.test("rear-left-inner")
    assert job.view()["reasoning"]["clear"] > 0.95e9
    assert not job.view()["reasoning"]["settled"]
    assert job.step()["title"] == "Test again, to prove it"
    assert job.step()["choices"][0]["words"] == "Still there: fault at left inner"
    job.choose(1)
    assert job.view()["reasoning"]["settled"]
    assert job.step()["form"] != "test"


def test_what_was_all_replaced_and_repaired_is_not_settled_before_a_test(core):
    job = Driver(core).faulted()
    job.new_unit("rear-right-outer")
    job.guided()
    for cause in ("circuit:rear-right-outer", "feed:rear", "control"):
        job.fact("circuit_repaired", cause=cause, what="repaired")
    told = job.view()["reasoning"]
    assert not told["settled"]
    assert told["holds_words"] == ""
    assert job.step()["form"] == "test"
