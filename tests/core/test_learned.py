"""What the yard's own jobs taught: taken for jobs to come, kept by those that are open, taken back."""

import pytest

from server.core.evidence import job_alone
from server.core.evidence import job_case
from server.core.facts.fold import Fold
from server.core.parts import sorts
from server.core.parts.sorts import PARKING_SENSOR
from server.core.state.job import known_job
from tests.core.driver import Driver
from tests.hosts import Core
from tests.said import english

RATES = {"unit": 30_000, "circuit": 25_000, "shows": 900_000}
DOUBTS = {"unit": 150, "circuit": 210}
SAID = {"rates_ppm": RATES, "doubts_x100": DOUBTS, "jobs": 52, "upto": "d0123456789abcdef:1"}
MINUTES = {"minutes_x100": {"pull": 80, "test": 250}, "reach_x100": {"rear-right-outer": 730}, "jobs": 52,
           "upto": "d0123456789abcdef:1"}  # fmt: skip
OTHER_JOB = "j000000000002"


def adopt(core, kind="rates_learned", data=None):
    """The yard takes figures: an entry outside any job; returns whoever recorded it."""
    yard = Driver(core, device="d00000000000000aa")
    yard.job = None
    yard.fact(kind, **(data or SAID))
    return yard


def opened(core, **more):
    """A job that was opened as the app opens one."""
    job = Driver(core, **more)
    job.open()
    drafts = core("learned")["opens_with"]
    if drafts:
        job.record(*drafts)
    return job


def rates_of(core, job):
    told = core("assumptions", job=job.job)
    return {rate["id"]: rate for rate in told["rates"]}


def test_a_yard_that_took_nothing_goes_by_the_defaults(core):
    job = opened(core)

    assert core("learned") == {"opens_with": []}
    assert rates_of(core, job)["unit"]["value_ppm"] == 50_000
    assert core("assumptions", job=job.job)["yard"] is None


def test_a_job_that_is_opened_later_stands_on_what_was_taken(core):
    adopt(core)
    job = opened(core)

    rates = rates_of(core, job)
    assert {name: rates[name]["value_ppm"] for name in RATES} == RATES
    assert english(rates["unit"]["source"]) == "from 52 own jobs"
    assert english(rates["blocked"]["source"]) == "common practice, no source"
    assert not rates["unit"]["changed"]
    assert core("assumptions", job=job.job)["yard"] is None


def test_a_rate_that_jobs_taught_is_said_with_the_figures_that_tell(core):
    adopt(core, data={**SAID, "rates_ppm": {"unit": 51_351, "shows": 996_413, "feed": 257}})
    said = rates_of(core, opened(core))

    shown = [english(said[name]["value_words"]) for name in ("unit", "shows", "feed")]
    assert shown == ["5.1 %", "99.64 %", "0.026 %"]
    assert said["unit"]["value_ppm"] == 51_351


def test_a_rate_set_on_the_job_goes_before_what_was_learned_and_can_be_set_back(core):
    adopt(core)
    job = opened(core)

    job.fact("rates_set", rates_ppm={"unit": 10_000}, confidence_ppm=0)
    assert rates_of(core, job)["unit"]["value_ppm"] == 10_000
    job.record(*rates_of(core, job)["unit"]["reset"])

    assert rates_of(core, job)["unit"]["value_ppm"] == RATES["unit"]


def test_an_open_job_keeps_its_own_unless_somebody_says_otherwise(core):
    job = opened(core)
    adopt(core)

    assert rates_of(core, job)["unit"]["value_ppm"] == 50_000
    offered = core("assumptions", job=job.job)["yard"]
    assert english(offered["sentence"]) == "Your yard goes by 52 own jobs; this job does not."
    job.record(*offered["events"])

    assert rates_of(core, job)["unit"]["value_ppm"] == RATES["unit"]
    assert core("assumptions", job=job.job)["yard"] is None


def test_taking_back_is_a_correction_that_leaves_open_jobs_as_they_are(core):
    earlier = adopt(core)
    earlier.fact("rates_learned", **{**SAID, "rates_ppm": {"unit": 20_000}, "jobs": 90})
    job = opened(core)

    earlier.fact("corrected", device=earlier.device, seq=2, reason="too early")

    assert core("learned")["opens_with"][0]["data"] == SAID
    assert rates_of(core, job)["unit"]["value_ppm"] == 20_000
    earlier.fact("corrected", device=earlier.device, seq=1, reason="too early as well")
    assert core("learned") == {"opens_with": []}


