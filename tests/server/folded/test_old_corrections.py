"""An old correction costs what follows from it, and nobody who writes waits while that is folded."""

import json
from contextlib import closing

import pytest

from server import folded
from server.core.host import Host
from server.core.log import canon
from server.folded import ahead
from server.folded.state import FoldedState
from server.log import events
from server.queries.projection import Projection
from server.storage import DataFolder
from server.storage import open_database
from tests.server.phone import entry_after
from tests.server.phone import job_opened

DEVICE, OTHER = "d00000000000000aa", "d00000000000000bb"
JOBS, SPARE = 60, "u00000000000a"
NOTED = {"unit": SPARE, "part": "SN-1", "serial": "7"}
SECOND = [2, 3, JOBS // 2]  # jobs that use the spare


def number_of(job):
    return f"j{job:012x}", f"v{job:012x}"


class Yard:
    """A log of many jobs on a vehicle each, of which a few use one spare."""

    def __init__(self, root):
        self.folder = DataFolder(root)
        self.folder.prepare()
        self.db = self.folder.open()
        self.log = []
        self.chains = {DEVICE: [], OTHER: []}
        added = {"unit": SPARE, "part": "SN-1", "serial": "", "code": "", "how": "typed", "place": "stock"}
        self.add(None, "unit_added", added)
        self.pulled = {}
        for number in range(JOBS):
            self.job(number)
        self.take(self.log)

    def add(self, job, kind, data, device=DEVICE):
        chain = self.chains[device]
        chain.append(entry_after(chain, device, kind, data, job))
        self.log.append(chain[-1])
        return chain[-1]

    def job(self, number):
        job, vehicle = number_of(number)
        data = job_opened()
        data["vehicle"]["id"] = vehicle
        self.add(job, "job_opened", data)
        unit, place = f"{vehicle}.rear-left", "rear-left"
        pulled = {"unit": unit, "position": place, "how": "typed"}
        self.pulled[number] = self.add(job, "unit_pulled", pulled)
        if number in SECOND:
            unit = SPARE
        self.add(job, "unit_fitted", {"unit": unit, "position": place, "how": "typed", "override": ""})
        if number in SECOND:
            self.add(job, "unit_pulled", {"unit": SPARE, "position": place, "how": "typed"})
            self.add(job, "unit_moved", {"unit": SPARE, "place": "stock", "how": "typed", "note": ""})

    def take(self, entries, db=None):
        assert events.receive(db or self.db, entries, None, 1).refused == []

    def correct(self, entry, device=DEVICE):
        data = {"device": DEVICE, "seq": entry["event"]["seq"], "reason": "slip"}
        return self.add(entry["event"]["job"], "corrected", data, device)

    def assert_as_whole(self):
        host = Host()
        host.call(canon.dumps({"op": "reset", "events": [{"event": each["event"]} for each in self.log]}))
        projection = Projection("core")
        for number in (0, *SECOND, JOBS - 1):
            question = canon.dumps({"op": "job", "job": number_of(number)[0]})
            value = json.loads(host.call(question))["value"]
            assert projection.job(self.db, number_of(number)[0]) == canon.dumps(value)


@pytest.fixture
def yard(tmp_path, monkeypatch):
    monkeypatch.setattr(ahead, "BUCKET", 4)
    yard = Yard(tmp_path / "data")
    with closing(yard.db):
        folded.catch_up(yard.db)
        yield yard


@pytest.fixture
def folds(monkeypatch):
    """The numbers of the entries that are folded from here on."""
    numbers = []
    fold = FoldedState.fold

    def noted(state, n, *said):
        numbers.append(n)
        fold(state, n, *said)

    monkeypatch.setattr(FoldedState, "fold", noted)
    return numbers


def test_a_correction_folds_the_buckets_that_had_to_do_with_it(yard, folds):
    yard.take([yard.correct(yard.pulled[0])])

    assert folded.in_step(yard.db)
    assert len(folds) < 4 * ahead.BUCKET, "more than the job's own buckets"
    yard.assert_as_whole()


def test_what_the_corrected_job_left_to_others_is_followed(yard, folds):
    """The spare of the job is what it was not: so are the later jobs that use it."""
    moved = next(each for each in yard.log if each["event"]["kind"] == "unit_moved")
    yard.take([yard.correct(moved)])

    later = range(yard.log.index(moved) + 1, len(yard.log))
    assert {place + 1 for place in later if SPARE in canon.dumps(yard.log[place])} <= set(folds)
    assert len(folds) < len(yard.log) // 3
    yard.assert_as_whole()


def test_a_sync_leaves_what_would_take_it_long(yard, folds, monkeypatch):
    monkeypatch.setattr(events, "_MOST_FOLDED", ahead.BUCKET)
    moved = next(each for each in yard.log if each["event"]["kind"] == "unit_moved")
    yard.take([yard.correct(moved)])
    assert not folded.in_step(yard.db)
    assert len(folds) <= ahead.BUCKET

    yard.assert_as_whole()

    assert folded.in_step(yard.db)


def test_a_phone_that_writes_meanwhile_does_not_wait_and_is_not_lost(yard, monkeypatch):
    """Also a correction that comes while another is worked on, and what is asked in between."""
    monkeypatch.setattr(events, "_MOST_FOLDED", 0)
    yard.take([yard.correct(yard.pulled[0])])
    fold_again = ahead.Ahead.again
    waiting = [[yard.correct(yard.pulled[3], OTHER)], [yard.add(None, "part_noted", NOTED, OTHER)]]

    def again(self, *asked):
        done = fold_again(self, *asked)
        if waiting and asked[0] and self.db is yard.db:
            with closing(open_database(yard.folder.database)) as other:
                other.conn.execute("PRAGMA busy_timeout = 0")
                yard.take(waiting.pop(0), other)
        return done

    monkeypatch.setattr(ahead.Ahead, "again", again)
    yard.assert_as_whole()
    assert waiting == []


def test_of_two_that_fold_the_same_one_alone_writes(yard, monkeypatch):
    monkeypatch.setattr(events, "_MOST_FOLDED", 0)
    yard.take([yard.correct(yard.pulled[0])])
    fold_again = ahead.Ahead.again
    written = []

    def again(self, *asked):
        done = fold_again(self, *asked)
        monkeypatch.setattr(ahead.Ahead, "again", fold_again)
        with closing(open_database(yard.folder.database)) as other:
            folded.catch_up(other)
        return done

    monkeypatch.setattr(ahead.Ahead, "again", again)
    write = ahead.Ahead.write
    monkeypatch.setattr(ahead.Ahead, "write", lambda self: written.append(self) or write(self))
    yard.assert_as_whole()

    assert len(written) == 2, "what follows from the correction, and the correction itself"
