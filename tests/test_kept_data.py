"""What commit 2a35a3b kept opens in this one: same entries, same state, same answers, same verdicts.

tests/kept/made_by_2a35a3b/README.md says what there is. A hash, a state, a figure, a verdict and an exit code
never change. A view may get a field more, and the state a key more (`printed` came later), so the fields that
there were are compared; what a field said then, it says now, word for word, but for what stands in REWORDED.
Since clear has to survive its assumptions, more clean tests may be expected for a proof.
"""

import csv
import hashlib
import io
import json
import zipfile
from contextlib import closing

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands.cli import main
from server.core.log import canon
from server.core.log import envelope
from server.core.parts.parking_sensor import PARKING_SENSOR
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.browser_support import Complaints
from tests.browser_support import launch
from tests.hosts import Core
from tests.kept import kept_files
from tests.kept import questions
from tests.said import english
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.static.app_server import AppServer
from tests.static.phone_parts import open_bare

PHONE_JOB = "j00000000e4a7"
LOGS = {"core": -1, "core with the phone's": None}
FILES = ["backup.zip", "record_of_job.zip", "record_of_returned.zip", "record_of_unit.zip", "unsent.txt"]
# Puts a dump of make_at_2a35a3b.py back: the database as it was then, and what lay beside it.
FILL = """async ({ name, version, stores, localStorage: beside }) => {
  const back = (value) => {
    if (Array.isArray(value)) return value.map(back);
    if (value === null || typeof value !== 'object') return value;
    if (value.$noise) return new ArrayBuffer(value.$noise);
    if (value.$bytes) return Uint8Array.from(atob(value.$bytes), (c) => c.charCodeAt(0)).buffer;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, back(inner)]));
  };
  const done = (request) => new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const opening = indexedDB.open(name, version);
  opening.onupgradeneeded = () => {
    for (const { name, keyPath, autoIncrement, indexes } of stores) {
      const store = opening.result.createObjectStore(name, { keyPath, autoIncrement });
      for (const index of indexes) store.createIndex(index.name, index.keyPath, index);
    }
  };
  const db = await done(opening);
  for (const { name, keyPath, rows } of stores) {
    const store = db.transaction(name, 'readwrite').objectStore(name);
    await Promise.all(rows.map(([key, value]) =>
      done(keyPath === null ? store.put(back(value), key) : store.put(back(value)))));
  }
  db.close();
  for (const [key, value] of Object.entries(beside)) localStorage.setItem(key, value);
}"""


def log(name):
    """Return the entries that an answer of then is about."""
    whole = kept_files.entries()
    return whole if LOGS[name] is None else whole[: len(whole) - kept_files.unsent()]


# Reasons that the app gives: an entry has a code now, then it had these words.
GIVEN = {
    "stopped-by-hand": "stopped by hand",
    "checks-done": "all checks done",
    "quiet-in-use": "quiet at the pole",
    "tested-there": "tested there",
    "spare-stays": "the spare stays",
    "left-empty": "left empty",
    "back-home": "back home",
    "to-be-sure": "to be sure",
    "no-fault-shown": "no fault shown",
    "no-repair": "closed without a repair",
}

# A small button of some steps then; now it stands among the `ways` of every step, and asks why.
NOW_IN_WAYS = "Close without a repair"

# A job whose verdict is another now. Then the code of a sensor that got mixed up spoke twice for it, and that
# ruled out the way in which the fault had gone along; and its trail had a line more for each dead label.
MIXED_UP = "j553292ac2b20"
PROVEN_BAD = "u6861b725bb37"  # so its history condemns it now
CONCLUDED = (
    "reasoning", "replaced", "found", "headline", "sure", "clear", "probability", "sentence", "standing",
    "chance", "carries", "runner_up",
)  # fmt: skip

# Where a test was not heard the step then was the same test for ever; now what keeps it silent is looked for.
NEW_STEP = "sounder."
# Two places on record of a sensor stood beside the step; now settling them is the step.
SETTLING = "settle"


