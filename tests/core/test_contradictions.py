"""What two phones entered apart: shown once, counted by nobody until settled, then right for every test."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.test_put_right import put_right

OUTER, INNER, LEFT = "rear-right-outer", "rear-right-inner", "rear-left-outer"
BEN, ANA = "d00000000000000b1", "d00000000000000a1"
FAULT = {"heard": True, "silent": [], "unplugged": [], "codes": [], "came_and_went": False, "note": ""}


class Phone(Driver):
    """A driver whose entries bear a name."""

    name = "Ben"

    def envelope(self, kind, data, job="same"):
        event = super().envelope(kind, data, job)
        event["actor"] = self.name
        self.prev = self.core("envelope", event=event)["hash"]
        return event

    def tested(self, *faulted, knows=None):
        """Fold a test, as a server does with what arrives."""
        more = {} if knows is None else {"knows": knows}
        self.force("test_run", faulted=list(faulted), **FAULT, **more)


@pytest.fixture
def ben(core):
    phone = Phone(core, device=BEN).begin()
    phone.test(OUTER)
    phone.photograph()
    return phone


@pytest.fixture
def ana(core, ben):
    return phone_of_ana(core)


def phone_of_ana(core):
    """Return a second phone."""
    phone = Phone(core, device=ANA)
    phone.name = "Ana"
    return phone


@pytest.fixture
def swapped(ben):
    """Ben has exchanged right outer with right inner."""
    ben.start_exchange()
    ben.guided()
    return ben


def told(step):
    return [(each["actor"], each["words"]) for each in step["expects"]["stories"]]


def settle(phone, unit, words):
    """Scan a sensor at the card and tap an answer."""
    answer = phone.core("scan", job=phone.job, text=phone.labels[unit], how="scanned")
    chosen = [each for each in answer["choices"] + answer["others"] if each["words"] == words]
    assert chosen, [each["words"] for each in answer["choices"] + answer["others"]]
    phone.record(*chosen[0]["events"])


def counted(phone):
    """Return the tests that the reasoning sets aside, and where the units of the others sat."""
    aside = [note["test"] for note in phone.core("reasoned", job=phone.job)["ignored"]]
    return aside, [test["fitted"] for test in phone.core("state")["jobs"][phone.job]["tests"]]


def test_a_sensor_at_two_places_is_one_step_with_both_stories(swapped, ana):
    code = shown(swapped, home(OUTER))
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    step = swapped.step()
    assert (step["id"], step["form"], step["title"]) == ("settle", "contradiction", f"{code} in two places")
    assert told(step) == [
        ("Ben", f"fitted {code} at right inner"),
        ("Ana", f"put {code} into stock"),
    ]
    assert step["text"] == "Scan the label where it really is."
    assert step["action"]["words"] == "Scan it now"
    assert step["expects"]["waits"] == ""


def test_no_test_counts_that_a_contradiction_leaves_open(swapped, ana):
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    swapped.tested(INNER)
    view = swapped.view()
    assert view["step"]["expects"]["waits"] == "Test 2 counts once this is settled."
    assert view["reasoning"]["carries_words"].startswith("Test 1,")
    assert [note.partition(".")[0] for note in view["reasoning"]["aside"]] == ["Test 2 is set aside"]
    assert {line["points"][1]["mark"] for line in view["trail"]["lines"]} == {"aside"}


def test_a_test_made_before_the_other_story_arrived_waits_too(swapped, ana):
    swapped.tested(INNER)
    assert swapped.view()["reasoning"]["verdict"]
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    assert counted(swapped)[0] == [1]
    assert not swapped.view()["reasoning"]["verdict"]


def test_the_scan_where_it_really_is_gives_the_tests_their_places(swapped, ana):
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    swapped.tested(INNER)
    settle(swapped, home(OUTER), "At right inner")
    aside, fitted = counted(swapped)
    assert aside == []
    assert fitted[1][INNER] == home(OUTER)
    view = swapped.view()
    assert view["reasoning"]["sentence"].startswith("The fault followed sensor")
    assert view["disputes"] == []
    assert view["step"]["form"] != "contradiction"
    assert not [conflict for conflict in swapped.core("conflicts")["conflicts"] if conflict["open"]]


def test_what_settled_it_is_entered_anew_with_the_stories_of_the_other_place(swapped, ana):
    """Settled as in stock by a slip: entered anew, it is as if the scan had said right inner at once."""
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    swapped.tested(INNER)
    settle(swapped, home(OUTER), "In your stock")
    assert not swapped.view()["reasoning"]["verdict"]
    seen = swapped.seq
    asked = swapped.core("entry", job=swapped.job, device=swapped.device, seq=seen)
    [place] = asked["fields"]
    stood = {option["words"]: option["value"] for option in place["options"]}
    assert place["value"] == stood["In your stock"]
    [right] = [option["sets"] for option in place["options"] if option["words"] == "At right inner"]
    swapped.record(put_right(swapped, seen, **right))
    assert counted(swapped)[0] == []
    view = swapped.view()
    assert view["reasoning"]["sentence"].startswith("The fault followed sensor")
    assert view["disputes"] == []


def test_a_test_that_was_made_without_it_blames_nobody_there(swapped, ana):
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    swapped.tested(INNER)
    settle(swapped, home(OUTER), "In your stock")
    aside, fitted = counted(swapped)
    assert aside == []
    assert INNER not in fitted[1]
    assert not swapped.view()["reasoning"]["verdict"]


def test_it_may_have_been_there_for_the_test_and_be_elsewhere_now(swapped, ana):
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    swapped.tested(INNER)
    settle(swapped, home(OUTER), "In your stock now; at right inner for test 2")
    assert counted(swapped)[1][1][INNER] == home(OUTER)
    assert swapped.view()["reasoning"]["sentence"].startswith("The fault followed sensor")
    assert swapped.core("unit", unit=home(OUTER))["place"] == "stock"


def test_the_answer_is_the_same_in_whatever_order_the_entries_arrive(core, ben, ana):
    """Ana's story first: then Ben's entries are those that contradict."""
    ben.force("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    ben.labels[home(OUTER)] = ben.codes[0]
    ben.force("unit_labelled", unit=home(OUTER), code=ben.codes[0], how="scanned")
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    ben.force("unit_fitted", unit=home(OUTER), position=OUTER, how="scanned", override="")
    ben.tested(OUTER)
    code = shown(ben, home(OUTER))
    if ben.step()["form"] == "contradiction":
        assert told(ben.step()) == [
            ("Ana", f"put {code} into stock"),
            ("Ben", f"fitted {code} at right outer"),
        ]
    settle(ben, home(OUTER), "At right outer")
    aside, fitted = counted(ben)
    assert (aside, fitted[1][OUTER]) == ([], home(OUTER))


@pytest.fixture
def two_at_one(ben, ana):
    """Both have pulled a sensor, and both fitted theirs at right outer."""
    for unit, position, code in ((home(OUTER), OUTER, ben.codes[0]), (home(INNER), INNER, ben.codes[1])):
        ben.force("unit_pulled", unit=unit, position=position, how="tapped")
        ben.force("unit_labelled", unit=unit, code=code, how="scanned")
        ben.labels[unit] = code
    ben.force("unit_fitted", unit=home(INNER), position=OUTER, how="scanned", override="")
    ana.force("unit_fitted", unit=home(OUTER), position=OUTER, how="scanned", override="")
    return ben


def test_two_sensors_at_one_position_are_one_question(two_at_one):
    step = two_at_one.step()
    one, other = shown(two_at_one, home(INNER)), shown(two_at_one, home(OUTER))
    assert step["title"] == "Two sensors at right outer"
    assert told(step) == [
        ("Ben", f"fitted {one} at right outer"),
        ("Ana", f"fitted {other} at right outer"),
    ]
    assert sorted(step["expects"]["units"]) == sorted([home(OUTER), home(INNER)])


@pytest.mark.parametrize(("there", "loose"), [(INNER, OUTER), (OUTER, INNER)])
def test_either_label_read_there_settles_both(two_at_one, there, loose):
    two_at_one.tested(OUTER)
    settle(two_at_one, home(there), "At right outer")
    view = two_at_one.view()
    assert view["disputes"] == []
    assert [unit["id"] for unit in view["out"]] == [home(loose)]
    assert counted(two_at_one)[1][1][OUTER] == home(there)
    assert counted(two_at_one)[0] == []


def test_where_one_of_two_turns_out_not_to_be_the_other_one_is(two_at_one):
    two_at_one.tested(OUTER)
    settle(two_at_one, home(INNER), "In your stock")
    view = two_at_one.view()
    assert view["disputes"] == []
    assert view["out"] == []
    assert (counted(two_at_one)[0], counted(two_at_one)[1][1][OUTER]) == ([], home(OUTER))


def test_what_another_label_would_not_settle_asks_for_the_one_in_dispute(two_at_one):
    two_at_one.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    assert two_at_one.step()["expects"]["units"] == [home(OUTER)]


def test_a_phone_tells_one_story_of_a_sensor_its_last(swapped, ana):
    code = shown(swapped, home(OUTER))
    for position in (OUTER, INNER):
        ana.force("unit_pulled", unit=home(OUTER), position=position, how="tapped")
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    assert told(swapped.step()) == [
        ("Ben", f"fitted {code} at right inner"),
        ("Ana", f"put {code} into stock"),
    ]


@pytest.mark.parametrize("right", [1, 2])
def test_of_several_tests_entered_twice_each_is_asked_about_once(ben, ana, right):
    knows = ben.view()["knows"]
    for phone in (ben, ben, ana, ana):
        phone.tested(OUTER, knows=knows)
    progress = ben.step()["progress"]
    assert (progress["now"], progress["total"]) == (1, 2)
    ben.choose(right)
    assert ben.step()["progress"] is None
    ben.choose(0)
    assert ben.step()["id"] != "settle.tests"
    assert len(ben.view()["trail"]["tests"]) == 4


def test_what_is_said_elsewhere_of_a_sensor_takes_nothing_from_a_closed_job(swapped, ana):
    swapped.tested(INNER)
    swapped.force("job_closed", note="", why="customer")
    before = counted(swapped)
    ana.job = None
    ana.force("unit_moved", unit=home(OUTER), place="scrapped", how="scanned", note="")
    assert swapped.core("unit", unit=home(OUTER))["disputed"]
    assert counted(swapped) == before


def test_what_was_said_outside_the_job_changes_what_its_verdict_rests_on_at_once(swapped, ana):
    swapped.tested(INNER)
    swapped.force("unit_pulled", unit=home(OUTER), position=INNER, how="scanned")
    assert swapped.core("unit", unit=home(OUTER))["bad"]
    ana.job = None
    ana.force("unit_moved", unit=home(INNER), place="stock", how="scanned", note="")
    told = swapped.core("unit", unit=home(OUTER))
    assert not told["bad"]
    swapped.core("reset", events=[{"event": event} for event in swapped.events + ana.events])
    assert swapped.core("unit", unit=home(OUTER)) == told


def test_a_label_that_the_question_is_not_about_is_stopped(swapped, ana):
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    answer = swapped.core("scan", job=swapped.job, text=swapped.labels[home(INNER)], how="scanned")
    assert answer["outcome"] == "stop"
    assert answer["events"] == []


def test_two_tests_of_which_neither_phone_knew_may_be_one(ben, ana):
    knows = ben.view()["knows"]
    ben.tested(OUTER, knows=knows)
    ana.tested(INNER, knows=knows)
    step = ben.step()
    assert (step["id"], step["title"]) == ("settle.tests", "One test, entered twice?")
    assert told(step) == [("Ben", "fault at right outer"), ("Ana", "fault at right inner")]
    assert counted(ben)[0] == [1, 2]
    assert [choice["words"] for choice in step["choices"]] == [
        "They were two tests",
        "One test, and Ben has it right: fault at right outer",
        "One test, and Ana has it right: fault at right inner",
    ]
    ben.choose(1)
    assert counted(ben)[0] == []
    assert [test["faulted"] for test in ben.core("state")["jobs"][ben.job]["tests"]] == [[OUTER], [OUTER]]


def test_a_test_that_three_phones_entered_is_one_question(core, ben, ana):
    knows = ben.view()["knows"]
    eva = Driver(core, device="d00000000000000e5", job=ben.job, actor="Eva")
    for each, place in ((ben, OUTER), (ana, INNER), (eva, OUTER)):
        each.test(place, knows=knows)
    step = ben.step()
    assert step["title"] == "One test, entered 3 times?"
    assert len(told(step)) == 3


def shared_by(core, ana, *people):
    """Say that Ana's phone is Jo's, and that these share it."""
    core("phones", phones=[
        {"device": ana.device, "from": 1, "role": "bench", "name": "Jo", "people": list(people)}
    ])  # fmt: skip


@pytest.mark.parametrize(
    ("people", "who"),
    [(["Ana"], "Ana, on the phone of Jo"), ([], "said by Ana on the phone of Jo")],
)
def test_a_question_about_tests_says_whose_phone_a_name_is_not_of(ben, ana, people, who):
    shared_by(ben.core, ana, *people)
    knows = ben.view()["knows"]
    ben.tested(OUTER, knows=knows)
    ana.tested(INNER, knows=knows)
    step = ben.step()
    assert [name for name, _ in told(step)] == ["Ben", who]
    assert [choice["words"] for choice in step["choices"]] == [
        "They were two tests",
        "One test, and Ben has it right: fault at right outer",
        f"One test. Right: fault at right inner ({who})",
    ]


@pytest.mark.parametrize("closed_first", [True, False])
def test_a_question_about_a_closing_says_whose_phone_a_name_is_not_of(ben, ana, closed_first):
    shared_by(ben.core, ana, "Ana")
    closing = {"note": "", "why": "customer", "knows": ben.view()["knows"]}
    if closed_first:
        ana.force("job_closed", **closing)
    ben.force("cleaned", position=OUTER, note="")
    if not closed_first:
        ana.force("job_closed", **closing)
    assert [name for name, _ in told(ben.step())] == ["Ana, on the phone of Jo", "Ben"]


def test_no_clean_test_proves_a_repair_while_it_waits(ben, ana):
    ben.start_exchange()
    ben.guided()
    ben.test(OUTER)
    ben.force("circuit_repaired", cause="circuit:" + OUTER, what="pin", segment="connector")
    knows = ben.view()["knows"]
    ben.tested(knows=knows)
    ana.tested(OUTER, knows=knows)
    view = ben.view()
    assert len(view["reasoning"]["aside"]) == 2
    assert "proved" not in view["reasoning"]["detail"]


def test_two_tests_count_both_once_somebody_says_so(ben, ana):
    knows = ben.view()["knows"]
    ben.tested(OUTER, knows=knows)
    ana.tested(OUTER, knows=knows)
    ben.choose(0)
    assert counted(ben)[0] == []
    assert len(ben.view()["trail"]["tests"]) == 3


def test_tests_of_phones_that_knew_of_each_other_are_no_question(ben, ana):
    ben.tested(OUTER, knows=ben.view()["knows"])
    ana.tested(OUTER, knows=ben.view()["knows"])
    assert ben.step()["id"] != "settle.tests"


@pytest.mark.parametrize("closed_first", [True, False])
def test_a_job_that_one_closed_while_the_other_went_on_asks_once(ben, ana, closed_first):
    knows = ben.view()["knows"]
    closing = {"note": "", "why": "customer", "knows": knows}
    if closed_first:
        ana.force("job_closed", **closing)
    ben.force("cleaned", position=OUTER, note="")
    if not closed_first:
        ana.force("job_closed", **closing)
    step = ben.step()
    assert (step["id"], step["title"]) == ("settle.closing", "Is this job done?")
    assert told(step) == [("Ana", "closed the job"), ("Ben", "Cleaned right outer.")]
    ben.choose(0)
    assert ben.step()["id"] == "test"
    assert not ben.view()["reopened"]


def test_it_can_be_closed_after_all(ben, ana):
    knows = ben.view()["knows"]
    ben.force("cleaned", position=OUTER, note="")
    ana.force("job_closed", note="", why="customer", knows=knows)
    ben.choose(1)
    assert ben.view()["closed"]
    assert ben.step()["id"] == "done"


@pytest.fixture
def overtaken(swapped, ana):
    """Ben's tests gave a verdict and he closed the job; Ana, who saw none of that, has begun an exchange."""
    swapped.tested(INNER)
    assert swapped.view()["reasoning"]["verdict"]
    swapped.force("job_closed", note="", why="customer")
    holds = {OUTER: home(LEFT), LEFT: home(INNER)}
    ana.force("move_started", move="exchange", position="", fitted=holds, reason="")
    ana.force("unit_pulled", unit=home(INNER), position=OUTER, how="scanned")
    return swapped


