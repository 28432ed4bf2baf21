"""A phone with a long log starts from a snapshot, and every answer is that of the whole log all the same."""

import functools
import json

import pytest

from server.core.host import Host
from tests.bench.workload import Workload
from tests.hosts import HANDED_BACK
from tests.said import english
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import records
from tests.static.phone_parts import start_parts

DEVICE = "d00000000000000aa"
ENTRIES = 160

# What goes to the worker of the core, by the name of the question.
LISTEN = """() => {
  window.asked = [];
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message.text) asked.push(JSON.parse(message.text).op);
    return post.call(this, message, ...rest);
  };
}"""

# As if a server had sent them. As one text: value by value a driver of browsers takes long over so many.
RECEIVE = """(text) => store.write(['events', 'meta'], async (tx) => {
  const entries = JSON.parse(text);
  const events = tx.objectStore('events');
  const from = (await tx.objectStore('meta').get('cursor')) ?? 0;
  await Promise.all(entries.map(({ event, hash }, at) => {
    const { device, seq, job } = event;
    const record = { device, seq, hash, event, n: from + at + 1, received_at: 1 };
    return events.put(job ? { ...record, job } : record);
  }));
  await tx.objectStore('meta').put(from + entries.length, 'cursor');
})"""

ASK_ALL = """async (text) => {
  const answers = [];
  for (const [op, args] of JSON.parse(text)) answers.push(await core.call(op, args));
  return JSON.stringify(answers);
}"""

CACHED = """async ([store, key, change]) => {
  const db = await new Promise((resolve, reject) => {
    const opened = indexedDB.open('swaptrail-folded');
    opened.onsuccess = () => resolve(opened.result);
    opened.onerror = reject;
  });
  const tx = db.transaction(store, 'readwrite');
  const done = new Promise((resolve, reject) => { tx.oncomplete = resolve; tx.onerror = reject; });
  tx.objectStore(store).get(key).onsuccess = ({ target: { result } }) => {
    if (change === 'away') tx.objectStore(store).delete(key);
    else if (change === 'core') tx.objectStore(store).put({ ...result, core: 'another' }, key);
    else if (change === 'head') {
      const texts = result.texts.map((text) => text.slice(0, -9));
      tx.objectStore(store).put({ ...result, texts }, key);
    }
    else tx.objectStore(store).put(result.replace('It beeps', 'It hums'), key);
  };
  await done;
  db.close();
}"""


# As if the app were closed when all closed jobs are kept, but not yet what else a snapshot has.
INTERRUPTED = """async () => {
  const call = core.call.bind(core);
  core.call = (op, ...rest) => (op === 'snapshot' ? Promise.reject(new Error('closed')) : call(op, ...rest));
  await log.snapshotMaker.make().catch(() => undefined);
  core.call = call;
}"""


class LongLog:
    """A phone that has received a log; `log` is what it holds, in order."""

    def __init__(self, context, base, entries=ENTRIES):
        """Takes in all entries but for the last ones."""
        self.entries = Workload(DEVICE).entries(entries)
        self.page = open_bare(context, base)
        self.page.add_init_script(f"({LISTEN})()")
        self.page.reload()
        self.device = start_parts(self.page)
        self.log: list[dict] = []
        self.receive(entries - 20)

    def receive(self, upto):
        new = self.entries[len(self.log) : upto]
        self.page.evaluate(RECEIVE, json.dumps(new))
        self.page.evaluate("log.catchUp()")
        self.log += new

    def make_snapshot(self):
        assert self.page.evaluate("log.snapshotMaker.make()") is True

    def start_again(self) -> list[str]:
        """Start the page anew; returns what the core was asked until the log stood."""
        self.page.reload()
        start_parts(self.page)
        return self.asked()

    def asked(self) -> list[str]:
        """Return what the core was asked since; a snapshot comes back in parts, which count as one."""
        asked = self.page.evaluate("asked.splice(0)")
        return [op for at, op in enumerate(asked) if op != "restore" or asked[at - 1 : at] != ["restore"]]

    def ask(self, op, **arguments):
        return self.page.evaluate("([op, args]) => core.call(op, args)", [op, arguments])

    def ask_all(self, questions):
        return json.loads(self.page.evaluate(ASK_ALL, json.dumps(questions)))

    def change(self, store, key, change):
        self.page.evaluate(CACHED, [store, key, change])

    def closed(self) -> str:
        return next(line["id"] for line in self.ask("jobs") if line["closed"])


def is_whole(phone, log):
    """Hold every answer against that of a fold of the whole log."""
    told = told_of(json.dumps([{"event": entry["event"]} for entry in log]))
    answers = phone.ask_all([(op, arguments) for op, arguments, _ in told])
    for (op, arguments, said), answer in zip(told, answers, strict=True):
        assert answer == said, (op, arguments)