UNIT_TWICE = ("(0.2 V)", "(0.2 V Ω)")  # a figure typed with a unit is told without that of its check since
SET_ASIDE = ("is set aside. ", "is set aside: ")  # the reason begins with a capital
CAUTION_READ = "Caution read: "
MOVED = " now sits at "  # a sensor that stayed at another position is told since


def as_then(now, then):
    """Return `now` without the fields that came since, so that it can be compared with `then`."""
    if isinstance(now, dict) and isinstance(then, dict):
        if str(now.get("id")).startswith(NEW_STEP) and then.get("id") == "test":
            return then
        if set(now) == {"kind", "data"}:
            now = {"kind": now["kind"], "data": given_then(now["data"], then["data"])}
        if {"clean_in_a_row", "more"} <= set(now) and then.get("more"):
            now = expected_then(now, then)
        if "also" in now and "also" in then:
            now = {**now, "also": now["also"] + [way for way in then["also"] if way["words"] == NOW_IN_WAYS]}
        if isinstance(now.get("apart"), dict) and isinstance(then.get("apart"), dict):
            now = {**now, "apart": apart_then(now["apart"], then["apart"])}
        if isinstance(now.get("replaced"), list) and "replaced" in then:
            now = {**now, "replaced": [said for said in now["replaced"] if MOVED not in said]}
        if {"unit", "points"} <= set(now):
            now = begun_then(now, then)
        if MIXED_UP in (now.get("job"), now.get("id")):
            now = concluded_then(now, then)
        if now.get("id") == PROVEN_BAD and "history" in now:
            assert now["history"]["condemned"]
            now = {**now, "history": then["history"]}
        if MIXED_UP in now and isinstance(now[MIXED_UP], dict):
            now = {**now, MIXED_UP: concluded_then(now[MIXED_UP], then[MIXED_UP])}
        same = {key: as_then(now[key], then[key]) for key in now if key in then}
        if str((now.get("step") or {}).get("id")).startswith(SETTLING):
            assert now["disputes"]
            return {**same, **{name: then[name] for name in ("step", "stage", "stages", "cautions", "moves")}}
        return {**same, **advice(now, then)} if {"step", "moves"} <= set(then) else same
    if isinstance(now, list) and isinstance(then, list) and len(now) == len(then):
        return [as_then(mine, theirs) for mine, theirs in zip(now, then, strict=True)]
    return caution_then(now.replace(*UNIT_TWICE).replace(*SET_ASIDE)) if isinstance(now, str) else now


def caution_then(said):
    """Return a sentence with the id of a caution that was read, which stood there in place of its words."""
    ids = {f"{CAUTION_READ}{english(each.short)}.": name for name, each in PARKING_SENSOR.cautions.items()}
    return f"{CAUTION_READ}{ids[said]}." if said in ids else said


def concluded_then(now, then):
    """Return what is said of the job with a mix-up with what was concluded then; its tests are those."""
    taken = [name for name in CONCLUDED if name in then]
    if isinstance(now.get("trail"), dict):
        assert readings(now["trail"]) == readings(then["trail"])
        taken.append("trail")
    return {**now, **{name: then[name] for name in taken}}


def readings(trail):
    """Return each reading of a trail, whichever line it is on."""
    points = [point for line in trail["lines"] for point in line["points"] if point["position"]]
    return sorted((point["test"], point["position"], point["mark"]) for point in points)


def begun_then(line, then):
    """Return a line of a trail as it began then: in the hand, before its unit had come."""
    early = [point for point in then["points"] if point["test"] < line["points"][0]["test"]]
    assert [point for point in early if point["position"]] == []
    return {**line, "points": early + line["points"]}


def advice(now, then):
    """Return which moves were proposed then: they get better, and the golden files hold those of today."""
    moving = "move" in (now["step"]["id"], then["step"]["id"])
    return {"moves": then["moves"]} | ({"step": then["step"]} if moving else {})


