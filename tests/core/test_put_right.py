"""An entry that was put right counts as if it had been right from the start; the log keeps both."""

import pytest
from hypothesis import HealthCheck
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.core.facts.corrections import PUT_RIGHT
from server.core.facts.corrections import TAKEN_BACK
from server.core.facts.corrections import Corrections
from server.core.facts.fold import Fold
from server.core.log import canon
from server.core.log import envelope
from tests.core.driver import DEVICE
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.random_logs import random_log
from tests.core.test_fold_properties import EACH
from tests.core.test_fold_properties import POSITIONS
from tests.core.test_fold_properties import UNITS
from tests.core.test_fold_properties import fact
from tests.hosts import Core

SEEDS = range(60)


def right_from_the_start(log):
    """Return a log in which each entry says what it was put right to, and nobody had to put it right.

    Nobody took back in it what was put right again.
    """
    righted, corrections = {}, Corrections()
    corrections.note(log)
    for event in log:
        if event["kind"] == PUT_RIGHT and event["v"] == 1 and "entry" in event["data"]:
            data = event["data"]
            if {"device", "seq", "reason"} <= set(data):
                righted[f"{data['device']}:{data['seq']}"] = data["entry"]
    found = []
    for event in log:
        entry = righted.get(envelope.identity(event))
        if event["kind"] != PUT_RIGHT and not _is_lifted(event, corrections):
            fits = entry and entry["kind"] == event["kind"] and event["v"] == 1
            found.append({**event, "data": entry["data"]} if fits else event)
    return found


def _is_lifted(event, corrections):
    """Tell whether an entry takes another one back that counts all the same."""
    data = event["data"]
    of_a_known_form = (
        event["kind"] == TAKEN_BACK and event["v"] == 1 and {"device", "seq", "reason"} <= set(data)
    )
    return of_a_known_form and f"{data['device']}:{data['seq']}" not in corrections.withdrawn


def without_the_correction(state):
    """Return a state as text without what only tells that entries were put right."""
    state = {**state, "not_understood": [e for e in state["not_understood"] if e["kind"] != PUT_RIGHT]}
    state["jobs"] = {name: _plain_job(job) for name, job in state["jobs"].items()}
    state["units"] = {name: _told_once(unit) for name, unit in state["units"].items()}
    return canon.dumps(state)


def _plain_job(job):
    return {**_told_once(job), "history": _plain(job["history"])}


def _told_once(entity):
    return {name: entity[name] for name in entity if name != "corrected_apart"}


def _plain(history):
    return [
        {name: entry[name] for name in entry if name not in ("righted", "said")}
        for entry in history
        if entry["kind"] not in (PUT_RIGHT, TAKEN_BACK)
    ]


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_log_put_right_comes_to_what_it_would_have_been_right_from_the_start(seed):
    log = random_log(seed, 70)
    fold, other = Fold(), Fold()
    for event in log:
        fold.add([event])
    other.reset(right_from_the_start(log))
    assert without_the_correction(fold.state.as_dict()) == without_the_correction(other.state.as_dict())


def test_the_random_logs_put_something_right():
    count = sum(
        "righted" in entry
        for seed in SEEDS
        for job in _folded(random_log(seed, 70)).state.jobs.values()
        for entry in job["history"]
    )
    assert count > 60


def test_the_random_logs_correct_entries_apart():
    jobs = [job for seed in SEEDS for job in _folded(random_log(seed, 70)).state.jobs.values()]
    assert len([job for job in jobs if job.get("corrected_apart")]) > 3


def _folded(log):
    fold = Fold()
    fold.reset(log)
    return fold


BESIDES = (
    fact("cleaned", position=st.sampled_from(POSITIONS), note=st.just("")),
    fact(
        "fit_checked",
        unit=st.sampled_from(UNITS),
        position=st.sampled_from(POSITIONS),
        checks=st.just(["flush"]),
    ),
    fact(
        "sounder_checked",
        check=st.sampled_from(["fuse", "supply"]),
        found=st.sampled_from(["good", "mended", "unclear"]),
    ),
    fact("job_paused", why=st.sampled_from(["part", "help"]), part=st.just("PS-1"), note=st.just("")),
    fact("job_closed", why=st.sampled_from(["no_part", "not_worth"]), note=st.just("")),
    fact(
        "unit_seen",
        unit=st.sampled_from(UNITS),
        place=st.sampled_from(["fitted", "out", "stock"]),
        position=st.sampled_from(POSITIONS),
        how=st.just("scanned"),
        settles=st.lists(
            st.sampled_from(["-", *[f"{DEVICE}:{seq}" for seq in range(4, 9)]]), max_size=2, unique=True
        ),
    ),
)

