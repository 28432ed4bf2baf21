"""What the first visit sends to a phone, compressed, until the app is ready for offline work.

    python -m tests.bench.first_visit

Counted at the server's door in a real browser's visit: the page's own requests and those with which
the service worker fills the offline cache, response bodies and header lines.
"""

import tempfile
from collections import Counter
from pathlib import Path

from tests.browser_support import launch_profile
from tests.browser_support import wait_until
from tests.static.app_server import AppServer

LIMIT_BYTES = 1_500_000


class CountingServer(AppServer):
    """Counts what goes out, by path."""

    def _answer(self, environ, start_response):
        path = environ["PATH_INFO"]

        def counted(status, headers, exc_info=None):
            self.sent[path] += sum(len(name) + len(value) + 4 for name, value in headers)
            return start_response(status, headers, exc_info)

        for part in super()._answer(environ, counted):
            self.sent[path] += len(part)
            yield part

    def start(self):
        """Begin to count with the first request."""
        self.sent = Counter()
        super().start()


def main() -> int:
    """Print the figures; return 1 when the limit is missed."""
    with tempfile.TemporaryDirectory() as folder:
        server = CountingServer(Path(folder) / "data")
        phone = launch_profile(Path(folder) / "profile")
        page = phone.pages[0]
        page.goto(server.base)
        ready = "() => navigator.serviceWorker.getRegistration().then((r) => Boolean(r && r.active))"
        wait_until(page, ready, seconds=60)
        phone.close()
        server.close()
    total = sum(server.sent.values())
    print(f"first visit: {total:,} bytes of {LIMIT_BYTES:,} in {len(server.requests)} requests")
    for path, size in server.sent.most_common(8):
        print(f"  {size:9,}  {path}")
    return total > LIMIT_BYTES


if __name__ == "__main__":
    raise SystemExit(main())