def test_an_exchange_that_a_verdict_overtook_is_said_to_tell_nothing_and_left(overtaken):
    step = overtaken.step()
    assert (step["id"], step["text"]) == (
        "settle.closing",
        "The tests have settled already what is wrong. The exchange can tell nothing more.",
    )
    assert [choice["words"] for choice in step["choices"]] == [
        "No: go on without the exchange",
        "No: finish the exchange first",
    ]
    overtaken.choose(0)
    back = overtaken.step()
    assert (back["id"], back["expects"]["unit"], back["expects"]["position"]) == ("fit", home(INNER), OUTER)
    overtaken.scan(overtaken.labels[home(INNER)])
    told = overtaken.step()
    assert told["id"].partition(".")[0] not in ("pull", "fit"), told
    assert overtaken.view()["stage"] == "prove"


def test_an_exchange_that_a_verdict_overtook_goes_on_where_somebody_wants_it(overtaken):
    overtaken.choose(1)
    assert (overtaken.step()["id"], overtaken.step()["expects"]["position"]) == ("pull", LEFT)


def test_an_exchange_that_no_verdict_overtook_goes_on_as_before(ben, ana):
    ben.force("job_closed", note="", why="customer")
    holds = {OUTER: home(INNER), INNER: home(OUTER)}
    ana.force("move_started", move="exchange", position="", fitted=holds, reason="")
    assert ben.step()["text"] == ""
    ben.choose(0)
    assert ben.step()["id"] == "pull"


