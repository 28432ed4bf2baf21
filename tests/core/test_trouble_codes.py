"""The structure of trouble codes, by worked values in openly readable explanations of SAE J2012."""

import pytest

from server.core.facts.fold import Fold
from server.core.state.jobs_in_part import kept_line
from tests.core.driver import Driver
from tests.hosts import Core
from tests.said import english

# cnblogs.com/cokefentas/p/17514220.html and the csdn articles on ISO 15031-6; U3FFF is the largest
WORKED = [
    (0x01, 0x43, "P0143"),
    (0x92, 0x34, "B1234"),
    (0x80, 0x39, "B0039"),
    (0x40, 0x31, "C0031"),
    (0xC0, 0x73, "U0073"),
    (0x90, 0x00, "B1000"),
    (0x00, 0x00, "P0000"),
    (0xFF, 0xFF, "U3FFF"),
    (0x5E, 0x1A, "C1E1A"),
]


@pytest.mark.parametrize(("high", "low", "code"), WORKED)
def test_two_bytes_spell_a_code(core, high, low, code):
    assert core("trouble_code_bytes", high=high, low=low) == code
    assert core("trouble_code", code=code)["ok"]


def test_a_failure_type_may_follow_a_hyphen_and_is_put_in_words(core):
    """Type 13 means an open circuit: J2012-DA is not open, so this is from memory."""
    answer = core("trouble_code", code="c1e1a-13", open_list=True)
    assert (answer["code"], answer["failure_type"]) == ("C1E1A", "13")
    assert answer["sentence"] == "Chassis code, the maker's own. 13: open circuit."


@pytest.mark.parametrize(
    ("typed", "code", "failure_type"),
    [
        ("b-1234", "B1234", ""),
        (" b 12 34 ", "B1234", ""),
        ("C1E1A13", "C1E1A", "13"),
        ("c1e1a 13", "C1E1A", "13"),
        ("C1E1A:13", "C1E1A", "13"),
        ("C1E1A\u201313", "C1E1A", "13"),
        ("U0100.87", "U0100", "87"),
        ("B1234/96", "B1234", "96"),
    ],
)
def test_a_code_is_read_in_whatever_way_a_tester_or_a_person_writes_it(core, typed, code, failure_type):
    answer = core("trouble_code", code=typed)
    assert (answer["ok"], answer["code"], answer["failure_type"]) == (True, code, failure_type)


def test_a_failure_type_without_a_code_is_named_as_it_was_typed(core):
    assert english(core("trouble_code", code="-13")["sentence"]).startswith("-13 is not the form")


@pytest.mark.parametrize(
    "code", ["X1234", "B4234", "B12G4", "B123", "B12345", "12345", "1234", "123456", "12345678"]
)
def test_another_form_is_kept_and_said_so(core, code):
    answer = core("trouble_code", code=code)
    assert not answer["ok"]
    assert code in answer["sentence"]


def test_a_failure_type_that_is_none_is_named(core):
    assert "G1" in core("trouble_code", code="B1234", failure_type="g1")["sentence"]


@pytest.mark.parametrize(
    ("code", "whose"),
    [
        ("P0143", "Powertrain code, of the standard."),  # csdn 122546367: first digit 0 is ISO/SAE
        ("B1234", "Body code, the maker's own."),  # and 1 the maker
        ("P2004", "Powertrain code, of the standard."),  # csdn 141681271: P2 ISO/SAE, P30 to P33 the maker
        ("P3300", "Powertrain code, the maker's own."),
        ("P3400", "Powertrain code, of the standard."),
        ("U0121", "Network code, of the standard."),
        ("C2123", "Chassis code, the maker's own (from memory)."),
    ],
)
def test_the_letter_and_the_first_digit_say_whose_a_code_is(core, code, whose):
    assert english(core("trouble_code", code=code)["sentence"]) == whose


