"""What is folded again in part comes out as if all of it had been: corrections, their check, late entries."""

import pytest

from server.core.facts import connected
from server.core.facts.connected import Connected
from server.core.facts.fold import Fold
from server.core.facts.kinds import KINDS
from server.core.facts.naming import LabelCode
from server.core.facts.naming import LabelCodeOrNone
from server.core.log import canon
from server.core.rules import correction
from tests.core.random_logs import random_log

SEEDS = range(50)


def text(fold):
    return canon.dumps(fold.state.as_dict())


def folded(events):
    fold = Fold()
    fold.reset(events)
    return fold


class Wholly(Fold):
    """A fold that judges a correction by folding everything again."""

    def without(self, identity):
        without = Fold()
        without.connected.twice = True
        without.events, without.corrections = self.events, self.corrections
        return without.without(identity)


@pytest.mark.parametrize("seed", SEEDS)
def test_adding_a_correction_is_folding_at_once(seed):
    log = random_log(seed, 70)
    fold = Fold()
    for end in range(1, len(log) + 1):
        fold.add(log[end - 1 : end])
        if log[end - 1]["kind"] == "corrected" or end == len(log):
            whole = folded(log[:end])
            assert text(fold) == text(whole)
            assert fold.corrections.withdrawn == whole.corrections.withdrawn
            assert fold.corrections.righted == whole.corrections.righted


@pytest.mark.parametrize("seed", SEEDS)
def test_a_correction_is_judged_as_by_folding_everything(seed):
    log = random_log(seed, 50)
    fold, whole = folded(log), Wholly()
    whole.reset(log)
    for event in log:
        data = {"device": event["device"], "seq": event["seq"], "reason": "slip"}
        draft = {"kind": "corrected", "job": event["job"], "data": data}
        assert correction.refuse(fold, draft, None) == correction.refuse(whole, draft, None)


@pytest.mark.parametrize("seed", SEEDS)
def test_entries_that_arrive_late_are_folded_as_if_they_had_come_in_time(seed):
    log = random_log(seed, 70)
    for at, count, own in ((20, 1, 3), (30, 5, 10), (10, 12, 1), (0, 3, 30)):
        late, tail = log[at : at + count], log[at + count : at + count + own]
        fold = folded(log[:at] + tail)
        fold.insert(late, at)
        assert text(fold) == text(folded(log[:at] + late + tail))
        rest = log[at + count + own :]
        fold.insert(rest, len(fold.events))
        assert text(fold) == text(folded(log))


def test_only_what_hangs_together_is_folded_again():
    """The random logs would prove little if each of them were one group."""
    parts = 0
    for seed in SEEDS:
        log = random_log(seed, 70)
        groups = Connected()
        groups.catch_up(log)
        for place in range(len(log)):
            together, _ = groups.around(log, [place])
            assert place in together
            parts += len(together) * 2 <= len(log)
    assert parts > 200


def test_every_field_that_names_a_unit_or_a_label_counts():
    """A field that it did not know would let entries seem apart that are not; `seen` is kept and no more."""
    for kind in KINDS.values():
        for field in kind.fields:
            if field.names_units or isinstance(field, LabelCode | LabelCodeOrNone):
                assert field.name in (*connected.FIELDS, "seen"), (kind.name, field.name)


def test_an_identity_that_comes_twice_makes_it_fold_everything():
    """A restored phone: two entries of one identity; a correction of it takes back both."""
    for seed in SEEDS:
        log = random_log(seed, 40)
        twice = {**log[7], "actor": "Somebody"}
        correct = {"device": twice["device"], "seq": twice["seq"], "reason": "slip"}
        last = {**log[0], "kind": "corrected", "data": correct, "v": 1, "seq": 900}
        fold = folded([*log, twice])
        fold.add([last])
        assert text(fold) == text(folded([*log, twice, last]))


@pytest.mark.parametrize("seed", range(3))
def test_both_hosts_fold_in_part_alike(core, seed):
    log = random_log(seed, 50)
    entries = [{"event": event} for event in log]
    core("reset", events=entries[:10] + entries[20:30])
    core("insert", events=entries[10:20], at=10)
    for entry in entries[30:]:
        core("add", events=[entry])
    assert canon.dumps(core("state")) == text(folded(log))
    for event in log[::5]:
        data = {"device": event["device"], "seq": event["seq"], "reason": "slip"}
        core("check", events=[{"kind": "corrected", "job": event["job"], "data": data}])
