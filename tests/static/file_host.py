"""A host of files, as people rent one: none of our headers, its own cache times, a page for the rest."""

import http.server
import threading
from pathlib import Path


class FileHost:
    """Serves a folder under `prefix` of an address on this machine, until `close`."""

    def __init__(self, folder: Path, prefix: str = "/", max_age: int | None = None, *, short: bool = False):
        """Start; with `max_age` each file may be kept for so many seconds without asking again.

        `short` sends `x.html` on to `x`, as some hosts do, and answers a page for what is missing with 404.
        """
        self.folder = folder
        self.prefix = prefix
        self.paths: list[str] = []
        #: What is answered in place of a file, by its name below the prefix: an edge that lags behind.
        self.stale: dict[str, bytes] = {}
        host = self

        class Files(http.server.SimpleHTTPRequestHandler):
            protocol_version = "HTTP/1.1"

            def do_GET(self):
                host.paths.append(self.path)
                name = self.path.removeprefix(host.prefix).partition("?")[0]
                name += "index.html" if name.endswith("/") or not name else ""
                if short and name.endswith(".html") and not self.path.endswith("/"):
                    self.send_response(308)
                    self.send_header("Location", self.path.removesuffix(".html"))
                    self.send_header("Content-Length", "0")
                    self.end_headers()
                    return
                file = host.folder / name
                if short and not file.suffix and file.with_suffix(".html").is_file():
                    file = file.with_suffix(".html")
                inside = self.path.startswith(host.prefix) and file.is_file()
                if not inside:
                    file = host.folder / "404.html"
                body = host.stale.get(name) or file.read_bytes()
                self.send_response(200 if inside and not (short and file.name == "404.html") else 404)
                self.send_header("Content-Type", self.guess_type(str(file)))
                self.send_header("Content-Length", str(len(body)))
                if max_age is not None:
                    self.send_header("Cache-Control", f"max-age={max_age}")
                self.end_headers()
                self.wfile.write(body)

            def log_message(self, format, *args):
                """Keep the test output quiet."""

        self._server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Files)
        self.origin = f"http://localhost:{self._server.server_port}"
        self.base = self.origin + prefix
        self._thread = threading.Thread(target=self._server.serve_forever)
        self._thread.start()

    def close(self) -> None:
        """Go off the line."""
        self._server.shutdown()
        self._thread.join()
        self._server.server_close()
