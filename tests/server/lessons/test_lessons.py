"""Figures from the log of a yard whose truth is known: what counts, what is left out, and what is kept."""

import csv
import io
import json

import pytest

from server.commands.cli import main
from server.lessons import kept
from server.lessons.figures import figures
from server.lessons.page import page
from server.log import events
from tests.made_up_yard import DAY_MS
from tests.made_up_yard import START
from tests.made_up_yard import Yard
from tests.made_up_yard import receive
from tests.said import english

NOW = START + 400 * DAY_MS
JOBS = 40


@pytest.fixture(scope="module")
def yard():
    return Yard("known", JOBS)


@pytest.fixture
def db(db, yard):
    receive(db, yard.entries)
    return db


def contributions(db):
    """What every closed job contributes."""
    held = {}
    kept.refresh(db, held)
    return [each.said for each in held.values() if each.said["closed"] is not None]


def more(yard):
    """The yard going on, with its own copy of the chain."""
    later = Yard("known", 0)
    later.entries = list(yard.entries)
    return later


def of(rows, identity):
    return next(row for row in rows if row["id"] == identity)


def test_a_proven_cause_is_the_true_one(db, yard):
    found = {job["job"]: job for job in contributions(db)}

    proven = [name for name in found if found[name]["proven"]]
    assert len(proven) > JOBS / 2
    for name in proven:
        assert [kind for kind, _ in found[name]["causes"]] == [yard.causes[name][0]]


def test_readings_whose_cause_is_proven_are_counted_but_for_those_that_opened_the_job(db):
    found = figures(db, NOW)

    shows, alarm = of(found["rates"], "shows"), of(found["rates"], "false_alarm")
    assert 0 < shows["hits_x100"] <= shows["tries"] * 100
    assert shows["low_ppm"] < 950_000 < shows["high_ppm"] + 60_000
    assert alarm["tries"] > 5 * shows["tries"]
    assert alarm["value_ppm"] < 20_000


def test_minutes_are_those_of_the_hand_and_not_of_the_plan(db):
    found = figures(db, NOW)

    test = of(found["minutes"], "test")
    assert test["default_x100"] == 100
    assert 125 < test["median_x100"] < 160  # the hands of the yard: 1.4 minutes
    assert test["low_x100"] < test["median_x100"] < test["high_x100"]
    assert {each["position"] for each in found["reach"]} > {"rear-left-outer"}


def test_the_hand_at_another_sort_of_part_says_nothing_of_the_minutes_of_this_one(db):
    before = figures(db, NOW)
    senders = Yard("senders", 12, layouts=("wheel-sender/wheels-4",), device="d00000000000000cc")
    receive(db, senders.entries)

    after = figures(db, NOW)

    assert after["closed"] == before["closed"] + 12
    assert after["minutes"] == before["minutes"]
    assert after["board"] == before["board"]
    assert len(after["positions"]) > len(before["positions"])


def test_what_a_test_saved_and_what_was_bought_add_up_to_the_faults(db):
    found = figures(db, NOW)

    bought = {job: count for job, count, _ in found["parts"]}
    assert all(count <= 1 for count in bought.values())
    assert sum(saved for _, _, saved in found["parts"]) > 0


def test_a_job_that_is_corrected_after_it_was_counted_is_counted_again(db, yard):
    before = figures(db, NOW)
    job = next(name for name in before["proven"])
    replaced = [each["event"] for each in yard.entries if each["event"]["job"] == job][-1]
    assert replaced["kind"] == "job_closed"
    later = more(yard)

    reason = {"device": replaced["device"], "seq": replaced["seq"], "reason": "not closed"}
    receive(db, [later.record(job, "corrected", reason, NOW)])

    after = figures(db, NOW)
    assert after["closed"] == before["closed"] - 1
    assert job not in after["counted"]


def test_only_what_changed_is_worked_out_again(db, yard, monkeypatch):
    figures(db, NOW)
    worked = []
    real = kept.contribution.of_job
    monkeypatch.setattr(kept.contribution, "of_job", lambda job: worked.append(job.id) or real(job))
    later = more(yard)
    job = yard.entries[0]["event"]["job"]

    receive(db, [later.record(job, "walk_checked", {"positions": [], "missed": []}, NOW)])
    receive(db, [later.record(job, "job_closed", {"note": ""}, NOW)])
    figures(db, NOW)
    figures(db, NOW)

    assert worked == [job]


