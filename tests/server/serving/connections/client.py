"""A client that sends bytes as they are and reads one answer after the other from the same connection."""

import functools
import http.client
import json
import socket
import ssl
from typing import NamedTuple

GET = b"GET /?a=1 HTTP/1.1\r\nHost: x\r\n\r\n"


@functools.lru_cache(maxsize=8)
def trusting(cafile):
    """Returns a context that trusts what lay in a file when it was first asked for."""
    return ssl.create_default_context(cafile=cafile)


class Answer(NamedTuple):
    """What came back."""

    status: int
    headers: http.client.HTTPMessage
    body: bytes

    def json(self):
        """Returns the body as JSON."""
        return json.loads(self.body)


class Client:
    """A connection of a test; `cafile` is what it trusts to be `name`, None speaks plain HTTP."""

    def __init__(self, port, cafile=None, seconds=20, source=None, name="localhost"):
        source = source and (source, 0)
        self.sock = socket.create_connection(("127.0.0.1", port), timeout=seconds, source_address=source)
        if cafile:
            context = trusting(cafile)
            self.sock = context.wrap_socket(self.sock, server_hostname=name)
        self._file = self.sock.makefile("rb")

    def send(self, raw):
        """Sends bytes as they are."""
        self.sock.sendall(raw)

    def ask(self, raw):
        """Sends bytes as they are and reads an answer."""
        self.send(raw)
        return self.read()

    def read(self, method="GET"):
        """Reads the next answer; raises EOFError where the server has closed instead."""
        line = self._file.readline()
        if not line:
            raise EOFError
        status = int(line.split()[1])
        headers = http.client.parse_headers(self._file)
        if status == 100 or method == "HEAD":
            return Answer(status, headers, b"")
        if headers["Transfer-Encoding"] == "chunked":
            return Answer(status, headers, b"".join(self._chunks()))
        length = headers["Content-Length"]
        return Answer(status, headers, self._file.read(int(length) if length else -1))

    def rest(self):
        """Returns whatever comes until the server closes."""
        return self._file.read()

    def is_closed(self):
        """Waits for the server's next word; tells whether it is the end."""
        try:
            return self._file.read(1) == b""
        except ConnectionError:
            return True

    def end_sending(self):
        """Ends this side of the connection."""
        socket.socket.shutdown(self.sock, socket.SHUT_WR)

    def close(self):
        """Ends the connection."""
        self._file.close()
        self.sock.close()

    def _chunks(self):
        while size := int(self._file.readline(), 16):
            yield self._file.read(size)
            self._file.readline()
        self._file.readline()
