"""A device id that is in nobody's use, for its entries came from a file, is no way into another task."""

import pytest

from server.clock import now_ms
from server.log import events
from server.log.proof import Proofs
from server.phones.pairing import make_link
from server.storage import writing
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.signed_phone import relayed

ALONE, UNIT = "d00000000000000dd", "v00000000000a.rear-left"
HANDED_OVER = {"unit": UNIT, "place": "counter", "how": "typed", "note": ""}
RECEIVED = {"unit": UNIT, "how": "scanned", "code": "", "part": "", "serial": "", "compared": "", "note": ""}


def from_a_file(db, *facts):
    """Take in what a phone without a server recorded, as `take-in` does; return its chain."""
    chain = []
    for kind, data in facts:
        chain.append(entry_after(chain, ALONE, kind, data))
    with writing(db):
        receipt = events.take_in(db, relayed(chain), None, now_ms(), proofs=Proofs())
    assert receipt.refused == []
    return chain


@pytest.fixture
def bench_work(db):
    return from_a_file(db, ("job_opened", job_opened()), ("unit_moved", HANDED_OVER))


def codes(phone, entries):
    return [each["code"] for each in phone.synced(entries)["refused"]]


# Found by trying: the handover was not scanned, which spoke against the return, and it was gone.
def test_the_counter_does_not_go_on_in_the_chain_of_the_bench_and_take_back_its_handover(counter, bench_work):
    slip = {"device": ALONE, "seq": 2, "reason": "slip"}

    assert codes(counter, [entry_after(bench_work, ALONE, "unit_moved", HANDED_OVER)]) == ["not_yours"]
    counter.record("corrected", slip)
    assert codes(counter, counter.entries) == ["not_allowed"]
    assert_refused(counter.sync([], device=ALONE), 403, "device")


def test_no_phone_is_paired_for_the_counter_under_an_id_of_the_bench(app, db, bench_work):
    link = make_link(db, BASE, now_ms(), role="counter")

    assert_refused(Phone(app, ALONE).pair_by(link, "Jo"), 403, "device")
    assert Phone(app, ALONE).pair_by(make_link(db, BASE, now_ms()), "Mara").status_code == 200


def test_the_bench_does_not_go_on_in_the_chain_of_the_counter(db, phone):
    chain = from_a_file(db, ("return_received", RECEIVED))

    assert codes(phone, [entry_after(chain, ALONE, "unit_moved", HANDED_OVER)]) == ["not_yours"]


@pytest.mark.parametrize("correction", [True, False])
def test_a_phone_goes_on_under_an_id_of_its_own_task(db, counter, correction):
    slip = ("corrected", {"device": ALONE, "seq": 1, "reason": "slip"})
    chain = from_a_file(db, ("return_received", RECEIVED), *([slip] if correction else []))

    assert codes(counter, [entry_after(chain, ALONE, "unit_moved", HANDED_OVER)]) == []