@pytest.mark.parametrize("failure_type", ["13", "96", "E7"])
def test_a_failure_type_is_decoded_only_where_somebody_says_that_it_follows_the_open_list(core, failure_type):
    """Makers' older ones use the same numbers with other meanings (common practice, no source)."""
    answer = core("trouble_code", code="B1234", failure_type=failure_type)
    assert answer["sentence"] == f"Body code, the maker's own. {failure_type} is kept as it is."


@pytest.mark.parametrize("code", ["", "🅱1234", "-13", "B1234-1234", "b1o34", "0x9234", "12,5", " "])
def test_odd_texts_have_a_clear_answer(core, code):
    answer = core("trouble_code", code=code)
    assert answer["ok"] == (not code.strip())
    assert (
        answer["ok"] or "form of a trouble code" in answer["sentence"] or "failure type" in answer["sentence"]
    )


OUTER, INNER = "rear-right-outer", "rear-right-inner"
CODE = {"position": OUTER, "code": "B1A2B", "failure_type": "13"}


def chances(job):
    return {each["cause"]: each["probability"] for each in job.core("reasoned", job=job.job)["causes"]}


def test_a_failure_type_of_a_makers_own_list_says_nothing_of_the_cause(core):
    counted, own, bare = [Driver(core, job=f"j{n:012}") for n in range(3)]
    for n, job in enumerate((counted, own, bare)):
        job.device = f"d{n:016x}"
        begin(job, f"v{n}")
    counted.test(OUTER, codes=[CODE], open_list=True)
    own.test(OUTER, codes=[CODE], open_list=False)
    bare.test(OUTER)
    cause = "circuit:" + OUTER
    assert chances(own)[cause] == chances(bare)[cause] < chances(counted)[cause]
    assert core("assumptions", job=own.job)["codes"] == []


def begin(job, vehicle, layout="rear-4"):
    layouts = {entry["id"]: entry for entry in job.core("layouts")}
    whole = next(each for each in layouts if each.endswith(layout))
    job.fact(
        "job_opened", vehicle={"id": vehicle, "name": f"Van {vehicle}", "vin": ""}, complaint="",
        layout=whole, part="", positions=layouts[whole]["positions"],
    )  # fmt: skip
    return job


def offered(job, code="B1A2B"):
    return [
        (each["means"], each["words"]) for each in job.core("code_typed", job=job.job, code=code)["before"]
    ]


def test_what_a_code_means_is_said_once_and_offered_for_the_same_layout_next_time(core):
    first = begin(Driver(core), "v1")
    assert offered(first) == []
    first.test(OUTER, codes=[CODE], open_list=False, means=[{"code": "B1A2B", "means": "wire to it"}])
    again = begin(Driver(core, job="j000000000002", device="d0000000000000002"), "v2")
    other = begin(Driver(core, job="j000000000003", device="d0000000000000003"), "v3", "front-4")
    assert offered(again, "b1a2b-96") == [("wire to it", "“wire to it”, as said at Van v1")]
    assert offered(again, "B1A2C") == offered(other) == []


def test_the_latest_of_several_meanings_is_offered_first_and_each_once(core):
    job = begin(Driver(core), "v1")
    for means in ("wire", "plug", "wire"):
        job.test(OUTER, codes=[CODE], open_list=False, means=[{"code": "B1A2B", "means": means}])
    later = begin(Driver(core, job="j000000000002", device="d0000000000000002"), "v2")
    later.seq = 90  # minutes: Driver's clock
    later.test(OUTER, codes=[CODE], open_list=False, means=[{"code": "B1A2B", "means": "plug"}])
    assert [means for means, _ in offered(later)] == ["plug", "wire"]


OF_OLD = {"position": OUTER, "code": "C1E1A13", "failure_type": ""}
NOW = {"position": OUTER, "code": "C1E1A", "failure_type": "13"}


