"""Who is slow, silent or many costs others nothing: each case with honest requests beside it."""

import errno
import shutil
import socket
import ssl
import threading
import time
from contextlib import ExitStack
from contextlib import closing
from contextlib import contextmanager
from contextlib import suppress

import pytest
from flask import Flask
from flask import request

from server.serving.connections import CertificateFiles
from server.serving.connections.server import THREADS
from tests.server.certificates import make_pair
from tests.server.serving.connections.client import GET
from tests.server.serving.connections.client import Client
from tests.server.serving.connections.small_server import BLOB
from tests.server.serving.connections.small_server import opened

LONG = 3600
POST = b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: %d\r\n\r\n"


@pytest.fixture
def certificate(tmp_path):
    return make_pair(tmp_path)


@pytest.fixture
def after():
    """Closes what a test opens."""
    with ExitStack() as stack:
        yield stack


class Drips:
    """Clients that each send one byte of a request after the other, all at the same time."""

    def __init__(self, clients, data=GET, pause=0.05):
        self.clients = clients
        self._left = dict.fromkeys(clients, data[:-1])  # the last byte never comes
        self._pause = pause
        self._speaking = threading.Lock()  # a socket under TLS is used by one thread at a time
        self._ended = threading.Event()
        self._thread = threading.Thread(target=self._drip)

    def __enter__(self):
        self._thread.start()
        return self

    def __exit__(self, *_):
        self._ended.set()
        self._thread.join()

    def _drip(self):
        while not self._ended.wait(self._pause):
            for client, data in list(self._left.items()):
                with suppress(OSError), self._speaking:
                    client.send(data[:1])
                self._left[client] = data[1:] or b"X"

    def open_ones(self):
        """Counts the clients that the server has not closed or answered."""
        with self._speaking:
            return sum(not _has_word(client.sock) for client in self.clients)


def _has_word(sock):
    """Tells whether the server said something or closed."""
    sock.setblocking(False)
    try:
        sock.recv(1)
    except (BlockingIOError, ssl.SSLWantReadError):
        return False
    except OSError:
        return True
    finally:
        sock.settimeout(20)
    return True


def _is_closed(sock):
    """Waits for the server's next word; tells whether it is the end."""
    try:
        return sock.recv(1) == b""
    except ConnectionError:
        return True


@contextmanager
def _ending(server):
    """Has another thread end the server."""
    ending = threading.Thread(target=server.stop)
    ending.start()
    yield
    ending.join()


@contextmanager
def _once_shut(server, act):
    """Does something as soon as the server lets nobody in any more."""
    waiting = threading.Thread(target=lambda: (_until(lambda: not server._server._loop._open), act()))
    waiting.start()
    yield
    waiting.join()


def clients(after, server, number, cafile=None):
    return [after.enter_context(closing(Client(server.port, cafile))) for _ in range(number)]


def test_twelve_silent_and_ten_dripping_clients_of_tls_hold_up_nobody(certificate, after):
    server = after.enter_context(
        opened(certificate=CertificateFiles(*certificate), handshake=LONG, head=LONG)
    )
    for _ in range(12):
        after.enter_context(socket.create_connection(("127.0.0.1", server.port)))
    drips = after.enter_context(Drips(clients(after, server, 10, certificate.cert)))

    with closing(Client(server.port, certificate.cert)) as honest:
        assert [honest.ask(GET).status for _ in range(20)] == [200] * 20

    assert drips.open_ones() == 10


def test_two_hundred_dripping_clients_hold_up_nobody(after):
    server = after.enter_context(opened(head=LONG, connections=300, connections_an_address=250))
    drips = after.enter_context(Drips(clients(after, server, 200), pause=0.02))

    for _ in range(5):
        with closing(Client(server.port)) as honest:
            assert honest.ask(GET).status == 200

    assert drips.open_ones() == 200


def test_a_phone_behind_the_same_address_as_many_others_gets_in(after):
    server = after.enter_context(opened(head=LONG, connections_an_address=20, young=0))
    drips = after.enter_context(Drips(clients(after, server, 60)))
    _until(lambda: drips.open_ones() <= 20)

    with closing(Client(server.port)) as honest:
        assert [honest.ask(GET).status for _ in range(3)] == [200] * 3
        for _ in range(25):  # whoever was answered stays when others press in
            after.enter_context(closing(Client(server.port)))
        assert honest.ask(GET).status == 200


def test_many_from_one_address_leaves_room_for_the_others(after):
    server = after.enter_context(opened(head=LONG, connections=30, connections_an_address=100, young=0))
    other = after.enter_context(closing(Client(server.port, source="127.0.0.2")))
    drips = after.enter_context(Drips(clients(after, server, 60)))
    _until(lambda: drips.open_ones() <= 30)

    assert other.ask(GET).status == 200