def test_closing_what_the_phone_knew_all_of_is_no_question(ben, ana):
    ben.force("cleaned", position=OUTER, note="")
    ana.force("job_closed", note="", why="customer", knows=ben.view()["knows"])
    assert ben.view()["closed"]


def correct(phone, seq, over=(), **changed):
    """Fold a correction of an entry of Ben's, as a server does; `over` are those that the phone knew of."""
    entry = phone.core("entry", job=phone.job, device=BEN, seq=seq)
    said = {"kind": entry["kind"], "data": {**entry["data"], **changed}}
    phone.force("put_right", device=BEN, seq=seq, entry=said, reason="slip", over=list(over))
    return f"{phone.device}:{phone.seq}"


def number_of(phone, kind):
    return next(event["seq"] for event in phone.events if event["kind"] == kind)


def test_a_test_corrected_in_two_ways_is_one_card_and_counts_once_somebody_says_which(ben, ana):
    seq = number_of(ben, "test_run")
    correct(ben, seq, faulted=[INNER])
    correct(ana, seq, faulted=[LEFT])
    step = ben.step()
    assert (step["id"], step["form"], step["progress"]) == ("settle.corrected", "contradiction", None)
    assert step["title"] == "One entry, corrected in two ways"
    assert step["text"] == "Which correction is right?"
    assert [each["job"] for each in step["choices"]] == [ben.job, ben.job]
    assert told(step) == [
        ("Ben", "entered at first: Self-test: fault at right outer."),
        ("Ben", "Self-test: fault at right inner."),
        ("Ana", "Self-test: fault at left outer."),
    ]
    assert step["expects"]["waits"] == "Test 1 counts once this is settled."
    assert counted(ben)[0] == [0]
    assert ben.view()["trail"]["lines"][0]["points"][0]["mark"] == "aside"
    ben.choose(0)
    assert ben.step()["form"] != "contradiction"
    assert counted(ben)[0] == []
    assert [test["faulted"] for test in ben.core("state")["jobs"][ben.job]["tests"]] == [[INNER]]


