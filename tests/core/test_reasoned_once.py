"""The host reasons again when the case changed, and only then."""

import json

import pytest

from server.core import host
from server.core.evidence import identity_assignments
from server.core.harness import order
from tests.core.driver import Driver
from tests.core.driver import home


@pytest.fixture
def count(monkeypatch):
    """Count how often the host reasons."""
    calls = []
    real = identity_assignments.reason

    def counted(case, **how):
        calls.append(1)
        return real(case, **how)

    monkeypatch.setattr(identity_assignments, "reason", counted)
    return calls


@pytest.fixture
def job():
    """Give a job after its first test, in this process only: what is counted is Python's."""
    asked = host.Host()

    def core(op, **arguments):
        return json.loads(asked.call(json.dumps({**arguments, "op": op})))["value"]

    job = Driver(core).begin()
    job.test("rear-right-outer")
    return job


def test_pictures_do_not_make_it_reason_again(job, count):
    job.view()
    job.photograph()
    job.view()

    assert len(count) == 1


def test_what_was_done_to_a_position_makes_it_reason_again(job, count):
    job.view()
    job.fact("cleaned", position="rear-right-outer", note="")
    job.view()
    assert len(count) == 2

    job.fact("cleaned", position="rear-right-inner", note="")
    job.view()
    assert len(count) == 3


def test_a_pulled_unit_makes_it_reason_again(job, count):
    job.view()
    job.fact("unit_pulled", unit=home("rear-left-outer"), position="rear-left-outer", how="tapped")
    job.view()

    assert len(count) == 2


def test_the_next_check_of_a_circuit_is_chosen_once_for_its_view_and_the_list(job, monkeypatch):
    chosen, best = [], order.best
    monkeypatch.setattr(order, "best", lambda *about: chosen.append(1) or best(*about))
    start = {"move": "meter", "fitted": {}, "position": "rear-right-outer", "reason": ""}
    job.fact("move_started", **start)
    for plan in (False, True):
        assert job.core("job", job=job.job, plan=plan)["step"]["id"] == "measure"
    job.core("job_list")
    assert len(chosen) == 1

    job.choose(0)
    job.core("job_list")
    assert len(chosen) == 2
