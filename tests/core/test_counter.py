"""The parts counter: each check, what is proposed, and what two counters make of one unit."""

import pytest

from tests.core.counter_yard import BAD
from tests.core.counter_yard import CLERK
from tests.core.counter_yard import DAY_MS
from tests.core.counter_yard import INNER
from tests.core.counter_yard import NOW
from tests.core.counter_yard import OUTER
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.counter_yard import said
from tests.core.counter_yard import standing
from tests.core.driver import DEVICE
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home

READ = {"part": "PS-1", "compared": "same"}
ALL = ["label", "place", "part", "verdict", "custody", "photos", "before", "record", "job", "window"]


@pytest.fixture
def bad(core):
    """The label of a unit that was found bad, replaced and scanned to the counter."""
    job = proven(core)
    return job.labels[BAD]


def test_a_unit_with_a_whole_record_is_proposed_to_be_accepted(core, bad):
    answer = Clerk(core).ask(bad, read=READ)
    assert [check["rule"] for check in answer["checks"]] == ALL
    assert [check["state"] for check in answer["checks"]] == ["pass"] * len(ALL)
    assert (answer["proposed"], answer["against"]) == ("accept", [])
    assert "followed" in said(answer, "verdict")
    assert answer["from"].endswith("of Blue estate")
    assert len(answer["photos"]) == 2


def test_a_label_on_another_part_is_refused_with_both_numbers(core, bad):
    answer = Clerk(core).ask(bad, read={"part": "PS-9"})
    assert (answer["proposed"], answer["headline"]) == ("refuse", "The label is on another part")
    assert "PS-9" in said(answer, "part")
    assert "PS-1" in said(answer, "part")


def test_a_serial_number_of_another_unit_names_that_unit(core):
    job = proven(core)
    other = job.labels["u00000000new1"]
    for unit, serial in ((BAD, "S-100"), ("u00000000new1", "S-200")):
        job.force("part_noted", unit=unit, part="PS-1", serial=serial)
    clerk = Clerk(core)
    assert standing(clerk.ask(job.labels[BAD], read={"part": "PS-1", "serial": "s100"}), "part") == "pass"
    assert standing(clerk.ask(job.labels[BAD], read={"part": "PS-1"}), "part") == "hold"
    moved = clerk.ask(job.labels[BAD], read={"part": "PS-1", "serial": "S-200"})
    assert (moved["proposed"], moved["against"]) == ("refuse", ["part", "serial"])
    assert f"{other[:3]}-{other[3:]}" in said(moved, "serial")


def test_a_part_number_alone_proves_no_identity_and_says_what_would(core, bad):
    clerk = Clerk(core)
    for read in ({}, {"part": "PS-1"}, {"part": "PS-1", "serial": "S-7"}):
        answer = clerk.ask(bad, read=read)
        assert (answer["proposed"], answer["against"]) == ("hold", ["part"])
        assert said(answer, "part").endswith("Compare the pictures.")
    assert clerk.ask(bad, read={"part": "PS-1", "serial": "S-7", "compared": "same"})["proposed"] == "accept"


@pytest.mark.parametrize("text", ["S-200", "s 200"])
def test_a_serial_of_another_sensor_on_one_that_has_none_on_record_is_refused(core, text):
    job = proven(core)
    job.force("part_noted", unit="u00000000new1", part="PS-1", serial="S-200")
    other = job.labels["u00000000new1"]
    answer = Clerk(core).ask(job.labels[BAD], read={**READ, "serial": text})
    assert (answer["proposed"], answer["against"]) == ("refuse", ["serial"])
    assert answer["headline"] == "The serial number is another's"
    assert f"{other[:3]}-{other[3:]}" in said(answer, "serial")


def test_one_serial_that_the_bench_put_on_two_sensors_is_refused_even_where_it_is_read_again(core):
    job = proven(core)
    for unit in (BAD, "u00000000new1"):
        job.force("part_noted", unit=unit, part="PS-1", serial="S-1")
    for read in ({"serial": "S-1"}, {"compared": "same"}):
        assert Clerk(core).ask(job.labels[BAD], read=read)["proposed"] == "refuse"