def test_corrections_that_say_the_same_or_knew_of_each_other_are_no_question(ben, ana):
    seq = number_of(ben, "test_run")
    first = correct(ben, seq, faulted=[INNER])
    correct(ana, seq, faulted=[INNER])
    assert ben.step()["form"] != "contradiction"
    knows = ben.core("entry", job=ben.job, device=BEN, seq=seq)["over"]
    assert first not in knows
    correct(ben, seq, over=knows, faulted=[LEFT])
    assert ben.step()["form"] != "contradiction"
    assert [test["faulted"] for test in ben.core("state")["jobs"][ben.job]["tests"]] == [[LEFT]]


@pytest.mark.parametrize("late", ["put_right", "corrected"])
def test_a_correction_that_comes_after_one_that_knew_of_it_is_no_question(ben, ana, late):
    """Ana's came to Ben by a file; the server, and who has it from there, gets it after his."""
    seq = number_of(ben, "test_run")
    of = {"device": BEN, "seq": seq, "reason": "slip", "over": []}
    if late == "put_right":
        said = {"kind": "test_run", "data": {**ben.events[seq - 1]["data"], "faulted": [INNER]}}
        event = ana.envelope(late, {**of, "entry": said})
    else:
        event = ana.envelope(late, of)
    first = correct(ben, seq, over=[f"{ANA}:{ana.seq}"], faulted=[LEFT])
    correct(ben, seq, over=[first], faulted=[LEFT, OUTER])
    ben.core("add", events=[{"event": event}])
    assert ben.step()["form"] != "contradiction"
    assert [test["faulted"] for test in ben.core("state")["jobs"][ben.job]["tests"]] == [[LEFT, OUTER]]


