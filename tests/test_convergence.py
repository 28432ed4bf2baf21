"""Three phones and the real server: whatever the network and the power do, all end in one state.

Hypothesis chooses what happens: facts that contradict each other, requests that are held back,
delivered twice or out of order, replies that are lost, crashes of a phone or of the server between
any two steps. Then the network heals, and every phone, the server and a fold of all facts in the
server's order must be the same, with no fact missing. SWAPTRAIL_LONG=1 tries many more.
"""

import json
import tempfile
from contextlib import closing
from pathlib import Path

from hypothesis import HealthCheck
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine
from hypothesis.stateful import initialize
from hypothesis.stateful import invariant
from hypothesis.stateful import precondition
from hypothesis.stateful import rule

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.host import Host
from server.core.log import canon
from server.keeping.verify.data_folder import FOLDER
from server.log import events
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.long_runs import times
from tests.model_phone import ModelPhone
from tests.said import english
from tests.server.conftest import SMALL_APP
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import job_opened

PHONES = 3
MOST_ROUNDS = 200  # each sends three facts or fetches what is left
JOBS = ["j000000000001", "j000000000002"]
PLACES = ["rear-left", "rear-right"]
UNITS = [f"v00000000000a.{place}" for place in PLACES] + ["u000000000001"]
NUMBER = st.integers(0, PHONES - 1)
UNIT, PLACE, JOB = st.sampled_from(UNITS), st.sampled_from(PLACES), st.sampled_from(JOBS)
HOW, NONE = st.just("scanned"), st.just("")


def fact(kind, **fields):
    return st.tuples(st.just(kind), st.fixed_dictionaries(fields))


FACTS = st.one_of(
    fact("unit_pulled", unit=UNIT, position=PLACE, how=HOW),
    fact("unit_fitted", unit=UNIT, position=PLACE, how=HOW, override=NONE),
    fact("unit_seen", unit=UNIT, place=st.sampled_from(["fitted", "out", "stock"]), position=PLACE, how=HOW),
    fact("unit_moved", unit=UNIT, place=st.sampled_from(["stock", "counter"]), how=HOW, note=NONE),
    fact("unit_added", unit=UNIT, part=NONE, serial=NONE, code=NONE, how=HOW, place=st.just("out")),
    fact("unit_labelled", unit=UNIT, code=st.sampled_from(["JRMMA", "6JF4D"]), how=HOW),
    fact("cleaned", position=PLACE, note=NONE),
    fact("test_run", heard=st.booleans(), faulted=st.lists(PLACE, unique=True), silent=st.just([]),
         unplugged=st.just([]), codes=st.just([]), came_and_went=st.just(False), note=NONE),
    fact("job_opened"),
    fact("job_closed", note=NONE),
    fact("of_a_later_version", what=NONE),
)  # fmt: skip


