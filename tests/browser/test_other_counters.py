"""A clerk of a chain: what came back elsewhere, who gets a part, and a register that is not reached."""

import json

import pytest

from server.clock import now_ms
from server.register import address
from server.register import entries
from server.register import keeper
from server.register.chain import EXTENSION
from server.register.chain import Chain
from server.register.entries import Entry
from server.register.link import Link
from tests.browser.pace import paced
from tests.browser.returned import serial_of
from tests.core.counter_yard import DAY_MS
from tests.waiting import wait_for

NORTH = "north.example"
PATIENCE = 60  # seconds: a busy machine answers later than a clerk waits
# The page waits as long for the server as that does here; and nobody waits for its next question.
PACE = paced(
    ("static/screens/counter/others.js", "ANSWER_MS", 40),
    ("static/screens/counter/others.js", "AGAIN_MS", 0.05),
)
PARTS = 3


@pytest.fixture
def app_server(app_server, postgres):
    app_server.register = postgres.new_register()
    with keeper.joined(app_server.app, app_server.base, address.checked(app_server.register)):
        link = app_server.app.extensions[EXTENSION].link
        link.seconds = PATIENCE
        wait_for(lambda: link.is_reached)
        yield app_server


@pytest.fixture
def north(app_server):
    """Give the chain's other counter, without its screens."""
    chain = Chain(Link(address.checked(app_server.register), seconds=PATIENCE), f"https://{NORTH}", "n")
    chain.link.connect()
    yield chain
    chain.link.close()


def key(number):
    """Return by what the other counter knows a part: its serial number."""
    return [f"serial {serial_of(number).replace('-', '')}"]


def settles(chain, number):
    """Has the other counter accept a part and record it."""
    entered = {"keys": key(number), "part": "PS-1", "decision": "accept", "knowing": False}
    chain.enter(f"u{number}", {**entered, "at": now_ms() - 3 * DAY_MS}, 10.0)


def decided(server):
    """Return what the server has of decisions, in order."""
    return [json.loads(body)["data"] for (body,) in server.rows(
        "SELECT body FROM events WHERE kind = 'return_decided' ORDER BY n"
    )]  # fmt: skip


def test_a_clerk_hears_of_other_counters_and_goes_on_without_them(clerk_at, app_server, north, postgres):
    clerk, codes = clerk_at(PARTS)
    phone = clerk.phone
    phone.page.evaluate(PACE)

    settles(north, 0)
    clerk.holds(codes[0], serial_of(0))
    phone.tap("Scan returns")
    clerk.sees(codes[0], "refuse")
    phone.see("Accepted 3 days ago at north.example")
    clerk.looks()
    clerk.decides("Refuse")

    clerk.holds(codes[1], serial_of(1))
    clerk.sees(codes[1], "accept")
    phone.page.get_by_text("At no other counter").wait_for(state="attached")
    mine = Entry("n", "u1", NORTH, "PS-1", "accept", False, False, now_ms())
    assert north.link.done(lambda cursor: entries.claim(cursor, key(1), mine)) == []
    phone.tap("Accept ")
    clerk.sees(codes[1], "hold")
    phone.see("Another counter has it in hand")
    clerk.decides("Hold")

    postgres.kill()
    try:
        clerk.holds(codes[2], serial_of(2))
        clerk.sees(codes[2], "accept")
        phone.see("Other counters not asked")
        clerk.looks()
        clerk.decides("Accept")
        phone.tap("Close the camera")
        phone.see("Other counters are not reached")
        clerk.looks()
        phone.see("all sent")
    finally:
        postgres.start()
    assert [(each["decision"], each["reasons"]) for each in decided(app_server)] == [
        ("refuse", ["others"]),
        ("hold", ["others"]),
        ("accept", ["unasked"]),
    ]
    north.link.close()
    north.link.connect()
    settles(north, 2)
    heard = app_server.app.extensions[EXTENSION]
    wait_for(lambda: heard.contradictions)
    said = phone.page.get_by_text(f"{codes[2][:3]}-{codes[2][3:]} was accepted at {NORTH} too")
    said.wait_for()  # by itself: nobody touched the screen
    phone.page.reload()
    said.wait_for()
    clerk.looks()