def apart_then(now, then):
    """Return the move that told a conclusion from its runner-up then; by now a check counts all of its round.

    Another move may be the shorter way since, but not to other conclusions.
    """
    assert set(now) == set(then)
    assert {result["then"] for result in now["results"]} == {result["then"] for result in then["results"]}
    return then


def expected_then(now, then):
    """Return a proof with the clean tests expected then; to survive its assumptions takes no fewer."""
    assert now["more"] >= then["more"]
    said = now["sentence"].replace(f"About {now['more']} more", f"About {then['more']} more")
    return {**now, "more": then["more"], "sentence": said}


def given_then(now, then):
    """Return the data of a draft as they were then; a move shows its reason, its entry has none now."""
    said = {name: GIVEN.get(value, value) if isinstance(value, str) else value for name, value in now.items()}
    if said.get("move") and said["reason"] == "":
        said["reason"] = then["reason"]
    return said


def in_codes(unit):
    """Return what a record tells of a unit now; then words stood beside the codes, or in their place."""
    tests = [{name: test[name] for name in ("job", "n", "at", "mark")} for test in unit["tests"]]
    lost = [{name: each[name] for name in ("at", "count")} for each in unit["lost"]]
    told = {name: unit[name] for name in unit if name != "elsewhere"}
    return {**told, "tests": tests, "lost": lost}


# What the state has since stories that contradict are told in their order: in whatever has this field.
SINCE = {
    "what": {"kind", "n", "then", "instead"},
    "heard": {"n", "actor", "apart", "told"},
    "reopened": {"entries", "phones"},
}


def without_order(value):
    """Return a state without what it keeps of the order and the last entry of each phone."""
    if isinstance(value, list):
        return [without_order(each) for each in value]
    if not isinstance(value, dict):
        return value
    added = set().union(*(names for field, names in SINCE.items() if field in value))
    kept = {name: without_order(each) for name, each in value.items() if name not in added}
    if kept.get("reopened"):
        kept["reopened"] = kept["reopened"]["went_on"]["event"]
    return kept


def state_sha256(now, then):
    """Return the hash of a state, of the keys that there were; why an entry is not understood was a text."""
    return canon.sha256_hex(canon.dumps(english(without_order({key: now[key] for key in then}))))


def stored(folder):
    """Return the log of a data folder in its order."""
    with closing(DataFolder(folder).open()) as db:
        rows = db.conn.execute("SELECT body, hash FROM events ORDER BY n").fetchall()
    return [{"event": json.loads(body), "hash": digest} for body, digest in rows]


def run(capsys, folder, *arguments):
    """Run a command; return its exit code and words, with paths as the answers have them."""
    capsys.readouterr()
    code = main([str(argument) for argument in arguments])
    said = capsys.readouterr()
    return code, (said.out + said.err).replace(str(folder), "{out}")


def served(folder, paths):
    """Return what a server on the folder answers to a phone of the bench and to one of the counter."""
    app = create_app(Config(folder, BASE))
    phones = {}
    for role in ("bench", "counter"):
        phones[role] = Phone(app, "d00000000000000a1" if role == "bench" else "d00000000000000c1")
        with closing(DataFolder(folder).open()) as db:
            phones[role].pair_by(make_link(db, BASE, now_ms(), role=role))
    found = {}
    for path in paths:
        role = "counter" if "/returns" in path or "/search" in path else "bench"
        answer = phones[role].get(path)
        assert answer.status_code == 200, (path, answer.get_data(as_text=True))
        found[path] = answer.get_data(as_text=True)
    return found


def parsed(answers):
    """Return what each answer says; which cells of a table are quoted says nothing (RFC 4180, section 2)."""
    return {
        path: json.loads(text)
        if text[0] in "{["
        else list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline="")))
        for path, text in answers.items()
    }


def test_each_entry_has_the_hash_that_it_had():
    assert len(kept_files.entries()) > 270
    for entry in kept_files.entries():
        assert envelope.hash_of(entry["event"]) == entry["hash"]


