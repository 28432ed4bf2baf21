"""Every view that the core hands out has just the fields and values that `static/core/views.d.ts` declares.

The type checker holds the screens to that file (tests/static/test_types.py), this test the core.
"""

import inspect

from server.core.host import Host
from tests.core.counter_yard import BAD
from tests.core.counter_yard import NOW
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import SCENARIOS
from tests.core.scenarios import first_test
from tests.core.scenarios import swapped
from tests.core.test_comeback import Yard
from tests.core.test_drawn_layouts import drawn
from tests.core.test_drawn_layouts import opened
from tests.core.view_types import FILE
from tests.core.view_types import Declared
from tests.core.view_types import answer_faults
from tests.hosts import Core

OUTER, INNER = "rear-right-outer", "rear-right-inner"
BASE = "https://files.example.org/garage/"


class WatchedCore(Core):
    """A core whose every answer is held to what is declared of it."""

    def __init__(self, types: Declared):
        super().__init__()
        self.types = types

    def __call__(self, op: str, **arguments):
        value = super().__call__(op, **arguments)
        assert answer_faults(op, value, self.types) == []
        return value


def ask_for_all(core, job):
    """Ask for every view of a job that has been driven somewhere."""
    view = core("job", job=job)
    for op in ("evidence", "assumptions", "report"):
        core(op, job=job)
    for unit in view["units"]:
        core("unit", unit=unit["id"])
    for entry in {each["kind"]: each for each in view["history"] if each["may_right"]}.values():
        entered_anew(core, job, entry)
    for op in ("jobs", "job_list", "vehicles", "units", "layouts", "people", "waiting", "make_findable"):
        core(op)
    core("job_list", text="1M8 PS-1 mara estate")
    core("job_list", text="estate")
    for unit in view["units"]:
        core("near_labels", text=unit["shown"][:2], job=job)


def drawing(core):
    """Draw a layout for a model of vehicle, so that the next job is offered it."""
    opened(
        core, core("drawn_positions", sort="parking-sensor", positions=drawn(pins="1 supply", part="PS-9"))
    )
    core("layouts")
    core("sorts")


def contradicting(core):
    """Let one phone fit a sensor that another put into stock, and read its label at the card."""
    job = first_test(Driver(core), OUTER)
    job.start_exchange(OUTER, INNER)
    job.guided()
    other = Driver(core, device="dfedcba9876543210")
    other.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    core("scan", job=job.job, text=job.labels[home(OUTER)], how="scanned")
    for phone, part in ((job, "PS-2"), (other, "PS-3")):
        phone.force("part_noted", unit=home(OUTER), part=part, serial="", over=[])
    ask_for_all(core, job.job)


def entered_anew(core, job, entry):
    """Ask what entering an entry anew would change, with what it says and with a note more."""
    place = {"job": job, "device": entry["device"], "seq": entry["seq"]}
    asked = core("entry", **place)
    for changes in ({}, {"note": "anew"}):
        data = {
            **place,
            "entry": {"kind": asked["kind"], "data": {**asked["data"], **changes}},
            "reason": "x",
        }
        core("righted", event={"kind": "put_right", "job": job, "data": data})


def spare_beside(core):
    """Put a spare into stock outside any job, and ask for what was recorded of it."""
    job = Driver(core).begin()
    spare = {"unit": "s1", "part": "PS-1", "serial": "", "code": "", "how": "tapped", "place": "stock"}
    core("add", events=[{"event": job.envelope("unit_added", spare, job=None)}])
    core("beside", unit="s1")
    late = {**job.events[0], "at": 9_000_000_000_000_000}
    assert core("outside", envelopes=[job.events[0], late])["seq"] == late["seq"]
    core("beside", unit=home(OUTER))


def at_the_counter(core):
    """Hold a return, find it, decide it otherwise, look at the day."""
    clerk = Clerk(core)
    label = proven(core).labels[BAD]
    held = clerk.ask(label)
    clerk.decide(held, "hold", "to be looked at")
    core("waiting")
    clerk.decide(clerk.ask(unit=BAD), "refuse", "it is bent")
    core("find", text="estate")
    core("record_weighed", unit=BAD, now=NOW, window_days=30, agrees=True)
    core("decided", start=0, end=2 * NOW)
    for text in ("no label of ours", f"{label}{label}", f"HTTPS://OTHER.EXAMPLE.ORG/U/{label}"):
        clerk.ask(text)
    for serial in ("S1", "SERIAL-NUMBER-1"):  # one like a code that is not whole, one like no label at all
        clerk.fact("return_received", **{**held["received"]["data"], "serial": serial})
        assert clerk.ask(serial, how="typed")["sensors"]
    ask_for_all(core, Driver(core).job)


def mixed_up(core):
    """Mix two sensors up while they are in hand, and stop a wrong one before that."""
    job = Driver(core).faulted()
    job.start_exchange()
    for _ in range(2):
        job.scan_wanted()
    wrong = (
        job.labels[home(OUTER)] if job.step()["expects"]["unit"] != home(OUTER) else job.labels[home(INNER)]
    )
    assert job.scan(wrong)["outcome"] == "stop"
    for text in ("no label of ours", f"HTTPS://OTHER.EXAMPLE.ORG/U/{job.codes[-1]}", "A2346"):
        core("scan", job=job.job, text=text, how="scanned", host="files.example.org")
        core("code", text=text, host="files.example.org")
    core("code", text=wrong)
    job.fact("units_mixed", units=[home(OUTER), home(INNER)], note="both lay there")
    ask_for_all(core, job.job)