@pytest.mark.parametrize(
    ("sent", "limits", "status"),
    [
        (b"", {"idle": 0.3}, None),
        (GET[:-3], {"head": 0.3}, 408),
        (POST % 1000 + b"x", {"grace": 0.1, "rate": 1000}, 408),
        (POST % 1000 + b"x", {"transfer": 0.3}, 408),
    ],
    ids=["nothing", "half a head", "a body too slowly", "a body for too long"],
)
def test_who_sends_too_slowly_has_to_go(after, sent, limits, status):
    server = after.enter_context(opened(**limits, linger=0.2))
    slow = after.enter_context(closing(Client(server.port)))
    slow.send(sent)

    if status is not None:
        answer = slow.read()
        assert answer.status == status
        assert "arrive in time" in answer.json()["error"]["message"]
    assert slow.is_closed()
    _until(server.is_empty)


def test_who_is_silent_at_the_handshake_has_to_go(certificate, after):
    server = after.enter_context(opened(certificate=CertificateFiles(*certificate), handshake=0.3))
    silent = after.enter_context(socket.create_connection(("127.0.0.1", server.port), timeout=20))

    assert silent.recv(1) == b""


def test_who_takes_an_answer_slowly_keeps_no_thread_from_others(after):
    server = after.enter_context(opened(grace=LONG))
    slow = clients(after, server, 2 * THREADS)
    for client in slow:
        client.send(b"GET /blob HTTP/1.1\r\nHost: x\r\n\r\n")

    with closing(Client(server.port)) as honest:
        assert [honest.ask(GET).status for _ in range(10)] == [200] * 10

    assert slow[0].read().body == BLOB


def test_who_does_not_take_an_answer_has_to_go(after):
    server = after.enter_context(opened(grace=0.3, rate=100_000_000))
    slow = after.enter_context(closing(Client(server.port)))
    slow.send(b"GET /blob HTTP/1.1\r\nHost: x\r\n\r\n")

    assert slow.sock.recv(1) == b"H"
    _until(server.is_empty)

    came = 0
    with suppress(ConnectionError):
        while data := slow.sock.recv(65536):
            came += len(data)
    assert came < len(BLOB)


def test_unfinished_bodies_take_so_much_place_and_no_more(after):
    server = after.enter_context(opened(bodies_bytes=400_000, grace=LONG))
    slow = clients(after, server, 6)
    for client in slow:
        client.send(POST % 100_000 + bytes(90_000))

    _until(lambda: any(_has_word(client.sock) for client in slow))

    with closing(Client(server.port)) as honest:
        assert honest.ask(POST % 50_000 + bytes(50_000)).json()["bytes"] == 50_000


def test_threads_that_all_work_keep_nobody_from_coming_in(after):
    free, busy = threading.Event(), threading.Semaphore(0)
    app = Flask("slow", static_folder=None, template_folder=None)

    @app.get("/")
    def work() -> str:
        busy.release()
        free.wait(20)
        return "done"

    server = after.enter_context(opened(app))
    first = clients(after, server, THREADS)
    for client in first:
        client.send(GET)
    for _ in first:
        assert busy.acquire(timeout=20)
    later = clients(after, server, THREADS)
    for client in later:
        client.send(GET)
    free.set()

    assert [client.read().status for client in first + later] == [200] * (2 * THREADS)


def test_what_came_in_whole_is_answered_when_the_server_ends(after):
    free, busy = threading.Event(), threading.Event()
    app = Flask("slow", static_folder=None, template_folder=None)

    @app.post("/")
    def work() -> bytes:
        busy.set()
        free.wait(20)
        return request.get_data()

    with ExitStack() as while_open:
        server = while_open.enter_context(opened(app, linger=0.2))
        idle = after.enter_context(closing(Client(server.port)))
        client = after.enter_context(closing(Client(server.port)))
        client.send(POST % 5 + b"hello")
        assert busy.wait(20)
        after.enter_context(_once_shut(server, free.set))
    answer = client.read()

    assert (answer.status, answer.body) == (200, b"hello")
    assert client.is_closed()
    assert idle.is_closed()
    with pytest.raises(OSError, match="refused"):
        Client(server.port)


def test_what_was_sent_ahead_of_an_answer_does_not_hold_up_the_end(after):
    """Its turn comes when no worker is left: handed on all the same, it would keep the end waiting."""
    blob = b"GET /blob HTTP/1.1\r\nHost: x\r\n\r\n"
    with ExitStack() as while_open:
        server = while_open.enter_context(opened(closing=LONG, grace=LONG))
        client = after.enter_context(closing(Client(server.port)))
        client.send(blob + GET)
        assert client.sock.recv(1) == b"H"
        while_open.enter_context(_ending(server))
        _until(lambda: server._server._loop._ends_at is not None)
        assert BLOB in client.rest()


