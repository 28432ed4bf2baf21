"""Large uploads to look at a record: they hold up neither each other nor anybody else."""

import io
import threading
import time
from contextlib import ExitStack
from contextlib import closing

import pytest

from server.core.record.file import MOST_BYTES
from server.keeping.record import routes
from tests.server.keeping.test_record_served import counter
from tests.server.keeping.test_record_served import look
from tests.server.keeping.test_record_served import taken
from tests.server.keeping.test_record_served import yard
from tests.server.phone import JOB
from tests.server.phone import assert_refused
from tests.server.real_server import RealServer
from tests.server.serving.connections.client import Client
from tests.server.serving.connections.test_held_up import Drips

__all__ = ["counter", "taken", "yard"]


@pytest.fixture
def server(tmp_path):
    server = RealServer(tmp_path / "data").start()
    yield server
    server.end()


def test_twelve_slow_uploads_of_the_largest_size_hold_up_nobody(server):
    phone = server.phone("d00000000000000aa")
    head = (
        f"POST /api/records/check HTTP/1.1\r\nHost: localhost:{server.port}\r\nCookie: {phone.cookie}\r\n"
        f"X-CSRFToken: {phone.csrf}\r\nContent-Length: {MOST_BYTES}\r\n\r\n"
    ).encode()
    with ExitStack() as stack:
        slow = [stack.enter_context(closing(Client(server.port))) for _ in range(12)]
        for client in slow:
            client.send(head + bytes(100_000))
        drips = stack.enter_context(Drips(slow, bytes(1000)))

        for _ in range(3):
            phone.record("walk_checked", {"positions": [], "missed": []}, JOB)
            assert phone.sync()[0] == 200
        status, answer = phone.send("POST", "/api/records/check", b"no record")

        assert (status, answer["outcome"]) == (200, "none")
        assert drips.open_ones() == 12


def test_nobody_has_the_turn_while_a_body_is_read(taken, counter):
    begun, go_on = threading.Event(), threading.Event()

    class Slow(io.BytesIO):
        def readinto(self, block):
            begun.set()
            assert go_on.wait(20)
            return super().readinto(block)

    answers = []
    slow = threading.Thread(
        target=lambda: answers.append(
            counter.write("POST", "/api/records/check", input_stream=Slow(taken), content_length=len(taken))
        )
    )
    slow.start()
    assert begun.wait(20)
    other = look(counter, taken).get_json()
    go_on.set()
    slow.join()

    assert other["outcome"] == answers[0].get_json()["outcome"] == "intact"


def test_who_finds_several_waiting_is_told_so_and_keeps_no_thread(taken, counter, monkeypatch):
    monkeypatch.setattr(routes, "_in_line", threading.BoundedSemaphore(1))
    answers = []
    with routes._one_at_a_time:
        waiting = threading.Thread(target=lambda: answers.append(look(counter, taken)))
        waiting.start()
        until = time.monotonic() + 20
        while routes._in_line._value and time.monotonic() < until:
            time.sleep(0.01)
        refused = look(counter, taken)
        not_a_record = look(counter, b"no record")
    waiting.join()

    assert "Try again in a moment" in assert_refused(refused, 503, "record")["message"]
    assert not_a_record.get_json()["outcome"] == "none", "which needs no turn"
    assert answers[0].get_json()["outcome"] == "intact"