@pytest.mark.parametrize("decision", ["accept", "refuse"])
def test_a_serial_that_came_back_under_another_label_is_refused_with_that_decision(core, decision):
    job = proven(core)
    bad, clerk = job.labels[BAD], Clerk(core)
    first = clerk.ask(bad, read={**READ, "serial": "S-7"})
    clerk.decide(first, decision, "" if decision == "accept" else "broken")
    for label in (job.labels["u00000000new1"], job.codes[15], "HTTP://OTHER.EXAMPLE/U/" + job.codes[15]):
        again = clerk.ask(label, read={"part": "PS-1", "serial": "s7"}, now=NOW + 3 * DAY_MS)
        assert again["proposed"] == "refuse"
        assert again["headline"] == "The serial number came back before"
        assert "4 days ago, signed by Jo" in said(again, "serial")
        assert f"{bad[:3]}-{bad[3:]}" in said(again, "serial")


def test_a_serial_that_waits_under_another_label_is_refused(core, bad):
    clerk = Clerk(core)
    first = clerk.ask(bad, read={**READ, "serial": "S-7"})
    clerk.record(first["received"])
    second = clerk.ask(Driver(core).codes[15], read={"serial": "S-7"})
    assert (second["proposed"], standing(second, "serial")) == ("refuse", "fail")


def test_a_sensor_received_before_its_record_came_is_no_other_one(core):
    job = proven(core)
    clerk, spare = Clerk(core), job.codes[15]
    clerk.decide(clerk.ask(spare, read={"serial": "S-7"}), "hold")
    new = {"part": "PS-1", "serial": "S-7", "code": spare, "how": "scanned", "place": "stock"}
    job.force("unit_added", unit="u00000000late", **new)
    assert standing(clerk.ask(spare, read={"serial": "S-7"}), "serial") == "pass"
    assert standing(clerk.ask(job.labels[BAD], read={"serial": "S-7"}), "serial") == "fail"


def test_a_label_on_two_sensors_makes_one_serial_a_matter_of_the_label(core):
    job = proven(core)
    left = home("rear-left-outer")
    for unit in (BAD, left):
        job.force("part_noted", unit=unit, part="PS-1", serial="S-1")
    job.force("unit_labelled", unit=left, code=job.labels[BAD], how="scanned")
    answer = Clerk(core).ask(job.labels[BAD], read={"serial": "S-1"})
    assert (answer["proposed"], standing(answer, "serial")) == ("hold", "pass")


def test_signs_alone_are_no_serial_number(core, bad):
    job = Driver(core)
    job.force("part_noted", unit="u00000000new1", part="PS-1", serial="--")
    assert standing(Clerk(core).ask(bad, read={"serial": "-"}), "serial") is None


def test_a_decision_taken_back_leaves_no_serial_that_came_back(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read={**READ, "serial": "S-7"}))
    for event in reversed(clerk.events[-2:]):
        clerk.record({"kind": "corrected", "data": {"device": CLERK, "seq": event["seq"], "reason": "slip"}})
    assert standing(clerk.ask(Driver(core).codes[15], read={"serial": "S-7"}), "serial") == "pass"


def test_without_a_symbol_the_pictures_are_compared_by_eye(core, bad):
    clerk = Clerk(core)
    assert clerk.ask(bad)["headline"] == "Is it the part claimed?"
    assert clerk.ask(bad, read={"compared": "same"})["proposed"] == "accept"
    assert clerk.ask(bad, read={"compared": "other"})["proposed"] == "refuse"


def test_a_record_without_a_part_number_claims_nothing(core):
    job = proven(core, part="")
    answer = Clerk(core).ask(job.labels[BAD], read={"part": "PS-1"})
    assert "No part number on record" in said(answer, "part")
    assert standing(answer, "part") == "hold"


def test_a_label_that_is_on_no_record_is_held(core, bad):
    job = Driver(core)
    answer = Clerk(core).ask(job.codes[15], read=READ)
    assert [check["rule"] for check in answer["checks"]] == ["label"]
    assert answer["proposed"] == "hold"
    assert "may not have sent" in said(answer, "label")


