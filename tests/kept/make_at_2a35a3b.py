"""Makes the kept data, in a checkout of commit 2a35a3b and with that commit's code.

    git worktree add --detach FOLDER 2a35a3b
    cp -r tests/kept FOLDER/tests/            this file, the story and the questions
    (in FOLDER, set up as its README says)    python -m tests.kept.make_at_2a35a3b OUT

What comes out has random parts (keys, ids of installation and phone), so it is made once and then kept:
made_by_2a35a3b/README.md says what each file is. No later commit can run this.
"""

# ruff: noqa: I001  (the modules are those of that commit, which are elsewhere by now)
import argparse
import contextlib
import io
import json
import lzma
import shutil
import sys
import tarfile
import zipfile
from contextlib import closing
from pathlib import Path

from server.pairing import make_link

from server import cli
from server import events
from server import photo_store
from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.host import Host
from server.core.record import stand_ins
from server.record.check import check
from server.storage import DataFolder
from tests.browser_support import launch
from tests.core.driver import Driver
from tests.core.driver import home
from tests.kept import story_of_2a35a3b as story
from tests.kept.questions import answers
from tests.server.phones import BASE
from tests.server.phones import Phone
from tests.static.app_server import AppServer
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts

PHONE_JOB = "j00000000e4a7"
BAD, NEXT = "rear-right-outer", "rear-right-inner"

_DUMP = """async () => {
  const plain = (value) => {
    // Room that the app holds back for a full phone: noise, and nothing is ever read from it.
    if (value instanceof ArrayBuffer && value.byteLength > 100_000) return { $noise: value.byteLength };
    if (value instanceof ArrayBuffer) {
      return { $bytes: btoa(Array.from(new Uint8Array(value), (c) => String.fromCharCode(c)).join('')) };
    }
    if (Array.isArray(value)) return value.map(plain);
    if (value !== null && typeof value === 'object') {
      if (Object.getPrototypeOf(value) !== Object.prototype) throw new Error(`not plain: ${value}`);
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, plain(inner)]));
    }
    return value;
  };
  return await store.withDb(async (db) => {
    const stores = [];
    for (const name of db.objectStoreNames) {
      const all = db.transaction(name).store;
      const indexes = [...all.indexNames].map((index) => {
        const { keyPath, unique, multiEntry } = all.index(index);
        return { name: index, keyPath, unique, multiEntry };
      });
      const [keys, values] = await Promise.all([all.getAllKeys(), all.getAll()]);
      const rows = keys.map((key, at) => [key, plain(values[at])]);
      stores.push({ name, keyPath: all.keyPath, autoIncrement: all.autoIncrement, indexes, rows });
    }
    return { name: db.name, version: db.version, stores, localStorage: { ...localStorage } };
  });
}"""
_UNSENT = """async () => {
  const { unsentFile } = await import('/app/unsent-file.js');
  return await (await unsentFile(store, device.id)).text();
}"""
_PICTURE = """async ([bytes, shows, position]) => {
  const photo = await photos.prepare(new Blob([Uint8Array.from(bytes)]));
  const { sha256, mime, width, height } = photo;
  const data = { sha256, mime, bytes: photo.bytes.byteLength, width, height, shows, position, unit: '' };
  const result = await log.record([{ job, kind: 'photo_taken', data }], { photo });
  if (result.refusal) throw new Error(result.refusal.sentence);
}"""


class _OnThePhone(Driver):
    """A person who records on the app of a phone, in a browser."""

    def __init__(self, page):
        self.page = page
        page.evaluate("(id) => { window.job = id; }", PHONE_JOB)
        super().__init__(self._ask, job=PHONE_JOB)

    def record(self, *drafts):
        drafts = [{"job": self.job, **draft} for draft in drafts]
        result = self.page.evaluate("(drafts) => log.record(drafts)", list(drafts))
        assert "events" in result, result

    def _ask(self, op, **arguments):
        return self.page.evaluate("([op, given]) => core.call(op, given)", [op, arguments])

    def pictures(self, pictures):
        """Take a picture of each position that the flow asks for."""
        while self.step()["form"] == "photo":
            place = self.step()["expects"]["position"]
            self.page.evaluate(_PICTURE, [list(pictures.pop()), "position", place])


