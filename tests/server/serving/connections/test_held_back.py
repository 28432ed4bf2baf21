"""An answer that is kept back costs no thread, goes out when it is released, and ends with its client."""

import threading
import time
from contextlib import closing
from contextlib import contextmanager

import pytest
from flask import Flask
from flask import request

from server.serving.connections import CertificateFiles
from server.serving.connections.hold import held_back
from server.serving.connections.server import THREADS
from tests.server.certificates import make_pair
from tests.server.serving.connections.client import GET
from tests.server.serving.connections.client import Client
from tests.server.serving.connections.small_server import opened
from tests.server.serving.connections.small_server import small_app

WAIT = b"GET /wait?seconds=%d HTTP/1.1\r\nHost: x\r\n\r\n"
LONG, SOON = 600, 20


class Waiting:
    """An app whose answers may be kept back, and the holds that it began."""

    def __init__(self):
        self.holds = []
        self.ended = []
        self.threads = set()
        self.app = small_app()
        self.app.add_url_rule("/wait", "wait", self.wait)

    def wait(self):
        hold = held_back(request.environ, float(request.args["seconds"]))
        hold.when_ended(lambda: self.ended.append(hold))
        self.holds.append(hold)
        self.threads.add(threading.get_ident())
        return {"told": True}

    def have(self, what, number):
        """Waits until there are so many."""
        until = time.monotonic() + SOON
        while len(what) < number:
            assert time.monotonic() < until, f"{len(what)} of {number}"
            time.sleep(0.005)


@contextmanager
def served(certificate=None, **limits):
    waiting = Waiting()
    with opened(waiting.app, certificate, **limits) as server:
        yield waiting, server


@pytest.fixture(params=["plain", "tls"])
def secured(request, tmp_path):
    """Without and with TLS."""
    return make_pair(tmp_path) if request.param == "tls" else None


def test_it_goes_out_when_it_is_released_and_the_connection_goes_on(secured):
    certificate = CertificateFiles(secured.cert, secured.key) if secured else None
    cafile = secured.cert if secured else None
    with served(certificate) as (waiting, server), closing(Client(server.port, cafile)) as client:
        client.send(WAIT % LONG)
        waiting.have(waiting.holds, 1)
        with closing(Client(server.port, cafile)) as other:
            assert other.ask(GET).status == 200
        assert waiting.ended == []
        waiting.holds[0].release()
        assert client.read().json() == {"told": True}
        assert waiting.ended == waiting.holds
        assert client.ask(GET).status == 200


def test_more_wait_than_there_are_threads():
    after_all = 3 * THREADS
    with served() as (waiting, server):
        clients = [Client(server.port) for _ in range(after_all)]
        for client in clients:
            client.send(WAIT % LONG)
        waiting.have(waiting.holds, after_all)
        with closing(Client(server.port)) as honest:
            assert honest.ask(GET).status == 200
        for hold in waiting.holds:
            hold.release()
        for client in clients:
            assert client.read().json() == {"told": True}
            client.close()


def test_it_goes_out_when_its_time_is_up():
    with served() as (waiting, server), closing(Client(server.port)) as client:
        assert client.ask(WAIT % 0).json() == {"told": True}
        client.send(WAIT % LONG)
        waiting.have(waiting.holds, 2)
        waiting.holds[1].release(0.01)
        assert client.read().json() == {"told": True}


def test_a_client_that_goes_ends_it():
    with served() as (waiting, server):
        client = Client(server.port)
        client.send(WAIT % LONG)
        waiting.have(waiting.holds, 1)
        client.close()
        waiting.have(waiting.ended, 1)
        waiting.holds[0].release()  # too late, and no harm
        with closing(Client(server.port)) as other:
            assert other.ask(GET).status == 200


def test_a_client_that_asks_on_is_answered_in_order():
    with served() as (waiting, server), closing(Client(server.port)) as client:
        client.send(WAIT % LONG)
        waiting.have(waiting.holds, 1)
        assert client.ask(GET).json() == {"told": True}
        assert client.read().json()["method"] == "GET"


def test_what_is_released_before_the_answer_is_complete_goes_out_at_once():
    app = Flask("early", static_folder=None, template_folder=None)

    @app.get("/")
    def early():
        held_back(request.environ, LONG).release()
        return {"told": True}

    with opened(app) as server, closing(Client(server.port)) as client:
        assert client.ask(GET).json() == {"told": True}


def test_the_server_ends_beside_it():
    with served() as (waiting, server):
        client = Client(server.port)
        client.send(WAIT % LONG)
        waiting.have(waiting.holds, 1)
        begun = time.monotonic()
        server.stop()
        assert client.is_closed()
        assert time.monotonic() - begun < SOON
        client.close()
        assert waiting.ended == waiting.holds


def test_it_gives_way_where_there_are_too_many():
    with served(connections=4, young=0) as (waiting, server):
        held = [Client(server.port) for _ in range(4)]
        for client in held:
            client.send(WAIT % LONG)
        waiting.have(waiting.holds, 4)
        with closing(Client(server.port)) as newcomer:
            assert newcomer.ask(GET).status == 200
        waiting.have(waiting.ended, 1)
        for client in held:
            client.close()


def test_an_app_that_another_server_runs_keeps_nothing_back():
    with Flask("other").test_request_context("/") as context:
        assert held_back(context.request.environ, LONG) is None
