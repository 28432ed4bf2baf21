"""The state in tables answers as a fold of the whole log does, whatever comes in, in whatever parts."""

import json
from contextlib import closing

import pytest
from hypothesis import HealthCheck
from hypothesis import example
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server import folded
from server.core.facts.fold import Fold
from server.core.host import Host
from server.core.log import canon
from server.core.words.words import DAY_MS
from server.folded import FoldedState
from server.folded import ahead
from server.folded import progress
from server.folded import rows
from server.folded import state as state_module
from server.log import events
from server.queries.projection import Projection
from server.storage import DataFolder
from server.storage import writing
from tests.core.random_logs import random_log
from tests.long_runs import times
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.phone import entry_of
from tests.server.phone import job_opened

DEVICES = ["d00000000000000aa", "d00000000000000bb"]
VEHICLES = ["v00000000000a", "v00000000000b"]
JOBS = {"j000000000001": 0, "j000000000002": 0, "j000000000003": 1}
PLACES = ["rear-left", "rear-right"]
UNITS = [f"{vehicle}.{place}" for vehicle in VEHICLES for place in PLACES] + ["u000000000001"]
SEARCHED = ["grey", "Grey est SN", "jr", "JRM-MA", "jo mara", "estates", "", "é", "- –"]
CODES = ["JRMMA", "6JF4D"]
HOW = st.sampled_from(["scanned", "typed"])
UNIT, PLACE, CODE = st.sampled_from(UNITS), st.sampled_from(PLACES), st.sampled_from(CODES)
DECISION = st.sampled_from(["accept", "hold", "refuse"])
TEXT, SERIAL, FLAG = st.just(""), st.sampled_from(["", "SN-1"]), st.booleans()
LATER = "later "  # a kind in the format of a later version
SEQ = st.integers(1, 14).map(str)
ENTRY = st.one_of(st.just("-"), st.builds("{}:{}".format, st.sampled_from(DEVICES), SEQ))
KNOWS = st.lists(st.builds("{}:{}".format, st.sampled_from(DEVICES), SEQ), max_size=2)


def fact(kind, **fields):
    return st.tuples(st.just(kind), st.fixed_dictionaries(fields))


FACTS = st.one_of(
    fact("job_opened"),
    fact("unit_pulled", unit=UNIT, position=PLACE, how=HOW),
    fact("unit_fitted", unit=UNIT, position=PLACE, how=HOW, override=TEXT),
    fact("unit_moved", unit=UNIT, place=st.sampled_from(["out", "stock", "counter"]), how=HOW, note=TEXT),
    fact("unit_seen", unit=UNIT, place=st.sampled_from(["fitted", "out", "stock"]), position=PLACE, how=HOW),
    fact("unit_seen", unit=UNIT, place=st.sampled_from(["fitted", "out", "stock"]), position=PLACE, how=HOW,
         settles=st.lists(ENTRY, max_size=2)),
    fact("unit_added", unit=UNIT, part=TEXT, serial=SERIAL, code=CODE, how=HOW, place=st.just("stock")),
    fact("unit_labelled", unit=UNIT, code=CODE, how=HOW),
    fact("units_mixed", units=st.lists(UNIT, unique=True, max_size=3), note=TEXT),
    fact("label_voided", unit=UNIT, code=CODE, reason=st.just("torn")),
    fact("corrected", device=st.sampled_from(DEVICES), seq=st.integers(1, 14), reason=st.just("slip")),
    fact("put_right", device=st.sampled_from(DEVICES), seq=st.integers(1, 14), reason=st.just("slip"),
         entry=st.one_of(
             st.fixed_dictionaries({"kind": st.just("unit_pulled"), "data": st.fixed_dictionaries(
                 {"unit": UNIT, "position": PLACE, "how": HOW})}),
             st.fixed_dictionaries({"kind": st.just("unit_labelled"), "data": st.fixed_dictionaries(
                 {"unit": UNIT, "code": CODE, "how": HOW})}),
             st.fixed_dictionaries({"kind": st.just("cleaned"), "data": st.fixed_dictionaries(
                 {"position": PLACE, "note": TEXT})}))),
    fact("move_started", move=st.just("exchange"), position=TEXT, reason=TEXT,
         fitted=st.dictionaries(PLACE, UNIT, max_size=2)),
    fact("test_run", heard=FLAG, faulted=st.lists(PLACE, unique=True), silent=st.just([]),
         unplugged=st.just([]), codes=st.just([]), came_and_went=FLAG, note=TEXT),
    fact("cleaned", position=st.sampled_from([*PLACES, "nowhere"]), note=TEXT),
    fact("job_closed", note=TEXT),
    fact("test_run", heard=st.just(True), faulted=st.lists(PLACE, unique=True), silent=st.just([]),
         unplugged=st.just([]), codes=st.just([]), came_and_went=FLAG, note=TEXT, knows=KNOWS),
    fact("job_closed", note=TEXT, knows=KNOWS),
    fact("tests_told_apart", tests=st.lists(ENTRY, max_size=2)),
    fact("work_went_on"),
    fact("units_mixed", units=st.lists(UNIT, unique=True, min_size=1, max_size=3), note=TEXT),
    fact("return_received", unit=UNIT, how=HOW, code=CODE, part=TEXT, serial=SERIAL, compared=TEXT,
         note=TEXT),
    fact("return_decided", unit=UNIT, decision=DECISION, proposed=DECISION, reasons=st.just([]),
         overrule=TEXT, signed=st.just("Jo")),
    fact("not_known_here", unit=UNIT),
    fact("later corrected", device=st.sampled_from(DEVICES), seq=st.integers(1, 14), reason=st.just("slip")),
    fact("later unit_moved", unit=UNIT, place=st.just("stock"), how=HOW, note=TEXT),
)  # fmt: skip