def main() -> int:
    """Make everything in an empty folder."""
    parser = argparse.ArgumentParser(description="make the kept data")
    parser.add_argument("out", type=Path)
    out = parser.parse_args().out
    out.mkdir()
    data, scratch = out / "folder", out / "scratch"
    scratch.mkdir()
    log = _fill(data, scratch)
    _use_phone(data, log, out)
    _keep_files(data, out)
    written = {"verify": _verified(data, out, scratch), "http": _served(data)}
    entries = _entries(data)
    written["records"] = {file.name: _record_read(file) for file in sorted(out.glob("record*.zip"))}
    written["core"] = answers(_ask(Host()), entries)
    whole = scratch / "whole"
    shutil.copytree(data, whole)
    taken = _said(["take-in", str(out / "unsent.txt"), "--data", str(whole)], {str(out): "{out}"})
    written["take-in"] = taken
    written["core with the phone's"] = answers(_ask(Host()), _entries(whole))
    written["http with the phone's"] = _served(whole)
    _write_packed(out / "log.jsonl.xz", "".join(json.dumps(entry) + "\n" for entry in _entries(whole)))
    _write_packed(out / "answers.json.xz", json.dumps(written, sort_keys=True, ensure_ascii=False))
    _write_packed(out / "folder.tar.xz", _packed_folder(data))
    for file in (*out.glob("record*.zip"), out / "backup.zip", out / "unsent.txt"):
        _write_packed(file.with_name(file.name + ".xz"), file.read_bytes())
        file.unlink()
    shutil.rmtree(data)
    shutil.rmtree(scratch)
    return 0


def _fill(data: Path, scratch: Path):
    """Fill a data folder: printed labels, paired phones, the story."""
    _run(["labels", "--count", "8", "--out", str(scratch / "labels.svg"), "--data", str(data)])
    folder = DataFolder(data)
    app = create_app(Config(data, BASE))
    with closing(folder.open()) as db:
        rows = db.conn.execute("SELECT code FROM labels ORDER BY code").fetchall()
        printed = [code for (code,) in rows]
        log = story.told(BASE, printed[:4])
        now = log.entries[-1]["event"]["at"]
        for digest, content in log.photos.items():
            photo_store.keep(db, folder.photos, digest, content, now)
        receipt = events.receive(db, log.entries, None, now)
        assert (receipt.stored, len(receipt.refused)) == (len(log.entries), 0), receipt.refused[:1]
        for device, name, role in (
            (story.stories.MARAS_PHONE, "Mara", "bench"),
            (story.stories.OLD_PHONE, "Ivo", "bench"),
            (story.CLERKS_PHONE, "Jo", "counter"),
            (story.NEWER_PHONE, "Lin", "bench"),
        ):
            answer = Phone(app, device).pair_by(make_link(db, BASE, now_ms(), role=role), name)
            assert answer.status_code == 200, answer.get_data(as_text=True)
    _run(["labels", "--void", printed[-1], "--reason", "smeared", "--data", str(data)])
    return log


def _use_phone(data: Path, log, out: Path) -> None:
    """Do half a job on a phone without a network; keep what it holds, and its file of what waits."""
    server = AppServer(data)
    browser = launch()
    try:
        context = browser.new_context()
        page = open_bare(context, server.base)
        start_parts(page)
        page.evaluate("device.setActor('Zoë')")
        page.evaluate("(token) => sync.pair(token, 'Zoë')", server.token())
        page.evaluate("sync.now()")
        page.evaluate("import('/app/unsent-file.js')")
        context.set_offline(True)
        job = _OnThePhone(page)
        job.begin(part="ST-0880")
        job.test("rear-left-outer")
        last = page.evaluate("records().then((all) => all[all.length - 1])")
        job.fact("corrected", device=last["device"], seq=last["seq"], reason="The wrong side, ä€😀.")
        job.test(BAD)
        job.pictures(list(log.photos.values())[:4])
        fitted = {BAD: home(NEXT), NEXT: home(BAD)}
        job.fact("move_started", move="exchange", fitted=fitted, position="", reason="To see what follows")
        job.guided()
        job.test(NEXT)
        assert len(page.evaluate("records().then((all) => all.filter((each) => each.unsent))")) > 20
        _write_packed(out / "phone.json.xz", json.dumps(page.evaluate(_DUMP), sort_keys=True))
        (out / "unsent.txt").write_text(page.evaluate(_UNSENT), "utf-8")
    finally:
        browser.close()
        server.close()