def test_where_another_phone_took_it_back_either_may_be_right(ben, ana):
    seq = number_of(ben, "test_run")
    ana.force("corrected", device=BEN, seq=seq, reason="not made", over=[])
    correct_from(ben, seq, faulted=[INNER])
    assert told(ben.step()) == [
        ("Ben", "entered at first: Self-test: fault at right outer."),
        ("Ana", "took it back: it was not so"),
        ("Ben", "Self-test: fault at right inner."),
    ]
    assert ben.core("state")["jobs"][ben.job]["tests"] == []
    choices = [choice["words"] for choice in ben.step()["choices"]]
    assert choices == [
        "Ana has it right: took it back: it was not so",
        "Ben has it right: Self-test: fault at right inner.",
    ]
    ben.choose(1)
    assert ben.step()["form"] != "contradiction"
    assert [test["faulted"] for test in ben.core("state")["jobs"][ben.job]["tests"]] == [[INNER]]


def correct_from(phone, seq, **changed):
    """Correct an entry of Ben's that somebody took back meanwhile."""
    [event] = [event for event in phone.events if (event["device"], event["seq"]) == (BEN, seq)]
    said = {"kind": event["kind"], "data": {**event["data"], **changed}}
    phone.force("put_right", device=BEN, seq=seq, entry=said, reason="slip", over=[])


