"""The two hosts of the core, called the same way: in this process, and in the phone app's own worker.

Every core test runs in both through the fixture `core`; the phone's answer must be byte for byte the
one that CPython gives. The core is pure: what it answers follows from its log and the question alone. So
each question about each log is put to each host once in a process, however many tests ask it, and the
questions of one test are put to the phone together, at its end.
"""

import hashlib
import json
import re
import tempfile
import threading
import zlib
from collections import OrderedDict
from collections import namedtuple
from pathlib import Path

from cheroot import wsgi

from server.app import Config
from server.app import create_app
from server.core.host import Host
from server.web.shell import find_static
from tests.browser_support import launch
from tests.said import english

_START_WORKER = """async () => {
  const [wasm, files] = await Promise.all([
    fetch('/app/vendor/micropython/micropython.wasm').then((r) => r.arrayBuffer()),
    fetch('/app/core.json').then((r) => r.json()),
  ]);
  const compiled = Object.values(files.files).some((file) => typeof file !== 'string');
  const bytes = compiled ? await (await fetch('/app/core.bin')).arrayBuffer() : new ArrayBuffer(0);
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
  await send({ start: { wasm, files: files.files, bytes } });
  const ask = async (text) => {
    const answer = await send({ text });
    if (answer !== '{"missing":{"files":true},"ok":false}') return answer;
    const rest = await (await fetch('/app/core-late.bin')).arrayBuffer();
    await send({ more: { files: files.late, bytes: rest } });
    return ask(text);
  };
  window.askCore = async (texts) => {
    const answers = [];
    for (const text of texts) answers.push(await ask(text));
    return answers;
  };
}"""

_EMPTY = json.dumps({"op": "reset", "events": []})
# Operations that change the log; every other one only asks.
CHANGES_LOG = (
    "reset", "append", "add", "insert", "check_and_add", "restore", "load_jobs", "unload_jobs", "phones",
    "labels_out",
)  # fmt: skip
# What is worked out ahead: the answer tells how far it has come, so it hangs on what was asked before.
_WORKS_AHEAD = ("make_findable", "plan")
# Answers that go back to the core as they are, no person reads them.
HANDED_BACK = (
    "snapshot", "job_pieces", "state", "record_parts", "record_told", "record_seal", "record_check",
)  # fmt: skip
# Answers of CPython: most tests begin as others do, and each has its turn on the phone as well.
_KEPT = 20_000
_answers: "OrderedDict[bytes, Answer]" = OrderedDict()


class CoreError(Exception):
    """The core answered with an error; carries its field, found, wanted and message."""

    def __init__(self, error: dict):
        """Keep the parts of the one error shape."""
        super().__init__(error["message"])
        self.field = error["field"]
        self.found = error["found"]
        self.wanted = error["wanted"]


class Answer:
    """What the core answered and what a person reads of it, small enough to be kept by the thousand."""

    def __init__(self, op: str, text: str):
        """Keep the answer to `op`, with its messages said once."""
        reply = json.loads(text)
        part = "value" if reply["ok"] else "error"
        if op not in HANDED_BACK or part == "error":
            reply[part] = english(reply[part])
        self._text = zlib.compress(text.encode("utf-8", "surrogatepass"), 1)
        self._reply = zlib.compress(json.dumps(reply).encode(), 1)

    @property
    def text(self) -> str:
        """The very text of the host."""
        return zlib.decompress(self._text).decode("utf-8", "surrogatepass")

    @property
    def reply(self) -> dict:
        """What it says, in English; each time anew, for a test may change what it got."""
        return json.loads(zlib.decompress(self._reply))


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
        return self.call_all([text])[0]

    def call_all(self, texts: list[str]) -> list[str]:
        """Ask the worker one question after the other."""
        return self.page.evaluate("(texts) => window.askCore(texts)", texts)

    def close(self) -> None:
        """End browser and server."""
        self._browser.close()
        self._server.stop()
        self._data.cleanup()