@functools.lru_cache(maxsize=4)
def told_of(events):
    """Return (question, its arguments, the answer) for all that a log is asked, which most tests share."""
    host = Host()
    host.call(f'{{"op": "reset", "events": {events}}}')
    found = []
    for op, arguments in [
        ("jobs", {}),
        ("vehicles", {}),
        *[("job", {"job": job}) for job in sorted(host.fold.state.jobs)],
        *[("unit", {"unit": unit}) for unit in sorted(host.fold.state.units)[:8]],
        ("state", {}),
    ]:
        expected = json.loads(host.call(json.dumps({**arguments, "op": op})))["value"]
        found.append((op, arguments, expected if op in HANDED_BACK else english(expected)))
    return found


@pytest.fixture
def phone(make_context, shared_app):
    return LongLog(make_context(), shared_app.base)


def test_it_starts_from_the_snapshot_and_folds_what_came_later(phone):
    phone.make_snapshot()
    phone.receive(ENTRIES)

    asked = phone.start_again()

    assert [op for op in asked if op in {"reset", "append", "restore", "add"}] == ["restore", "add"]
    phone.ask("jobs")
    assert phone.asked() == ["jobs"], "the list needs no job that is closed"
    assert phone.ask("job", job=phone.closed())
    assert "load_jobs" in phone.asked()
    is_whole(phone, phone.log)


# A question that the core is at for a tenth of a second and more: the watch is over long before.
PLACES = [f"place-{n}" for n in range(12)]
FITTED = {place: f"unit-{place}" for place in PLACES}
LONG = {
    "positions": [{"id": place, "group": "rear"} for place in PLACES],
    "units": [{"id": unit} for unit in FITTED.values()],
    "tests": [{"fitted": FITTED, "faulted": PLACES[:3]}] * 4,
}


@pytest.mark.parametrize(
    "starts_again",
    [
        "core.renew()",
        f"core.call('reason', {json.dumps({'case': LONG})}, {{ seconds: 0.001 }}).catch(() => undefined)",
    ],
    ids=["renewed", "ended by the watch"],
)
def test_a_core_that_is_started_again_knows_what_came_after_the_snapshot(phone, starts_again):
    phone.make_snapshot()
    phone.receive(ENTRIES)

    # Asked at the same moment, it waits for all of the log, not for the snapshot alone.
    waited = phone.page.evaluate(
        f"async () => {{ const again = {starts_again}, jobs = core.call('jobs'); await again; return jobs; }}"
    )

    assert phone.page.evaluate("core.restarts") == 1
    assert waited == phone.ask("jobs")
    is_whole(phone, phone.log)


@pytest.mark.parametrize("meanwhile", ["nothing", "entries come in", "a job that was kept is worked on"])
def test_a_first_snapshot_that_was_interrupted_goes_on_where_it_was(make_context, shared_app, meanwhile):
    phone = LongLog(make_context(), shared_app.base, entries=900)
    closed = [line["id"] for line in phone.ask("jobs") if line["closed"]]
    assert len(closed) > 20, "fewer are kept with the rest of the snapshot"
    phone.page.evaluate(INTERRUPTED)
    if meanwhile == "entries come in":
        phone.receive(len(phone.entries))
    if meanwhile == "a job that was kept is worked on":
        late = [{"kind": "caution_acknowledged", "job": closed[0], "data": {"caution": "late"}}]
        phone.page.evaluate("(drafts) => log.record(drafts)", late)
        phone.page.evaluate(INTERRUPTED)

    asked = phone.start_again()

    assert "restore" not in asked
    assert "unload_jobs" in asked
    phone.make_snapshot()
    assert phone.asked().count("job_pieces") == 1, "what was kept is not made again"
    is_whole(phone, records(phone.page))
    phone.start_again()
    is_whole(phone, records(phone.page))


@pytest.mark.parametrize("right", [None, {"note": "", "why": "customer"}], ids=["taken back", "put right"])
def test_a_closing_from_before_such_a_start_can_be_corrected(phone, right):
    phone.make_snapshot()
    phone.start_again()
    closed = phone.closed()

    corrected = phone.page.evaluate(
        """async ([job, right]) => {
          const { history } = await core.call('job', { job });
          const { device, seq } = history.find(({ kind }) => kind === 'job_closed');
          const data = { device, seq, reason: 'a slip' };
          const entry = { kind: 'job_closed', data: right };
          if (right) return log.record([{ kind: 'put_right', job, data: { ...data, entry } }]);
          return log.record([{ kind: 'corrected', job, data }]);
        }""",
        [closed, right],
    )
    late = [{"kind": "caution_acknowledged", "job": closed, "data": {"caution": "late"}}]
    recorded = phone.page.evaluate("(drafts) => log.record(drafts)", late)

    assert "events" in corrected, corrected
    assert ("events" in recorded) == (right is None), recorded
    is_whole(phone, records(phone.page))


