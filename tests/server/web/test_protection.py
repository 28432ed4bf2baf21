"""What every response carries and every write needs: headers, CSRF, the one address."""

import re

import pytest

from tests.server.phone import BASE
from tests.server.phone import assert_refused

PATHS = [
    "/",
    "/pair",
    "/U/K7F3M",
    "/app/main.js",
    "/app/core/worker.js",
    "/sw.js",
    "/api/ping",
    "/api/jobs",
    "/api/none",
    "/api/photos/" + "0" * 64,
    "/nothing-here",
]
WRITES = [
    ("POST", "/api/sync"),
    ("POST", "/api/pair"),
    ("POST", "/api/pairings"),
    ("PUT", "/api/photos/" + "0" * 64),
]


@pytest.mark.parametrize("path", PATHS)
def test_every_response_carries_the_policy(stranger, path):
    headers = stranger.get(path).headers

    policy = dict(part.strip().split(" ", 1) for part in headers["Content-Security-Policy"].split(";"))
    assert policy["default-src"] == "'self'"
    assert re.fullmatch(r"'self' 'wasm-unsafe-eval' 'sha256-[\w+/]{43}='", policy["script-src"])
    assert policy["img-src"] == "'self' blob:"
    assert policy["object-src"] == "'none'"
    assert policy["base-uri"] == "'none'"
    assert policy["frame-ancestors"] == "'none'"
    assert "camera=(self)" in headers["Permissions-Policy"]
    assert "microphone=(self)" in headers["Permissions-Policy"]
    assert "geolocation=()" in headers["Permissions-Policy"]
    assert headers["X-Content-Type-Options"] == "nosniff"


def test_every_refusal_carries_the_policy_too(stranger, phone, monkeypatch):
    def fails():
        raise RuntimeError("a fault of the test")

    app = phone.client.application
    endpoint, _ = app.url_map.bind("localhost").match("/api/ping")
    monkeypatch.setitem(app.view_functions, endpoint, fails)
    monkeypatch.setitem(app.config, "PROPAGATE_EXCEPTIONS", False)
    elsewhere = "http://127.0.0.1:8765"
    answers = {
        307: stranger.client.get("/", base_url=elsewhere),
        400: phone.write("POST", "/api/sync", data=b"{"),
        401: stranger.get("/api/jobs"),
        404: stranger.get("/nothing-here"),
        405: stranger.client.delete("/api/ping", base_url=BASE),
        421: stranger.client.get("/api/session", base_url=elsewhere),
        500: phone.get("/api/ping"),
    }

    assert [answer.status_code for answer in answers.values()] == list(answers)
    policy = stranger.get("/").headers["Content-Security-Policy"]
    assert {answer.headers["Content-Security-Policy"] for answer in answers.values()} == {policy}


@pytest.mark.parametrize("path", ["/api/ping", "/api/session", "/api/jobs", "/api/none"])
def test_nothing_under_api_is_kept_by_a_cache(phone, path):
    assert phone.get(path).headers["Cache-Control"] == "no-store"


@pytest.mark.parametrize(("method", "path"), WRITES)
def test_every_write_needs_the_csrf_token(phone, method, path):
    phone.csrf = ""
    error = assert_refused(phone.write(method, path, data=b"{}"), 400, "X-CSRFToken")
    assert "/api/session" in error["message"]

    phone.csrf = "made-up"
    assert_refused(phone.write(method, path, data=b"{}"), 400, "X-CSRFToken")


def test_another_phones_csrf_token_does_not_do(phone, new_phone):
    other = new_phone("d00000000000000bb")
    other.csrf = phone.csrf

    assert_refused(other.sync([]), 400, "X-CSRFToken")


def test_a_write_from_another_origin_is_refused(phone):
    answer = phone.write("POST", "/api/sync", data=b"{}", headers={"Origin": "http://evil.example"})

    assert_refused(answer, 403, "Origin")


def test_a_write_from_the_own_origin_passes(phone):
    body = {"app": "", "v": 1, "device": phone.device, "cursor": 0, "events": []}

    assert phone.post("/api/sync", body, headers={"Origin": BASE}).status_code == 200


def test_a_page_asked_for_under_another_name_is_sent_to_the_one_address(stranger):
    answer = stranger.client.get("/U/K7F3M?a=1", base_url="http://127.0.0.1:8765")

    assert answer.status_code == 307
    assert answer.headers["Location"] == f"{BASE}/U/K7F3M?a=1"


def test_the_name_may_come_in_capitals_as_on_a_label(stranger):
    assert stranger.client.get("/U/K7F3M", base_url="http://LOCALHOST:8765").status_code == 200


@pytest.mark.parametrize("host", ["127.0.0.1:8765", "localhost", "localhost:80", "evil.example"])
def test_the_api_answers_under_the_one_address_only(stranger, host):
    answer = stranger.client.get("/api/ping", base_url=f"http://{host}")

    assert_refused(answer, 421, "Host")
