"""What gets through the server to the app, and how: requests in every shape that clients send them in."""

import hashlib
from contextlib import closing

import pytest

from server.serving.connections import CertificateFiles
from tests.server.certificates import make_pair
from tests.server.serving.connections.client import GET
from tests.server.serving.connections.client import Client
from tests.server.serving.connections.small_server import BLOB
from tests.server.serving.connections.small_server import USUAL
from tests.server.serving.connections.small_server import opened


@pytest.fixture(scope="module")
def certificate(tmp_path_factory):
    return make_pair(tmp_path_factory.mktemp("certificate"))


@pytest.fixture(params=["plain", "tls"])
def tls(request, certificate):
    return certificate if request.param == "tls" else None


@pytest.fixture
def server(tls):
    with opened(certificate=tls and CertificateFiles(*tls, name="localhost")) as server:
        yield server


@pytest.fixture
def connect(server, tls):
    """Opens connections to the server, under TLS where it wants that."""
    made = []

    def connect():
        made.append(Client(server.port, tls and tls.cert))
        return made[-1]

    yield connect
    for client in made:
        client.close()


def test_a_request_gets_through_as_it_was_sent(connect, tls):
    answer = connect().ask(GET)
    status, came = answer.status, answer.json()

    assert status == 200
    assert (came["method"], came["query"], came["from"]) == ("GET", "a=1", "127.0.0.1")
    assert came["secure"] is bool(tls)


def test_a_connection_carries_one_request_after_the_other(connect):
    client = connect()

    assert [client.ask(GET).status for _ in range(5)] == [200] * 5


def test_requests_sent_ahead_of_the_answers_are_answered_in_order(connect):
    client = connect()
    client.send(b"".join(b"GET /?n=%d HTTP/1.1\r\nHost: x\r\n\r\n" % n for n in range(20)))

    assert [client.read().json()["query"] for _ in range(20)] == [f"n={n}" for n in range(20)]