# What a mechanic enters, and what it should have been: the same kind again, or nothing.
ENTERED = st.lists(
    st.one_of(*[st.tuples(each, st.none() | each) for each in (*EACH, *BESIDES)]),
    min_size=1,
    max_size=12,
)


def put_right_and_right(core, entered, order):
    """Return the log of a job in which entries were put right, in any order, and one right at once."""
    core("reset", events=[])
    job = Driver(core).begin()
    wrong = [(job.envelope(kind, data), right) for (kind, data), right in entered]
    order.shuffle(wrong)
    for target, right in wrong:
        if right and target["kind"] != "corrected":
            of = {"device": target["device"], "seq": target["seq"]}
            entry = {"kind": right[0], "data": right[1]}
            job.envelope(PUT_RIGHT, {**of, "entry": entry, "reason": "slip"})
    return job.events, right_from_the_start(job.events)


def told(core, events):
    """Return what a core says of the job of a log: its state, the reasoning, what the screens draw."""
    core("reset", events=[{"event": event} for event in events])
    view = core("job", job=JOB)
    del view["history"]
    return without_the_correction(core("state")), core("reasoned", job=JOB), view


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(ENTERED, st.randoms(use_true_random=False))
def test_a_job_put_right_has_the_state_and_the_verdict_it_would_have_had(entered, order):
    put_right, right = put_right_and_right(Core(), entered, order)
    assert told(Core(), put_right) == told(Core(), right)