def _keep_files(data: Path, out: Path) -> None:
    """Write a backup and the records of a sensor, of one that was returned, and of a job."""
    with closing(DataFolder(data).open()) as db:
        db.conn.execute("VACUUM")
    _run(["backup", str(out / "backup.zip"), "--data", str(data)])
    named = {
        "record_of_unit.zip": story._unit_of("Blue estate", "rear-left-inner"),
        "record_of_returned.zip": story._unit_of("Blue estate", "rear-right-outer"),
        "record_of_job.zip": story.stories.STAYS,
    }
    for name, what in named.items():
        _run(["record", what, "--out", str(out / name), "--data", str(data)])


def _verified(data: Path, out: Path, scratch: Path) -> list[dict]:
    """Say what `verify` says of each file, as it is and with one byte changed."""
    said = []
    names = {str(data): "{folder}", str(out): "{out}", str(scratch): "{out}"}
    said.append({"file": "folder", "changed": None, **_said(["verify", str(data)], names)})
    for file in sorted(path for path in out.iterdir() if path.suffix in (".zip", ".txt")):
        content = file.read_bytes()
        said.append({"file": file.name, "changed": None, **_said(["verify", str(file)], names)})
        for share in (3, 50, 97):
            at = len(content) * share // 100
            changed = scratch / file.name
            changed.write_bytes(content[:at] + bytes([content[at] ^ 1]) + content[at + 1 :])
            said.append({"file": file.name, "changed": at, **_said(["verify", str(changed)], names)})
    return said


def _served(data: Path) -> dict:
    """Return what a server on the folder answers to a phone of the bench and to one of the counter."""
    copy = data.with_name("served")
    shutil.copytree(data, copy)
    app = create_app(Config(copy, BASE))
    host = _ask(Host())
    host("reset", events=_entries(copy))
    state = host("state")
    paths = ["/api/jobs", *(f"/api/jobs/{job}" for job in sorted(state["jobs"]))]
    labelled = [unit for unit in sorted(state["units"]) if state["units"][unit]["code"]]
    paths += [f"/api/units/{state['units'][unit]['code']}" for unit in labelled]
    counter = ["/api/returns/waiting", "/api/returns.csv?from=1773000000000&to=1775000000000"]
    counter += ["/api/search?text=blue%20estate"]
    found = {}
    for role, asked in (("bench", paths), ("counter", counter)):
        phone = Phone(app, f"d00000000000000{'a' if role == 'bench' else 'c'}1")
        with closing(DataFolder(copy).open()) as db:
            phone.pair_by(make_link(db, BASE, now_ms(), role=role))
        for path in asked:
            answer = phone.get(path)
            assert answer.status_code == 200, (path, answer.get_data(as_text=True))
            found[path] = answer.get_data(as_text=True)
    shutil.rmtree(copy)
    return found


def _record_read(file: Path) -> dict:
    """Return what whoever opens a record is shown."""
    found = check(file.read_bytes())
    ask, record = _ask(Host()), found.record
    told = [*stand_ins(record["elsewhere"]), *found.events]
    ask("reset", events=[{"event": event} for event in told])
    named = {name: record[name] for name in ("unit", "jobs", "told", "elsewhere")}
    return {"record": record, "shown": ask("record", **named)}


def _entries(data: Path) -> list[dict]:
    with closing(DataFolder(data).open()) as db:
        return [
            {"event": json.loads(body), "hash": digest}
            for body, digest in db.conn.execute("SELECT body, hash FROM events ORDER BY n").fetchall()
        ]


def _ask(host):
    def ask(op, **arguments):
        answer = json.loads(host.call(json.dumps({**arguments, "op": op}, ensure_ascii=False)))
        assert answer["ok"], answer
        return answer["value"]

    return ask


def _run(arguments: list[str]) -> None:
    assert cli.main(arguments) == 0, arguments


def _said(arguments: list[str], names: dict[str, str]) -> dict:
    """Run a command; return its exit code and words, paths as names."""
    words = io.StringIO()
    with contextlib.redirect_stdout(words), contextlib.redirect_stderr(words):
        try:
            code = cli.main(arguments)
        except zipfile.BadZipFile as error:  # that commit let it through
            code, words = None, io.StringIO(str(error))
    text = words.getvalue()
    for path, name in names.items():
        text = text.replace(path, name)
    return {"code": code, "words": text}


def _write_packed(file: Path, content: str | bytes) -> None:
    content = content if isinstance(content, bytes) else content.encode()
    file.write_bytes(lzma.compress(content, preset=9 | lzma.PRESET_EXTREME))


def _packed_folder(folder: Path) -> bytes:
    file = io.BytesIO()
    with tarfile.open(fileobj=file, mode="w") as archive:
        archive.add(folder, ".")
    return file.getvalue()


if __name__ == "__main__":
    sys.exit(main())