@pytest.mark.parametrize(
    ("store", "key", "change"),
    [
        pytest.param("head", "head", "core", id="of another core"),
        pytest.param("head", "head", "head", id="torn"),
        pytest.param("head", "head", "away", id="gone"),
    ],
)
def test_a_snapshot_that_does_not_fit_is_as_good_as_none(phone, store, key, change):
    phone.make_snapshot()
    phone.change(store, key, change)

    asked = phone.start_again()

    assert "restore" not in asked
    assert "reset" in asked
    is_whole(phone, phone.log)


@pytest.mark.parametrize("change", ["away", "other words"])
def test_a_closed_job_whose_piece_does_not_fit_comes_from_the_log(phone, change):
    phone.make_snapshot()
    closed = phone.closed()
    phone.start_again()
    phone.change("jobs", closed, change)

    assert phone.ask("job", job=closed)["complaint"] == "It beeps"

    assert "reset" in phone.asked()
    is_whole(phone, phone.log)


def test_a_log_that_moved_behind_the_snapshot_is_folded_whole(phone):
    phone.make_snapshot()
    # as after a server that was put back to an older state
    phone.page.evaluate(
        """async () => {
          const { forgetNumbers } = await import('/app/parts.js');
          await forgetNumbers(store);
        }"""
    )

    assert "restore" not in phone.start_again()
    is_whole(phone, phone.log)


def test_an_entry_that_went_missing_is_noticed(phone):
    phone.make_snapshot()
    lost = phone.log.pop(30)["event"]
    phone.page.evaluate(
        "([device, seq]) => store.write(['events'], (tx) => tx.objectStore('events').delete([device, seq]))",
        [lost["device"], lost["seq"]],
    )

    assert "restore" not in phone.start_again()


def test_a_full_phone_gives_the_snapshot_up_first(phone):
    phone.make_snapshot()
    phone.page.evaluate(
        """async () => {
          const { makingRoom } = await import('/app/parts.js');
          let tried = 0;
          await makingRoom(store, async () => {
            tried += 1;
            if (tried === 1) throw new DOMException('full', 'QuotaExceededError');
          });
        }"""
    )

    assert "restore" not in phone.start_again()
    is_whole(phone, phone.log)


@pytest.mark.parametrize("way", ["folded whole", "from a snapshot", "from one with the own ones"])
def test_entries_of_others_come_before_own_ones_that_are_not_sent(phone, way):
    if way == "from a snapshot":
        phone.make_snapshot()
        phone.start_again()
    job = next(line["id"] for line in phone.ask("jobs") if not line["closed"])
    for caution in ("one", "two"):
        phone.page.evaluate(
            """([job, caution]) => log.record([
              { kind: 'caution_acknowledged', job, data: { caution } }, stock(caution)])""",
            [job, caution],
        )
    if way == "from one with the own ones":
        phone.make_snapshot()
        phone.start_again()
    phone.asked()

    phone.receive(ENTRIES)

    asked = phone.asked()
    if way == "folded whole":
        assert asked == ["insert"]
    if way == "from a snapshot":
        assert asked == ["restore", "add"]
    found = records(phone.page)
    assert [record["event"]["device"] for record in found[-4:]] == [phone.device] * 4
    is_whole(phone, found)


def test_one_message_a_record_answers_what_the_screen_asks_next(phone):
    job = next(line["id"] for line in phone.ask("jobs") if not line["closed"])
    phone.asked()
    view = phone.page.evaluate(
        """async (job) => {
          const following = { op: 'job', args: { job } };
          await log.record([{ kind: 'caution_acknowledged', job, data: { caution: 'late' } }], { following });
          return core.call('job', { job });
        }""",
        job,
    )

    assert phone.asked() == ["check_and_add"]
    assert view == phone.ask("job", job=job)
    assert view["history"][0]["kind"] == "caution_acknowledged"


def test_an_answer_that_came_along_is_not_given_after_a_further_change(phone):
    job = next(line["id"] for line in phone.ask("jobs") if not line["closed"])
    view = phone.page.evaluate(
        """async (job) => {
          const following = { op: 'job', args: { job } };
          const note = (caution) => [{ kind: 'caution_acknowledged', job, data: { caution } }];
          await log.record(note('late'), { following });
          await log.record(note('later'));
          return core.call('job', { job });
        }""",
        job,
    )

    assert view == phone.ask("job", job=job)


def test_what_could_not_be_saved_is_not_folded_either(phone):
    before = phone.ask("state")
    phone.page.evaluate(
        """async () => {
          const write = store.write;
          store.write = () => Promise.reject(new DOMException('no', 'DataError'));
          await say(() => log.record([stock('lost')]));
          store.write = write;
        }"""
    )

    assert phone.ask("state") == before