@settings(
    max_examples=12,
    deadline=None,
    database=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
@given(ENTERED, st.randoms(use_true_random=False))
def test_both_hosts_put_right_alike(core, entered, order):
    put_right, right = put_right_and_right(core, entered, order)
    assert told(core, put_right) == told(core, right)


def test_a_test_put_right_turns_the_verdict(core):
    """The fault stayed at its position; entered wrong, it had followed the sensor."""
    job = Driver(core).begin()
    outer, inner = "rear-right-outer", "rear-right-inner"
    job.test(outer)
    job.photograph()
    job.start_exchange()
    while job.step()["form"] != "test":
        wanted = job.step()["expects"]
        if wanted and job.step()["form"] == "scan":
            job.scan(job.label_of(wanted["unit"]))
        else:
            job.tap()
    job.test(inner)
    wrong = job.seq
    assert [each["cause"] for each in job.view()["reasoning"]["verdict"]] == [f"unit:{home(outer)}"]

    job.record(put_right(job, wrong, faulted=[outer]))

    view = job.view()
    assert (
        view["reasoning"]["verdict"] is None
        or view["reasoning"]["verdict"][0]["cause"] != f"unit:{home(outer)}"
    )
    assert len(view["trail"]["tests"]) == 2


def put_right(job, seq, **changes):
    """Return the draft that changes fields of an entry of this driver."""
    target = next(event for event in job.events if event["seq"] == seq)
    entry = {"kind": target["kind"], "data": {**target["data"], **changes}}
    data = {"device": job.device, "seq": seq, "entry": entry, "reason": "slip"}
    return {"kind": PUT_RIGHT, "data": data}


@pytest.fixture
def job(core):
    job = Driver(core).begin()
    job.test("rear-right-outer")
    return job


def test_what_is_not_well_formed_or_names_nothing_is_refused_as_it_would_be_of_the_entry(job):
    stop = job.check(put_right(job, job.seq, faulted=["roof"]))
    assert stop["rule"] == "form"
    assert stop["fault"]["field"] == "data.faulted[0]"
    stop = job.check(put_right(job, job.seq, faulted="roof"))
    assert stop["rule"] == "form"
    assert stop["fault"]["field"] == "data.entry.data.faulted"


@pytest.mark.parametrize("which", ["nothing", "correction", "same", "taken back", "kind", "vehicle"])
def test_what_cannot_be_put_right_is_refused(job, which):
    test = job.seq
    draft = put_right(job, test, faulted=["rear-left-outer"])
    if which == "nothing":
        draft["data"]["seq"] = 99
    elif which == "same":
        draft = put_right(job, test)
    elif which == "taken back":
        job.fact("corrected", device=job.device, seq=test, reason="slip")
    elif which == "correction":
        job.record(draft)
        draft["data"]["seq"] = job.seq
    elif which == "kind":
        draft["data"]["entry"] = {"kind": "cleaned", "data": {"position": "rear-left-outer", "note": ""}}
    else:
        draft = put_right(job, 1, vehicle={"id": "v2", "name": "Another", "vin": ""})
    assert job.check(draft)["rule"] == "correction"


def test_the_name_and_the_complaint_of_a_job_are_put_right(job):
    job.record(
        put_right(
            job, 1, complaint="silent in reverse", vehicle={"id": "v1", "name": "Grey estate", "vin": ""}
        )
    )
    assert (job.view()["title"], job.view()["complaint"]) == ("Grey estate", "silent in reverse")


def test_a_correction_is_put_right_by_a_further_one_and_the_last_stands(job):
    test = job.seq
    job.record(put_right(job, test, faulted=["rear-left-outer"]))
    job.record(put_right(job, test, faulted=["rear-left-inner"]))
    assert job.core("state")["jobs"][JOB]["tests"][0]["faulted"] == ["rear-left-inner"]


def test_custody_is_judged_as_of_the_place_of_the_entry(job):
    """Two entries changed places: the first is put right first, then the second fits again."""
    outer, inner = "rear-right-outer", "rear-right-inner"
    job.force("unit_pulled", unit=home(outer), position=outer, how="tapped")
    pulled = job.seq
    stop = job.check(put_right(job, pulled, position=inner))
    assert stop["rule"] == "one_place"
    assert job.check(put_right(job, pulled, position=inner, unit=home(inner))) is None


def test_nobody_makes_a_scan_of_what_was_none(job):
    outer, inner = "rear-right-outer", "rear-right-inner"
    job.force("unit_pulled", unit=home(outer), position=outer, how="scanned")
    pulled = job.seq
    assert job.check(put_right(job, pulled, unit=home(inner), position=inner))["sentence"].startswith(
        "Nobody"
    )
    assert job.check(put_right(job, pulled, unit=home(inner), position=inner, how="tapped")) is None
    job.record(put_right(job, pulled, how="tapped"))
    assert job.check(put_right(job, pulled, how="scanned"))["rule"] == "correction"


def test_a_closed_job_stays_closed(job):
    job.force("job_closed", note="")
    job.record(put_right(job, job.seq - 1, faulted=[]))
    assert job.view()["closed"]


def righted(job, draft):
    """Return what a core says that a correction would change."""
    return job.core("righted", event={"job": job.job, "actor": "Mara", **draft})


def test_what_a_correction_changes_is_said_before_it_is_recorded(job):
    told = righted(job, put_right(job, job.seq, faulted=[]))
    assert told["refusal"] is None
    assert told["sentence"].startswith("The verdict was: ")
    assert told["unfit"] == []
    stays = righted(job, put_right(job, job.seq, note="cold morning"))
    assert stays["sentence"].startswith("The verdict stays: ")


def test_later_entries_that_no_longer_fit_are_told_and_stay(job):
    outer, inner = "rear-right-outer", "rear-right-inner"
    job.force("unit_pulled", unit=home(outer), position=outer, how="tapped")
    pulled = job.seq
    job.force("unit_fitted", unit=home(outer), position=outer, how="tapped", override="")
    draft = put_right(job, pulled, unit=home(inner), position=inner)
    told = righted(job, draft)
    assert [each["seq"] for each in told["unfit"]] == [pulled + 1]
    job.record(draft)
    assert [entry["event"].split(":")[1] for entry in job.core("conflicts")["conflicts"]] == [str(pulled + 1)]


def test_an_entry_of_another_job_that_no_longer_fits_is_told_as_that_job_calls_its_positions(job):
    outer = "rear-right-outer"
    job.force("unit_pulled", unit=home(outer), position=outer, how="tapped")
    pulled = job.seq
    other = Driver(job.core, device="d0123456789abcdee", job="j000000000002")
    positions = [
        {"id": "own-plan-1", "name": "left corner", "group": "g", "edge": "rear", "reach_minutes": 3}
    ]
    vehicle = {"id": "v2", "name": "White van", "vin": ""}
    other.fact("job_opened", vehicle=vehicle, complaint="", layout="own", part="PS-1", positions=positions)
    other.force("unit_pulled", unit="v2.own-plan-1", position="own-plan-1", how="tapped")
    other.force("unit_fitted", unit=home(outer), position="own-plan-1", how="tapped", override="")
    inner = "rear-right-inner"
    told = righted(job, put_right(job, pulled, unit=home(inner), position=inner))
    assert [each["seq"] for each in told["unfit"]] == [other.seq]
    assert "left corner" in told["unfit"][0]["sentence"]
    assert "own-plan-1" not in told["unfit"][0]["sentence"]


def test_what_is_refused_says_why_before_it_is_tapped(job):
    assert righted(job, put_right(job, job.seq, faulted=["roof"]))["refusal"]["rule"] == "form"


def test_an_entry_comes_with_all_that_can_be_entered_anew(job):
    entry = job.core("entry", job=JOB, device=job.device, seq=job.seq)
    assert [(each["name"], each["form"]) for each in entry["fields"]] == [
        ("faulted", "many"), ("silent", "many"), ("heard", "one"), ("note", "text"),
        ("codes.rear-right-outer", "text"),
    ]  # fmt: skip
    assert entry["fields"][0]["value"] == ["rear-right-outer"]
    assert len(entry["fields"][0]["options"]) == 4


def test_a_repair_comes_with_what_can_have_been_repaired_where_and_what_was_done(job):
    cause = "circuit:rear-right-outer"
    job.fact("circuit_repaired", cause=cause, what="repaired", segment="under the sill")
    entry = job.core("entry", job=JOB, device=job.device, seq=job.seq)
    fields = {each["name"]: each for each in entry["fields"]}
    assert [(name, field["form"], field["value"]) for name, field in fields.items()] == [
        ("cause", "one", cause), ("segment", "one", "under the sill"), ("what", "text", ""),
    ]  # fmt: skip
    causes = [option["value"] for option in fields["cause"]["options"]]
    assert {cause, "circuit:rear-left-inner", "feed:rear", "control"} < set(causes)
    segments = [option["value"] for option in fields["segment"]["options"]]
    assert segments[0] == "pins"
    assert segments[-1] == "under the sill"


def test_a_repair_of_an_earlier_version_that_says_no_place_can_be_given_one(job):
    job.fact("circuit_repaired", cause="control", what="repaired")
    entry = job.core("entry", job=JOB, device=job.device, seq=job.seq)
    [place] = [field for field in entry["fields"] if field["name"] == "segment"]
    assert place["value"] == ""
    assert "" not in [option["value"] for option in place["options"]]
    job.record(put_right(job, job.seq, segment="channel"))
    [shown] = [entry for entry in job.view()["history"] if entry["kind"] == "circuit_repaired"]
    assert "control unit" in shown["sentence"]
    assert "inside the control unit" in shown["sentence"]
    assert "inside the control unit" not in shown["righted"]["said"]


def test_a_reading_comes_with_what_it_was_compared_with_where_it_was_compared(job):
    at = {"position": "rear-right-outer", "value": "5 V", "reads": "bad"}
    job.fact("circuit_measured", check="supply", compared="12 V", **at)
    compared = job.core("entry", job=JOB, device=job.device, seq=job.seq)["fields"]
    asked = [(each["name"], each["value"]) for each in compared]
    assert asked[2:] == [("value", "5 V"), ("compared", "12 V")]
    job.fact("circuit_measured", check="ground", **dict(at, value="3 Ω"))
    alone = job.core("entry", job=JOB, device=job.device, seq=job.seq)["fields"]
    assert [each["name"] for each in alone] == ["position", "reads", "value"]


@pytest.mark.parametrize("value", ["-3", "1e9", "12 V", "\U0001f697", "one"])
def test_a_figure_that_no_meter_shows_is_refused_as_what_is_right_too(job, value):
    job.fact("circuit_measured", position="rear-right-outer", check="ground", value="0,3", reads="good")
    stop = job.check(put_right(job, job.seq, value=value))
    assert stop["rule"] == "figure"


def test_a_reading_is_put_right_only_as_its_figure_has_it(job):
    job.fact("circuit_measured", position="rear-right-outer", check="ground", value="0,3", reads="good")
    stop = job.check(put_right(job, job.seq, value="5000 Ω"))
    assert (stop["rule"], stop["title"]) == ("reading", "Which is right, figure or reading?")
    assert job.check(put_right(job, job.seq, value="4k7", reads="bad")) is None
    # What was said against a limit before there was one can be put right in all else.
    job.force("circuit_measured", position="rear-right-outer", check="ground", value="5000 Ω", reads="good")
    assert job.check(put_right(job, job.seq, position="rear-left-outer")) is None


def test_the_history_shows_what_it_said_and_what_is_right(job):
    test = job.seq
    job.record(put_right(job, test, faulted=[]))
    shown = {entry["seq"]: entry for entry in job.view()["history"]}
    assert shown[test]["righted"]["actor"] == "Mara"
    assert "right outer" in shown[test]["righted"]["said"]
    assert "right outer" not in shown[test]["sentence"]
    assert shown[test]["may_right"]
    assert not shown[test + 1]["may_right"]


def about(job, what):
    """Return the entries of the history that show at a place, the first one first."""
    return [entry for entry in reversed(job.view()["history"]) if what in entry["about"]]


def test_an_entry_is_found_from_where_it_shows(job):
    outer = "rear-right-outer"
    job.force(
        "test_run", heard=True, faulted=[], silent=[], unplugged=[], codes=[], came_and_went=False, note=""
    )
    second = job.seq
    job.force("circuit_measured", position=outer, check="supply", value="", reads="good")
    job.force("unit_pulled", unit=home(outer), position=outer, how="tapped")
    pulled = job.seq
    job.force("circuit_repaired", cause=f"circuit:{outer}", what="repaired")
    job.force("circuit_repaired", cause="feed:rear", what="repaired")
    assert [entry["seq"] for entry in about(job, "test:2")] == [second]
    assert [entry["seq"] for entry in about(job, "repair:1")] == [pulled + 1]
    assert [entry["seq"] for entry in about(job, "repair:2")] == [pulled + 2]
    assert [entry["seq"] for entry in about(job, "reading:1")] == [second + 1]
    at_outer = [entry["seq"] for entry in about(job, f"position:{outer}")]
    assert at_outer[-3:] == [second + 1, pulled, pulled + 1]
    assert [entry["seq"] for entry in about(job, f"unit:{home(outer)}")] == [pulled]


def test_a_test_keeps_the_number_that_the_trail_gives_it(job):
    job.force("corrected", device=job.device, seq=job.seq, reason="the wrong car")
    job.force(
        "test_run", heard=True, faulted=[], silent=[], unplugged=[], codes=[], came_and_went=False, note=""
    )
    assert [test["n"] for test in job.view()["trail"]["tests"]] == [1]
    assert [entry["seq"] for entry in about(job, "test:1")] == [job.seq]


def test_pictures_alike_are_both_found_from_the_picture(job):
    for position in ("rear-right-outer", "rear-right-inner"):
        job.force(
            "photo_taken", sha256="cd" * 32, mime="image/jpeg", bytes=9, width=4, height=3,
            shows="position", position=position, unit="",
        )  # fmt: skip
    assert [entry["seq"] for entry in about(job, "photo:" + "cd" * 32)] == [job.seq - 1, job.seq]


def test_a_unit_that_was_added_is_found_from_itself(job):
    job.force("unit_added", unit="s1", part="PS-9", serial="", code="", how="tapped", place="out")
    assert [entry["kind"] for entry in about(job, "unit:s1")] == ["unit_added"]