class Asked(namedtuple("Asked", ["before", "op", "text", "key", "changes"])):
    """A question about a log; `before` is the last Asked that changed the log, None for an empty one."""

    @classmethod
    def of(cls, before: "Asked | None", question: dict) -> "Asked":
        """Put a question; `key` is the same exactly when log and question are."""
        op = question["op"]
        text = _HALF.sub(lambda half: json.dumps(half[0])[1:-1], json.dumps(question, ensure_ascii=False))
        if op == "reset" and not question.get("more"):
            before = None
        stands = before.key if before else b""
        return cls(before, op, text, hashlib.sha256(stands + text.encode()).digest(), op in CHANGES_LOG)

    def is_same_again(self) -> bool:
        """Tell whether the answer follows from the log and the question alone."""
        return self.op not in _WORKS_AHEAD and '"plan": false' not in self.text

    def path(self, held: "Asked | None") -> list[str]:
        """Return what to ask a host, this question last, whose log is that of `held`."""
        texts, at = [self.text], self.before
        known = held.key if held else None
        while at and at.key != known:
            texts.append(at.text)
            at = at.before
        if (at.key if at else None) != known:
            texts.append(_EMPTY)
        return texts[::-1]


_HALF = re.compile("[\ud800-\udfff]")  # escaped in a browser's JSON, as all others are not

_UNKNOWN = Asked(None, "", "", b"unknown", True)


class PhoneAnswers:
    """Compares the phone's answers with CPython's: each question about each log once."""

    def __init__(self, phone: PhoneHost):
        """Compare with this phone's."""
        self._phone = phone
        self._compared: set[bytes] = set()
        self._waiting: list[tuple[Asked, Answer]] = []
        self._held: Asked | None = None

    def expect(self, asked: Asked, answer: Answer) -> None:
        """Take down what the phone must answer."""
        if asked.key not in self._compared:
            self._compared.add(asked.key)
            self._waiting.append((asked, answer))

    def compare(self) -> None:
        """Ask the phone all that was taken down."""
        waiting, self._waiting = self._waiting, []
        texts, places = [], []
        held = self._held
        for asked, _ in waiting:
            texts += asked.path(held)
            places.append(len(texts) - 1)
            held = asked if asked.changes else asked.before
        self._held = _UNKNOWN  # what the phone holds when this fails
        answers = self._phone.call_all(texts) if texts else []
        self._held = held
        for (asked, expected), place in zip(waiting, places, strict=True):
            assert answers[place] == expected.text, f"the two hosts differ on {asked.text}"


class Core:
    """The core as the tests ask it: `core("op", argument=...)` gives the value or raises CoreError."""

    def __init__(self, phone: PhoneAnswers | None = None):
        """Start with an empty log; with `phone`, every answer is one that the phone must give too."""
        self._phone = phone
        self._host = Host()
        self._held: Asked | None = None
        self._log: Asked | None = None

    def __call__(self, op: str, **arguments):
        """Return the value, or raise what the core objects to."""
        asked = Asked.of(self._log, {**arguments, "op": op})
        answer = self._answer(asked)
        if asked.changes:
            self._log = asked
        if self._phone:
            self._phone.expect(asked, answer)
        reply = answer.reply
        if not reply["ok"]:
            raise CoreError(reply["error"])
        return reply["value"]

    def _answer(self, asked: Asked) -> Answer:
        """Ask this process's host what no test before has asked."""
        if asked.key in _answers and asked.is_same_again():
            _answers.move_to_end(asked.key)
            return _answers[asked.key]
        for text in asked.path(self._held):
            answer = self._host.call(text)
        self._held = asked if asked.changes else asked.before
        _answers[asked.key] = kept = Answer(asked.op, answer)
        if len(_answers) > _KEPT:
            _answers.popitem(last=False)
        return kept
