"""A test that nothing proves: checks by what the lamps showed, never the same test for ever."""

import pytest

from tests.core.driver import Driver

OUTER = "rear-right-outer"
LAMPS = ["as_it_should", "stays_on", "flashes", "never_on", "not_sure"]


def at_test(core, lamp="as_it_should"):
    """Begin a job whose lamp showed this at key-on."""
    job = Driver(core).open()
    job.tap()
    job.fact("lamp_checked", when="key_on", result=lamp, note="")
    job.fact("lamp_checked", when="reverse", result="as_it_should", note="")
    job.fact("looked", positions=[], note="")
    return job


def not_heard(job):
    job.test(heard=False)


@pytest.mark.parametrize(
    ("lamp", "first"),
    [("never_on", "fuse"), ("stays_on", "start"), ("flashes", "start"), ("as_it_should", "start"),
     ("not_sure", "fuse")],
)  # fmt: skip
def test_the_lamps_say_which_check_comes_first(core, lamp, first):
    job = at_test(core, lamp)
    not_heard(job)
    assert job.step()["id"] == f"sounder.{first}"
    assert job.step()["form"] == "choices"


def test_each_check_leads_to_the_next_and_the_last_to_a_way_out(core):
    job = at_test(core)
    not_heard(job)
    seen = []
    while job.step()["id"] != "sounder.rest":
        seen.append(job.step()["id"])
        job.choose(0)
    assert len(seen) == len(set(seen)) == 6
    assert "The control unit itself is left" in job.step()["text"]
    job.choose(0)
    assert job.step()["form"] == "test"
    not_heard(job)
    step = job.step()
    assert step["id"] == "sounder.rest"
    assert step["text"] == (
        "The control unit was replaced or repaired already. Ask somebody who knows this vehicle."
    )
    assert [choice["words"] for choice in step["choices"]] == [
        "Pause: I need help", "I replaced or repaired the control unit",
    ]  # fmt: skip
    job.choose(0)
    assert job.view()["paused"]


def test_what_nobody_could_tell_is_not_called_fine_and_can_still_be_told(core):
    job = at_test(core)
    not_heard(job)
    open_checks = {"start", "fuse"}
    # Lamps that stay dark, and nobody knows why: that was no answer.
    assert job.step()["choices"][2]["words"] == "It is wrong, or I can't tell"
    while job.step()["id"] != "sounder.untold":
        job.choose(2 if job.step()["id"].partition(".")[2] in open_checks else 0)
    step = job.step()
    assert step["title"] == "Not heard, and not all could be told"
    assert step["text"] == (
        "Still open: how the test is started and the fuse. "
        "Ask somebody who can look, or tap what you know by now."
    )
    assert [choice["words"] for choice in step["choices"]] == [
        "Pause: I need help", "I start it just so", "The fuse is whole",
    ]  # fmt: skip
    job.choose(1)
    assert job.step()["id"] == "sounder.untold"
    job.choose(1)
    assert job.step()["id"] == "sounder.rest"


def test_what_was_put_right_is_tested(core):
    job = at_test(core)
    not_heard(job)
    job.choose(1)
    assert job.step()["form"] == "test"
    not_heard(job)
    seen = []
    while job.step()["id"] != "sounder.rest":
        assert job.step()["progress"]["now"] == len(seen) + 2
        seen.append(job.step()["id"].partition(".")[2])
        job.choose(0)
    # Not what was done a moment ago; that it was done well is asked last.
    assert seen == ["sounder", "switch", "control", "fuse", "supply", "start"]
    job.test(OUTER)
    assert not job.step()["id"].startswith("sounder")


def test_one_may_test_again_at_any_check(core):
    job = at_test(core)
    not_heard(job)
    job.record(*job.step()["also"][0]["events"])
    assert job.step()["form"] == "test"
    not_heard(job)
    assert job.step()["id"].startswith("sounder")


def test_after_tests_that_were_heard_one_more_try_comes_first(core):
    job = at_test(core)
    job.test(OUTER)
    not_heard(job)
    assert (job.step()["form"], job.step()["title"]) == ("test", "Run the self-test again")
    not_heard(job)
    assert job.step()["id"] == "sounder.start"


def test_a_lamp_that_never_comes_on_speaks_for_the_control_unit_until_it_was_repaired(core):
    def chance(lamp):
        job = at_test(core, lamp)
        job.test(OUTER)
        return next(
            c["probability"] for c in core("reasoned", job=job.job)["causes"] if c["cause"] == "control"
        )

    chances = []
    for number, lamp in enumerate(LAMPS):
        core("reset", events=[])
        chances.append(chance(lamp))
        assert number == LAMPS.index(lamp)
    as_it_should, stays, flashes, never, unsure = chances
    assert as_it_should == stays == unsure < flashes < never


def test_the_assumption_about_the_lamp_is_named(core):
    job = at_test(core, "never_on")
    told = core("assumptions", job=job.job)["lamps"]
    assert [each["sentence"] for each in told] == [
        "The lamp never came on: the control unit or its supply counts as 10 times likelier."
    ]
    job.fact("circuit_repaired", cause="control", what="repaired")
    assert core("assumptions", job=job.job)["lamps"] == []


def test_the_history_says_what_was_checked(core):
    job = at_test(core, "never_on")
    not_heard(job)
    job.choose(1)
    assert job.view()["history"][0]["sentence"] == "Not heard, so checked the fuse: found and put right."