def test_a_label_held_before_its_record_came_is_still_known_to_have_been_here(core):
    job = proven(core)
    early = Clerk(core)
    spare = job.codes[15]
    early.decide(early.ask(spare), "hold")
    assert core("waiting")[0]["shown"] == spare[:3] + "-" + spare[3:]
    job.force(
        "unit_added", unit="u00000000late", part="PS-1", serial="", code=spare, how="scanned", place="stock"
    )
    answer = early.ask(spare)
    assert answer["unit"] == "u00000000late"
    assert "Held" in said(answer, "before")


def test_a_label_from_another_server_asks_for_its_record(core, bad):
    clerk = Clerk(core)
    answer = clerk.ask(f"HTTPS://OTHER.EXAMPLE:8765/U/{bad}", host="here.example:8765")
    assert answer["proposed"] == "hold"
    assert "other.example:8765" in said(answer, "label")
    assert answer["unit"] != BAD
    clerk.decide(answer)
    waiting = core("waiting")[0]
    again = clerk.ask(unit=waiting["unit"])
    assert "other.example:8765" in said(again, "label")


@pytest.mark.parametrize(
    ("text", "outcome"),
    [("AAAAA", "mistyped"), ("", "foreign"), ("PS-1/7", "foreign"), ("https://example.org/", "foreign")],
)
def test_what_is_no_label_is_said_to_be_none(core, bad, text, outcome):
    assert Clerk(core).ask(text)["outcome"] == outcome


def test_a_void_label_says_which_one_the_sensor_has_now(core):
    job = proven(core)
    old, fresh = job.labels[BAD], job.codes[12]
    job.force("label_voided", unit=BAD, code=old, reason="torn")
    job.force("unit_labelled", unit=BAD, code=fresh, how="scanned")
    clerk = Clerk(core)
    assert fresh[:3] in said(clerk.ask(old, read=READ), "label")
    assert standing(clerk.ask(old, read=READ), "label") == "hold"
    assert "replaced" in said(clerk.ask(fresh, read=READ), "custody")


def test_two_labels_on_one_unit_are_held(core):
    job = proven(core)
    job.force("unit_labelled", unit=BAD, code=job.codes[12], how="scanned")
    answer = Clerk(core).ask(job.labels[BAD], read=READ)
    assert answer["against"] == ["label"]
    assert job.codes[12][:3] in said(answer, "label")


def test_two_units_with_one_label_are_held(core):
    job = proven(core)
    job.force("unit_labelled", unit=home("rear-left-outer"), code=job.labels[BAD], how="scanned")
    assert "Two sensors" in said(Clerk(core).ask(job.labels[BAD], read=READ), "label")


def test_a_handover_that_was_only_tapped_is_a_gap_in_custody(core):
    job = proven(core, scanned=False)
    answer = Clerk(core).ask(job.labels[BAD], read=READ)
    assert (answer["proposed"], answer["headline"]) == ("hold", "A gap in custody")
    assert "when it came to the counter" in said(answer, "custody")


def test_the_only_one_in_hand_may_be_handed_over_by_a_tap_and_that_is_told(core):
    job = proven(core, scanned=False, alone=True)
    answer = Clerk(core).ask(job.labels[BAD], read=READ)
    assert answer["proposed"] == "accept"
    assert "Its last place was tapped; nothing else was in hand." in said(answer, "custody")


def test_that_it_was_the_only_one_is_believed_only_where_it_was(core):
    job = Driver(core).begin()
    for position in (OUTER, INNER):
        job.fact("unit_pulled", unit=home(position), position=position, how="tapped")
        job.fact("unit_labelled", unit=home(position), code=job._fresh(), how="scanned")
        job.labels[home(position)] = ""
    job.fact("unit_moved", unit=BAD, place="stock", how="tapped", note="", alone=True)
    assert "alone" not in core("state")["units"][BAD]["moves"][-1]


def test_a_typed_handover_counts_and_is_told(core):
    job = proven(core)
    job.force("unit_moved", unit=BAD, place="stock", how="typed", note="")
    assert "1 of them typed" in said(Clerk(core).ask(job.labels[BAD], read=READ), "custody")


def test_missing_pictures_hold(core):
    job = proven(core, photos=False)
    answer = Clerk(core).ask(job.labels[BAD], read=READ)
    assert (answer["proposed"], answer["against"]) == ("hold", ["part", "photos"])


