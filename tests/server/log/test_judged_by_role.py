"""What a server takes in by the role of the phone that sends it, judged as the phone itself judges."""

import pytest

from server.core.facts import kinds
from server.core.host import Host
from server.core.log import canon
from server.folded.state import FoldedState
from server.keeping.rebuild import rebuild
from tests.server.phone import JOB
from tests.server.phone import entry_of
from tests.server.phone import job_opened

BOTH = ("bench", "counter")

# Who may record which kind. The bench does jobs, the counter decides returns.
COUNTER_ALONE = {"record_received", "return_received", "return_decided"}
COUNTER_KINDS = COUNTER_ALONE | {"unit_moved", "unit_seen", "photo_taken"}


@pytest.mark.parametrize("role", BOTH)
@pytest.mark.parametrize("kind", [*sorted(set(kinds.KINDS) - {"corrected", "put_right"}), "not_known_here"])
def test_a_kind_is_taken_from_the_roles_of_the_table_alone(new_phone, role, kind):
    phone = new_phone(role=role)
    phone.record(kind, {"unit": "u000000000001"})

    refused = phone.synced()["refused"]

    allowed = kind in COUNTER_KINDS if role == "counter" else kind not in COUNTER_ALONE
    assert [each["code"] for each in refused] == ([] if allowed else ["not_allowed"])
    if not allowed:
        assert "this phone is at the" in refused[0]["reason"]


def test_what_was_refused_is_not_in_the_log_and_what_follows_waits(phone):
    phone.record("job_opened", job_opened())
    phone.record("return_decided", {"unit": "u000000000001"})
    phone.record("walk_checked")

    answer = phone.synced()

    assert answer["heads"][phone.device]["seq"] == 1
    assert [each["code"] for each in answer["refused"]] == ["not_allowed", "gap"]


def decided(counter):
    """The counter receives and refuses a unit; returns the number of the refusal."""
    counter.record(
        "return_received",
        {"unit": "u000000000001", "how": "scanned", "code": "JRMMA", "part": "", "serial": "",
         "compared": "", "note": ""}, None,
    )  # fmt: skip
    counter.record(
        "return_decided",
        {"unit": "u000000000001", "decision": "refuse", "proposed": "refuse", "reasons": [],
         "overrule": "", "signed": "Jo"}, None,
    )  # fmt: skip
    assert counter.synced()["refused"] == []
    return 2


def correction(phone, device, seq, entry=None):
    data = {"device": device, "seq": seq, "reason": "slip"}
    if entry:
        data["entry"] = entry
    phone.record("put_right" if entry else "corrected", data, None)
    return [each["code"] for each in phone.synced()["refused"]]


# What the counter may say of a decision, and the bench of a position.
DECISION = {
    "unit": "u000000000001",
    "decision": "accept",
    "proposed": "accept",
    "reasons": [],
    "overrule": "",
    "signed": "Jo",
}
ENTRIES = [
    None,
    {"kind": "return_decided", "data": DECISION},
    {"kind": "cleaned", "data": {"position": "a", "note": ""}},
]


@pytest.mark.parametrize("entry", ENTRIES, ids=["taken back", "a decision", "work"])
def test_a_correction_counts_as_what_it_names(phone, counter, entry):
    phone.record("job_opened", job_opened())
    phone.synced()
    seq = decided(counter)

    assert correction(phone, counter.device, seq, entry) == ["not_allowed"]
    assert correction(counter, phone.device, 1, entry) == ["not_allowed"]
    counter.entries.pop()
    of_its_own = entry is None or entry["kind"] == "return_decided"
    assert correction(counter, counter.device, seq, entry) == ([] if of_its_own else ["not_allowed"])


def test_the_bench_takes_nothing_back_that_the_counter_has_not_sent_yet(phone, counter):
    counter.synced()

    assert correction(phone, counter.device, 7) == ["not_allowed"]


def test_the_counter_takes_nothing_back_that_nobody_has_sent_yet(counter, new_phone):
    other = new_phone("d00000000000000dd", "Ada", "counter")
    other.synced()

    assert correction(counter, other.device, 7) == ["not_allowed"]
    counter.entries.pop()
    assert correction(counter, "d00000000000000ee", 1) == ["not_allowed"]


def test_a_correction_in_the_same_batch_is_judged_by_its_target(counter):
    seq = decided(counter)
    counter.record(*moved("customer"))
    assert correction(counter, counter.device, seq + 1) == []


UNIT = "u000000000001"
ADDED = {"unit": UNIT, "part": "", "serial": "", "code": "JRMMA", "how": "scanned", "place": "out"}


def moved(place, how="scanned"):
    return "unit_moved", {"unit": UNIT, "place": place, "how": how, "note": ""}, None


def handed_over(phone):
    """The bench adds a unit and gives it to the counter unscanned; returns the number of that entry."""
    phone.record("unit_added", ADDED, None)
    phone.record(*moved("counter", "tapped"))
    assert phone.synced()["refused"] == []
    return 2


