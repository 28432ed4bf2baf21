"""Labels that a phone prints by itself: laid out, drawn and remembered alike in both hosts of the core."""

import random

import pytest

from server.core.codes import labels
from tests.core.driver import Driver
from tests.hosts import CoreError

FOLDER = "https://files.example.org/Garage/trail/"
HOST = FOLDER.removeprefix("https://").removesuffix("/")
# By level, the smallest version for the address above, as two other encoders have it.
VERSIONS = {"H": 5, "Q": 4, "M": 3, "L": 3}
DICE = [random.Random(15415 + index).randrange(256) for index in range(8000)]
LAYOUTS = [
    {},
    {"paper": "letter", "dpi": "203"},
    {"grid": "3x8", "label": "60x30", "margin": "10x12,7", "gap": "2.54×3"},
    {"grid": "5x13", "precut": "yes"},
    {"roll": "50x30"},
    {"roll": "58x30", "dpi": "300"},
    {"roll": "12x12"},
    {"roll": "8x40", "dpi": "300"},
]


@pytest.fixture
def job(core):
    return Driver(core).begin()


def printed(job, codes, batch="b0000000000aa", **layout):
    data = {"batch": batch, "codes": codes, "host": HOST, "layout": layout}
    job.core("add", events=[{"event": job.envelope("labels_printed", data, job=None)}])


def refusal(core, codes, batch="b0000000000bb"):
    data = {"batch": batch, "codes": codes, "host": HOST, "layout": {}}
    found = core("check", events=[{"kind": "labels_printed", "job": None, "data": data}])["refusal"]
    return found and found["title"]


def drawn(core, count):
    return core("new_labels", random=DICE, count=count)


def test_a_folder_of_files_stands_in_a_label_as_it_is_written(core):
    """Only scheme and host are the same in any case (RFC 3986, 6.2.2.1); a path is not."""
    text = core("label_specimen", base=FOLDER)
    assert text == "HTTPS://FILES.EXAMPLE.ORG/Garage/trail/#A2345"
    assert core("label_specimen", base="http://localhost:8765") == "HTTP://LOCALHOST:8765/U/A2345"
    (code,) = drawn(core, 1)
    host = HOST
    for base in (FOLDER, FOLDER.lower()):
        read = core("code", text=labels.address(code, base), host=host)
        assert (read["outcome"], read["code"]) == ("ours", code)
    assert core("code", text=f"https://files.example.org/#{code}", host=host)["outcome"] == "other_host"
    assert core("code", text=f"https://files.example.org/U/{code}", host=host)["outcome"] == "other_host"
    assert (
        core("code", text=f"https://files.example.org/#{code}", host="files.example.org")["outcome"] == "ours"
    )
    assert core("code", text=f"{FOLDER}#A2345", host=host)["outcome"] == "foreign"
    assert core("code", text=f"{FOLDER}U/{code}", host=host)["outcome"] == "foreign"


def test_labels_from_before_there_was_a_server_are_its_own_once_it_has_taken_in_the_log(core, job):
    """Nobody sticks new labels on sensors because the bookkeeping moved to another address."""
    one, other = drawn(core, 2)
    printed(job, [one])
    job.force("unit_labelled", unit="v1.rear-left-outer", code=one, how="scanned")

    def read(text):
        scanned = core("scan", job=job.job, text=text, how="scanned", host="yard.example.org")
        return scanned["outcome"], core("code", text=text, host="yard.example.org")["outcome"]

    label = labels.address(one, FOLDER)
    assert read(label) == ("ours", "ours")
    assert read(label.lower()) == ("ours", "ours")
    assert read(labels.address(other, FOLDER)) == ("other_host", "other_host")
    assert read(label.replace("trail", "shed")) == ("other_host", "other_host")
    at_counter = core("counter", text=label, host="yard.example.org", now=0)
    assert (at_counter["unit"], at_counter["shown"]) == ("v1.rear-left-outer", labels.shown(one))


def test_a_label_of_a_folder_is_known_by_its_code_at_a_counter_elsewhere(core, job):
    (code,) = drawn(core, 1)
    found = core("counter", text=labels.address(code, FOLDER), host="parts.example.org", now=0)
    assert (found["shown"], found["code"]) == (labels.shown(code), f"{code}@{HOST.lower()}")
    assert found["unit"] != core("counter", text=code, host="parts.example.org", now=0)["unit"]


