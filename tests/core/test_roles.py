"""What a phone at the parts counter may say: its places, its own slips, and all of it in its own name."""

import pytest

from tests.core.counter_yard import BAD
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.driver import DEVICE
from tests.core.driver import JOB
from tests.core.driver import START
from tests.core.test_snapshot import PhoneLike
from tests.hosts import Core

READ = {"part": "PS-1", "compared": "same"}
SECOND = "ddddddddddddddddd"
PLACES = ("fitted", "out", "stock", "counter", "customer", "scrapped")
OF_THE_COUNTER = PLACES[2:]


def moved(place, unit=BAD):
    return {"kind": "unit_moved", "data": {"unit": unit, "place": place, "how": "scanned", "note": ""}}


def seen(place, unit=BAD):
    position = "rear-right-outer" if place == "fitted" else ""
    data = {"unit": unit, "place": place, "position": position, "how": "scanned"}
    return {"kind": "unit_seen", "data": data, "job": JOB}


def taken_back(device, seq):
    return {"kind": "corrected", "data": {"device": device, "seq": seq, "reason": "slip"}}


def put_right(device, seq, draft):
    entry = {"kind": draft["kind"], "data": draft["data"]}
    return {"kind": "put_right", "data": {"device": device, "seq": seq, "entry": entry, "reason": "slip"}}


def against(phone, draft, role="counter"):
    """Return the sentence by which the role of a phone stands against a draft, or None."""
    refusal = phone.check({**draft, "role": role})
    assert refusal is None or refusal["rule"] != "form", refusal
    return refusal["sentence"] if refusal and refusal["rule"] == "role" else None


def handover(job):
    """Return the number of the entry by which the bench gave the bad unit to the counter."""
    [event] = [each for each in job.events if each["kind"] == "unit_moved" and each["data"]["unit"] == BAD]
    return event["seq"]


def received(core):
    """Return a job whose bad unit waits at the counter, held, and the clerk who has it."""
    job, clerk = proven(core, scanned=False), Clerk(core)
    answer = clerk.ask(job.labels[BAD], read=READ)
    assert answer["proposed"] == "hold"
    clerk.decide(answer)
    return job, clerk


def test_a_handover_that_the_bench_recorded_is_not_the_counters_to_take_back(core):
    """Without the one entry that speaks against the unit, the very same record would be accepted."""
    job, clerk = received(core)
    seq = handover(job)
    scanned = {**moved("counter"), "data": {**moved("counter")["data"], "alone": True}}

    assert "was recorded on another phone" in against(clerk, taken_back(DEVICE, seq))
    assert "was recorded on another phone" in against(clerk, put_right(DEVICE, seq, scanned))
    assert clerk.ask(job.labels[BAD], read=READ)["proposed"] == "hold"


@pytest.mark.parametrize("make", [moved, seen])
@pytest.mark.parametrize("role", ["bench", "counter"])
def test_the_counter_puts_nothing_into_a_hand_or_onto_a_vehicle(core, make, role):
    job = proven(core)
    places = [place for place in PLACES if make is seen or place != "fitted"]

    refused = [place for place in places if against(job, make(place), role)]

    assert refused == (
        [place for place in places if place not in OF_THE_COUNTER] if role == "counter" else []
    )


def test_what_the_counter_puts_right_is_held_to_its_places_and_its_name_too(core):
    _, clerk = received(core)
    clerk.force("unit_moved", **moved("stock")["data"])
    seq, decision = clerk.seq, {"kind": "return_decided", "data": {**clerk.events[-2]["data"]}}

    assert against(clerk, put_right(clerk.device, seq, moved("scrapped"))) is None
    assert "and nowhere else" in against(clerk, put_right(clerk.device, seq, moved("out")))
    assert against(clerk, put_right(clerk.device, seq - 1, decision)) is None
    decision["data"]["signed"] = "Sam"
    assert "Jo, not Sam" in against(clerk, put_right(clerk.device, seq - 1, decision))


def test_a_decision_is_signed_by_whoever_records_it(core):
    _, clerk = received(core)
    decided = {"kind": "return_decided", "data": {**clerk.events[-1]["data"], "signed": "Sam"}}

    assert "Jo, not Sam" in against(clerk, decided)
    decided["data"]["signed"] = "Jo"
    assert against(clerk, decided) is None


def test_a_clerk_corrects_the_own_slips_and_the_decisions_of_the_other_counter(core):
    job, clerk = received(core)
    clerk.force("unit_moved", **moved("customer")["data"])
    other = Clerk(core, device=SECOND, name="Ada")
    move, decision = clerk.seq, clerk.seq - 1

    assert against(clerk, taken_back(clerk.device, move)) is None
    assert "was recorded on another phone" in against(other, taken_back(clerk.device, move))
    assert against(other, taken_back(clerk.device, decision)) is None
    assert "not on record here" in against(other, taken_back(clerk.device, decision + 90))
    # The bench has the unit in its record too, and says where it went; what was decided is the counter's.
    assert against(job, taken_back(clerk.device, move), "bench") is None
    assert "recorded at the parts counter" in against(job, taken_back(clerk.device, decision), "bench")


def test_a_name_under_a_decision_that_is_not_of_who_recorded_it_is_told_and_keeps_nothing_from_going_on(core):
    """As an older log may have it: what was decided stands."""
    _, clerk = received(core)
    clerk.force("return_decided", **{**clerk.events[-1]["data"], "decision": "accept", "signed": "Sam"})

    *_, flagged = core("conflicts")["conflicts"]
    assert (flagged["unit"], flagged["about"], flagged["open"]) == (BAD, "signed", False)
    told = core("unit", unit=BAD)["returns"][-1]["decision"]
    assert told["decision"] == "accept"
    assert "Jo recorded it, in the name of Sam." in told["sentence"]


@pytest.mark.parametrize("kind", ["corrected", "put_right"])
def test_a_correction_in_a_format_of_later_corrects_nothing(core, kind):
    """What it says is not understood here, so that it is kept and no more."""
    job, _ = received(core)
    seq = handover(job)
    correction = taken_back(DEVICE, seq) if kind == "corrected" else put_right(DEVICE, seq, moved("stock"))
    before = core("unit", unit=BAD)
    core("add", events=[{"event": {**job.envelope(kind, correction["data"]), "v": 2, "at": START}}])

    assert core("unit", unit=BAD) == before
    assert core("conflicts")["not_understood"][-1]["kind"] == kind


@pytest.mark.parametrize("kind", ["corrected", "put_right"])
def test_a_phone_reads_a_correction_of_later_the_same_whichever_way_it_comes(kind):
    """With the rest of the log, before what waits to be sent, and out of what was kept at the last start."""
    job, clerk = received(Core())
    seq = handover(job)
    correction = taken_back(DEVICE, seq) if kind == "corrected" else put_right(DEVICE, seq, moved("stock"))
    log = [{"event": event} for event in job.events + clerk.events]
    newer = {"event": {**job.envelope(kind, correction["data"]), "v": 2}}
    without = PhoneLike(log).value("unit", unit=BAD)

    whole, inserted = PhoneLike([*log, newer]), PhoneLike(log)
    inserted.value("insert", events=[newer], at=len(log) - len(clerk.events))
    assert whole.value("unit", unit=BAD) == inserted.value("unit", unit=BAD) == without
    whole.start_again()
    assert whole.value("unit", unit=BAD) == without