def test_it_may_count_for_nothing_after_all(ben, ana):
    seq = number_of(ben, "test_run")
    correct(ben, seq, faulted=[INNER])
    ana.force("corrected", device=BEN, seq=seq, reason="not made", over=[])
    ben.choose(1)
    assert ben.step()["form"] != "contradiction"
    assert ben.core("state")["jobs"][ben.job]["tests"] == []


def test_a_vehicle_that_two_phones_named_otherwise_is_one_question(ben, ana):
    for phone, name in ((ben, "Blue van"), (ana, "Green estate")):
        correct(phone, 1, vehicle={**before_of(ben), "name": name})
    assert told(ben.step()) == [
        ("Ben", "entered at first: name: Blue estate"),
        ("Ben", "name: Blue van"),
        ("Ana", "name: Green estate"),
    ]
    assert len(ben.step()["choices"]) == 2
    ben.choose(0)
    assert ben.view()["vehicle"]["name"] == "Blue van"


def before_of(phone):
    return phone.events[0]["data"]["vehicle"]


def test_no_two_corrections_of_an_entry_read_alike(ben, ana):
    seq = number_of(ben, "test_run")
    correct(ben, seq, silent=[INNER])
    correct(ana, seq, silent=[LEFT])
    assert [words for _, words in told(ben.step())] == [
        "entered at first: every position was reported on",
        "nothing was said about right inner",
        "nothing was said about left outer",
    ]


def test_who_corrected_it_back_to_what_it_was_says_so_too(ben, ana):
    first = correct(ben, 1, complaint="beeps in rain")
    correct(ben, 1, over=[first], complaint=ben.events[0]["data"]["complaint"])
    correct(ana, 1, complaint="silent")
    assert [words for _, words in told(ben.step())][1:] == [
        "complaint: beeps without reason",
        "complaint: silent",
    ]
    assert len(ben.step()["choices"]) == 2


