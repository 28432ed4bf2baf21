"""A host that begins with a snapshot answers as one that folded the whole log, byte for byte."""

import json

import pytest

from server.core.host import Host
from tests.bench.workload import Workload

DEVICE = "d0123456789abcdef"


class PhoneLike:
    """A host with a storage beside it: gives it what it says is missing, as a phone does."""

    def __init__(self, log: list[dict]):
        """Folds a log."""
        self.log = list(log)
        self.jobs: dict[str, dict] = {}
        self.lacked: list[str] = []
        self._host = Host()
        self.value("reset", events=self.log)

    def value(self, op, **arguments):
        reply = json.loads(self.text(op, **arguments))
        assert reply["ok"], reply
        return reply["value"]

    def text(self, op, **arguments) -> str:
        question = json.dumps({**arguments, "op": op})
        while True:
            answer = self._host.call(question)
            missing = json.loads(answer).get("missing")
            if not missing:
                return answer
            if "jobs" in missing:
                self.lacked += missing["jobs"]
                self.value("load_jobs", jobs={job: self.jobs[job] for job in missing["jobs"]})
            else:
                self.lacked.append("the log")
                self.value("reset", events=self.log)

    def start_again(self):
        """Make a snapshot, and begin anew with no more than it."""
        closed = self.value("closed_jobs")["jobs"]
        self.jobs |= self.value("job_pieces", jobs=closed)["jobs"]
        heads = []
        of = 1
        while len(heads) < of:
            answer = self.value("snapshot", part=len(heads))
            of = answer["of"]
            heads.append(answer["head"])
        self._host = Host()
        for head in heads[:-1]:
            assert self.value("restore", head=head, more=True) == {"count": 0}
        assert self.value("restore", head=heads[-1]) == {"count": len(self.log)}
        self.lacked.clear()

    def add(self, entry):
        self.value("add", events=[entry])
        self.log.append(entry)


def whole(log) -> Host:
    host = Host()
    host.call(json.dumps({"op": "reset", "events": log}))
    return host


def questions(host: Host):
    """Return every question about what is on record."""
    state = host.fold.state
    asked = [(op, {}) for op in ("jobs", "vehicles", "units", "unlabelled", "waiting", "conflicts", "state")]
    asked += [("find", {"text": "estate 3"}), ("decided", {"start": 0, "end": 2**52})]
    asked += [(op, {"job": job}) for job in sorted(state.jobs) for op in ("job", "report", "evidence")]
    asked += [("unit", {"unit": unit}) for unit in sorted(state.units)]
    return asked


@pytest.fixture(scope="module")
def entries():
    return Workload(DEVICE).entries(320)


def answers_as_whole(phone):
    host = whole(phone.log)
    for op, arguments in questions(host):
        assert phone.text(op, **arguments) == host.call(json.dumps({**arguments, "op": op})), (op, arguments)


def test_each_answer_is_that_of_the_whole_fold(entries):
    phone = PhoneLike(entries)
    phone.start_again()

    assert phone.value("jobs")
    assert phone.value("vehicles")
    assert phone.lacked == [], "the lists need no closed job"
    answers_as_whole(phone)
    assert phone.lacked
    assert "the log" not in phone.lacked


def test_what_the_yard_learned_is_there_after_a_start(entries):
    data = {"rates_ppm": {"unit": 30_000}, "doubts_x100": {"unit": 150}, "jobs": 52, "upto": f"{DEVICE}:1"}
    entry = {"device": "dfedcba9876543210", "seq": 1, "prev": "", "v": 1, "at": 1, "actor": "",
             "job": None, "kind": "rates_learned", "data": data}  # fmt: skip
    phone = PhoneLike([*entries[:20], {"event": entry}])
    phone.start_again()

    assert phone.value("learned")["opens_with"]
    assert phone.value("learned") == json.loads(whole(phone.log).call('{"op": "learned"}'))["value"]


def test_what_comes_later_folds_as_behind_the_whole_log(entries):
    phone = PhoneLike(entries[:200])
    phone.start_again()

    for entry in entries[200:260]:
        phone.add(entry)
    phone.start_again()
    for entry in entries[260:]:
        phone.add(entry)

    answers_as_whole(phone)


def test_an_entry_of_a_closed_job_finds_the_job_as_it_was(entries):
    phone = PhoneLike(entries)
    phone.start_again()
    closed = next(line["id"] for line in phone.value("jobs") if line["closed"])
    note = {"job": closed, "kind": "caution_acknowledged", "data": {"caution": "late"}}
    entry = {"device": "dfedcba9876543210", "seq": 1, "prev": "", "v": 1, "at": 1, "actor": "", **note}

    phone.add({"event": entry})

    assert closed in phone.lacked
    answers_as_whole(phone)


def test_taking_back_an_old_entry_asks_for_the_log(entries):
    phone = PhoneLike(entries)
    phone.start_again()
    tests = [entry["event"] for entry in entries if entry["event"]["kind"] == "walk_checked"]
    data = {"device": DEVICE, "seq": tests[0]["seq"], "reason": "a slip"}
    draft = {"kind": "corrected", "job": tests[0]["job"], "data": data, "actor": "", "device": DEVICE}
    host = whole(entries)

    checked = phone.text("check", events=[draft])

    assert phone.lacked[-1] == "the log"
    assert checked == host.call(json.dumps({"op": "check", "events": [draft]}))


def test_checked_and_added_in_one_call_as_in_two(entries):
    phone, host = PhoneLike(entries[:-1]), whole(entries[:-1])
    last = entries[-1]
    draft = {name: last["event"][name] for name in ("kind", "data", "job", "actor", "device")}

    one = phone.value("check_and_add", events=[draft], envelopes=[last])
    phone.log.append(last)

    assert one["refusal"] is None
    added = json.loads(host.call(json.dumps({"op": "add", "events": [last]})))["value"]
    assert (one["count"], one["conflicts"]) == (added["count"], added["conflicts"])
    answers_as_whole(phone)


def test_what_is_refused_is_not_added(entries):
    phone = PhoneLike(entries)
    draft = {"kind": "unit_fitted", "job": "j0", "data": {}, "actor": "", "device": DEVICE}
    before = phone.text("state")

    answer = phone.value("check_and_add", events=[draft], envelopes=[entries[0]])

    assert answer["refusal"]["sentence"]
    assert phone.text("state") == before


def test_an_entry_of_another_comes_before_what_is_not_sent_yet(entries):
    own, foreign = entries[-5:], entries[-9:-5]
    phone = PhoneLike(entries[:-9])
    for entry in own:
        phone.add(entry)

    phone.value("insert", events=foreign, at=len(entries) - 9)
    phone.log = list(entries)

    answers_as_whole(phone)


def test_a_log_in_parts_is_the_log_and_changes_nothing_before_its_last_part(entries):
    phone = PhoneLike(entries[:50])
    before = phone.text("state")

    phone.value("reset", events=entries[:100], more=True)
    phone.value("append", events=entries[100:200], more=True)
    assert phone.text("state") == before
    phone.value("append", events=entries[200:])
    phone.log = list(entries)

    answers_as_whole(phone)