@pytest.mark.parametrize("read", [READ, {}])
def test_nobody_compared_by_eye_what_has_no_picture(core, read):
    """A decision said 'Compared with its pictures by eye' beside 'No picture of it is on record'."""
    job = proven(core, photos=False)
    answer = Clerk(core).ask(job.labels[BAD], read=read)
    assert standing(answer, "part") == "hold"
    assert said(answer, "part") == (
        "Is it the part claimed?: No serial number of it is on record, and others have the same part number. "
        "Nothing on record tells it from them."
    )


def test_a_unit_that_the_verdict_does_not_name_is_refused(core):
    job = proven(core)
    job.force("unit_moved", unit="u00000000new1", place="counter", how="scanned", note="")
    good = job.labels[home(INNER)]
    answer = Clerk(core).ask(good, read=READ)
    assert answer["proposed"] == "refuse"
    assert standing(answer, "verdict") == "fail"
    assert standing(answer, "place") == "hold", "on record it is still fitted"


def test_a_unit_without_a_test_proves_nothing(core):
    job = proven(core)
    spare = job.codes[14]
    job.force(
        "unit_added", unit="u0000000spare", part="PS-1", serial="", code=spare, how="scanned", place="stock"
    )
    answer = Clerk(core).ask(spare, read=READ)
    assert standing(answer, "verdict") == "hold"
    assert "No test of it is on record" in said(answer, "verdict")


def test_a_verdict_that_was_not_reached_holds(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.force("unit_pulled", unit=BAD, position=OUTER, how="tapped")
    job.force("unit_labelled", unit=BAD, code=job.codes[3], how="scanned")
    answer = Clerk(core).ask(job.codes[3], read=READ)
    assert "Not settled" in said(answer, "verdict")
    assert {"verdict", "job", "part", "photos"} == set(answer["against"])
    assert standing(answer, "custody") == "pass", "the first label follows the pull at once"


def test_an_open_job_holds(core):
    job = proven(core, close=False)
    answer = Clerk(core).ask(job.labels[BAD], read=READ)
    assert answer["against"] == ["job"]


@pytest.mark.parametrize(
    ("days", "window", "state"),
    [(29, 30, "pass"), (31, 30, "fail"), (400, 0, None), (8, 7, "fail")],
)
def test_the_window_counts_from_the_last_pull(core, bad, days, window, state):
    pulled = [m["at"] for m in core("unit", unit=BAD)["moves"] if m["what"] == "out" and m["position"]][-1]
    answer = Clerk(core).ask(bad, read=READ, window_days=window, now=pulled + days * DAY_MS + 1000)
    assert standing(answer, "window") == state


def test_a_record_that_was_altered_is_refused_and_one_that_nobody_checked_is_held(core, bad):
    clerk = Clerk(core)
    fault = {"device": "d0123456789abcdef", "seq": 4, "what": "changed"}
    altered = clerk.ask(bad, read=READ, record=[fault])
    assert (altered["proposed"], altered["headline"]) == ("refuse", "The record was altered")
    assert "Entry 4 was changed" in said(altered, "record")
    assert standing(clerk.ask(bad, read=READ, record=None), "record") == "hold"


def test_a_unit_that_comes_a_second_time_is_refused_with_the_first_decision(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read=READ))
    again = clerk.ask(bad, read=READ, now=NOW + 3 * DAY_MS)
    assert (again["proposed"], again["headline"]) == ("refuse", "Accepted before")
    assert "Accepted 4 days ago, signed by Jo" in said(again, "before")
    clerk.decide(again)
    assert core("conflicts")["conflicts"] == [], "who refuses it knows of the first"


def test_what_was_decided_goes_on_with_a_handover_of_its_own(core, bad):
    clerk = Clerk(core)
    answer = clerk.ask(bad, read=READ)
    offered = {each["decision"]: [one["words"] for one in each["after"]] for each in answer["decisions"]}
    assert offered == {"accept": ["Put into stock", "Scrapped"], "hold": [], "refuse": ["Handed back"]}
    clerk.decide(answer, "refuse", "wet inside")
    back = answer["decisions"][2]["after"][0]["events"][0]  # recorded without the job, which is closed
    clerk.fact(back["kind"], **back["data"])
    assert core("unit", unit=BAD)["where"] == "with the customer"
    again = clerk.ask(bad, read=READ)
    assert again["headline"] == "Refused before"
    also_wrong = clerk.ask(bad, read={"part": "PS-9"})
    assert also_wrong["against"][0] == "part"
    assert also_wrong["headline"] == "Refused before", "what was decided comes before all else"
    assert standing(again, "custody") == "pass"