def test_a_renewed_certificate_is_served_without_a_pause(tmp_path, certificate, after):
    now = [0.0]
    files = CertificateFiles(*certificate, clock=lambda: now[0])
    server = after.enter_context(opened(certificate=files))
    before = after.enter_context(closing(Client(server.port, certificate.cert)))
    assert before.ask(GET).status == 200
    newer = make_pair(tmp_path, stem="newer")

    shutil.copy(newer.cert, certificate.cert)
    shutil.copy(newer.key, certificate.key)
    now[0] += 2

    with closing(Client(server.port, newer.cert)) as after_renewal:
        assert after_renewal.ask(GET).status == 200
    assert before.ask(GET).status == 200, "a connection from before goes on"


class FailingToAccept:
    """A listening socket that finds no free descriptor a few times; what else is asked of it goes on."""

    def __init__(self, real, times):
        self._real = real
        self._failures = iter([errno.EMFILE, errno.ENFILE] * times)

    def accept(self):
        for number in self._failures:
            raise OSError(number, "Too many open files")
        return self._real.accept()

    def __getattr__(self, name):
        return getattr(self._real, name)


def test_where_no_more_files_can_be_opened_the_slowest_makes_room(after, monkeypatch, caplog):
    server = after.enter_context(opened(head=LONG))
    drips = after.enter_context(Drips(clients(after, server, 5)))
    loop = server._server._loop
    _until(lambda: len(loop._inside) == 5)
    entrance = loop._entrance
    monkeypatch.setattr(entrance, "_listening", FailingToAccept(entrance._listening, 1))

    with closing(Client(server.port)) as honest:
        assert honest.ask(GET).status == 200

    assert "No more connections can be opened" in caplog.text
    assert drips.open_ones() == 3


def test_where_nobody_can_make_room_accepting_rests_before_it_is_tried_again(after, monkeypatch):
    server = after.enter_context(opened(head=LONG))
    entrance = server._server._loop._entrance
    monkeypatch.setattr(entrance, "_listening", FailingToAccept(entrance._listening, 2))
    started = time.monotonic()

    with closing(Client(server.port)) as honest:
        assert honest.ask(GET).status == 200

    assert time.monotonic() - started >= 4 * 0.25


def test_a_client_that_drips_fast_is_read_from_only_so_often(after):
    server = after.enter_context(opened(head=LONG, rest=3600))
    drips = after.enter_context(Drips(clients(after, server, 1), data=b"GET /" + b"a" * 9999, pause=0.001))
    loop = server._server._loop

    _until(lambda: loop._resting)

    [connection] = loop._inside
    assert connection.moved <= 17 * 512, "after sixteen small reads it rests"
    with closing(Client(server.port)) as honest:
        assert honest.ask(GET).status == 200
    assert drips.open_ones() == 1


def test_the_same_holds_for_crumbs_of_a_handshake(certificate, after):
    server = after.enter_context(
        opened(certificate=CertificateFiles(*certificate), handshake=LONG, rest=3600)
    )
    hello = b"\x16\x03\x01\x10\x00\x01\x00\x0f\xfc\x03\x03" + bytes(4000)
    after.enter_context(Drips(clients(after, server, 1), data=hello, pause=0.001))

    _until(lambda: server._server._loop._resting)

    with closing(Client(server.port, certificate.cert)) as honest:
        assert honest.ask(GET).status == 200


def test_a_fault_of_the_loop_does_not_end_it(certificate, after, caplog):
    faults = [RuntimeError("a fault of the test")]

    class FaultyOnce(CertificateFiles):
        def context(self):
            if faults:
                raise faults.pop()
            return super().context()

    server = after.enter_context(opened(certificate=FaultyOnce(*certificate)))
    lost = after.enter_context(socket.create_connection(("127.0.0.1", server.port), timeout=20))
    _until(lambda: not faults)

    with closing(Client(server.port, certificate.cert)) as honest:
        assert honest.ask(GET).status == 200
    assert "a fault of the test" in caplog.text
    assert _is_closed(lost)


def test_a_body_that_there_is_no_place_for_is_refused_with_the_reason(after, monkeypatch):
    server = after.enter_context(opened(memory_bytes=1000))

    def full(*_, **__):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("tempfile.TemporaryFile", full)
    client = after.enter_context(closing(Client(server.port)))
    answer = client.ask(POST % 5000 + bytes(5000))

    assert (answer.status, answer.json()["error"]["field"]) == (507, "storage")


def _until(fact, seconds=20):
    """Waits for a fact."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        if fact():
            return
        threading.Event().wait(0.02)
    pytest.fail("it did not come")