@pytest.mark.parametrize("cut", [1, 7, 1000])
def test_a_body_arrives_whole_however_it_is_cut(connect, cut):
    client = connect()
    body = bytes(range(256)) * (10 if cut < 1000 else 300)
    raw = b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: %d\r\n\r\n" % len(body) + body
    step = cut if cut >= 1000 else max(cut, len(raw) // 12)
    for at in range(0, len(raw), step):
        client.send(raw[at : at + step])

    answer = client.read()
    status, came = answer.status, answer.json()

    assert (status, came["bytes"]) == (200, len(body))
    assert came["sha256"] == hashlib.sha256(body).hexdigest()


def test_a_body_in_chunks_comes_to_the_app_with_its_length(connect):
    raw = b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\n"
    raw += b"5\r\nhello\r\n6;note=1\r\n world\r\n0\r\nTrailer: x\r\n\r\n"

    answer = connect().ask(raw + GET)
    status, came = answer.status, answer.json()

    assert (status, came["bytes"]) == (200, 11)
    assert came["headers"]["Content-Length"] == "11"
    assert "Transfer-Encoding" not in came["headers"]
    assert came["sha256"] == hashlib.sha256(b"hello world").hexdigest()


def test_a_client_that_holds_its_body_back_is_told_to_go_ahead(connect):
    client = connect()
    client.send(b"PUT / HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nExpect: 100-continue\r\n\r\n")
    assert client.read().status == 100

    assert client.ask(b"body").json()["bytes"] == 4


def test_one_whose_body_is_too_large_is_told_before_it_sends_it(connect):
    client = connect()
    head = b"PUT / HTTP/1.1\r\nHost: x\r\nContent-Length: %d\r\nExpect: 100-continue\r\n\r\n" % (USUAL + 1)

    answer = client.ask(head)
    status, came = answer.status, answer.json()

    assert (status, came["error"]["field"]) == (413, "body")
    assert f"{USUAL:,}" in came["error"]["message"]


def test_http_1_0_is_answered_and_ends_the_connection(connect):
    client = connect()
    client.send(b"GET / HTTP/1.0\r\n\r\n")

    assert client.read().status == 200
    assert client.is_closed()


def test_a_client_that_has_ended_its_side_still_gets_its_answer(connect):
    client = connect()
    client.send(GET)
    client.end_sending()

    assert client.read().status == 200


@pytest.mark.parametrize("close", [b"close", b"Close", b"TE, close", b"close, keep-alive"])
def test_connection_close_is_honoured(connect, close):
    client = connect()

    assert client.ask(GET[:-2] + b"Connection: " + close + b"\r\n\r\n").status == 200
    assert client.is_closed()


def test_a_long_answer_arrives_whole(connect):
    client = connect()
    client.send(b"GET /blob HTTP/1.1\r\nHost: x\r\n\r\n")

    assert client.read().body == BLOB
    assert client.ask(GET).status == 200


def test_an_answer_in_pieces_arrives_whole(connect):
    client = connect()
    client.send(b"GET /pieces HTTP/1.1\r\nHost: x\r\n\r\n")

    assert client.read().body == b"a" * 1000 + b"b" * 1000
    assert client.ask(GET).status == 200


def test_a_head_request_has_no_body(connect):
    client = connect()
    client.send(b"HEAD /blob HTTP/1.1\r\nHost: x\r\n\r\n")

    assert client.read("HEAD").headers["Content-Length"] == str(len(BLOB))
    assert client.ask(GET).status == 200


def test_a_fault_of_the_app_costs_that_request_alone(connect):
    client = connect()
    client.send(b"GET /fails HTTP/1.1\r\nHost: x\r\n\r\n")

    assert client.read().status == 500
    assert connect().ask(GET).status == 200


@pytest.mark.parametrize(
    ("raw", "status"),
    [
        (b"nonsense\r\n\r\n", 400),
        (b"GET / HTTP/1.1\r\n\r\n", 400),  # no Host
        (b"GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", 400),
        (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n", 400),
        (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: -1\r\n\r\n", 400),
        (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 9e9\r\n\r\n", 400),
        (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 99999999999999999999\r\n\r\n", 413),
        (b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: gzip\r\n\r\n", 501),
        (b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nxyz\r\n", 400),
        (
            b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"
            b"GET /second HTTP/1.1\r\nHost: x\r\n\r\n",
            400,
        ),
        (b"GET / HTTP/1.1\r\nHost: x\r\nA: " + b"a" * 70_000, 431),
        (b"GET /" + b"a" * 70_000, 431),
        (b"GET / HTTP/1.1\r\nHost: x\r\nA\x00: b\r\n\r\n", 400),
        (b"GET http://x/ HTTP/1.1\r\nHost: x\r\n\r\n", 400),
        (b"GET //y/z HTTP/1.1\r\nHost: x\r\n\r\n", 400),
        (b"GET /#y HTTP/1.1\r\nHost: x\r\n\r\n", 400),
        (b"OPTIONS * HTTP/1.1\r\nHost: x\r\n\r\n", 400),
        (b"CONNECT x:80 HTTP/1.1\r\nHost: x\r\n\r\n", 400),
        (b"GET / HTTP/1.2\r\nHost: x\r\n\r\n", 505),
        (b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", 505),
    ],
)
def test_what_is_no_proper_request_is_refused_in_the_one_shape(connect, raw, status):
    answer = connect().ask(raw)
    found, came = answer.status, answer.json()

    assert found == status
    assert set(came["error"]) == {"field", "found", "wanted", "message"}
    assert came["error"]["message"].count(". ") >= 1


@pytest.mark.parametrize("path", ["/", "/large"])
def test_a_body_in_chunks_ends_at_the_limit_of_its_route(connect, path):
    client = connect()
    client.send(b"POST %b HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\n" % path.encode())
    chunk = b"%x\r\n" % 50_000 + bytes(50_000) + b"\r\n"
    for _ in range(3):
        try:
            client.send(chunk)
        except OSError:
            break
    if path == "/large":
        client.send(b"0\r\n\r\n")

    answer = client.read()
    status, came = answer.status, answer.json()

    assert status == (413 if path == "/" else 200)
    assert came.get("bytes", USUAL) >= USUAL


def test_a_body_cut_into_crumbs_is_refused(connect):
    client = connect()
    client.send(b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\n" + b"1\r\na\r\n" * 500)

    assert client.read().status == 400


def test_headers_cannot_be_passed_off_as_others(connect):
    raw = GET[:-2] + b"X_Forwarded_For: 9.9.9.9\r\nX-Real: 1\r\nX-Real: 2\r\n\r\n"

    came = connect().ask(raw).json()

    assert came["headers"]["X-Real"] == "1, 2"
    assert not [name for name in came["headers"] if "Forwarded" in name]


def test_plain_http_on_the_https_port_is_told_what_to_do(certificate):
    with (
        opened(certificate=CertificateFiles(*certificate)) as server,
        closing(Client(server.port)) as client,
    ):
        answer = client.ask(GET)

    assert answer.status == 400
    assert b"https://" in answer.body
