"""Answers here wait until every job is counted in, however busy the machine is."""

import pytest

from server.lessons import routes


@pytest.fixture(autouse=True)
def all_jobs_are_counted_in(monkeypatch):
    monkeypatch.setattr(routes, "SECONDS", None)