def test_the_plate_of_one_and_the_name_of_the_other_may_both_be_right(ben, ana):
    correct(ben, 1, vehicle={**before_of(ben), "plate": "AB 12"})
    correct(ana, 1, vehicle={**before_of(ben), "name": "Green estate"})
    assert told(ben.step())[1:] == [("Ben", "plate: AB 12"), ("Ana", "name: Green estate")]
    assert ben.step()["choices"][2]["words"] == "Both are right"
    ben.choose(2)
    vehicle = ben.core("state")["vehicles"]["v1"]
    assert (vehicle["name"], vehicle["plate"]) == ("Green estate", "AB 12")
    assert ben.step()["form"] != "contradiction"


def test_tests_wait_for_what_was_where_before_them(swapped, ana):
    swapped.tested(INNER)
    seq = [event["seq"] for event in swapped.events if event["kind"] == "unit_fitted"][-1]
    correct(swapped, seq, position=LEFT)
    correct(ana, seq, how="tapped")
    assert counted(swapped)[0] == [1]


def shown(phone, unit):
    code = phone.labels[unit]
    return f"{code[:3]}-{code[3:]}"


def reads(phone, unit, part="", serial="", job="same", over=()):
    """Fold numbers that were read off a sensor; `over` are the readings that the phone knew of."""
    data = {"unit": unit, "part": part, "serial": serial, "over": list(over)}
    phone.core("add", events=[{"event": phone.envelope("part_noted", data, job=job)}])
    return f"{phone.device}:{phone.seq}"


def numbers(phone, unit=None):
    """Return (part number, serial number) on record."""
    facts = phone.core("state")["units"][unit or home(OUTER)]
    return facts["part"], facts["serial"]


@pytest.mark.parametrize("job", ["same", None])
def test_two_part_numbers_read_off_one_sensor_are_one_card_settled_once(swapped, ana, job):
    reads(swapped, home(OUTER), "PS-2", job=job)
    reads(ana, home(OUTER), "PS-3", job=job)
    code = shown(swapped, home(OUTER))
    step = swapped.step()
    assert (step["id"], step["form"], step["progress"]) == ("settle.numbers", "contradiction", None)
    assert step["title"] == f"Which number does {code} have?"
    assert step["text"] == "Read it off the sensor once more."
    assert told(step) == [
        ("", "On record before: part number: PS-1"),
        ("Ben", "part number: PS-2"),
        ("Ana", "part number: PS-3"),
    ]
    assert step["expects"]["waits"] == ""
    [card] = swapped.core("unit", unit=home(OUTER))["apart"]
    assert (card["title"], card["text"], card["choices"]) == (step["title"], step["text"], step["choices"])
    assert [each["words"] for each in card["choices"]] == [
        "Ben has it right: part number: PS-2",
        "Ana has it right: part number: PS-3",
    ]
    swapped.choose(0)
    assert swapped.step()["form"] != "contradiction"
    assert swapped.core("unit", unit=home(OUTER))["apart"] == []
    assert numbers(swapped) == ("PS-2", "")


def test_settling_one_number_keeps_the_other_that_only_one_phone_read(ben, ana):
    reads(ben, home(OUTER), "PS-2", "")
    reads(ana, home(OUTER), "PS-3", "77")
    ben.choose(0)
    assert numbers(ben) == ("PS-2", "77")


def test_different_numbers_and_another_spelling_of_one_are_no_question(ben, ana):
    reads(ben, home(OUTER), "PS-1", "77")  # the form has what was on record, too
    reads(ana, home(OUTER), "PS-2", "")
    assert (ben.step()["form"] == "contradiction", numbers(ben)) == (False, ("PS-2", "77"))
    reads(ben, home(INNER), "PS 9")
    reads(ana, home(INNER), "ps-9")
    assert ben.step()["form"] != "contradiction"


def test_a_reading_that_knew_of_the_other_is_no_question_in_whatever_order_they_come(ben, ana):
    late = ana.envelope("part_noted", {"unit": home(OUTER), "part": "PS-3", "serial": "", "over": []})
    mine = reads(ben, home(OUTER), "PS-2", over=[f"{ANA}:{ana.seq}"])
    reads(ben, home(OUTER), "PS-4", over=[mine])
    ben.core("add", events=[{"event": late}])
    assert ben.step()["form"] != "contradiction"
    assert numbers(ben) == ("PS-4", "")
    assert len(ben.core("unit", unit=home(OUTER))["noted"]) == 1


