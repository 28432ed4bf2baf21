"""What screens and clerks ask the server is answered by the core, in step with the log."""

import json
import threading

import pytest

from server.core.host import Host
from server.folded import FoldedState
from server.queries import projection
from tests.said import english
from tests.server.phone import JOB
from tests.server.phone import assert_refused
from tests.server.phone import job_opened


@pytest.fixture
def working_phone(phone):
    phone.record(kind="job_opened", data=job_opened())
    phone.record(
        kind="unit_labelled",
        data={"unit": "v00000000000a.rear-left", "code": "JRMMA", "how": "scanned"},
    )
    assert phone.synced()["refused"] == []
    return phone


def asked(phone, op, **arguments):
    """Returns what a host of the core says that folds the same events."""
    host = Host()
    events = [{"event": entry["event"]} for entry in phone.entries]
    for question in ({"op": "reset", "events": events}, {"op": op, **arguments}):
        answer = json.loads(host.call(json.dumps(question)))
    return english(answer["value"])


def test_jobs_and_job_are_what_the_core_says(working_phone):
    assert working_phone.get("/api/jobs").get_json() == asked(working_phone, "jobs")
    assert working_phone.get(f"/api/jobs/{JOB}").get_json() == asked(working_phone, "job", job=JOB)


@pytest.mark.parametrize("name", ["v00000000000a.rear-left", "JRMMA", "jrm-ma", "JRM-MA"])
def test_a_unit_is_found_by_its_id_or_its_code(working_phone, name):
    wanted = asked(working_phone, "unit", unit="v00000000000a.rear-left")

    assert working_phone.get(f"/api/units/{name}").get_json() == wanted


def test_a_code_that_nobody_carries_is_not_found(working_phone):
    assert_refused(working_phone.get("/api/units/6JF-4D"), 404, "code")


def test_a_mistyped_code_says_what_is_wrong(working_phone):
    error = assert_refused(working_phone.get("/api/units/JMR-MA"), 400, "code")

    assert "check character" in error["message"]


def test_answers_move_on_with_the_log(working_phone):
    before = working_phone.get(f"/api/jobs/{JOB}").get_json()
    working_phone.record(kind="corrected", data={"device": working_phone.device, "seq": 2, "reason": "x"})
    working_phone.synced()

    after = working_phone.get(f"/api/jobs/{JOB}").get_json()

    assert after != before
    assert after == asked(working_phone, "job", job=JOB)


def test_an_answer_is_kept_until_the_log_grows(working_phone, monkeypatch):
    paths = ["/api/jobs", f"/api/jobs/{JOB}", "/api/units/JRM-MA"]
    first = [working_phone.get(path).data for path in paths]
    monkeypatch.setattr(Host, "call", lambda self, text: pytest.fail("asked again"))

    assert [working_phone.get(path).data for path in paths] == first


def test_the_list_of_jobs_comes_in_parts_open_ones_first(working_phone, monkeypatch):
    monkeypatch.setattr(projection, "MOST_JOBS", 2)
    for number in range(2, 6):
        working_phone.record(kind="job_opened", data=job_opened(), job=f"j00000000000{number}")
    working_phone.record(kind="job_closed", data={"note": ""}, job="j000000000003")
    working_phone.synced()

    parts = [working_phone.get(f"/api/jobs?from={start}").get_json() for start in (0, 2, 4, 6)]

    assert [len(part) for part in parts] == [2, 2, 1, 0]
    assert [line for part in parts for line in part] == asked(working_phone, "jobs")
    assert_refused(working_phone.get("/api/jobs?from=x"), 400, "from")


def test_a_fold_that_fails_keeps_no_fact_out_and_is_made_up_for(working_phone, monkeypatch):
    working_phone.record(kind="cleaned", data={"position": "rear-left", "note": ""})
    monkeypatch.setattr(FoldedState, "fold", lambda *arguments: 1 / 0)
    assert working_phone.synced()["heads"][working_phone.device]["seq"] == 3
    assert_refused(working_phone.get("/api/jobs"), 500, "server")
    monkeypatch.undo()

    answer = working_phone.get("/api/jobs")

    assert answer.get_json() == asked(working_phone, "jobs")


def test_questions_from_several_threads_get_the_same_answer(working_phone):
    for _ in range(20):
        working_phone.record(kind="cleaned", data={"position": "rear-left", "note": ""})
    answers = []

    def ask():
        answers.append(working_phone.get(f"/api/jobs/{JOB}").data)

    working_phone.synced()
    threads = [threading.Thread(target=ask) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert len(set(answers)) == 1
    assert json.loads(answers[0]) == asked(working_phone, "job", job=JOB)