class Convergence(RuleBasedStateMachine):
    """What may happen, in any order."""

    @initialize()
    def begin(self):
        self.scratch = tempfile.TemporaryDirectory()
        root = Path(self.scratch.name)
        for name, text in SMALL_APP.items():
            (root / "static" / name).parent.mkdir(parents=True, exist_ok=True)
            (root / "static" / name).write_text(text)
        self.config = Config(root / "data", BASE, root / "static")
        self.folder = DataFolder(root / "data")
        self.app = create_app(self.config)
        self.phones = []
        with closing(self.folder.open()) as db:
            for number in range(PHONES):
                paired = Phone(self.app, f"d{number + 1:016x}")
                assert paired.pair_by(make_link(db, BASE, now_ms())).status_code == 200
                self.phones.append(ModelPhone(number + 1, paired.client))
        self.network = []
        self.recorded = {}
        self.record(0, ("job_opened", {}), JOBS[0])

    # --- what people do

    @rule(number=NUMBER, fact=FACTS, job=JOB)
    def record(self, number, fact, job):
        kind, data = fact
        phone = self.phones[number]
        phone.record(kind, job_opened() if kind == "job_opened" else data, job)
        self.note(phone)

    @rule(number=NUMBER, whose=NUMBER, seq=st.integers(1, 8))
    def take_back(self, number, whose, seq):
        data = {"device": self.phones[whose].device, "seq": seq, "reason": "slip"}
        self.phones[number].record("corrected", data, JOBS[0])
        self.note(self.phones[number])

    @rule(number=NUMBER, whose=NUMBER, seq=st.integers(1, 8), fact=FACTS)
    def put_right(self, number, whose, seq, fact):
        kind, data = fact
        entry = {"kind": kind, "data": data}
        data = {"device": self.phones[whose].device, "seq": seq, "entry": entry, "reason": "slip"}
        self.phones[number].record("put_right", data, JOBS[0])
        self.note(self.phones[number])

    @rule(number=NUMBER)
    def look(self, number):
        self.phones[number].look()

    # --- what the network does

    @rule(number=NUMBER)
    def ask(self, number):
        if self.phones[number].asked is None:
            self.network.append((number, self.phones[number].ask()))

    @precondition(lambda self: self.network)
    @rule(data=st.data())
    def deliver(self, data):
        """Any request that was ever made arrives, perhaps once more; who still waits gets the reply."""
        number, text = data.draw(st.sampled_from(self.network))
        reply = self.phones[number].send(text)
        assert reply is not None
        if self.phones[number].asked is text:
            self.phones[number].reply = reply

    @rule(number=NUMBER)
    def take(self, number):
        if self.phones[number].reply is not None:
            self.phones[number].take()

    @rule(number=NUMBER)
    def lose_reply(self, number):
        self.phones[number].asked = self.phones[number].reply = None

    # --- what the power does

    @rule(number=NUMBER)
    def crash_of_a_phone(self, number):
        self.phones[number].crash()

    @rule()
    def restart_of_the_server(self):
        self.app = create_app(self.config)
        for phone in self.phones:
            cookies = phone.client._cookies
            phone.client = self.app.test_client()
            phone.client._cookies = cookies

    @precondition(lambda self: self.network)
    @rule(data=st.data(), after=st.booleans())
    def crash_of_the_server(self, data, after):
        """The server dies while it takes a request in: before its commit, or right after it."""
        number, text = data.draw(st.sampled_from(self.network))
        before = self.count()
        if after:
            self.phones[number].send(text)
        else:
            whole = events.take_in
            events.take_in = lambda *arguments: whole(*arguments) and 1 / 0
            try:
                assert self.phones[number].send(text) is None
            finally:
                events.take_in = whole
            assert self.count() == before
        self.restart_of_the_server()

    # --- what must hold

    def note(self, phone):
        """Notes what a phone has just recorded."""
        (device, seq), record = list(phone.kept["records"].items())[-1]
        self.recorded[device, seq] = record["entry"]["hash"]

    def count(self):
        with closing(self.folder.open()) as db:
            return events.last_n(db)

    def log(self):
        with closing(self.folder.open()) as db:
            return events.after(db, 0, 10_000, 10**9)

    @invariant()
    def what_was_confirmed_is_there(self):
        if not hasattr(self, "phones"):
            return
        kept = {each["n"]: each["hash"] for each in self.log()}
        for phone in self.phones:
            confirmed = phone.confirmed()
            assert {n: kept.get(n) for n in confirmed} == confirmed

    def teardown(self):
        if hasattr(self, "phones"):
            try:
                self.heal()
                self.assert_one_state()
                assert [phone.started_over for phone in self.phones] == [0] * PHONES, "a false alarm"
            finally:
                self.scratch.cleanup()

    def heal(self):
        """Lets every phone send and fetch until nobody has anything left."""
        for _ in range(2):
            for phone in self.phones:
                phone.crash()
                phone.sync_all(MOST_ROUNDS)

    def assert_one_state(self):
        log = self.log()
        assert {
            (each["event"]["device"], each["event"]["seq"]): each["hash"] for each in log
        } == self.recorded
        assert len(log) == len(self.recorded)
        assert FOLDER.first_fault(self.folder.root) is None
        union = Host()
        call(union, op="reset", events=[{"event": each["event"]} for each in log])
        wanted = call(union, op="state")
        for phone in self.phones:
            assert canon.dumps(phone.look()) == canon.dumps(wanted)
        client = self.phones[0].client
        assert client.get("/api/jobs", base_url=BASE).get_json() == english(call(union, op="jobs"))
        for job in wanted["jobs"]:
            answer = client.get(f"/api/jobs/{job}", base_url=BASE)
            assert answer.get_json() == english(call(union, op="job", job=job))


def call(host, **question):
    answer = json.loads(host.call(canon.dumps(question)))
    assert answer["ok"], answer
    return answer["value"]


TestConvergence = Convergence.TestCase
TestConvergence.settings = settings(
    max_examples=times(12, 400),
    stateful_step_count=times(40, 80),
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