LOGS = st.lists(
    st.tuples(st.sampled_from(DEVICES), st.sampled_from([*JOBS, None]), FACTS, st.booleans()), max_size=30
)


@pytest.fixture(autouse=True)
def small_buckets(monkeypatch):
    """Lets a log of a few events have what a log of many has: many buckets, written in several parts."""
    monkeypatch.setattr(ahead, "BUCKET", 4)
    monkeypatch.setattr(progress, "_AT_ONCE", 12)


class Pair:
    """A database that takes events in, and a host that folds all of them each time."""

    def __init__(self, db):
        self.db = db
        self.log = []
        self.chains = {device: [] for device in DEVICES}
        self.projection = Projection("core")

    def take(self, drafts):
        entries = []
        for device, job, (kind, data), _ in drafts:
            if kind == "job_opened":
                data = job_opened()
                data["vehicle"]["id"] = VEHICLES[JOBS.get(job, 0)]
            chain = self.chains[device]
            entry = entry_after(chain, device, kind.removeprefix(LATER), data, job)
            if kind.startswith(LATER):
                entry = entry_of({**entry["event"], "v": 2})
            chain.append(entry)
            entries.append(entry)
        assert events.receive(self.db, entries, None, 1).refused == []
        self.log += entries

    def assert_equal(self):
        host = Host()
        host.call(canon.dumps({"op": "reset", "events": [{"event": each["event"]} for each in self.log]}))
        state = host.fold.state
        assert self.projection.jobs(self.db, 0) == ask(host, {"op": "jobs"})
        for job in state.jobs:
            assert self.projection.job(self.db, job) == ask(host, {"op": "job", "job": job})
        for unit in state.units:
            assert self.projection.unit(self.db, unit=unit) == ask(host, {"op": "unit", "unit": unit})
        for code in state.codes:
            assert self.projection.unit(self.db, code=code) == ask(host, {"op": "unit", "code": code})
        for span in ((NOW - DAY_MS, NOW + 1), (NOW + 1, NOW + 2)):
            asked = {"op": "decided", "start": span[0], "end": span[1]}
            assert self.projection.decided(self.db, *span) == ask(host, asked)
        for unit in state.units:
            assert self.proposed(unit) == ask(host, counter_question(unit))
        assert self.projection.waiting(self.db) == ask(host, {"op": "waiting"})
        for text in SEARCHED:
            assert self.projection.find(self.db, text) == ask(host, {"op": "find", "text": text}), text
        with closing(self.db.conn.execute("SELECT job FROM job_list")) as listed:
            assert {job for (job,) in listed} == set(state.jobs)

    def proposed(self, unit):
        """What the core proposes for a unit at the counter, from the folded state alone."""
        host = Host()
        host.fold.state = FoldedState(self.db)
        return ask(host, counter_question(unit))