@pytest.mark.parametrize(("code", "at_first"), [("C1E1A13", OF_OLD), ("C1E1A", NOW)], ids=["of old", "now"])
@pytest.mark.parametrize("typed", ["C1E1A", "c1e1a-96", "C1E1A13", "C1E1A 13"])
def test_what_was_said_of_a_code_is_offered_however_its_failure_type_was_kept(core, code, at_first, typed):
    """A version before took C1E1A13 for one code; what people said of it then is about C1E1A."""
    first = begin(Driver(core), "v1")
    first.test(OUTER, codes=[at_first], open_list=False, means=[{"code": code, "means": "wire to it"}])
    again = begin(Driver(core, job="j000000000002", device="d0000000000000002"), "v2")
    assert [means for means, _ in offered(again, typed)] == ["wire to it"]
    assert offered(again, "C1E1B13") == []
    for text in ("C1E1A", "C1E1A13"):
        assert [each["id"] for each in core("job_list", text=text)["jobs"]] == [first.job]


def test_a_meaning_that_was_said_under_both_is_offered_once_and_the_latest_first(core):
    job = begin(Driver(core), "v1")
    for code, means in ((OF_OLD, "wire"), (NOW, "wire"), (OF_OLD, "plug")):
        job.test(OUTER, codes=[code], open_list=False, means=[{"code": code["code"], "means": means}])
    job.test(OUTER, codes=[NOW], open_list=False, means=[{"code": "C1E1A", "means": "module"}])
    assert [means for means, _ in offered(job, "C1E1A-13")] == ["module", "plug"]


def test_a_meaning_goes_with_the_entry_that_said_it(core):
    job = begin(Driver(core), "v1")
    job.test(OUTER, codes=[CODE], open_list=False, means=[{"code": "B1A2B", "means": "wire"}])
    slip = job.events[-1]
    job.fact("corrected", device=slip["device"], seq=slip["seq"], reason="wrong vehicle")
    assert offered(job) == []


def test_of_a_job_that_is_not_in_memory_its_line_says_what_was_said():
    """A phone keeps closed jobs in its storage; what their codes mean is asked all the same."""
    fold = Fold()
    drive = begin(Driver(Core()), "v1")
    drive.test(OUTER, codes=[CODE], open_list=False, means=[{"code": "B1A2B", "means": "wire"}])
    fold.add(drive.events)
    line = kept_line(fold.state.jobs[drive.job])
    assert {code: said["means"] for code, said in line["means"].items()} == {"B1A2B": "wire"}


def test_codes_are_told_in_history_and_report_and_found(core):
    job = begin(Driver(core), "v1")
    job.test(OUTER, codes=[CODE, {"position": "", "code": "U1005", "failure_type": ""}], open_list=True,
             means=[{"code": "B1A2B", "means": "lower loom"}])  # fmt: skip
    told = "Code B1A2B-13 (open circuit) at right outer: “lower loom”. Code U1005."
    assert told in english(job.view()["history"][0]["sentence"])
    assert told in english(core("report", job=job.job)["done"][0]["sentence"])
    found = core("job_list", text="lower loom")["jobs"]
    assert [english(each) for each in found[0]["found_by"]] == ["Said of a code: lower loom"]


SAID = {"code": "B1A2B", "means": "x"}


@pytest.mark.parametrize(
    "means",
    [[{**SAID, "means": ""}], [{**SAID, "code": ""}], "wire", [{"code": "B1A2B"}],
     [SAID, {**SAID, "means": "y"}], [{**SAID, "means": "x" * 81}]],
)  # fmt: skip
def test_a_meaning_of_another_form_is_refused_by_its_field(core, means):
    job = begin(Driver(core), "v1")
    data = {"heard": True, "faulted": [OUTER], "silent": [], "unplugged": [], "codes": [CODE],
            "came_and_went": False, "note": "", "open_list": False, "means": means}  # fmt: skip
    assert "data.means" in job.check({"kind": "test_run", "data": data})["sentence"]


