"""`swaptrail serve --lan` on loopback: everything but the network itself."""

import signal
import socket
import ssl
import urllib.request

import pytest

from tests.ports import free_ports
from tests.server.commands.test_cli import Running


def two_free_ports():
    """Return a port whose next one is free too: the app's and the trust page's."""
    return free_ports(2)


@pytest.fixture
def port():
    return two_free_ports()


class Yard:
    """One start of the server on loopback, and what it said."""

    def __init__(self, running, data):
        self.running = running
        self.data = data
        self.base = running.wait_for(r"answers in your network at (\S+)")[1]
        self.host = self.base.split("//")[1].partition(":")[0]
        self.page = running.wait_for(r"http://127\.0\.0\.1:\d+/")[0]
        running.wait_for("Ctrl-C ends it")

    def text(self):
        return "\n".join(self.running.lines)

    def plain(self, path):
        """Ask the trust page; return (headers, body)."""
        with urllib.request.urlopen(self.page + path, timeout=10) as answer:
            return answer.headers, answer.read()

    def authority(self):
        """Return the certificate that the trust page hands out, as PEM."""
        file = self.host.removesuffix(".local") + ".crt"
        return ssl.DER_cert_to_PEM_cert(self.plain(file)[1])

    def secure(self, path, trusting=None):
        """Ask the app over HTTPS by its name, trusting its authority or another; return (headers, body)."""
        context = ssl.create_default_context(cadata=trusting or self.authority())
        port = int(self.base.rpartition(":")[2])
        with (
            socket.create_connection(("127.0.0.1", port), timeout=10) as raw,
            context.wrap_socket(raw, server_hostname=self.host) as line,
        ):
            line.sendall(
                f"GET {path} HTTP/1.1\r\nHost: {self.host}:{port}\r\nConnection: close\r\n\r\n".encode()
            )
            whole = b"".join(iter(lambda: line.recv(65536), b""))
        head, _, body = whole.partition(b"\r\n\r\n")
        return head.decode(), body


def start_on_loopback(folder, port, *arguments):
    """Start the server on loopback, its data in a folder."""
    return Running(["serve", "--lan", "--interface", "lo", "--port", str(port), *arguments], folder)


@pytest.fixture
def serve_lan(tmp_path, port):
    """Start the server on loopback; it ends with the test."""
    started = []

    def run(*arguments):
        started.append(start_on_loopback(tmp_path, port, *arguments))
        return started[-1]

    yield run
    for running in started:
        if running.process.poll() is None:
            running.end(signal.SIGKILL)


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    """One start that the tests of a module only ask."""
    folder = tmp_path_factory.mktemp("yard")
    running = start_on_loopback(folder, two_free_ports())
    try:
        yield Yard(running, folder / "data")
    finally:
        running.end(signal.SIGKILL)


@pytest.fixture
def own_yard(serve_lan, tmp_path):
    """A start of the test's own, which it may end."""
    return Yard(serve_lan(), tmp_path / "data")