def taken_back(core):
    """Withdraw an entry, weigh a trouble code, void a label, close with a fault and open again."""
    job = Driver(core).begin()
    code = {"position": OUTER, "code": "C1A01", "failure_type": "13"}
    job.test(OUTER, codes=[code], came_and_went=True)
    job.fact("corrected", device=job.device, seq=job.seq, reason="the wrong car")
    means = [{"code": code["code"], "means": "wire"}]
    job.test(OUTER, codes=[code], open_list=True, means=means, came_and_went=True)
    core("code_typed", job=job.job, code=code["code"])
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    job.fact("label_voided", unit=home(OUTER), code=job.labels[home(OUTER)], reason="torn")
    for _ in range(5):
        job.test(INNER, came_and_went=True)
    ask_for_all(core, job.job)


def printed_here(core):
    """Print labels on this phone."""
    job = Driver(core).begin()
    codes = core("new_labels", random=[(n * 97 + 41) % 256 for n in range(900)], count=3)
    roll = {"roll": "50x30"}
    batch = {"batch": "b0000000000aa", "codes": codes, "host": "files.example.org", "layout": roll}
    core("add", events=[{"event": job.envelope("labels_printed", batch, job=None)}])
    spoiled = {"batch": batch["batch"], "codes": codes[:1], "reason": "torn"}
    core("add", events=[{"event": job.envelope("labels_spoiled", spoiled, job=None)}])
    [line] = core("label_batches")
    core("label_batch", batch=line["id"])
    asked = {"distance": "20", "versions": {"M": 3, "Q": 4, "H": 5}, "base": BASE}
    assert core("label_plan", options=roll, **asked)["fault"] == ""
    assert core("label_plan", options={"roll": "30"}, **asked)["fault"]
    assert core("label_plan", options={"roll": "8x40"}, **asked)["may_force"]
    core("label_pages", options=roll, codes=codes, **asked)


def makers_symbols(core):
    """Read symbols of makers that hold numbers, several, and none."""
    numbers = "[)>\x1e06\x1dP4L0014\x1dSA10197\x1e\x04"
    for texts in ([numbers], ["12345678"], ["https://example.org/"], [numbers[:-2]]):
        core("maker_symbol", texts=texts)


def along_the_wiring(core):
    """Check the wiring of a position until a segment is named, to the end of its checks, and in vain."""
    for answers in ({"pins": 1}, {"wiggle": 1}, {}):
        core("reset", events=[])
        job = swapped(Driver(core), OUTER)
        wire = {"size": "0.5", "centimetres": 450, "celsius": 20, "colour": "blue", "pins": "1 signal"}
        wire["supply_colour"] = "red"
        job.fact("wire_noted", position=OUTER, **wire)
        while job.step()["id"] == "wiring.measure":
            job.choose(answers.get(job.step()["expects"]["check"], 2))
        core("job", job=job.job)


def to_the_end(core):
    """Close a job step by step in which a spare from stock showed what was wrong."""
    job = Driver(core)
    spare = {"unit": "u0000000spare", "part": "PS-1", "serial": "", "code": job.codes[-1], "how": "scanned"}
    job.labels[spare["unit"]] = spare["code"]
    core("add", events=[{"event": job.envelope("unit_added", {**spare, "place": "stock"}, job=None)}])
    job.begin()
    job.test(OUTER)
    job.photograph()
    job.exchange(rear_right_outer=spare["unit"])
    while job.step()["form"] == "test":
        job.test()
    row = {"left": "150", "tape": "60", "shown": "62"}
    core("standing", job=job.job, typed={"width": "180", "celsius": "5", "at": {OUTER: row}})
    ask_for_all(core, job.job)
    job.tap("second")  # the spare stays, whether the one that came out is bad or not
    job.finish()
    ask_for_all(core, job.job)


def two_in_hand(core):
    """Come to the end with two sensors in hand, of which each has to be told from the other."""
    job = Driver(core).faulted()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    for unit, position in (("u00000000new1", INNER), ("u00000000new2", OUTER)):
        job.new_unit(position, unit=unit)
        job.guided()
    while job.step()["id"] != "where_to":
        job.test() if job.step()["form"] == "test" else job.tap()


def on_shared_phones(core):
    """Have another phone record what its role does not, in a name that nobody gave it."""
    job = Driver(core).begin()
    other = Driver(core, device="d00000000000000cc", actor="Bo")
    said = {"device": other.device, "from": 1, "role": "counter", "name": "Jo", "people": []}
    core("phones", phones=[said])
    other.force("cleaned", position=OUTER, note="")
    ask_for_all(core, job.job)


def come_back(core):
    """Have a sensor replaced, and the vehicle back with a new job."""
    yard = Yard(core)
    yard.come(1)
    yard.replaced()
    yard.come(2, days=90)
    yard.test(OUTER)
    core("vehicle", vehicle="v1", now=NOW, warranty_days=365)
    ask_for_all(core, yard.job)


def test_each_view_is_as_declared_and_all_that_is_declared_is_handed_out():
    """A field that no job brings is one that the core has dropped, or that this test forgot."""
    types = Declared(FILE.read_text("utf-8"))
    for scenario in SCENARIOS.values():
        core = WatchedCore(types)
        job = Driver(core)
        scenario(job)
        ask_for_all(core, job.job)
    for go_through in (
        spare_beside,
        at_the_counter,
        mixed_up,
        taken_back,
        printed_here,
        makers_symbols,
        contradicting,
        drawing,
        to_the_end,
        along_the_wiring,
        two_in_hand,
        come_back,
        on_shared_phones,
    ):
        go_through(WatchedCore(types))

    assert sorted(types.declared_fields() - types.seen) == []


def test_each_operation_that_is_declared_is_one_of_the_core():
    answers = Declared(FILE.read_text("utf-8")).types["Answers"].fields
    assert [op for op in answers if not inspect.isfunction(getattr(Host, f"op_{op}", None))] == []