def test_a_held_return_waits_and_is_decided_later(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read=READ), "hold", "wants a look by the foreman")
    [line] = core("waiting")
    assert (line["held"]["signed"], line["unit"]) == ("Jo", BAD)
    answer = clerk.ask(unit=BAD)
    assert answer["waiting"]
    assert answer["read"]["part"] == "PS-1"
    assert answer["proposed"] == "accept"
    chosen = next(each for each in answer["decisions"] if each["decision"] == "accept")
    data = {**chosen["events"][0]["data"], "signed": "Jo"}
    clerk.record({"kind": "return_decided", "data": data})
    assert core("waiting") == []
    [entry] = core("state")["units"][BAD]["returns"]
    assert [each["decision"] for each in entry["decisions"]] == ["hold", "accept"]
    assert entry["decision"]["decision"] == "accept"
    [shown] = core("unit", unit=BAD)["returns"]
    assert (shown["part"], shown["how"], shown["decision"]["word"]) == ("PS-1", "scanned", "Accept")


def test_a_decision_against_the_proposal_takes_a_reason(core, bad):
    clerk = Clerk(core)
    with pytest.raises(Refused) as refused:
        clerk.decide(clerk.ask(bad, read=READ), "refuse")
    assert refused.value.refusal["rule"] == "returns"
    clerk.decide(clerk.ask(bad, read=READ), "refuse", "housing broken on purpose")
    entry = core("state")["units"][BAD]["returns"][0]
    assert (entry["decision"]["proposed"], entry["decision"]["overrule"]) == (
        "accept",
        "housing broken on purpose",
    )


def test_nothing_is_decided_unsigned_twice_or_unreceived(core, bad):
    clerk = Clerk(core)
    decision = {"unit": BAD, "decision": "accept", "proposed": "accept", "reasons": [], "overrule": ""}
    refusal = clerk.check({"kind": "return_decided", "data": {**decision, "signed": "Jo"}})
    assert "received" in refusal["sentence"]
    assert clerk.check({"kind": "return_decided", "data": {**decision, "signed": ""}})["rule"] == "form"
    clerk.decide(clerk.ask(bad, read=READ))
    refusal = clerk.check({"kind": "return_decided", "data": {**decision, "signed": "Jo"}})
    assert "accepted already, signed by Jo" in refusal["sentence"]


def test_a_decision_that_was_taken_back_counts_for_nothing(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read=READ))
    clerk.fact("corrected", device=CLERK, seq=clerk.seq, reason="wrong button")
    assert core("decided", start=0, end=2 * NOW)["total"] == 0
    assert core("waiting")[0]["unit"] == BAD


def test_two_counters_that_decide_one_unit_are_both_kept_and_flagged(core, bad):
    first, second = Clerk(core), Clerk(core, device="ddddddddddddddddd", name="Ada")
    seen = second.ask(bad, read=READ)
    first.decide(first.ask(bad, read=READ))
    refused = {**seen["decisions"][2]["events"][0]["data"], "signed": "Ada", "overrule": "wet inside"}
    second.force("return_received", **seen["received"]["data"])
    second.force("return_decided", **refused)
    decided = core("decided", start=0, end=2 * NOW)
    assert sorted((line["signed"], line["decision"]) for line in decided["lines"]) == [
        ("Ada", "refuse"),
        ("Jo", "accept"),
    ]
    assert [c["about"] for c in core("conflicts")["conflicts"] if c["open"]] == ["return"]
    assert any(line["twice"] for line in decided["lines"])