@pytest.mark.parametrize("name", LOGS)
def test_every_answer_of_the_core_is_that_of_then(name):
    now, then = questions.answers(Core(), log(name)), kept_files.answers()[name]

    assert set(now) == set(then)
    assert state_sha256(now["state"], then["state"]) == then["state sha256"]
    assert {**now["reasoned"], MIXED_UP: then["reasoned"][MIXED_UP]} == then["reasoned"]
    assert now["reasoned"][MIXED_UP]["verdict"]["causes"] == ["unit:" + PROVEN_BAD]
    for told in then["record_told"].values():
        told["unit"] = in_codes(told["unit"])
    for question in sorted(set(then) - {"state", "state sha256", "reasoned"}):
        assert as_then(english(now[question]), then[question]) == then[question], question


def test_both_hosts_conclude_what_was_concluded_then(core):
    then = kept_files.answers()["core with the phone's"]

    core("reset", events=kept_files.entries())
    state = core("state")
    assert state_sha256(state, then["state"]) == then["state sha256"]
    assert questions.sha256(core, state) == canon.sha256_hex(canon.dumps(state))
    jobs = core("jobs")
    assert as_then(jobs, then["jobs"]) == then["jobs"]
    reasoned = {job: core("reasoned", job=job) for job in then["reasoned"] if job != MIXED_UP}
    assert {**reasoned, MIXED_UP: then["reasoned"][MIXED_UP]} == then["reasoned"]
    assert as_then(core("job", job=PHONE_JOB), then["job"][PHONE_JOB]) == then["job"][PHONE_JOB]


def test_one_fact_more_or_less_would_be_seen():
    """The comparison can fail: without its last test, the phone's job has another state and verdict."""
    then = kept_files.answers()["core with the phone's"]
    core = Core()
    now = questions.short(core, kept_files.entries()[:-1])
    assert state_sha256(core("state"), then["state"]) != then["state sha256"]
    assert now["reasoned"][PHONE_JOB] != then["reasoned"][PHONE_JOB]
    assert as_then(now["jobs"], then["jobs"]) != then["jobs"]


def test_a_data_folder_serves_what_it_served(tmp_path):
    folder = kept_files.folder(tmp_path / "folder")
    then = parsed(kept_files.answers()["http"])

    now = parsed(served(folder, then))

    assert {path: as_then(now[path], then[path]) for path in then} == then
    assert stored(folder) == log("core")


def test_a_backup_is_restored_to_the_same_log(tmp_path, capsys):
    backup = kept_files.file(tmp_path, "backup.zip")

    code, _ = run(capsys, tmp_path, "restore", backup, "--data", tmp_path / "restored")

    assert code == 0
    assert stored(tmp_path / "restored") == log("core")
    assert run(capsys, tmp_path, "verify", tmp_path / "restored")[0] == 0
    code, words = run(capsys, tmp_path, "rebuild", "--data", tmp_path / "restored")
    assert code == 0, words


def test_verify_says_of_the_folder_what_it_said(tmp_path, capsys):
    folder = kept_files.folder(tmp_path / "folder")
    then = next(said for said in kept_files.answers()["verify"] if said["file"] == "folder")
    code, words = run(capsys, tmp_path / "folder", "verify", folder)
    assert (code, words.replace("{out}", "{folder}")) == (then["code"], then["words"])


@pytest.mark.parametrize("name", FILES)
def test_verify_says_of_each_file_what_it_said_altered_or_not(name, tmp_path, capsys):
    asked = [said for said in kept_files.answers()["verify"] if said["file"] == name]
    assert [said["changed"] is None for said in asked] == [True, False, False, False]
    for then in asked:
        file = kept_files.file(tmp_path, name, then["changed"])
        code, words = run(capsys, tmp_path, "verify", file)
        if then["code"] is None:
            assert code == 1, "that commit broke off here with a traceback"
            continue
        if then["changed"] is not None and then["code"] == 0:
            assert code == 1, "that commit took this byte, outside of the files in it, for none that counts"
            continue
        assert code == then["code"]
        wanted = then["words"].replace("{out}/scratch", "{out}")
        # Of an intact record it is said since who sealed it, in a further line.
        assert words.splitlines()[: wanted.count("\n")] == wanted.splitlines()