def test_what_was_taken_back_is_as_if_it_had_never_been(core):
    yard = adopt(core)
    opened(core)
    yard.fact("corrected", device=yard.device, seq=1, reason="slip")
    state = core("state")

    core("reset", events=[])
    assert core("state")["learned"] == {}
    assert state["learned"] == {}
    assert state["jobs"][Driver(core).job]["learned"]["rates_learned"]["jobs"] == 52


def test_the_doubt_of_a_class_is_what_was_learned_within_bounds():
    core = Core()
    adopt(core, data={**SAID, "doubts_x100": {"unit": 170, "circuit": 100, "feed": 900, "luck": 5}})
    adopted = core("learned")["opens_with"]
    job = opened(core)
    fold = Fold()
    fold.reset(job.events)

    found = known_job(fold.state, job.job)

    assert adopted[0]["data"]["doubts_x100"]["feed"] == 900
    assert job_case.case_of(found)["doubt"] == {"unit": 1.7, "circuit": 1.5, "feed": 3.0}
    assert job_alone.bare_case(found)["doubt"] == {"unit": 1.7, "circuit": 1.5, "feed": 3.0}


def test_a_job_says_by_its_own_entries_what_it_stands_on():
    """As its record has them: nothing of the yard's is needed to come to the same."""
    core = Core()
    adopt(core)
    adopt_minutes = Driver(core, device="d00000000000000bb")
    adopt_minutes.job = None
    adopt_minutes.fact("minutes_learned", **MINUTES)
    job = opened(core)
    fold = Fold()
    fold.reset(job.events)

    case = job_case.case_of(known_job(fold.state, job.job))

    assert {name: round(case["rates"][name] * 1_000_000) for name in RATES} == RATES
    checks = {"meter": PARKING_SENSOR.harness.all_good, "meter_found": PARKING_SENSOR.harness.found}
    assert case["minutes"] == {"pull": 0.8, "test": 2.5, **checks}
    assert fold.state.learned == {}


def test_minutes_and_reach_that_were_learned_move_the_plan(core):
    plain = opened(core, job=OTHER_JOB)
    before = {each["id"]: each["reach_minutes"] for each in plain.view()["board"]["positions"]}
    adopt(core, "minutes_learned", MINUTES)
    plain.record(*core("assumptions", job=plain.job)["yard"]["events"])

    after = {each["id"]: each["reach_minutes"] for each in plain.view()["board"]["positions"]}

    assert after["rear-right-outer"] == 7
    assert {**after, "rear-right-outer": before["rear-right-outer"]} == before
    plain.fact("reach_set", position="rear-right-outer", minutes=4)
    assert {each["id"]: each["reach_minutes"] for each in plain.view()["board"]["positions"]}[
        "rear-right-outer"
    ] == 4


def test_what_jobs_on_one_sort_of_part_taught_says_nothing_of_another(core):
    adopt(core).fact("minutes_learned", **MINUTES)
    assert len(core("learned", layout="rear-4")["opens_with"]) == 2
    assert core("learned", layout="ignition-coil/row-4") == {"opens_with": []}
    job = Driver(core, job=OTHER_JOB)
    job.open(layout="ignition-coil/row-4", part="")
    rates = rates_of(core, job)

    # As phones recorded it before they asked for a layout.
    job.record(*core("learned")["opens_with"])

    assert rates_of(core, job) == rates
    assert rates["circuit"]["value_ppm"] == 30_000
    assert core("assumptions", job=job.job)["yard"] is None
    fold = Fold()
    fold.reset(job.events)
    case = job_case.case_of(known_job(fold.state, job.job))
    assert case["minutes"] == sorts.by_layout("ignition-coil/row-4").minutes
    assert "doubt" not in case


@pytest.mark.parametrize("rates", [{"luck": 5}, {"shows": 0}, {"false_alarm": 1_000_000}])
def test_what_no_rate_can_be_is_refused(core, rates):
    job = opened(core)

    stop = job.check({"kind": "rates_learned", "data": {**SAID, "rates_ppm": rates}})

    assert stop["rule"] == "rates"


def test_what_an_older_core_does_not_know_is_left_out(core):
    job = opened(core)
    job.force("rates_learned", **{**SAID, "rates_ppm": {"luck": 5, "unit": 0, "circuit": 9_000}})

    rates = rates_of(core, job)
    assert (rates["unit"]["value_ppm"], rates["circuit"]["value_ppm"]) == (50_000, 9_000)


def test_the_history_says_what_was_taken_and_from_how_many_jobs(core):
    adopt(core)
    job = opened(core)

    told = [english(entry["sentence"]) for entry in core("job", job=job.job)["history"]]

    assert "Rates taken from 52 own jobs." in told
