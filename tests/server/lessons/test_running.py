"""What a server keeps from one look to the next: the figures are those that a first look makes."""

import gc
from itertools import pairwise

from server.lessons import kept
from server.lessons.figures import figures
from server.lessons.running import Running
from tests.made_up_yard import DAY_MS
from tests.made_up_yard import START
from tests.made_up_yard import Yard
from tests.made_up_yard import receive

NOW = START + 60 * DAY_MS


def corrected(yard, event, at):
    reason = {"device": event["device"], "seq": event["seq"], "reason": "not so"}
    return yard.record(event["job"], "corrected", reason, at)


def test_jobs_that_come_change_and_go_leave_the_figures_of_a_first_look(db):
    yard = Yard("running", 40)
    starts = [n for n, each in enumerate(yard.entries) if each["event"]["kind"] == "job_opened"]
    running = Running()

    for start, end in pairwise([0, *starts[10::6], len(yard.entries)]):
        receive(db, yard.entries[start:end])
        for since in (0, NOW - 30 * DAY_MS):
            assert figures(db, NOW, since, running=running) == figures(db, NOW, since)
    for number in (3, 17):
        last = [
            each["event"] for each in yard.entries if each["event"]["job"] == sorted(yard.causes)[number]
        ][-1]
        receive(db, [corrected(yard, last, NOW)])
        assert figures(db, NOW, running=running) == figures(db, NOW)
    assert figures(db, NOW, running=running)["closed"] == 38


def test_a_span_that_moves_on_lets_go_of_jobs(db):
    receive(db, Yard("moves", 30).entries)
    running = Running()

    counts = []
    for days in (25, 31, 45):
        now = START + days * DAY_MS
        found = figures(db, now, now - 20 * DAY_MS, running=running)
        assert found == figures(db, now, now - 20 * DAY_MS)
        counts.append(found["closed"])

    assert counts[0] > counts[2] > 0


def test_a_job_whose_clock_was_ahead_counts_its_times_once_its_day_has_come(db):
    receive(db, Yard("ahead", 12).entries)
    running = Running()

    before = figures(db, START + 3 * DAY_MS, running=running)
    after = figures(db, NOW, running=running)

    assert before["left_out"]["wrong_clock"]
    assert "wrong_clock" not in after["left_out"]
    assert after == figures(db, NOW)


def test_a_full_garbage_collection_passes_over_what_jobs_said(db):
    """With a thousand jobs it held up the look that came upon it by a tenth of a second."""
    receive(db, Yard("held", 3).entries)
    held = {}
    kept.refresh(db, held)
    for _ in range(8):  # a tuple is let go once all that it holds was
        gc.collect()
    said = [each.said[name] for each in held.values() for name in ("times", "readings", "weights")]
    assert all(said)
    assert not any(map(gc.is_tracked, said))
