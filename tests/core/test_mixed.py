"""Sensors that got mixed up: told apart by a scan or by a test, and on record for good."""

import itertools

import pytest

from tests.core.brute_force import Enumeration
from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER, LEFT = "rear-right-outer", "rear-right-inner", "rear-left-outer"


@pytest.fixture
def job(core):
    """A fault at right outer; its exchange with right inner is under way, both are out and labelled."""
    job = Driver(core).faulted()
    job.start_exchange()
    for _ in range(2):
        job.scan_wanted()
    assert job.step()["expects"]["do"] == "fit"
    return job


def mix(job, *units, note=""):
    job.fact("units_mixed", units=list(units) or [home(OUTER), home(INNER)], note=note)
    return job


def relabel(job):
    """Put a fresh label on each of those that got mixed up."""
    for _ in range(6):
        step = job.step()
        if step["id"] != "mixed.label":
            return job
        job.scan(job._fresh_for(step["expects"]["unit"]))
    raise AssertionError("the labels do not end")


@pytest.fixture(autouse=True)
def fresh(monkeypatch):
    """Let the driver remember the new label of a body under the body's id."""

    def fresh_for(driver, unit):
        driver.labels[unit] = driver._fresh()
        return driver.labels[unit]

    monkeypatch.setattr(Driver, "_fresh_for", fresh_for, raising=False)


def fit(job):
    """Fit those that got mixed up where two are missing, nothing else touched, and go through with it."""
    assert job.step()["id"] == "mixed.fit"
    plain = next(each for each in job.view()["moves"] if sorted(each["touches"]) == [INNER, OUTER])
    job.record(*plain["events"])
    job.guided()
    return job


def bodies(job):
    state = job.core("state")
    return list(state["mixed"][0]["bodies"])


def chances(job):
    return {entry["cause"]: entry["words"] for entry in job.view()["reasoning"]["causes"]}


def test_the_app_says_at_once_what_settles_it_at_least_cost(job):
    step = mix(job).step()
    assert step["title"] == "2 sensors got mixed up"
    assert step["text"].startswith("Look for a label that is still on (")
    assert "The other one is then known too." in step["text"]
    assert step["text"].endswith("put a fresh label on each. Tests then tell which one is bad.")
    shown = job.view()["mixed"][0]
    assert shown["count"] == 2
    assert shown["sentence"].endswith("got mixed up: which is which is not known.")


def test_the_best_way_to_fit_them_is_offered_with_what_each_result_would_mean(job):
    """At their own places a fault that stays says little; with one of them elsewhere it tells."""
    # A hand is there at once; with longer ways one more is exchanged only once the others hang.
    for place in (OUTER, INNER, LEFT, "rear-left-inner"):
        job.fact("reach_set", position=place, minutes=0)
    relabel(mix(job))
    view = job.view()
    assert view["step"]["id"] == "mixed.fit"
    assert view["step"]["title"] == view["moves"][0]["title"]
    plain, elsewhere = (
        next(move for move in view["moves"] if len(move["touches"]) == count) for count in (2, 3)
    )
    assert OUTER in elsewhere["touches"]
    for move, telling in ((plain, 1), (elsewhere, 3)):
        settling = [row["then"] for row in move["outlook"] if row["then"].startswith("it is ")]
        assert len(settling) == telling
    assert any("is the one from right outer" in then for then in settling), "who would be who"
    assert any(then.endswith("; which is which stays open") for then in settling)


def test_one_test_is_promised_to_tell_nowhere(job):
    relabel(mix(job))
    view = job.view()
    assert "one test tells" not in str([view["step"], view["moves"], view["mixed"]])


def test_a_fault_that_stays_where_it_was_leads_on(job):
    """Seen: right outer again after the mix-up, and nothing but 'Test again' ever after, at 83 %."""
    relabel(mix(job))
    fit(job)
    job.test(OUTER)
    view = job.view()
    assert view["step"]["id"] == "move"
    assert view["moves"][0]["move"] != "retest"
    assert view["reasoning"]["verdict"] is None
    fault = bodies(job)[0]
    for _ in range(3):
        job.record(*job.view()["moves"][0]["events"])
        job.guided()
        while job.step()["form"] == "measure":
            job.choose(0)
        if job.step()["id"] == "measure.done":
            job.tap()
        if job.step()["id"] == "test":
            holds = job.core("state")["vehicles"]["v1"]["holds"]
            job.test(*[place for place in holds if holds[place] == fault])
        if job.view()["reasoning"]["verdict"]:
            break
    assert job.step()["id"] == "replace"
    assert [each["cause"] for each in job.view()["reasoning"]["verdict"]] == ["unit:" + fault]