@pytest.mark.parametrize("options", LAYOUTS)
def test_a_layout_comes_out_alike_in_both_hosts(core, options):
    """The fixture holds the bytes of both hosts equal; what they are is tested with the server's labels."""
    asked = {"options": options, "distance": "20", "versions": VERSIONS, "base": FOLDER}
    plan = core("label_plan", **asked, forced=True)  # one has modules of a single dot
    assert plan["fault"] == ""
    pages = core("label_pages", **asked, codes=drawn(core, 5))
    assert sum(len(page["symbols"]) for page in pages["pages"]) == 5
    assert pages["dots"] > 0
    one = core("label_pages", **asked, one=True)
    assert len(one["pages"][0]["symbols"]) == 1
    half_a_dot = 2540 // 203 // 2 + 1
    assert one["paper"][0] <= pages["paper"][0] + half_a_dot


@pytest.mark.parametrize(
    ("options", "distance", "said"),
    [
        ({"paper": "a5"}, "20", 'paper: found "a5", wanted one of a4, letter'),
        ({"roll": "30"}, "20", 'roll: found "30"'),
        ({"roll": "50x30"}, "far", 'distance: found "far", wanted 5 to 100 cm'),
        ({"label": "4000x1"}, "20", 'label: found "4000x1", wanted two lengths'),
        ({"paper": 4}, "20", "paper: found 4, wanted text"),
    ],
)
def test_a_layout_that_does_not_work_is_an_answer(core, options, distance, said):
    plan = core("label_plan", options=options, distance=distance, versions=VERSIONS, base=FOLDER)
    assert said in plan["fault"]


def test_modules_of_one_dot_are_drawn_only_when_that_is_forced(core):
    asked = {"options": {"roll": "8x40"}, "distance": "5", "versions": VERSIONS, "base": FOLDER}
    refused = core("label_plan", **asked)
    assert (refused["may_force"], "modules of 1 dot" in refused["fault"]) == (True, True)
    forced = core("label_plan", **asked, forced=True)
    assert (forced["fault"], forced["a_page"]) == ("", 1)
    assert core("label_pages", **asked)["dots"] == 1  # what was printed by an earlier version still is


def test_each_phone_draws_from_a_share_of_its_own(core):
    """A phone that was set up from an older one's file does not know what that printed since."""
    shares = [core("new_labels", random=DICE, count=99, device=f"d000000000000000{n:x}") for n in range(16)]
    assert all(shares)
    assert len({code for share in shares for code in share}) == sum(map(len, shares))


def test_what_became_of_each_label_follows_from_the_log(core, job):
    codes = drawn(core, 4)
    printed(job, codes, roll="50x30")
    job.force("unit_labelled", unit="v1.rear-left-outer", code=codes[0], how="scanned")
    job.force("unit_labelled", unit="v1.rear-left-inner", code=codes[1], how="scanned")
    job.force("label_voided", unit="v1.rear-left-inner", code=codes[1], reason="torn")
    (batch,) = core("label_batches")
    assert batch["counts"] == {"on paper": 2, "on a sensor": 1, "void": 1}
    assert batch["layout"] == "Roll, labels of 50 x 30 mm, 203 dpi"
    states = {label["code"]: label["state"] for label in core("label_batch", batch=1)["labels"]}
    assert [states[code] for code in codes] == ["on a sensor", "void", "on paper", "on paper"]
    assert not set(codes) & set(drawn(core, 4))
    with pytest.raises(CoreError, match="batch: found 2"):
        core("label_batch", batch=2)


def test_a_code_goes_into_one_batch_and_again_only_while_no_sensor_has_it(core, job):
    codes = drawn(core, 3)
    assert refusal(core, codes) is None
    printed(job, codes)
    assert refusal(core, codes) == "This label was printed before"
    assert refusal(core, codes, batch="b0000000000aa") is None
    job.force("unit_labelled", unit="v1.rear-left-outer", code=codes[0], how="scanned")
    assert refusal(core, codes, batch="b0000000000aa") == "This label is in use"
    assert refusal(core, codes[1:], batch="b0000000000aa") is None
    assert refusal(core, ["A2345"]) == "Not a label code"
    (by_hand,) = labels.codes_from(DICE, 1, first=labels.HAND_FIRST)
    assert refusal(core, [by_hand]) == "Not a label code"