@pytest.mark.parametrize("name", [name for name in FILES if name.startswith("record")])
def test_a_record_is_sound_and_shows_what_it_showed(core, name):
    """What a phone asks its core of a record; the signature is held against the key by `verify`, above."""
    then = kept_files.answers()["records"][name]
    with zipfile.ZipFile(io.BytesIO(kept_files.content(name))) as archive:
        parts = {each: archive.read(each) for each in archive.namelist()}
    texts = {each: parts[each].decode() for each in parts if not each.startswith("photos/")}
    digests = [[each, hashlib.sha256(parts[each]).hexdigest()] for each in parts]

    found = core("record_check", digests=digests, texts=texts)

    assert (found["fault"], found["later"], found["record"]) == (None, "", then["record"])
    core("reset", events=[{"event": event} for event in found["events"]])
    named = {each: found["record"][each] for each in ("unit", "jobs", "told", "elsewhere")}
    shown = core("record", **named)
    assert as_then(shown, then["shown"]) == then["shown"]


def test_a_phones_file_is_taken_in_and_ends_in_the_state_of_then(tmp_path, capsys):
    folder = kept_files.folder(tmp_path / "folder")
    file = kept_files.file(tmp_path, "unsent.txt")
    answers = kept_files.answers()

    code, words = run(capsys, tmp_path, "take-in", file, "--data", folder)

    assert {"code": code, "words": words} == answers["take-in"]
    assert stored(folder) == kept_files.entries()
    then = parsed(answers["http with the phone's"])
    now = parsed(served(folder, then))
    assert {path: as_then(now[path], then[path]) for path in then} == then


@pytest.fixture
def kept_server(tmp_path):
    """The app on the folder of then."""
    server = AppServer(kept_files.folder(tmp_path / "folder"))
    yield server
    server.close()


@pytest.fixture
def kept_phone(kept_server):
    """A page on the phone of then, with its storage as it was, before the app is opened."""
    browser = launch()
    context = browser.new_context(viewport={"width": 390, "height": 844})
    before = open_bare(context, kept_server.base)
    before.evaluate(FILL, json.loads(kept_files.content("phone.json")))
    before.close()
    page = context.new_page()
    complaints = Complaints(kept_server.base)
    complaints.listen(page)
    yield page
    browser.close()
    assert complaints.heard == []


@pytest.mark.browser
def test_a_phone_shows_its_jobs_and_its_verdict_and_sends_what_waited(kept_server, kept_phone):
    page, then = kept_phone, kept_files.answers()["core with the phone's"]
    verdict = then["job"][PHONE_JOB]["reasoning"]

    page.goto(kept_server.base)
    page.locator(f"a.list-row[href$='#/job/{PHONE_JOB}']").wait_for()
    for job in then["jobs"]["open"] if isinstance(then["jobs"], dict) else then["jobs"]:
        assert page.locator(f"a.list-row[href$='#/job/{job['id']}']").count() == 1
    page.locator(f"a.list-row[href$='#/job/{PHONE_JOB}']").click()
    assert page.locator(".verdict-sentence").inner_text() == verdict["sentence"]

    page.goto(kept_server.link())
    page.get_by_role("button", name="Pair this phone").click()
    page.locator(".pill", has_text="all sent").wait_for(timeout=60_000)
    assert stored(kept_server.data) == kept_files.entries()
    kept = {digest for (digest,) in kept_server.rows("SELECT sha256 FROM photos")}
    named = [entry["event"]["data"].get("sha256") for entry in kept_files.entries()]
    assert kept == {digest for digest in named if digest}