def test_a_scan_of_a_label_that_is_still_on_settles_both(job):
    label = job.labels[home(OUTER)]
    answer = mix(job).scan(label)
    assert answer["sentence"].endswith("The other one is known now too.")
    assert [draft["kind"] for draft in answer["events"]] == ["unit_seen"]
    state = job.core("state")
    assert state["units"][home(OUTER)]["place"] == "out"
    assert state["units"][home(OUTER)]["code"] == label
    assert state["units"][home(INNER)]["place"] == "out"
    assert state["units"][home(INNER)]["code"] == "", "the label that nobody found is gone"
    assert job.view()["mixed"] == []
    assert len(job.view()["out"]) == 2


def test_what_was_under_way_goes_on_once_it_is_settled(job):
    before = job.view()["step"]["expects"]
    mix(job).scan(job.labels[home(INNER)])
    assert job.core("state")["jobs"][job.job]["move"]["fitted"] == {OUTER: home(INNER), INNER: home(OUTER)}
    assert job.step()["expects"] != before
    assert "label" in job.step()["title"].lower(), "the one whose label is gone gets a fresh one first"


def test_the_loss_stays_on_the_trail_of_each_for_good(job):
    mix(job, note="They fell off the step.").scan(job.labels[home(OUTER)])
    for unit, how in ((home(OUTER), "settled by a scan"), (home(INNER), "settled, as the last one left")):
        lost = job.core("unit", unit=unit)["lost"]
        assert [entry["words"] for entry in lost] == [f"2 sensors involved; {how}"]
        assert lost[0]["at"] > 0
        assert "mixed" in [move["what"] for move in job.core("unit", unit=unit)["moves"]]
    history = [entry["sentence"] for entry in job.view()["history"]]
    told = "got mixed up: which is which is not known. They fell off the step."
    assert any(sentence.endswith(told) for sentence in history)


def test_without_a_label_each_gets_a_fresh_one_and_one_test_tells_which_is_bad(job):
    relabel(mix(job))
    fit(job)
    one, two = bodies(job)
    holds = job.core("state")["vehicles"]["v1"]["holds"]
    assert {holds[OUTER], holds[INNER]} == {one, two}
    assert job.step()["id"] == "test"
    job.test(INNER)
    job.test(INNER)
    verdict = job.view()["reasoning"]["verdict"]
    assert [cause["cause"] for cause in verdict] == ["unit:" + holds[INNER]]
    assert job.view()["reasoning"]["sentence"].startswith("Sensor ")
    lost = job.core("unit", unit=holds[INNER])["lost"]
    assert [entry["words"] for entry in lost] == ["2 sensors involved"]


def exact(job, after):
    """Each way the bodies may be who they are, enumerated: (P(body at OUTER bad), P(body at INNER bad))."""
    names = [p["id"] for p in job.core("layouts")[0]["positions"]]
    first = {"fitted": {p: home(p) for p in names}, "faulted": [OUTER]}
    totals, outer, inner = 0.0, 0.0, 0.0
    for at_outer, at_inner in itertools.permutations([home(OUTER), home(INNER)]):
        fitted = {**{p: home(p) for p in names}, OUTER: at_outer, INNER: at_inner}
        # Both places were empty for a while, so nothing blocks them any more: cleaned says so too.
        tests = [first] + [
            {"fitted": fitted, "faulted": f, "cleaned": [OUTER, INNER] if n == 0 else []}
            for n, f in enumerate(after)
        ]
        case = {
            "positions": [{"id": p, "group": "rear"} for p in names],
            "units": [{"id": home(p)} for p in names],
            "tests": tests,
            "meter": [],
        }
        way = Enumeration(case)
        marginals = way.marginals()
        totals += way.total
        outer += way.total * marginals["unit:" + at_outer]
        inner += way.total * marginals["unit:" + at_inner]
    return outer / totals, inner / totals


@pytest.mark.parametrize("after", [[[INNER]], [[OUTER]], [[]], [[INNER], []], [[OUTER], [OUTER]]])
def test_the_chances_after_it_are_exact_over_all_ways_it_may_be(job, after):
    relabel(mix(job))
    fit(job)
    for faulted in after:
        job.test(*faulted)
    holds = job.core("state")["vehicles"]["v1"]["holds"]
    result = job.core("reasoned", job=job.job)
    found = {entry["cause"]: entry["probability"] / 1e9 for entry in result["causes"]}
    outer, inner = exact(job, after)
    assert found["unit:" + holds[OUTER]] == pytest.approx(outer, abs=1e-8)
    assert found["unit:" + holds[INNER]] == pytest.approx(inner, abs=1e-8)
    total = sum(entry["probability"] for entry in result["explanations"])
    assert total == pytest.approx(1e9, abs=200)