def test_a_second_decision_on_one_return_does_not_replace_the_first(core, bad):
    first, second = Clerk(core), Clerk(core, device="ddddddddddddddddd", name="Ada")
    answer = first.ask(bad, read=READ)
    first.fact("return_received", **answer["received"]["data"])
    second.force("return_received", **answer["received"]["data"])
    first.fact("return_decided", **{**answer["decisions"][0]["events"][0]["data"], "signed": "Jo"})
    late = {**answer["decisions"][2]["events"][0]["data"], "signed": "Ada", "overrule": "wet"}
    second.force("return_decided", **late)
    [entry] = core("state")["units"][BAD]["returns"]
    assert (entry["decision"]["signed"], entry["twice"], len(entry["decisions"])) == ("Jo", True, 2)
    again = first.ask(bad, read=READ)
    assert "Two counters decided" in said(again, "before")


def test_a_unit_on_record_elsewhere_is_not_moved_in_silence(core):
    job = proven(core)
    fitted = job.labels[home(INNER)]
    clerk = Clerk(core)
    clerk.decide(clerk.ask(fitted, read=READ), "hold", "the customer insists")
    unit = core("unit", unit=home(INNER))
    assert unit["disputed"]
    assert "In dispute" in said(clerk.ask(fitted, read=READ), "place")


def test_what_the_counter_records_does_not_open_a_closed_job_again(core):
    job = proven(core)
    clerk = Clerk(core)
    clerk.job = job.job
    clerk.decide(clerk.ask(job.labels[BAD], read=READ))
    view = job.view()
    assert view["closed"]
    assert not view["reopened"]
    assert "accepted at the parts counter, signed by Jo" in view["history"][0]["sentence"]
    assert "Read off it: PS-1" in view["history"][1]["sentence"]


def test_the_day_list_counts_what_it_lists(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read=READ))
    spare = Driver(core).codes[15]
    clerk.decide(clerk.ask(spare))
    day = core("decided", start=0, end=2 * NOW)
    assert {c["decision"]: c["count"] for c in day["counts"]} == {"accept": 1, "hold": 1, "refuse": 0}
    assert day["total"] == len(day["lines"]) == 2
    assert day["lines"][0]["about"] == ["label"]
    at = day["lines"][0]["at"]
    assert core("decided", start=at, end=at + 1)["total"] == 1
    assert core("decided", start=at + 1, end=2 * NOW)["total"] == 0


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("estate beep", 5),
        ("ESTATE  Beeps", 5),
        ("mara", 3),
        ("nothing of the kind", 0),
        ("", 0),
        ("-", 0),
    ],
)
def test_a_search_wants_every_word_to_begin_a_word_on_record(core, bad, text, found):
    assert len(core("find", text=text)) == found


def test_a_code_is_found_as_it_is_read_and_as_it_is_typed(core, bad):
    for text in (bad, bad.lower(), f"{bad[:3]}-{bad[3:]}"):
        assert [line["unit"] for line in core("find", text=text)] == [BAD]


@pytest.mark.parametrize("text", ["sn 1", "SN-1"])
def test_a_serial_number_that_is_typed_names_the_sensors_that_have_it(core, text):
    job = proven(core, serial="SN-1")
    clerk = Clerk(core)
    said = clerk.ask(text, how="typed")
    assert (said["outcome"], [line["unit"] for line in said["sensors"]]) == ("mistyped", [BAD])
    assert said["sensors"][0]["code"] == job.labels[BAD]
    assert clerk.ask("SN-2", how="typed")["sensors"] == []
    assert "sensors" not in clerk.ask(text), "a hand scanner read a bag: its label is wanted first"

    named = clerk.ask(unit=BAD, read={"part": "", "serial": text, "compared": ""})
    assert (named["proposed"], named["against"]) == ("hold", ["label"]), "nobody read its label"