def fields_of(job, core):
    slip = job.events[-1]
    asked = core("entry", job=job.job, device=slip["device"], seq=slip["seq"])
    return {field["name"]: (english(field["words"]), field["value"]) for field in asked["fields"]}


def test_the_codes_of_a_test_and_what_they_mean_can_be_entered_anew(core):
    job = begin(Driver(core), "v1")
    elsewhere = {"position": "", "code": "U1005", "failure_type": ""}
    job.test(OUTER, "rear-left-inner", codes=[CODE, elsewhere], open_list=True,
             means=[{"code": "B1A2B", "means": "lower loom"}])  # fmt: skip
    asked = fields_of(job, core)
    assert {name: asked[name] for name in asked if "." in name} == {
        "codes.rear-left-inner": ("Trouble code at left inner", ""),
        "codes.rear-right-outer": ("Trouble code at right outer", "B1A2B-13"),
        "codes.": ("Trouble code, no position", "U1005"),
        "means.B1A2B": ("What B1A2B means", "lower loom"),
    }


def test_a_sort_that_stores_no_codes_asks_for_none(core):
    job = begin(Driver(core), "v1", "door-speaker/doors-4")
    job.test("door-front-left")
    assert not [name for name in fields_of(job, core) if "." in name]


def test_a_code_put_right_is_reasoned_with_told_and_offered_as_it_is_now(core):
    """A failure type of an open circuit speaks for the wiring; typed by mistake, it must not any more."""
    job = begin(Driver(core), "v1")
    job.test(OUTER, codes=[CODE], open_list=True, means=[{"code": "B1A2B", "means": "lower loom"}])
    slip = job.events[-1]
    before = job.view()["reasoning"]["causes"]
    right = {"position": OUTER, "code": "B1A2C", "failure_type": ""}
    entry = {"kind": "test_run", "data": {**slip["data"], "codes": [right],
             "means": [{"code": "B1A2C", "means": "lower loom"}]}}  # fmt: skip
    job.fact("put_right", device=slip["device"], seq=slip["seq"], entry=entry, reason="slip")

    assert job.view()["reasoning"]["causes"] != before
    assert "Code B1A2C at right outer" in english(core("report", job=job.job)["done"][0]["sentence"])
    again = begin(Driver(core, job="j000000000002", device="d0000000000000002"), "v2")
    assert offered(again) == []
    assert [means for means, _ in offered(again, "B1A2C")] == ["lower loom"]
    without = begin(Driver(core, job="j000000000003", device="d0000000000000003"), "v4")
    without.test(OUTER, codes=[right], open_list=True)
    chances = [each["probability_words"] for each in without.view()["reasoning"]["causes"]]
    assert [each["probability_words"] for each in job.view()["reasoning"]["causes"]] == chances


@pytest.mark.parametrize("typed", ["E-12", "B1A2-13", "-13", "P0301-", "KOEO 12-1"])
def test_what_has_a_dash_and_is_no_code_is_kept_whole(core, typed):
    """E-12 and E-13 were one code E with two failure types: one was offered what was said of the other."""
    answer = core("trouble_code", code=typed)
    assert answer["failure_type"] == ""
    assert not answer["ok"] or answer["code"] == "P0301"


@pytest.mark.parametrize(
    ("typed", "told"),
    [("9A45", "B1A45"), ("9a 45 13", "B1A45-13"), ("0x00A1", "P00A1"), ("D100", "U1100"), ("B1A4", "B31A4")],
)
def test_a_code_typed_as_bytes_is_kept_and_its_letter_form_told(core, typed, told):
    answer = core("trouble_code", code=typed)
    assert not answer["ok"]
    assert answer["sentence"].endswith(f"If a tester showed it as bytes in hex, it is {told}.")


@pytest.mark.parametrize("typed", ["9A4", "9A451", "9A45132", "GA45", "0x"])
def test_what_can_be_no_bytes_is_told_no_letter_form(core, typed):
    assert "as bytes" not in core("trouble_code", code=typed)["sentence"]