def test_before_any_test_each_is_as_likely_bad_as_the_mean_of_those_it_may_be(job):
    """0.7439 for the suspect of the design's example; the cleared one has 0.05 / 20 in odds."""
    result = job.core("reasoned", job=job.job)
    found = {entry["cause"]: entry["probability"] / 1e9 for entry in result["causes"]}
    mean = (found["unit:" + home(OUTER)] + found["unit:" + home(INNER)]) / 2
    relabel(mix(job))
    one, two = bodies(job)
    result = job.core("reasoned", job=job.job)
    found = {entry["cause"]: entry["probability"] / 1e9 for entry in result["causes"]}
    assert found["unit:" + one] == pytest.approx(mean, abs=2e-9)
    assert found["unit:" + two] == pytest.approx(mean, abs=2e-9)


def test_a_fitted_one_that_no_test_has_cleared_is_tested_again_before_the_end(job):
    job.fact("comes_and_goes_set", value=True)
    relabel(mix(job))
    fit(job)
    job.test()
    view = job.view()
    assert view["step"]["id"] == "move"
    assert view["moves"][0]["move"] == "retest"
    assert view["reasoning"]["settled"] is False


def test_three_are_told_apart_when_two_of_them_are_scanned(core):
    job = Driver(core).begin()
    job.test(OUTER)
    for place in (OUTER, INNER, LEFT):
        job.fact("unit_pulled", unit=home(place), position=place, how="tapped")
        job.fact("unit_labelled", unit=home(place), code=job._fresh_for(home(place)), how="scanned")
    mix(job, home(OUTER), home(INNER), home(LEFT))
    assert "The other one is then known too." not in job.step()["text"]
    job.scan(job.labels[home(LEFT)])
    assert job.view()["mixed"][0]["count"] == 3
    job.scan(job.labels[home(OUTER)])
    assert job.view()["mixed"] == []
    assert {line["id"] for line in job.view()["out"]} == {home(OUTER), home(INNER), home(LEFT)}


def test_tests_of_a_body_become_those_of_the_unit_it_turns_out_to_be(job):
    relabel(mix(job))
    fit(job)
    job.test(INNER)
    holds = job.core("state")["vehicles"]["v1"]["holds"]
    body = holds[INNER]
    job.force("unit_seen", unit=home(OUTER), place="fitted", position=INNER, how="scanned")
    state = job.core("state")
    assert state["aliases"][body] == home(OUTER)
    assert state["vehicles"]["v1"]["holds"] == {**holds, INNER: home(OUTER), OUTER: home(INNER)}
    assert state["jobs"][job.job]["tests"][1]["fitted"][INNER] == home(OUTER)
    assert state["units"][home(OUTER)]["code"] == job.labels[body]
    tests = job.core("unit", unit=body)["tests"]
    assert [test["mark"] for test in tests] == ["fault", "fault"]
    job.test(INNER)
    assert job.view()["reasoning"]["sentence"].startswith("The fault followed sensor")


def test_an_old_label_is_no_help_once_each_has_a_new_one(job):
    old = job.labels[home(OUTER)]
    relabel(mix(job))
    answer = job.scan(old)
    assert answer["outcome"] == "stop"
    assert "Scan the new label instead." in answer["more"]


def test_only_what_is_in_hand_is_mixed_up(job):
    stop = job.check({"kind": "units_mixed", "data": {"units": [home(OUTER), home(LEFT)], "note": ""}})
    assert stop["rule"] == "mixed"
    assert "left outer" in stop["sentence"]
    stop = job.check({"kind": "units_mixed", "data": {"units": [home(OUTER)], "note": ""}})
    assert "at least two" in stop["sentence"]


def test_a_unit_whose_body_nobody_knows_is_not_moved_by_name(job):
    mix(job)
    data = {"unit": home(OUTER), "place": "stock", "how": "tapped", "note": ""}
    assert job.check({"kind": "unit_moved", "data": data})["rule"] == "mixed"


def test_no_second_one_is_pulled_while_one_lies_there_without_a_label(job):
    mix(job)
    stop = job.check({"kind": "unit_pulled", "data": {"unit": home(LEFT), "position": LEFT, "how": "tapped"}})
    assert stop["rule"] == "label_first"
    assert stop["sentence"] == "One of the 2 that got mixed up has no label yet."


def test_a_job_closes_when_each_body_is_accounted_for(job):
    relabel(mix(job))
    blockers = job.view()["close"]["blockers"]
    assert len([blocker for blocker in blockers if "in your hand" in blocker]) == 2
    fit(job)
    job.test(OUTER)
    job.test(OUTER)
    assert [blocker for blocker in job.view()["close"]["blockers"] if "hangs" not in blocker] == []