def counter_question(unit):
    return {"op": "counter", "unit": unit, "now": NOW, "read": {"serial": "sn1"}}


def ask(host, question):
    reply = json.loads(host.call(canon.dumps(question)))
    assert reply["ok"], reply
    return canon.dumps(reply["value"])


@pytest.fixture(scope="module")
def scratch(tmp_path_factory):
    """One database for all examples: emptied, because making one takes longer than an example."""
    folder = DataFolder(tmp_path_factory.mktemp("folded"))
    folder.prepare()
    with closing(folder.open()) as db:
        db.conn.execute("PRAGMA synchronous = OFF")
        yield db


def empty(db):
    with writing(db):
        folded.forget(db)
        db.conn.execute("DROP TRIGGER IF EXISTS events_refuse_delete")
        for table in ("event_units", "event_photos", "events", "devices", "sqlite_sequence"):
            db.conn.execute(f"DELETE FROM {table}")


def opened(job, device=DEVICES[0]):
    return (device, job, ("job_opened", {}), False)


OPEN = [opened(job) for job in JOBS]


@settings(
    max_examples=times(25, 3000),
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
@given(LOGS)
@example([(DEVICES[1], None, ("corrected", {"device": DEVICES[0], "seq": 5, "reason": "x"}), True)])
@example([(DEVICES[1], None, ("later corrected", {"device": DEVICES[0], "seq": 2, "reason": "x"}), True)])
@example(  # one that is in doubt stands on the board of every job on the vehicle
    [
        (DEVICES[0], "j000000000001",
         ("unit_seen", {"unit": UNITS[3], "place": "fitted", "position": PLACES[0], "how": "scanned"}), True),
        (DEVICES[0], "j000000000001",
         ("unit_fitted", {"unit": UNITS[3], "position": PLACES[0], "how": "scanned", "override": ""}), True),
    ]
)  # fmt: skip
def test_every_answer_is_the_one_of_the_whole_log(scratch, drafts):
    empty(scratch)
    pair = Pair(scratch)
    pair.take(OPEN)
    batch = []
    for draft in drafts:
        batch.append(draft)
        if draft[3]:
            pair.take(batch)
            pair.assert_equal()
            batch = []
    pair.take(batch)
    pair.assert_equal()


def tables(db):
    """Returns all that is kept of the state: each entity as each bucket left it, its links, its words."""
    kept = db.conn.execute("SELECT kind, id, bucket, body FROM folded ORDER BY kind, id, bucket").fetchall()
    versions = {}
    for kind, name, bucket, body in kept:
        earlier = versions.setdefault((kind, name), [(0, rows.GONE)])
        if body != earlier[-1][1]:
            earlier.append((bucket, body))
    others = ("folded_links", "job_list", "search", "withdrawn", "righted")
    columns = {"job_list": "job, closed, opened_at", "search": "kind, id, text"}
    said = {each: set(db.conn.execute(f"SELECT {columns.get(each, '*')} FROM {each}")) for each in others}
    return {key: every for key, every in versions.items() if len(every) > 1}, said


@settings(
    max_examples=times(25, 3000),
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
@given(LOGS)
def test_what_is_kept_is_what_folding_the_whole_log_makes(scratch, drafts):
    """Also of earlier buckets: the next correction begins from there."""
    empty(scratch)
    pair = Pair(scratch)
    pair.take(OPEN)
    for draft in drafts:
        pair.take([draft])
    kept = tables(scratch)

    with writing(scratch):
        folded.forget(scratch)
    folded.catch_up(scratch)

    assert kept == tables(scratch)


@pytest.mark.parametrize("seed", range(times(12, 300)))
def test_mixups_and_all_else_are_kept_as_the_core_folds_them(scratch, seed):
    """The random logs of the core's own tests: two phones, a counter, bodies that turn out to be sensors."""
    empty(scratch)
    log = random_log(seed, 70)
    for n, event in enumerate(log, 1):
        row = [n, event["device"], event["seq"], event["kind"], event["job"], json.dumps(event)]
        with writing(scratch):
            scratch.conn.execute("INSERT OR IGNORE INTO devices VALUES (?, NULL, 1, 1, '', 0, 0)", row[1:2])
            scratch.conn.execute("INSERT INTO events VALUES (?, ?, ?, '', '', ?, ?, ?, 1)", row)
            assert folded.advance(scratch, len(log) * 2)
    kept, others = tables(scratch)
    whole = Fold()
    whole.reset(log)
    state = whole.state.as_dict()
    for job in state["jobs"].values():
        job["history"] = []

    newest = {key: json.loads(versions[-1][1]) for key, versions in kept.items()}
    for kind, name in (("vehicle", "vehicles"), ("unit", "units"), ("code", "codes"), ("job", "jobs")):
        there = {key[1]: entity for key, entity in newest.items() if key[0] == kind and entity is not None}
        assert there == state[name]
    lists = [each for key, entity in newest.items() if key[0] == "conflicts" for each in entity or []]
    assert [conflict for _, conflict in sorted(lists, key=lambda each: each[0])] == state["conflicts"]
    for name in ("printed", "mixed", "aliases"):
        assert newest.get(("whole", name), state[name]) == state[name]
    with writing(scratch):
        folded.forget(scratch)
    folded.catch_up(scratch)
    assert (kept, others) == tables(scratch)


def test_going_far_back_and_forth_again_ends_in_the_same_state(scratch):
    empty(scratch)
    pair = Pair(scratch)
    pair.take(OPEN)
    for number in range(60):
        unit, place = UNITS[number % 4], PLACES[number % 2]
        job = ["j000000000001", "j000000000003"][number // 2 % 2]
        pulled = {"unit": unit, "position": place, "how": "typed"}
        seen = {"unit": unit, "place": "fitted", "position": place, "how": "scanned"}
        pair.take([(DEVICES[0], job, ("unit_pulled", pulled), True)])
        pair.take([(DEVICES[1], job, ("unit_seen", seen), True)])
        if number % 7 == 0:
            seq = max(1, 60 - number)
            pair.take(
                [(DEVICES[1], None, ("corrected", {"device": DEVICES[0], "seq": seq, "reason": "x"}), 1)]
            )
        if number % 10 == 0:
            pair.assert_equal()
    pair.assert_equal()


def test_a_question_reads_only_what_belongs_to_it(scratch):
    """Of many jobs on many vehicles, the answer about one reads the rows of that one."""
    empty(scratch)
    pair = Pair(scratch)
    chain = pair.chains[DEVICES[0]]
    for number in range(50):
        data = job_opened()
        data["vehicle"]["id"] = f"v{number:012x}"
        chain.append(entry_after(chain, DEVICES[0], "job_opened", data, f"j{number:012x}"))
    events.receive(scratch, chain, None, 1)
    read = []
    whole = rows.Rows.read
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(state_module.Rows, "read", lambda self, *key: read.append(key) or whole(self, *key))
        pair.projection.job(scratch, "j000000000007")

    assert {name for kind, name in read if kind in {"job", "vehicle"}} == {"j000000000007", "v000000000007"}


def test_another_fold_makes_the_state_anew(scratch, monkeypatch):
    empty(scratch)
    pair = Pair(scratch)
    pair.take(OPEN)
    monkeypatch.setattr(progress, "fold_version", lambda: "another")
    assert not folded.in_step(scratch)

    pair.assert_equal()

    assert folded.in_step(scratch)
