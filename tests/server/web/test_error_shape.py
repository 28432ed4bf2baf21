"""One JSON shape for every refusal over HTTP: {"error": {"field", "found", "wanted", "message"}}."""

import pytest

from server.web import errors
from tests.server.phone import assert_refused


@pytest.mark.parametrize(
    ("method", "path", "status", "field"),
    [
        pytest.param("GET", "/nothing", 404, "path", id="unknown path"),
        pytest.param("GET", "/app/nothing.js", 404, "path", id="unknown file"),
        pytest.param("GET", "/api/nothing", 404, "path", id="unknown api"),
        pytest.param("GET", "/api/sync", 405, "request", id="wrong method"),
        pytest.param("GET", "/api/jobs/j00000000ffff", 404, "job", id="unknown job"),
        pytest.param("GET", "/api/units/u00000000ffff", 404, "unit", id="unknown unit"),
        pytest.param("GET", "/api/units/tape", 400, "code", id="no code"),
    ],
)
def test_a_request_that_leads_nowhere(phone, method, path, status, field):
    assert_refused(phone.write(method, path), status, field)


def test_a_wrong_method_names_the_right_ones(phone):
    assert "POST" in phone.get("/api/sync").headers["Allow"]


def test_an_error_of_the_servers_own_shows_nothing_of_its_inside(phone, monkeypatch):
    monkeypatch.setattr("server.log.events.last_n", lambda db: 1 / 0)

    error = assert_refused(phone.sync([]), 500, "server")

    assert "ZeroDivisionError" not in error["message"]
    assert "safe" in error["message"]


def test_text_that_is_no_text_comes_back_readable(phone):
    error = assert_refused(phone.sync([], device="\ud800"), 400, "device")

    assert error["found"] == '"?"'


def test_every_refusal_has_a_status_and_a_reason_to_exist():
    kinds = [errors.Refusal, *errors.Refusal.__subclasses__()]

    assert all(400 <= kind.status < 500 and kind.__doc__ for kind in kinds)