def test_taking_the_mix_up_back_brings_both_back(job):
    before = job.core("state")
    mix(job)
    job.fact("corrected", device=job.device, seq=job.seq, reason="they were not")
    after = job.core("state")
    assert after["units"] == before["units"]
    assert after["mixed"] == []


def test_a_late_mix_up_of_what_was_fitted_meanwhile_is_kept_as_a_dispute(job):
    job.force("units_mixed", units=[home(OUTER), home(LEFT)], note="")
    assert [line["id"] for line in job.view()["disputes"]] == [home(LEFT)]
    assert job.core("state")["mixed"] == []


def trail_of(job):
    trail = job.view()["trail"]
    at = {line["unit"]: [(p["test"], p["position"]) for p in line["points"]] for line in trail["lines"]}
    return trail, at


def test_the_trail_has_no_line_in_hand_for_a_unit_whose_label_is_dead(job):
    relabel(mix(job))
    fit(job)
    job.test(OUTER)
    trail, at = trail_of(job)
    one, two = bodies(job)
    assert at[home(OUTER)] == [(0, OUTER)], "its line ends where it got mixed up"
    assert at[one][0][0] == at[two][0][0] == 1, "and the lines of the parts begin after it"
    joined = [(join["start"], join["end"]) for join in trail["joins"]]
    assert sorted(joined) == sorted((was, body) for was in (home(OUTER), home(INNER)) for body in (one, two))
    assert trail["mixed_words"].count("may be the one from right") == 2
    assert None not in [position for points in at.values() for _, position in points]


def test_a_part_that_the_tests_know_again_goes_on_the_line_of_its_unit(job):
    relabel(mix(job))
    fit(job)
    job.test(INNER)
    job.test(INNER)
    trail, at = trail_of(job)
    bad = job.core("state")["vehicles"]["v1"]["holds"][INNER]
    assert at[bad] == [(0, OUTER), (1, INNER), (2, INNER)]
    assert home(OUTER) not in at
    assert home(INNER) not in at
    assert trail["joins"] == []
    assert f"{job.labels[bad]}" in trail["mixed_words"].replace("-", "")
    assert "is the one from right outer, 99.9 % sure." in trail["mixed_words"]
    assert [line["suspect"] for line in trail["lines"] if line["unit"] == bad] == [True]


def test_what_is_in_hand_is_the_same_on_the_trail_and_in_the_list_once_the_new_one_is_in(job):
    relabel(mix(job))
    fit(job)
    job.test(INNER)
    job.test(INNER)
    bad = job.core("state")["vehicles"]["v1"]["holds"][INNER]
    job.new_unit(INNER)
    job.guided()
    job.test()
    _, at = trail_of(job)
    assert [line["id"] for line in job.view()["out"]] == [bad]
    assert [unit for unit, points in at.items() if points[-1][1] is None] == [bad]
    new, off = job.view()["replaced"]
    assert new.endswith(" is new at right inner.")
    assert off.endswith(" came off; it is not put away yet.")


def test_a_code_of_one_that_got_mixed_up_speaks_once_for_it(core):
    """With the same code at both places the way in which the fault went along was ruled out."""
    job = Driver(core).begin()
    inside = {"code": "B1234", "failure_type": "49"}
    job.test(OUTER, codes=[{**inside, "position": OUTER}])
    job.photograph()
    job.start_exchange(OUTER, INNER)
    for _ in range(2):
        job.scan_wanted()
    fit(relabel(mix(job)))
    job.test(INNER, codes=[{**inside, "position": INNER}])
    bad = job.core("state")["vehicles"]["v1"]["holds"][INNER]
    assert [each["cause"] for each in job.view()["reasoning"]["verdict"]] == ["unit:" + bad]


def test_the_page_of_one_whose_label_died_says_what_its_part_is_found_to_be(job):
    fit(relabel(mix(job)))
    job.test(INNER)
    was = job.core("unit", unit=home(OUTER))["finding"]
    now = job.core("unit", unit=job.core("state")["vehicles"]["v1"]["holds"][INNER])["finding"]
    assert (
        (was["standing"], was["sentence"]) == (now["standing"], now["sentence"]) == ("bad", now["sentence"])
    )
    assert "not this sensor" in job.core("unit", unit=home(INNER))["finding"]["sentence"]


def test_the_page_of_one_whose_part_is_not_known_says_that_nothing_is_found(job):
    fit(relabel(mix(job)))
    job.test(OUTER)
    for unit in (home(OUTER), home(INNER)):
        finding = job.core("unit", unit=unit)["finding"]
        assert finding["standing"] == "open"
    assert job.core("unit", unit=home(OUTER))["finding"]["chance"] > 700_000_000