def test_a_clock_that_ran_backwards_is_left_out_and_said(db, yard):
    later = more(yard)
    unit = "vback.rear-left-outer"
    opened = {**yard.entries[0]["event"]["data"], "vehicle": {"id": "vback", "name": "Red van", "vin": ""}}
    pulled = {"unit": unit, "position": "rear-left-outer", "how": "tapped"}
    test = {"heard": True, "faulted": [], "silent": [], "unplugged": [], "codes": [], "came_and_went": False,
            "note": ""}  # fmt: skip
    at = NOW + 40 * DAY_MS  # the phone's clock is weeks ahead, then it is put right
    entries = [
        later.record("jback", "job_opened", opened, at),
        later.record("jback", "unit_pulled", pulled, at + 60_000),
        later.record("jback", "test_run", test, NOW),
        later.record("jback", "job_closed", {"note": ""}, NOW + 60_000),
    ]
    before = figures(db, NOW)

    receive(db, entries)

    after = figures(db, NOW)
    assert after["left_out"]["wrong_clock"] == ["jback"]
    assert after["times_left_out"] == before["times_left_out"] + 1
    (left_out,) = [each for each in page(after, "all")["sections"] if each["id"] == "left-out"]
    assert [len(row["jobs"]) for row in left_out["rows"]] == [1, 1]
    assert of(after["minutes"], "reach") == of(before["minutes"], "reach")


def test_a_job_without_a_test_is_left_out_and_said(db, yard):
    later = more(yard)
    opened = {**yard.entries[0]["event"]["data"], "vehicle": {"id": "vbare", "name": "Red van", "vin": ""}}
    receive(db, [later.record("jbare", "job_opened", opened, NOW),
                 later.record("jbare", "job_closed", {"note": "", "why": "customer"}, NOW + 1)])  # fmt: skip

    assert figures(db, NOW)["left_out"]["untested"] == ["jbare"]


def test_a_label_that_died_changes_no_figure(db, yard):
    before = figures(db, NOW)
    labelled = next(each["event"] for each in yard.entries if each["event"]["kind"] == "unit_labelled")
    later = more(yard)

    died = {"unit": labelled["data"]["unit"], "code": labelled["data"]["code"], "reason": "torn"}
    receive(db, [later.record(labelled["job"], "label_voided", died, NOW)])

    after = figures(db, NOW)
    assert {**after, "upto": 0} == {**before, "upto": 0}


def test_a_span_takes_only_the_jobs_closed_in_it(db):
    since = START + 30 * DAY_MS

    found = figures(db, NOW, since)

    assert found["closed"] == JOBS - 30
    assert all(closed >= since for _, closed in found["names"].values())


def test_a_fault_at_the_same_position_within_ninety_days_is_a_comeback(db, yard):
    first = next(each for each in contributions(db) if each["proven"])
    opened = next(each["event"]["data"] for each in yard.entries if each["event"]["job"] == first["job"])
    later = more(yard)
    test = {"heard": True, "faulted": first["faulted"], "silent": [], "unplugged": [], "codes": [],
            "came_and_went": False, "note": ""}  # fmt: skip
    for number, days in ((1, 100), (2, 130)):
        at = first["closed"] + days * DAY_MS - (DAY_MS * 20 if number == 1 else 0)
        receive(db, [later.record(f"jagain{number}", "job_opened", opened, at),
                     later.record(f"jagain{number}", "test_run", test, at + 1),
                     later.record(f"jagain{number}", "job_closed", {"note": ""}, at + 2)])  # fmt: skip

    found = figures(db, NOW)
    assert found["comebacks"] == [[first["job"], "jagain1"], ["jagain1", "jagain2"]]
    (row,) = next(each["rows"] for each in page(found, "all")["sections"] if each["id"] == "comebacks")
    assert len(row["jobs"]) == len(set(row["jobs"])) == 3