def test_a_layout_of_a_later_version_does_not_hide_the_batches(core, job):
    printed(job, drawn(core, 1), paper="b7")
    assert core("label_batches")[0]["layout"] == "Another layout"


def spoil(job, codes, batch="b0000000000aa"):
    data = {"batch": batch, "codes": codes, "reason": "the wrong paper"}
    found = job.core("check", events=[{"kind": "labels_spoiled", "job": None, "data": data}])["refusal"]
    if found is None:
        job.core("add", events=[{"event": job.envelope("labels_spoiled", data, job=None)}])
    return found and found["title"]


def test_labels_printed_by_mistake_go_out_of_use_for_good(core, job):
    codes = drawn(core, 3)
    printed(job, codes)
    assert spoil(job, codes[:1]) is None

    [line] = core("label_batches")
    assert line["counts"] == {"on paper": 2, "on a sensor": 0, "void": 1}
    found = {each["code"]: (each["state"], each["reason"]) for each in core("label_batch", batch=1)["labels"]}
    assert found[codes[0]] == ("void", "the wrong paper")
    assert found[codes[1]] == ("on paper", None)
    assert refusal(core, codes[:1], batch="b0000000000aa") == "This label is void"
    assert refusal(core, codes[1:], batch="b0000000000aa") is None
    assert codes[0] not in core("new_labels", random=DICE, count=99)


def test_a_label_out_of_use_is_put_on_no_sensor(core, job):
    codes = drawn(core, 1)
    printed(job, codes)
    spoil(job, codes)
    added = {"unit": "u1", "part": "PS-1", "serial": "", "code": codes[0], "place": "stock", "how": "scanned"}
    draft = {"kind": "unit_added", "job": None, "data": added}
    found = core("check", events=[draft])["refusal"]
    assert found["title"] == "This label is void"


def test_a_label_that_a_server_took_out_of_use_is_put_on_no_sensor(core, job):
    """The server's batches are in no log; what it said holds for an entry among others, too."""
    gone, other = drawn(core, 2)
    job.force("unit_labelled", unit="v1.rear-left-inner", code=other, how="scanned")
    core("labels_out", codes=[gone, other])
    draft = {
        "kind": "unit_labelled",
        "job": job.job,
        "data": {"unit": "v1.rear-left-outer", "code": gone, "how": "scanned"},
    }
    assert core("check", events=[draft])["refusal"]["title"] == "This label is void"
    note = {"kind": "job_paused", "job": job.job, "data": {"why": "help", "part": "", "note": ""}}
    assert core("check", events=[note, draft])["refusal"]["title"] == "This label is void"
    core("reset", events=[])
    assert core("check", events=[{**draft, "kind": "unit_added", "job": None, "data": {
        "unit": "u1", "part": "PS-1", "serial": "", "code": gone, "place": "stock", "how": "scanned",
    }}])["refusal"]["title"] == "This label is void"  # fmt: skip


def test_only_what_lies_on_paper_of_that_batch_goes_out_of_use(core, job):
    one, other = drawn(core, 2)
    printed(job, [one])
    assert spoil(job, [other]) == "This label was printed before"
    assert spoil(job, [one], batch="b0000000000bb") == "This label was printed before"
    job.force("unit_labelled", unit="v1.rear-left-outer", code=one, how="scanned")
    assert spoil(job, [one]) == "This label is in use"


def test_a_void_label_that_another_phone_has_put_on_a_sensor_counts_as_on_it(core, job):
    (code,) = drawn(core, 1)
    printed(job, [code])
    spoil(job, [code])
    job.force("unit_labelled", unit="v1.rear-left-outer", code=code, how="scanned")
    [each] = core("label_batch", batch=1)["labels"]
    assert (each["state"], each["unit"], each["reason"]) == ("on a sensor", "v1.rear-left-outer", None)
