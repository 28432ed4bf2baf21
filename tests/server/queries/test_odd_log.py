"""Odd entries of every kind, sent to a server: it takes what is in bounds, and tells it as the core does."""

import json
from urllib.parse import quote

import pytest

from server.core.errors import BadInput
from server.core.facts.kinds import KINDS
from server.core.facts.roles import COUNTER
from server.core.host import Host
from server.core.log import envelope
from server.keeping.verify.data_folder import FOLDER
from tests.long_runs import times
from tests.odd_entries import declared_entries
from tests.odd_entries import is_taken
from tests.odd_entries import odd_entries
from tests.said import english

JOBS, FACTS = 3, 60
MONTHS = "from=0&to=34000000000"  # more than a year is refused at once; the clock says when entries came
ASKED_AT_THE_BENCH = ("/api/lessons", "/api/lessons.json", "/api/lessons.csv", "/api/lessons/offer")
ASKED_AT_THE_COUNTER = (
    f"/api/returns?{MONTHS}",
    f"/api/returns.csv?{MONTHS}",
    "/api/returns/waiting",
    "/api/search?text=car",
    "/api/search?text=JRM-MA",
)


@pytest.mark.parametrize("seed", range(times(2, 60)))
@pytest.mark.parametrize("make", [odd_entries, declared_entries])
def test_it_takes_what_its_bounds_say_and_tells_it_as_the_core_does(
    app, phone, counter, db, folder, make, seed
):
    taken = [event for draft in make(seed, JOBS, FACTS) if (event := sent(phone, counter, draft))]
    assert len(taken) > FACTS // 3
    host = Host()

    def told(op, **arguments):
        answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert answer["ok"], answer
        return english(answer["value"])

    def asked(who, path):
        answer = who.get(path)
        assert answer.status_code == 200, (path, answer.get_data(as_text=True))
        return answer

    told("reset", events=[{"event": event} for event in taken])
    state = host.fold.state
    assert asked(phone, "/api/jobs").get_json() == told("jobs")
    for job in sorted(state.jobs):
        assert asked(phone, f"/api/jobs/{quote(job, safe='')}").get_json() == told("job", job=job)
    with app.app_context():
        for unit in sorted(state.units):
            answer = app.extensions["projection"].unit(db, unit=unit)
            assert english(json.loads(answer)) == told("unit", unit=unit)
    for name in [*sorted(state.jobs), *sorted(state.units)]:
        record = asked(phone, f"/api/records/{quote(name, safe='')}").data
        checked = phone.write("POST", "/api/records/check", data=record, content_type="application/zip")
        assert checked.get_json()["outcome"] == "intact", (name, checked.get_json())
    for who, paths in ((phone, ASKED_AT_THE_BENCH), (counter, ASKED_AT_THE_COUNTER)):
        for path in paths:
            asked(who, path)
    assert FOLDER.first_fault(folder.root) is None


def sent(phone, counter, draft):
    """Send a draft from a phone of the role that records it; return the event where the server took it."""
    kind = KINDS.get(draft["kind"])
    sender = counter if kind and kind.role == COUNTER else phone
    prev = sender.entries[-1]["hash"] if sender.entries else ""
    seq = len(sender.entries) + 1
    event = {"device": sender.device, "seq": seq, "prev": prev, "v": 1, "actor": sender.actor, **draft}
    try:
        entry = {"event": event, "hash": envelope.hash_of(event)}
    except BadInput:  # not even a hash of it can be had
        entry = {"event": event, "hash": "0" * 64}
    refused = sender.synced([entry])["refused"]
    if refused:
        # A correction may name what the other role recorded.
        assert refused[0]["code"] == "not_allowed" or not is_taken(draft), (draft, refused)
        return None
    assert is_taken(draft), draft
    sender.entries.append(entry)
    return event


def test_the_record_of_a_sensor_whose_code_was_never_issued_is_intact(phone):
    """It was called altered as soon as it was made."""
    unit = {
        "unit": "u00000000000a",
        "part": "",
        "serial": "",
        "code": "JRMMB",
        "how": "typed",
        "place": "stock",
    }
    phone.record("unit_added", unit, None)
    assert phone.synced()["refused"] == []

    record = phone.get("/api/records/u00000000000a").data
    checked = phone.write("POST", "/api/records/check", data=record, content_type="application/zip")
    assert checked.get_json()["outcome"] == "intact"
