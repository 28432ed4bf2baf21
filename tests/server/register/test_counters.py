"""Two counters of one chain, each with a server of its own, and the register between them."""

import itertools
import subprocess
import sys
import threading
from contextlib import suppress
from pathlib import Path

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.codes.numbers import plain
from server.log import epoch
from server.phones.pairing import make_link
from server.queries.projection import projection
from server.register import address
from server.register import keeper
from server.register import outbox
from server.register.chain import EXTENSION
from server.register.chain import Chain
from server.register.chain import counter_id
from server.register.link import ASK_SECONDS
from server.register.link import Link
from server.register.trouble import NotReached
from tests.server.conftest import write_app
from tests.server.phone import Phone
from tests.waiting import wait_for

ROOT = Path(__file__).resolve().parents[3]

PATIENCE = 30  # seconds: a busy machine answers later than a clerk waits

_numbers = itertools.count(1)


class Counter:
    """A counter's server on a data folder of its own, with one phone."""

    def __init__(self, folder, static, url, name):
        base = f"https://{name}.example"
        self.app = create_app(Config(folder / name, base, static))
        self.db = self.app.extensions["data_folder"].open()
        self.chain = Chain(Link(address.checked(url), seconds=PATIENCE), base, counter_id(self.db))
        self.app.extensions[EXTENSION] = self.chain
        self.phone = Phone(self.app, f"d{len(name):016x}", base)
        paired = self.phone.pair_by(make_link(self.db, base, now_ms(), role="counter"), "Jo")
        assert paired.status_code == 200
        self.phone.ask_session()

    def take(self, number):
        """Has a sensor in hand: the one with this serial number."""
        self.unit, self.serial = f"u{number:012x}", f"S-{number}"

    def ask(self, what="ask", **more):
        answer = self.phone.post(
            f"/api/register/{what}", {"keys": [f"serial {plain(self.serial)}"], "part": "PS-1", **more}
        )
        assert answer.status_code == 200, answer.get_data(as_text=True)
        return answer.get_json()

    def claim(self):
        return self.ask("claim", unit=self.unit)

    def decide(self, decision="accept", reasons=(), code="", part="PS-1"):
        """Records a return and its decision, and sends both."""
        self.phone.record(
            "return_received",
            {"unit": self.unit, "how": "scanned", "code": code, "part": part, "serial": self.serial,
             "compared": "", "note": ""},
            job=None,
        )  # fmt: skip
        self.phone.record(
            "return_decided",
            {"unit": self.unit, "decision": decision, "proposed": decision, "reasons": list(reasons),
             "overrule": "", "signed": "Jo"},
            job=None,
        )  # fmt: skip
        assert self.phone.synced()["refused"] == []

    def in_step(self):
        with self.app.app_context():
            keeper.in_step(self.db, projection(), self.chain)

    def come_back(self):
        """Finds connections dead that were good, at most once, and then is in step."""
        with suppress(NotReached):
            self.in_step()
        self.in_step()

    def standing(self):
        return self.phone.get("/api/register").get_json()

    def close(self):
        self.chain.link.close()
        self.db.conn.close()


@pytest.fixture(scope="module")
def pair(tmp_path_factory, postgres):
    """Give two counters that share one register; making a server takes its time."""
    folder, register = tmp_path_factory.mktemp("chain"), postgres.new_register()
    both = [Counter(folder, write_app(folder / "static"), register, name) for name in ("north", "southern")]
    yield both
    for each in both:
        each.close()


@pytest.fixture
def counters(pair):
    """Give both, connected, with a sensor in hand that none had before."""
    number = next(_numbers)
    for each in pair:
        each.take(number)
        each.come_back()
    return pair


def test_a_part_that_one_counter_has_in_hand_or_accepted_is_told_to_the_other(counters):
    north, south = counters
    assert north.ask() == {"asked": True, "found": []}
    assert north.claim() == {"asked": True, "found": []}
    (begun,) = south.ask()["found"]
    assert (begun["place"], begun["decision"], begun["settled"]) == ("north.example", "accept", False)
    assert south.claim()["found"] == [begun]
    north.decide()
    north.in_step()
    (found,) = south.ask()["found"]
    assert found["settled"] is True


def test_a_begun_acceptance_that_is_not_recorded_is_given_back(counters):
    north, south = counters
    north.claim()
    north.phone.post("/api/register/release", {"unit": north.unit})
    assert south.claim()["found"] == []


def test_what_two_counters_decided_apart_is_flagged_at_both_and_until_one_takes_it_back(counters):
    north, south = counters
    for each in counters:
        each.decide(reasons=["unasked"], code="AAAAA@maker.example")
    assert south.standing()["waiting"] == 1
    for each in (north, south, north):
        each.in_step()
    assert south.standing()["waiting"] == 0
    for here, place in ((north, "southern.example"), (south, "north.example")):
        (told,) = here.standing()["contradictions"]
        assert told["unit"] == north.unit
        assert told["title"] == f"AAA-AA was accepted at {place} too"
    taken_back = {
        "device": south.phone.device,
        "seq": south.phone.entries[-1]["event"]["seq"],
        "reason": "mistake",
    }
    south.phone.record("corrected", taken_back, job=None)
    south.phone.synced()
    for each in (south, north):
        each.in_step()
        assert each.standing()["contradictions"] == []