def refusal(phone, kind, data, job=None):
    """Sends an entry; returns why it was not taken, and takes it off the chain, or None."""
    phone.record(kind, data, job)
    refused = phone.synced()["refused"]
    if not refused:
        return None
    phone.entries.pop()
    [only] = refused
    assert only["code"] == "not_allowed"
    return only["reason"]


# What an attacker's counter phone sent, and the server took: a handover gone that spoke against a return.
def test_the_counter_does_not_take_back_how_the_bench_handed_a_unit_over(phone, counter):
    seq = handed_over(phone)
    decided(counter)
    scanned = dict(zip(("kind", "data"), moved("counter"), strict=False))

    for kind, more in (("corrected", {}), ("put_right", {"entry": scanned})):
        data = {"device": phone.device, "seq": seq, "reason": "x", **more}
        assert "was recorded on another phone" in refusal(counter, kind, data)


@pytest.mark.parametrize(
    ("kind", "data", "taken"),
    [
        ("unit_moved", {"place": "out", "note": ""}, False),
        ("unit_seen", {"place": "out", "position": ""}, False),
        ("unit_seen", {"place": "fitted", "position": "rear-left"}, False),
        *[("unit_moved", {"place": place, "note": ""}, True) for place in ("customer", "stock", "scrapped")],
        ("unit_seen", {"place": "counter", "position": ""}, True),
    ],
)
def test_the_counter_says_of_no_unit_that_it_is_fitted_or_in_a_hand(phone, counter, kind, data, taken):
    phone.record("job_opened", job_opened())
    handed = {"unit": UNIT, "how": "scanned", **data}
    phone.synced()

    why = refusal(counter, kind, handed, JOB)

    assert why is None if taken else "and nowhere else" in why
    assert refusal(phone, kind, handed, JOB) is None


@pytest.mark.parametrize("kind", ["return_decided", "put_right"])
def test_nobody_decides_in_another_name(counter, kind):
    seq = decided(counter)
    data = {**DECISION, "signed": "Sam"}
    if kind == "put_right":
        entry = {"kind": "return_decided", "data": data}
        data = {"device": counter.device, "seq": seq, "entry": entry, "reason": "x"}

    assert refusal(counter, kind, data) == "A decision is signed by whoever records it: Jo, not Sam."


def test_a_clerk_corrects_the_decision_of_another_and_not_the_move(counter, new_phone):
    seq = decided(counter)
    counter.record(*moved("customer"))
    counter.synced()
    other = new_phone("d00000000000000dd", "Ada", "counter")

    assert correction(other, counter.device, seq) == []
    assert correction(other, counter.device, seq + 1) == ["not_allowed"]


def test_a_phone_with_a_new_device_id_corrects_what_it_recorded_under_the_earlier_one(counter):
    """So it is after a restored copy: what waits is chained again under a new id, corrections among it."""
    decided(counter)
    counter.record(*moved("customer"))
    counter.synced()
    earlier, counter.device, counter.entries = counter.device, "d00000000000000c2", []

    assert correction(counter, earlier, 3) == []


def test_a_correction_passed_on_in_the_name_of_the_bench_counts_for_nothing(phone, counter):
    seq = handed_over(phone)
    data = {"device": phone.device, "seq": seq, "reason": "x"}
    forged = {**phone.record("corrected", data, None), "relayed": True}

    assert [each["code"] for each in counter.synced([forged])["refused"]] == ["unproven"]


@pytest.mark.parametrize("data", [{}, {"device": 1, "seq": "x"}, {"device": "", "seq": -1, "reason": []}])
@pytest.mark.parametrize("kind", ["corrected", "put_right"])
def test_a_correction_without_form_is_the_benchs_to_send(phone, counter, kind, data):
    assert refusal(phone, kind, data) is None
    assert "is recorded at the bench" in refusal(counter, kind, data)


@pytest.mark.parametrize("kind", ["corrected", "put_right"])
def test_a_correction_in_a_format_of_later_corrects_nothing_on_any_way(db, phone, kind):
    """Fold of the phone, state and rows of the server, and what is made afresh of them agree."""
    seq = handed_over(phone)
    entry = dict(zip(("kind", "data"), moved("stock"), strict=False))
    data = {
        "device": phone.device,
        "seq": seq,
        "reason": "x",
        **({"entry": entry} if kind == "put_right" else {}),
    }
    last = phone.record(kind, data, None)
    event = {**last["event"], "v": 2}
    phone.entries[-1] = entry_of(event)
    before = phone.get("/api/units/JRMMA").get_json()

    assert phone.synced()["refused"] == []

    assert phone.get("/api/units/JRMMA").get_json() == before
    host = Host()
    host.call(canon.dumps({"op": "reset", "events": [{"event": each["event"]} for each in phone.entries]}))
    assert host.fold.state.units[UNIT]["place"] == "counter"
    assert folded_place(db) == "counter"
    assert rebuild(db) == []
    assert folded_place(db) == "counter"
    assert [
        db.conn.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in ("withdrawn", "righted")
    ] == [0, 0]


def folded_place(db):
    return FoldedState(db).units[UNIT]["place"]