def test_an_older_app_says_nothing_of_what_it_knew_and_its_reading_stands(ben, ana):
    reads(ben, home(OUTER), "PS-2")
    ana.force("part_noted", unit=home(OUTER), part="PS-3", serial="")
    assert ben.step()["form"] != "contradiction"
    assert numbers(ben) == ("PS-3", "")


def test_a_reading_that_was_taken_back_contradicts_nothing(ben, ana):
    reads(ben, home(OUTER), "PS-2")
    slip = ben.seq
    reads(ana, home(OUTER), "PS-3")
    assert ben.step()["id"] == "settle.numbers"
    ben.fact("corrected", device=BEN, seq=slip, reason="slip", over=[])
    assert ben.step()["form"] != "contradiction"
    assert numbers(ben) == ("PS-3", "")


SPARE = "u0000000stock"


def records_beside(phone, draft):
    """Record a draft outside any job as the app does, which asks first."""
    asked = {**draft, "job": None, "actor": phone.name, "device": phone.device}
    assert phone.core("check", events=[asked])["refusal"] is None
    phone.core("add", events=[{"event": phone.envelope(draft["kind"], draft["data"], job=None)}])


@pytest.fixture
def spare(ben):
    """Ben has put a spare into stock, outside any job; the number of the entry."""
    data = {"unit": SPARE, "part": "PS-1", "serial": "", "code": ben._fresh(), "how": "scanned"}
    ben.core("add", events=[{"event": ben.envelope("unit_added", {**data, "place": "stock"}, job=None)}])
    return ben.seq


def corrects_beside(phone, seq, over=(), **changed):
    """Fold a correction of an entry of Ben's outside any job; no changes take it back."""
    of = {"device": BEN, "seq": seq, "reason": "slip", "over": list(over)}
    [event] = [event for event in phone.core("beside", unit=SPARE)["history"] if event["seq"] == seq]
    asked = phone.core("entry", job=None, device=BEN, seq=seq)
    said = {"kind": event["kind"], "data": {**asked["data"], **changed}}
    kind, data = ("put_right", {**of, "entry": said}) if changed else ("corrected", of)
    phone.core("add", events=[{"event": phone.envelope(kind, data, job=None)}])


def test_an_entry_outside_any_job_corrected_in_two_ways_is_one_card_at_its_sensor(ben, ana, spare):
    corrects_beside(ben, spare, part="PS-2")
    corrects_beside(ana, spare, part="PS-3")
    [card] = ben.core("unit", unit=SPARE)["apart"]
    assert card["title"] == "One entry, corrected in two ways"
    assert [each["words"] for each in card["stories"]] == [
        "entered at first: part number: PS-1",
        "part number: PS-2",
        "part number: PS-3",
    ]
    assert ben.step()["form"] != "contradiction"  # no job has to do with it
    assert [each["job"] for each in card["choices"]] == [None, None]
    [draft] = card["choices"][0]["events"]
    records_beside(ben, draft)
    assert ben.core("unit", unit=SPARE)["apart"] == []
    assert numbers(ben, SPARE) == ("PS-2", "")


def test_a_place_outside_any_job_corrected_and_taken_back_asks_which(ben, ana, spare):
    move = {"unit": SPARE, "place": "customer", "how": "tapped", "note": ""}
    ben.core("add", events=[{"event": ben.envelope("unit_moved", move, job=None)}])
    seq = ben.seq
    corrects_beside(ben, seq, place="scrapped")
    corrects_beside(ana, seq)
    [card] = ben.core("unit", unit=SPARE)["apart"]
    assert [each["words"].rpartition(": ")[2] for each in card["choices"]][1] == "it was not so"
    [draft] = card["choices"][1]["events"]
    records_beside(ben, draft)
    facts = ben.core("unit", unit=SPARE)
    assert (facts["apart"], facts["place"]) == ([], "stock")


def test_a_spare_with_two_numbers_is_asked_about_by_the_job_that_takes_it(ben, ana, spare):
    reads(ben, SPARE, "PS-2", job=None)
    reads(ana, SPARE, "PS-3", job=None)
    assert len(ben.core("unit", unit=SPARE)["apart"]) == 1
    assert ben.step()["form"] != "contradiction"
    ben.force("unit_moved", unit=SPARE, place="out", how="scanned", note="")
    assert ben.step()["id"] == "settle.numbers"