def test_everything_is_entered_again_where_the_log_has_another_epoch(counters):
    north, south = counters
    north.decide()
    north.in_step()
    north.chain.link.done(lambda cursor: cursor.execute("DELETE FROM swaptrail_returns"))
    north.in_step()
    assert south.ask()["found"] == []
    with north.db.conn:
        epoch.begin(north.db.conn)
    north.in_step()
    assert len(south.ask()["found"]) == 1


@pytest.mark.parametrize(
    ("unit", "part", "serial", "is_found"),
    [
        ("v0123456789ab.own-" + "behind-the-left-headlamp" * 2, "PS-1", "S-{}", True),
        ("u{:012x}", "PS" * 1000, "S-{}", True),
        ("u{:012x}", "PS\x00", "S-{}", True),
        ("u{:012x}", "PS-1", "S-{}" + "9" * 1990, False),
        ("u{:012x}", "PS-1", "S-{}\x00", False),
    ],
    ids=["unit", "part", "nul in a part", "serial", "nul in a serial"],
)
def test_what_a_register_has_no_room_for_keeps_nothing_else_from_being_entered(
    counters, unit, part, serial, is_found
):
    north, southern = counters
    number = next(_numbers)
    north.unit, north.serial = unit.format(number), serial.format(number)
    north.decide(part=part)
    north.in_step()
    if is_found:
        southern.serial = north.serial
        found = southern.ask(part="\x00")["found"]
        assert [(each["place"], each["settled"]) for each in found] == [("north.example", True)]
    for each in counters:
        each.take(next(_numbers))
    north.decide()
    north.in_step()
    southern.serial = north.serial

    assert southern.ask()["found"] != []


def test_without_a_connection_a_counter_is_told_so_and_enters_later(counters, postgres):
    north, south = counters
    postgres.kill()
    try:
        assert north.ask() == {"asked": False, "found": []}
        assert north.claim() == {"asked": False, "found": []}
        north.decide(reasons=["unasked"])
        with pytest.raises(NotReached):
            north.in_step()
        assert north.standing() == {"asked": False, "waiting": 1, "contradictions": []}
    finally:
        postgres.start()
    for each in counters:
        each.come_back()
    assert [each["place"] for each in south.ask()["found"]] == ["north.example"]


def test_a_register_that_stands_still_keeps_nobody_waiting(counters, postgres, monkeypatch):
    north, _ = counters
    monkeypatch.setattr(north.chain.link, "seconds", ASK_SECONDS)
    postgres.freeze()
    try:
        done = threading.Event()
        asking = threading.Thread(target=lambda: (north.claim(), done.set()))
        asking.start()
        assert done.wait(30)
        asking.join()
        assert north.claim()["asked"] is False
    finally:
        postgres.thaw()


def test_beside_a_server_the_register_is_kept_in_step_and_found_again(tmp_path, small_static, url, postgres):
    counter = Counter(tmp_path, small_static, url, "north")
    counter.take(0)
    try:
        with keeper.joined(counter.app, "https://north.example", address.checked(url)):
            chain = counter.app.extensions[EXTENSION]
            counter.decide()
            wait_for(lambda: outbox.due(counter.db) is None and chain.link.is_reached)
            postgres.kill()
            try:
                assert counter.ask()["asked"] is False
            finally:
                postgres.start()
            wait_for(lambda: counter.ask()["asked"])
        assert chain.link.is_reached is False
    finally:
        counter.close()


@pytest.mark.parametrize(
    "keys",
    [None, [], ["x" * 401], [1], ["a\x00"], ["\ud800"], ["k"] * 33],
    ids=["none", "empty", "long", "number", "nul", "half", "many"],
)
def test_keys_that_are_none_are_refused(counters, keys):
    answer = counters[0].phone.post("/api/register/ask", {"keys": keys, "part": ""})
    assert (answer.status_code, answer.get_json()["error"]["field"]) == (400, "keys")


def test_a_session_says_whether_there_is_a_register(counters, phone):
    assert counters[0].phone.ask_session()["register"] is True
    assert phone.ask_session()["register"] is False


def test_the_commands_make_a_register_and_say_how_it_stands(said, empty_url):
    status, out = said("register", "check", empty_url)
    assert (status, "swaptrail register init" in out) == (1, True)
    status, out = said("register", "init", empty_url)
    assert (status, "0 returns of 0 counters" in out) == (0, True)
    assert said("register", "check", empty_url)[0] == 0


@pytest.mark.parametrize("url", ["mysql://x/y", "postgresql://h/d?nonsense=1"])
def test_what_is_no_address_of_a_register_is_refused(said, url):
    status, out = said("register", "check", url)
    assert (status, "postgresql://USER@HOST/DATABASE" in out) == (2, True)


def test_a_register_that_does_not_answer_is_named_without_its_password(said):
    status, out = said("register", "check", "postgresql://clerk:secret@/returns?host=/nowhere")
    assert status == 2
    assert "/nowhere/returns" in out
    assert "secret" not in out


_WITHOUT = """
import sys
sys.modules["psycopg"] = None
import server.app, server.serving.beyond, server.serving.lan.serve_lan, server.serving.serve
from server.commands.cli import main
sys.exit(main(["register", "check", "postgresql://x/y"]))
"""


def test_a_machine_without_the_driver_serves_all_the_same_and_says_what_a_register_needs():
    ended = subprocess.run(
        [sys.executable, "-c", _WITHOUT], capture_output=True, text=True, cwd=ROOT, check=False
    )
    assert (ended.returncode, "pip install 'swaptrail[register]'" in ended.stderr) == (2, True)
