"""Custody: one unit, one place; labels before a unit is put down; disputes until a scan settles them."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
THIRD = "rear-left-inner"
OTHER_PHONE = "dfedcba9876543210"


@pytest.fixture
def job(core):
    """A job with a baseline fault at right outer, an exchange with right inner begun."""
    job = Driver(core).faulted()
    job.start_exchange()
    return job


def pulled(job):
    """Pull and label both units."""
    for _ in range(2):
        expects = job.step()["expects"]
        job.scan(job.label_of(expects["unit"]))
    return job


def refusal(job, kind, **data):
    return job.check({"kind": kind, "data": data})


def test_a_pulled_unit_gets_its_label_before_the_next_is_pulled(job):
    job.fact("unit_pulled", unit=home(INNER), position=INNER, how="tapped")
    stop = refusal(job, "unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    assert stop["rule"] == "label_first"
    assert "right inner" in stop["sentence"]


def test_an_unlabelled_unit_may_go_straight_back(job):
    job.fact("unit_pulled", unit=home(INNER), position=INNER, how="tapped")
    back = {"unit": home(INNER), "position": INNER, "how": "tapped", "override": ""}
    assert refusal(job, "unit_fitted", **back) is None


def test_an_unlabelled_unit_is_not_parked(job):
    job.fact("unit_pulled", unit=home(INNER), position=INNER, how="tapped")
    stop = refusal(job, "unit_moved", unit=home(INNER), place="stock", how="tapped", note="")
    assert stop["rule"] == "label_first"


def test_the_wrong_unit_is_stopped_with_both_names(job):
    pulled(job)
    step = job.step()
    assert step["expects"]["do"] == "fit"
    wrong = next(u for u in job.labels if u != step["expects"]["unit"])
    answer = job.scan(job.labels[wrong])
    shown = {u: code[:3] + "-" + code[3:] for u, code in job.labels.items()}
    assert answer["outcome"] == "stop"
    assert shown[wrong] in answer["sentence"]
    assert shown[step["expects"]["unit"]] in answer["sentence"]
    assert "pulled from" in answer["more"]
    assert job.step() == step, "a stop changes nothing but the record"
    assert "Stopped" in job.view()["history"][0]["sentence"]


def test_one_that_was_pulled_from_the_wrong_position_goes_back_there(core):
    """'Put it down' was said, which would leave one about that is fitted by what is on record."""
    job = exchanged(core)
    new = "u00000000new1"
    job.new_unit(INNER, new)
    wanted = job.step()["expects"]
    assert (wanted["do"], wanted["unit"]) == ("pull", home(OUTER))
    fitted, hand = shown(job, home(INNER)), shown(job, new)
    right = shown(job, home(OUTER))

    assert job.scan(job.labels[home(INNER)])["more"] == (
        f"{fitted} goes at right outer. Put it back there, then pull {right} at right inner."
    )
    assert job.scan(job.labels[new])["more"].endswith(f"Put it down, then pull {right} at right inner.")
    job.scan(job.labels[home(OUTER)])
    assert job.scan(job.labels[home(INNER)])["more"] == (
        f"{fitted} goes at right outer. Put it back there and pick up {hand}, which is in your hand."
    )


def test_where_a_fresh_label_is_wanted_one_that_is_fitted_goes_back_first(core):
    job = exchanged(core)
    job.fact("move_started", move="exchange", position="", reason="to see",
             fitted={THIRD: home(OUTER), INNER: home(THIRD)})  # fmt: skip
    assert (job.step()["id"], job.step()["expects"]["position"]) == ("pull", THIRD)
    assert "If you pulled that one, put it back." in job.scan(job.labels[home(INNER)])["more"]


def exchanged(core):
    job = Driver(core).faulted(OUTER)
    job.start_exchange(OUTER, INNER)
    job.guided()
    job.test(INNER)
    return job


def shown(job, unit):
    code = job.labels[unit]
    return f"{code[:3]}-{code[3:]}"


def test_the_rule_stops_the_wrong_unit_even_without_a_scan(core):
    """Three in a ring: of the two that do not belong here, only the one that sat here may go back."""
    job = Driver(core).faulted()
    ring = {OUTER: home(INNER), INNER: home(THIRD), THIRD: home(OUTER)}
    job.fact("move_started", move="exchange", position="", reason="to see", fitted=ring)
    for _ in ring:
        job.scan_wanted()
    place = job.step()["expects"]["position"]
    (never_here,) = set(ring.values()) - {ring[place], home(place)}
    tapped = {"how": "tapped", "override": ""}

    stop = refusal(job, "unit_fitted", unit=never_here, position=place, **tapped)

    assert stop["rule"] == "planned_unit"
    assert refusal(job, "unit_fitted", unit=home(place), position=place, **tapped) is None
    taken = refusal(job, "unit_fitted", unit=never_here, position="rear-left-outer", **tapped)
    assert taken["rule"] == "one_place"


def test_a_label_of_another_unit_is_stopped_at_the_pull(job):
    expects = job.step()["expects"]
    first = job.label_of(expects["unit"])
    job.scan(first)
    answer = job.scan(first)
    assert answer["outcome"] == "stop"
    assert "another sensor" in answer["title"]


def test_a_unit_is_not_pulled_from_where_it_does_not_sit(job):
    stop = refusal(job, "unit_pulled", unit=home(OUTER), position=INNER, how="scanned")
    assert stop["rule"] == "one_place"
    assert "right outer" in stop["sentence"]


def test_a_position_holds_one_unit(job):
    job.scan_wanted()
    unit = next(iter(job.labels))
    taken = {"unit": unit, "position": "rear-left-inner", "how": "scanned", "override": ""}
    stop = refusal(job, "unit_fitted", **taken)
    assert stop["rule"] == "one_place"
    assert "taken" in stop["title"]


@pytest.mark.parametrize("typed", ["{code}", "{shown}", "{lower}"])
def test_a_labels_code_typed_as_part_number_is_asked_about(job, typed):
    """Two fields and a label in the hand: the code goes into the wrong one."""
    job.scan(code := job.label_of(job.step()["expects"]["unit"]))
    part = typed.format(code=code, shown=f"{code[:3]}-{code[3:]}", lower=code.lower())
    noted = {"unit": home(OUTER), "part": part, "serial": ""}

    stop = refusal(job, "part_noted", **noted)

    assert (stop["rule"], stop["override"]) == ("label_as_part", True)
    assert part in stop["sentence"]
    added = {"code": "", "how": "tapped", "place": "stock", "serial": "", "unit": "u0000000000ff"}
    assert refusal(job, "unit_added", part=part, **added)["rule"] == "label_as_part"
    assert refusal(job, "part_noted", **{**noted, "part": "PS-2"}) is None
    job.fact("part_noted", override="it stands on its back", **noted)
    assert "it stands on its back" in job.view()["history"][0]["sentence"]
    assert refusal(job, "part_noted", **{**noted, "serial": "S-7"}) is None


def test_a_fitted_unit_is_not_fitted_again(job):
    stop = refusal(
        job, "unit_fitted", unit=home("rear-left-outer"), position=INNER, how="scanned", override=""
    )
    assert stop["rule"] == "one_place"
    assert "left outer" in stop["sentence"]


def test_another_part_number_needs_a_reason_that_stays_on_record(core):
    job = Driver(core).begin(part="PS-1")
    job.test(OUTER)
    job.photograph()
    job.fact(
        "unit_added", unit="uother", part="PS-2", serial="", code=job._fresh(), how="scanned", place="out"
    )
    job.labels["uother"] = job._fresh()
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job._fresh(), how="scanned")
    fit = {"unit": "uother", "position": OUTER, "how": "scanned"}
    stop = refusal(job, "unit_fitted", override="", **fit)
    assert (stop["rule"], stop["override"]) == ("same_part", True)
    assert "PS-2" in stop["sentence"]
    assert "PS-1" in stop["sentence"]
    job.fact("unit_fitted", override="successor part of the maker", **fit)
    assert "successor part" in job.view()["history"][0]["sentence"]


def test_a_code_belongs_to_one_unit_for_good(job):
    code = job.label_of(job.step()["expects"]["unit"])
    job.scan(code)
    again = refusal(job, "unit_labelled", unit=home("rear-left-outer"), code=code, how="scanned")
    assert again["rule"] == "code_use"
    wrong = refusal(job, "unit_labelled", unit=home("rear-left-outer"), code="AAAAA", how="typed")
    assert wrong["rule"] == "code_use"


def test_a_torn_label_is_replaced_and_the_trail_goes_on(job):
    code = job.label_of(job.step()["expects"]["unit"])
    job.scan(code)
    unit = next(iter(job.labels))
    job.fact("label_voided", unit=unit, code=code, reason="torn")
    fresh = job.codes[7]
    job.fact("unit_labelled", unit=unit, code=fresh, how="scanned")
    seen = job.core("unit", unit=unit)
    assert seen["shown"] == fresh[:3] + "-" + fresh[3:]
    assert len(seen["moves"]) >= 3
    assert job.core("scan", job=job.job, text=code, how="scanned")["outcome"] == "stop"


def test_a_job_with_a_unit_in_hand_does_not_close(job):
    job.scan_wanted()
    stop = refusal(job, "job_closed", note="")
    assert stop["rule"] == "closing"
    assert "in your hand" in stop["sentence"]


def test_a_closed_job_takes_no_more_work(core):
    job = Driver(core).begin()
    job.test()
    job.tap("second")
    assert job.step()["id"] == "done"
    assert refusal(job, "cleaned", position=OUTER, note="")["rule"] == "job_open"
    assert refusal(job, "photo_taken", sha256="00" * 32, mime="image/jpeg", bytes=1, width=1,
                   height=1, shows="work", position="", unit="") is None  # fmt: skip


def test_two_phones_that_move_one_unit_make_a_dispute_that_only_a_scan_settles(core, job):
    """Design section 4: both stay on record, later tests count for neither place."""
    pulled(job)
    step = job.step()["expects"]
    second = Driver(core, device=OTHER_PHONE)
    second.labels = job.labels
    job.scan(job.labels[step["unit"]])
    second.force("unit_fitted", unit=step["unit"], position="rear-left-outer", how="tapped", override="")
    view = job.view()
    assert [line["id"] for line in view["disputes"]] == [step["unit"]]
    assert refusal(job, "unit_pulled", unit=step["unit"], position=step["position"], how="tapped")
    job.test(step["position"])
    last = core("state")["jobs"][job.job]["tests"][-1]
    assert set(last["disputed"]) == {step["position"], "rear-left-outer"}
    assert refusal(job, "job_closed", note="")["rule"] == "closing"

    job.fact("unit_seen", unit=step["unit"], place="fitted", position=step["position"], how="scanned")
    assert job.view()["disputes"] == []
    job.test(step["position"])
    assert core("state")["jobs"][job.job]["tests"][-1]["disputed"] == []


def test_a_unit_seen_where_another_is_on_record_puts_that_one_in_doubt(job):
    pulled(job)
    unit = job.step()["expects"]["unit"]
    job.fact("unit_seen", unit=unit, place="fitted", position="rear-left-outer", how="scanned")
    disputed = [line["id"] for line in job.view()["disputes"]]
    assert disputed == [home("rear-left-outer")]
    job.fact("unit_seen", unit=home("rear-left-outer"), place="out", position="", how="tapped")
    assert job.view()["disputes"] == []


def test_the_same_label_on_two_units_is_flagged_until_one_is_void(core, job):
    code = job.label_of(job.step()["expects"]["unit"])
    job.scan(code)
    second = Driver(core, device=OTHER_PHONE)
    second.force("unit_labelled", unit=home("rear-left-outer"), code=code, how="scanned")
    blockers = job.view()["close"]["blockers"]
    assert any("carry the label" in blocker for blocker in blockers)
    job.force("label_voided", unit=home("rear-left-outer"), code=code, reason="printed twice")
    assert not any("carry the label" in b for b in job.view()["close"]["blockers"])


def test_a_second_label_is_refused_while_the_first_is_in_use(job):
    job.scan_wanted()
    unit = next(iter(job.labels))
    stop = refusal(job, "unit_labelled", unit=unit, code=job.codes[9], how="scanned")
    assert stop["title"] == "It has a label already"
    job.fact("label_voided", unit=unit, code=job.labels[unit], reason="torn")
    job.fact("unit_labelled", unit=unit, code=job.codes[9], how="scanned")


@pytest.fixture
def labelled_twice(core, job):
    """Two phones that know nothing of each other put a label each on one sensor."""
    job.scan_wanted()
    unit, first = next(iter(job.labels.items()))
    second = job.codes[9]
    Driver(core, device=OTHER_PHONE).force("unit_labelled", unit=unit, code=second, how="scanned")
    return unit, first, second


def test_two_labels_by_two_phones_both_name_the_sensor(core, job, labelled_twice):
    unit, first, second = labelled_twice
    for code in (first, second):
        assert core("unit", code=code)["id"] == unit
        assert core("scan", text=code, how="scanned")["outcome"] == "ours"
    seen = core("unit", unit=unit)
    assert [label["code"] for label in seen["carried"]["labels"]] == [first, second]
    assert seen["was"] == []
    assert first[:3] in seen["carried"]["trouble"]
    assert second[:3] in seen["carried"]["trouble"]
    assert any("on record for one sensor" in blocker for blocker in job.view()["close"]["blockers"])


@pytest.mark.parametrize("gone", [0, 1])
def test_a_person_takes_one_of_two_labels_out_of_use(core, job, labelled_twice, gone):
    unit, *both = labelled_twice
    left, voided = both[1 - gone], both[gone]
    moves = len(core("unit", unit=unit)["moves"])
    job.fact("label_voided", unit=unit, code=voided, reason="two on one sensor")
    seen = core("unit", unit=unit)
    assert (seen["code"], seen["carried"]["trouble"]) == (left, "")
    assert seen["was"] == [voided[:3] + "-" + voided[3:]]
    assert len(seen["moves"]) == moves + 1
    assert core("scan", text=voided, how="scanned")["title"] == "This label is void"
    assert core("unit", code=left)["id"] == unit
    assert not any("on record for one sensor" in b for b in job.view()["close"]["blockers"])


def test_with_two_labels_on_it_either_scan_puts_the_sensor_in_its_place(core, job, labelled_twice):
    """The exchange goes on; only closing asks somebody to look."""
    unit, _, second = labelled_twice
    fitted = core("state")["jobs"][job.job]["move"]["fitted"]
    planned = {each: place for place, each in fitted.items()}
    job.labels[unit] = second
    job.guided()
    assert job.step()["form"] == "test"
    assert core("state")["units"][unit]["position"] == planned[unit]


def test_a_label_that_two_sensors_carry_can_be_voided_at_the_one_without_another(core, job):
    code = job.label_of(job.step()["expects"]["unit"])
    job.scan(code)
    twin = home("rear-left-outer")
    Driver(core, device=OTHER_PHONE).force("unit_labelled", unit=twin, code=code, how="scanned")
    carried = core("unit", unit=twin)["carried"]
    assert [label["code"] for label in carried["labels"]] == [code]
    assert "Two sensors carry" in carried["trouble"]
    job.fact("label_voided", unit=twin, code=code, reason="printed twice")
    assert core("unit", unit=twin)["carried"] == {"labels": [], "trouble": ""}


def test_a_label_out_of_use_stays_so_whatever_a_late_phone_says(core, job):
    code = job.label_of(job.step()["expects"]["unit"])
    job.scan(code)
    unit = next(iter(job.labels))
    job.fact("label_voided", unit=unit, code=code, reason="torn")
    Driver(core, device=OTHER_PHONE).force("unit_labelled", unit=unit, code=code, how="scanned")
    assert core("unit", unit=unit)["code"] == ""
    assert core("scan", text=code, how="scanned")["title"] == "This label is void"