@pytest.mark.parametrize(
    ("role", "kind", "data", "refused"),
    [
        ("counter", "unit_moved", {"unit": BAD, "place": "customer", "how": "scanned", "note": ""}, False),
        ("counter", "part_noted", {"unit": BAD, "part": "PS-9", "serial": ""}, True),
        ("counter", "corrected", {"device": DEVICE, "seq": 3, "reason": "slip"}, True),
        ("bench", "part_noted", {"unit": BAD, "part": "PS-9", "serial": ""}, False),
        ("bench", "return_received", {"unit": BAD, "how": "scanned", "code": "", "part": "", "serial": "",
                                      "compared": "", "note": ""}, True),
        ("", "return_received", {"unit": BAD, "how": "scanned", "code": "", "part": "", "serial": "",
                                 "compared": "", "note": ""}, False),
    ],
)  # fmt: skip
def test_a_phone_records_what_its_role_is_for(core, bad, role, kind, data, refused):
    clerk = Clerk(core)
    refusal = clerk.check({"kind": kind, "data": data, "role": role})
    assert (refusal is not None and refusal["rule"] == "role") == refused
    if refused:
        assert "this phone is at the" in refusal["sentence"]


def test_a_decision_is_taken_back_at_the_counter_alone(core, bad):
    clerk = Clerk(core)
    clerk.decide(clerk.ask(bad, read=READ))
    back = {"kind": "corrected", "data": {"device": CLERK, "seq": clerk.seq, "reason": "slip"}}
    assert clerk.check({**back, "role": "bench"})["rule"] == "role"
    assert clerk.check({**back, "role": "counter"}) is None


def pictured(job, sha, **shows):
    facts = {"mime": "image/jpeg", "bytes": 9, "width": 9, "height": 9, "sha256": sha * 64}
    job.force("photo_taken", **facts, **{"shows": "unit", "position": "", "unit": "", **shows})


def test_the_picture_of_the_sensor_with_its_label_is_held_beside_the_part(core):
    job = proven(core)
    pictured(job, "c", unit="u00000000new1")
    before = Clerk(core).ask(job.labels[BAD])
    assert (before["headline"], {each["alone"] for each in before["photos"]}) == (
        "Is it the part claimed?",
        {False},
    )
    pictured(job, "d", unit=BAD)
    answer = Clerk(core).ask(job.labels[BAD])
    assert (answer["proposed"], answer["headline"]) == ("hold", "Is it the one in this picture?")
    assert [each["alone"] for each in answer["photos"]] == [True, False, False]
    assert answer["photos"][0]["words"].startswith("With its label at the bench, ")
    assert Clerk(core).ask(job.labels[BAD], read={"compared": "same"})["proposed"] == "accept"
    assert Clerk(core).ask(job.labels[BAD], read={"compared": "other"})["proposed"] == "refuse"


def test_a_part_that_was_refused_under_a_moved_label_is_held_under_its_own(core):
    job = proven(core, serial="S-100")
    other = job.labels["u00000000new1"]
    job.force("part_noted", unit="u00000000new1", part="PS-1", serial="S-200")
    clerk = Clerk(core)
    moved = clerk.ask(other, read={"part": "PS-1", "serial": "S-100"})
    clerk.decide(moved)
    assert moved["proposed"] == "refuse"

    again = clerk.ask(job.labels[BAD], read={"part": "PS-1", "serial": "S-100"})
    assert (again["proposed"], again["against"]) == ("hold", ["serial"])
    assert f"{other[:3]}-{other[3:]}" in said(again, "serial")


def test_a_bench_clock_that_is_ahead_does_not_make_a_late_return_early(core, bad):
    pulled = [m["at"] for m in core("unit", unit=BAD)["moves"] if m["what"] == "out" and m["position"]][-1]
    answer = Clerk(core).ask(bad, read=READ, now=pulled - 40 * DAY_MS)
    assert (answer["proposed"], answer["against"]) == ("hold", ["window"])
    assert standing(Clerk(core).ask(bad, read=READ, now=pulled - 3_600_000), "window") == "pass"


def test_the_lists_of_the_counter_ask_for_no_job_that_is_out_of_memory(core):
    job = proven(core)
    clerk = Clerk(core)
    clerk.decide(clerk.ask(job.labels[BAD], read=READ), "hold", "later")
    whole = [core("waiting"), core("decided", start=0, end=2 * NOW), core("find", text=job.labels[BAD])]
    count = len(job.events) + len(clerk.events)
    assert core("unload_jobs", jobs=core("closed_jobs")["jobs"], count=count)["unloaded"]
    assert [
        core("waiting"),
        core("decided", start=0, end=2 * NOW),
        core("find", text=job.labels[BAD]),
    ] == whole
