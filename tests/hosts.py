"""The two hosts of the core, called the same way: in this process, and in the phone app's own worker.

Every core test runs in both through the fixture `core`; the phone's answer must be byte for byte the
one that CPython gives.
"""

import json
import tempfile
import threading
from pathlib import Path

from cheroot import wsgi

from server.app import Config
from server.app import create_app
from server.core.host import Host
from server.web.shell import find_static
from tests.browser_support import launch

_START_WORKER = """async () => {
  const [wasm, files] = await Promise.all([
    fetch('/app/vendor/micropython/micropython.wasm').then((r) => r.arrayBuffer()),
    fetch('/app/core.json').then((r) => r.json()),
  ]);
  const worker = new Worker('/app/core/worker.js', { type: 'module' });
  let id = 0;
  const send = (message) => new Promise((resolve, reject) => {
    const mine = (id += 1);
    const listen = ({ data }) => {
      if (data.id !== mine) return;
      worker.removeEventListener('message', listen);
      if (data.fault === undefined) resolve(data.text);
      else reject(new Error(data.fault));
    };
    worker.addEventListener('message', listen);
    worker.onerror = (event) => reject(new Error(event.message || 'the worker did not load'));
    worker.postMessage({ ...message, id: mine });
  });
  await send({ start: { wasm, files: files.files } });
  window.askCore = (text) => send({ text });
}"""


class CoreError(Exception):
    """The core answered with an error; carries its field, found, wanted and message."""

    def __init__(self, error: dict):
        """Keep the parts of the one error shape."""
        super().__init__(error["message"])
        self.field = error["field"]
        self.found = error["found"]
        self.wanted = error["wanted"]


class PhoneHost:
    """The core under MicroPython, in the app's real worker, in a real browser."""

    def __init__(self, static: Path | None = None):
        """Serve the app on a free port, open a page of it and start the worker.

        `static`: the built app of a wheel, whose core is compiled; the checkout's own when left out.
        """
        self._data = tempfile.TemporaryDirectory()
        self._server = None
        server = wsgi.Server(("127.0.0.1", 0), None)
        server.prepare()
        base = f"http://127.0.0.1:{server.bind_addr[1]}"
        server.wsgi_app = create_app(Config(Path(self._data.name), base, static or find_static()))
        self._server = server
        threading.Thread(target=server.serve, daemon=True).start()
        self._browser = launch()
        self.page = self._browser.new_page()
        self.page.goto(f"{base}/api/ping")
        self.page.evaluate(_START_WORKER)

    def call(self, text: str) -> str:
        """Ask the worker; the very text that it posts comes back."""
        return self.page.evaluate("(text) => window.askCore(text)", text)

    def close(self) -> None:
        """End browser and server."""
        self._browser.close()
        self._server.stop()
        self._data.cleanup()


class Core:
    """The core as the tests ask it: `core("op", argument=...)` gives the value or raises CoreError."""

    def __init__(self, phone: PhoneHost | None = None):
        """Start with an empty log; with `phone`, every answer is compared with the phone's."""
        self._host = Host()
        self._phone = phone
        if phone:
            phone.call(json.dumps({"op": "reset", "events": []}))

    def __call__(self, op: str, **arguments):
        """Ask both hosts (or one) and return what they agree on."""
        text = json.dumps({**arguments, "op": op}, ensure_ascii=False)
        answer = self._host.call(text)
        if self._phone:
            assert self._phone.call(text) == answer, f"the two hosts differ on {op}"
        reply = json.loads(answer)
        if not reply["ok"]:
            raise CoreError(reply["error"])
        return reply["value"]