def test_a_second_job_that_is_still_open_is_a_comeback_and_said_to_be_open(db, yard):
    first = next(each for each in contributions(db) if each["proven"])
    opened = next(each["event"]["data"] for each in yard.entries if each["event"]["job"] == first["job"])
    later, at = more(yard), first["closed"] + 5 * DAY_MS
    test = {"heard": True, "faulted": first["faulted"], "silent": [], "unplugged": [], "codes": [],
            "came_and_went": False, "note": ""}  # fmt: skip
    receive(db, [later.record("jagain", "job_opened", opened, at)])
    before = figures(db, NOW)
    assert before["comebacks"] == []

    receive(db, [later.record("jagain", "test_run", test, at + 1)])

    found = figures(db, NOW)
    assert found["comebacks"] == [[first["job"], "jagain"]]
    assert found["comebacks_open"] == ["jagain"]
    assert found["closed"] == before["closed"]
    assert found["rates"] == before["rates"]
    told = page(found, "all")
    (row,) = next(each["rows"] for each in told["sections"] if each["id"] == "comebacks")
    assert (
        english(row["note"]) == "One of them is not closed yet: its first self-test showed the fault again."
    )
    assert {told["jobs"][number][0] for number in row["jobs"]} == {first["job"], "jagain"}

    receive(db, [later.record("jagain", "job_closed", {"note": ""}, at + 2)])
    assert (figures(db, NOW)["comebacks"], figures(db, NOW)["comebacks_open"]) == (found["comebacks"], [])


def test_an_open_job_without_the_same_fault_is_no_comeback(db, yard):
    first = next(each for each in contributions(db) if each["proven"])
    opened = next(each["event"]["data"] for each in yard.entries if each["event"]["job"] == first["job"])
    later = more(yard)
    test = {"heard": True, "faulted": [], "silent": [], "unplugged": [], "codes": [],
            "came_and_went": False, "note": ""}  # fmt: skip
    receive(db, [later.record("jagain", "job_opened", opened, first["closed"] + DAY_MS),
                 later.record("jagain", "test_run", test, first["closed"] + DAY_MS)])  # fmt: skip
    assert figures(db, NOW)["comebacks"] == []


def test_a_phone_whose_clock_is_years_behind_is_said_to_be_left_out_of_a_year(db, yard):
    """What was sent this year was closed six years ago by its phone: maybe so, but nobody would see it."""
    behind = Yard("behind", 3, start=START - 6 * 365 * DAY_MS, device="d00000000000000be")
    assert events.receive(db, behind.entries, None, NOW).refused == []

    year = figures(db, NOW, NOW - 365 * DAY_MS)
    assert year["left_out"]["sent_late"] == sorted(behind.causes)
    assert not set(behind.causes) & set(year["counted"])
    (left_out,) = [each for each in page(year, "year")["sections"] if each["id"] == "left-out"]
    (row,) = [row for row in left_out["rows"] if len(row["jobs"]) == 3]
    assert english(row["words"]) == "Sent in this time, but closed before it by the clock of their phone"

    assert "sent_late" not in figures(db, NOW)["left_out"]
    later = NOW + 400 * DAY_MS
    assert "sent_late" not in figures(db, later, later - 365 * DAY_MS)["left_out"]


def test_the_command_prints_the_same_figures_in_three_ways(tmp_path, db, capsys):
    data = str(tmp_path / "data")

    assert main(["lessons", "--data", data, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert main(["lessons", "--data", data, "--csv"]) == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out, newline="")))
    assert main(["lessons", "--data", data]) == 0
    text = capsys.readouterr().out

    assert told["closed"] == JOBS
    by_name = {row["name"]: row for row in rows if row["figure"] == "rate_ppm"}
    assert {name: int(row["value"]) for name, row in by_name.items()} == {
        rate["id"]: rate["value_ppm"] for rate in told["rates"]
    }
    assert f"{JOBS} jobs closed" in text
    assert "Self-test" in text


def test_a_spreadsheet_of_any_country_reads_every_number_of_the_table_alike(tmp_path, db, capsys):
    """Where a comma parts the decimals, 3.4 is the third of April."""
    assert main(["lessons", "--data", str(tmp_path / "data"), "--csv"]) == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out, newline="")))

    numbers = {row[name] for row in rows for name in ("low", "high", "default", "count", "of")} - {""}
    assert {each for each in numbers if not each.isdecimal()} == set()
    assert any(row["figure"] == "claimed_per_mille" and row["default"] for row in rows)


def test_a_day_that_is_none_is_refused_in_one_line(tmp_path, db, capsys):
    assert main(["lessons", "--data", str(tmp_path / "data"), "--since", "soon"]) == 2

    refused = capsys.readouterr().err
    assert refused.count("\n") == 1
    assert "--since" in refused
