"""Batches of labels: on record before they are printed, never twice, and what became of each."""

from contextlib import closing

import pytest

from server.commands.cli import main
from server.core.codes import labels
from server.keeping import new_file
from server.labelling import store
from server.labelling.states import FREE
from server.labelling.states import ON
from server.labelling.states import VOID
from server.labelling.states import batches
from server.labelling.states import labels_of
from server.log import sync
from server.storage import DataFolder
from server.storage.migrations import number_labels_out_of_use
from tests.said import refusing
from tests.server.phone import BASE
from tests.server.phone import job_opened

UNIT = "v00000000000a.rear-left"


@pytest.fixture
def fresh_db(tmp_path):
    folder = DataFolder(tmp_path / "labels")
    folder.prepare()
    with closing(folder.open()) as db:
        yield db


def counted(db):
    """What the newest batch holds, by state."""
    return tuple(batches(db)[0].counts[state] for state in (FREE, ON, VOID))


def labelled(phone, code, unit=UNIT):
    """A phone puts a label on a sensor and sends it."""
    phone.record(kind="unit_labelled", data={"unit": unit, "code": code, "how": "scanned"})
    phone.synced()


@pytest.fixture
def working(phone):
    """A phone with a job, whose sensors take labels."""
    phone.record(kind="job_opened", data=job_opened())
    phone.synced()
    return phone


def test_codes_are_never_issued_twice(fresh_db):
    printings = [store.issue(fresh_db, 400, BASE, {}, n) for n in range(5)]

    issued = [code for printing in printings for code in printing.codes]
    assert len(set(issued)) == 2000
    assert all(labels.may_be_issued(code) for code in issued)
    assert fresh_db.table("labels").count == 2000
    assert [batch.id for batch in batches(fresh_db)] == [5, 4, 3, 2, 1]


def test_codes_on_phones_are_not_issued_again(phone, db, monkeypatch):
    written = store.issue(db, 1, BASE, {}, 0).codes[0]
    db.conn.execute("DELETE FROM labels")
    db.conn.commit()
    phone.record(kind="unit_labelled", data={"unit": "u00000000000a", "code": written, "how": "typed"})
    phone.synced()
    first = [labels.PRINT_FIRST.index(written[0])]
    body = first + [labels.ALPHABET.index(character) for character in written[1:4]]
    other = [0, 1, 2, 3] * 40
    monkeypatch.setattr("secrets.token_bytes", lambda count: bytes(body + other + list(range(200))))

    assert written not in store.issue(db, 1, BASE, {}, 0).codes


def test_codes_that_a_phone_without_a_server_printed_are_not_issued_again(phone, db, monkeypatch):
    dice = list(range(256)) * 16
    printed = labels.codes_from(dice, 200)
    assert 0 < len(printed) < 200  # all that these dice ever give
    monkeypatch.setattr("secrets.token_bytes", lambda count: bytes(dice[:count]))
    data = {"batch": "b1", "codes": printed, "host": "files.example.org", "layout": {}}
    phone.record(kind="labels_printed", job=None, data=data)
    phone.synced()
    with refusing("count: found 3, wanted at most 0"):
        store.issue(db, 3, BASE, {}, 1)


def test_when_the_codes_run_out_it_says_so(fresh_db, monkeypatch):
    monkeypatch.setattr("secrets.token_bytes", lambda count: bytes(count))

    with refusing(r"count: found 50, wanted at most \d: no more codes"):
        store.issue(fresh_db, 50, BASE, {}, 0)
    assert fresh_db.table("labels").count == 0
    assert fresh_db.table("label_batches").count == 0


def test_a_label_is_on_paper_on_a_sensor_void(working, db):
    codes = store.issue(db, 5, BASE, {}, 7).codes
    assert counted(db) == (5, 0, 0)

    labelled(working, codes[0])
    assert counted(db) == (4, 1, 0)

    store.void(db, 1, codes[1:2], "torn", 9)
    assert counted(db) == (3, 1, 1)

    working.record(kind="label_voided", data={"unit": UNIT, "code": codes[0], "reason": "torn"})
    working.synced()
    assert counted(db) == (3, 0, 2)
    found = {label.code: label for label in labels_of(db, 1)}
    assert found[codes[0]] == (codes[0], VOID, UNIT, None)
    assert found[codes[1]] == (codes[1], VOID, None, "torn")
    assert found[codes[2]] == (codes[2], FREE, None, None)

    labelled(working, codes[2])  # the replacement; the sensor's trail has both
    assert counted(db) == (2, 1, 2)
    assert labels_of(db, 1)[[label.code for label in labels_of(db, 1)].index(codes[2])].unit == UNIT


def test_a_phone_hears_of_all_labels_out_of_use_once_there_are_more_than_it_knows(working, db):
    codes = sorted(store.issue(db, 3, BASE, {}, 7).codes)
    assert "labels_out" not in working.sync(labels_out=0).get_json()
    store.void(db, 1, codes[:1], "torn", 9)
    assert working.sync(labels_out=0).get_json()["labels_out"] == codes[:1]
    assert "labels_out" not in working.sync(labels_out=1).get_json()
    store.void(db, 1, codes[1:2], "torn", 9)
    assert working.sync(labels_out=1).get_json()["labels_out"] == codes[:2]
    assert "labels_out" not in working.synced()  # an app from before does not ask
    assert working.sync(labels_out="1").status_code == 400


def test_a_phone_hears_only_of_the_labels_behind_those_that_it_knows(working, db, monkeypatch):
    codes = store.issue(db, 6, BASE, {}, 7).codes
    asked = {"labels_out": 0, "labels_out_upto": 0}
    first = working.sync(**asked).get_json()
    assert "labels_out" not in first
    assert "labels_out_after" not in first
    store.void(db, 1, codes[3:4], "torn", 9)
    store.void(db, 1, codes[:2], "torn", 3)  # the server's clock went back
    told = working.sync(**asked).get_json()
    assert (told["labels_out_after"], told["labels_out_upto"], told["more"]) == (
        [codes[3], *codes[:2]],
        3,
        False,
    )
    assert "labels_out" not in told
    told = working.sync(labels_out=1, labels_out_upto=1).get_json()
    assert (told["labels_out_after"], told["labels_out_upto"]) == (codes[:2], 3)
    assert "labels_out_after" not in working.sync(labels_out=3, labels_out_upto=3).get_json()

    monkeypatch.setattr(sync, "MOST_LABELS_OUT", 2)
    told = working.sync(**asked).get_json()
    assert (told["labels_out_after"], told["labels_out_upto"], told["more"]) == (
        [codes[3], codes[0]],
        2,
        True,
    )
    assert working.sync(labels_out_upto="1").status_code == 400


def test_labels_that_went_out_of_use_before_they_were_numbered_get_their_numbers(fresh_db):
    codes = sorted(store.issue(fresh_db, 4, BASE, {}, 7).codes)
    fresh_db.conn.execute("DROP INDEX labels_out_of_use")
    fresh_db.conn.execute("ALTER TABLE labels DROP COLUMN void_number")
    for at, code in ((9, codes[0]), (5, codes[3]), (9, codes[1])):
        fresh_db.conn.execute(
            "UPDATE labels SET void_at = ?, void_reason = 'torn' WHERE code = ?", [at, code]
        )
    fresh_db.conn.commit()
    number_labels_out_of_use(fresh_db)
    fresh_db.conn.commit()
    assert store.voided_after(fresh_db, 0, 9) == ([codes[3], codes[0], codes[1]], 3, False)
    store.void(fresh_db, 1, codes[2:3], "torn", 9)
    assert store.voided_after(fresh_db, 3, 9) == (codes[2:3], 4, False)


def test_a_correction_puts_a_label_back_on_paper(working, db):
    code = store.issue(db, 1, BASE, {}, 0).codes[0]
    entry = working.record(kind="unit_labelled", data={"unit": UNIT, "code": code, "how": "scanned"})
    working.synced()
    assert counted(db) == (0, 1, 0)
    event = entry["event"]
    working.record(
        kind="corrected", data={"device": event["device"], "seq": event["seq"], "reason": "wrong sensor"}
    )
    working.synced()
    assert counted(db) == (1, 0, 0)


def test_two_labels_on_one_sensor_are_both_on_it(working, new_phone, db):
    codes = store.issue(db, 2, BASE, {}, 0).codes
    labelled(working, codes[0])
    labelled(new_phone("d00000000000000bb", "Noor"), codes[1])
    assert counted(db) == (0, 2, 0)


def test_a_batch_is_written_again_only_as_far_as_it_is_on_paper(working, db):
    printing = store.issue(db, 4, BASE, {"roll": "30x20"}, 0)
    labelled(working, printing.codes[0])
    store.void(db, 1, printing.codes[1:2], "torn", 0)

    again = store.again(db, 1, 5)

    assert sorted(again.codes) == sorted(printing.codes[2:])
    assert (again.batch, batches(db)[0].printed) == (1, 2)
    store.void(db, 1, [], "roll lost", 0)
    assert counted(db) == (0, 1, 3)
    with refusing("batch: found 1, wanted one with a label left"):
        store.again(db, 1, 6)
    with refusing("batch: found 9, wanted the number of a batch"):
        store.again(db, 9, 6)


@pytest.mark.parametrize(
    ("which", "said"),
    [
        (0, "on a sensor"),
        (1, "void"),
        (None, "of another batch"),
    ],
)
def test_only_a_label_on_paper_goes_out_of_use_here(working, db, which, said):
    codes = store.issue(db, 3, BASE, {}, 0).codes
    labelled(working, codes[0])
    store.void(db, 1, [codes[1]], "torn", 0)
    code = "JRMMA" if which is None else codes[which]

    with refusing(f"code: found .*{said}.* wanted one on no sensor"):
        store.void(db, 1, [codes[2], code], "torn", 0)
    assert counted(db) == (1, 1, 1)
    with refusing("reason"):
        store.void(db, 1, [codes[2]], " ", 0)


# --- the command


@pytest.fixture
def run(tmp_path, run_on_nothing):
    """Runs the command on a data folder; returns its status and what it said."""
    DataFolder(tmp_path / "d").prepare()
    return run_on_nothing


@pytest.fixture
def run_on_nothing(tmp_path, capsys):
    """Runs the command where there is no data folder yet; returns its status and what it said."""

    def command(*arguments):
        status = main(["labels", "--data", str(tmp_path / "d"), *arguments])
        said = capsys.readouterr()
        return status, said.out + said.err

    return command


@pytest.mark.parametrize("name", ["sheet.svg", "sheet.pdf"])
def test_the_command_writes_the_file_and_names_it(tmp_path, run, name):
    out = tmp_path / name

    status, said = run("--count", "3", "--out", str(out))

    assert status == 0
    assert out.stat().st_size > 1000
    assert str(out) in said
    assert "http://localhost:8765" in said
    assert "Warning" not in said


def test_more_labels_than_a_sheet_holds_make_numbered_svg_files(tmp_path, run):
    run("--count", "120", "--out", str(tmp_path / "sheet.svg"))

    names = sorted(file.name for file in tmp_path.glob("*.svg"))
    assert names == ["sheet-2.svg", "sheet-3.svg", "sheet.svg"]


def test_the_command_warns_with_the_rule_when_labels_are_too_small(tmp_path, run):
    out = str(tmp_path / "roll.pdf")
    status, said = run("--count", "2", "--roll", "30x20", "--dpi", "203", "--out", out)
    assert status == 0
    assert "Warning: Too small to scan from 20 cm" in said
    assert "qrcode.com" in said
    out = str(tmp_path / "close.pdf")
    _, said = run("--count", "2", "--roll", "30x20", "--distance", "15", "--out", out)
    assert "Warning" not in said


def test_the_command_refuses_modules_of_one_dot_before_a_label_is_used_up(tmp_path, run):
    fine = ("--count", "2", "--roll", "8x40", "--distance", "5", "--out", str(tmp_path / "roll.pdf"))

    status, said = run(*fine)

    assert (status, said.count("\n")) == (2, 1)
    assert "modules of 1 dot" in said
    assert not (tmp_path / "roll.pdf").exists()
    assert run("--count", "1", "--out", str(tmp_path / "first.pdf"))[1].startswith(
        str(tmp_path / "first.pdf")
    )
    assert [line.split()[3] for line in run("--list")[1].splitlines()[1:]] == ["1"]
    status, said = run(*fine, "--force")
    assert status == 0
    assert "Warning: Too fine for this printer" in said


def test_the_command_lists_batches_and_takes_labels_out_of_use(tmp_path, run):
    out = tmp_path / "sheet.pdf"
    run("--count", "3", "--out", str(out), "--grid", "3x8")
    run("--count", "2", "--out", str(tmp_path / "roll.pdf"), "--roll", "50x30")
    with closing(DataFolder(tmp_path / "d").open()) as db:
        (code,) = db.conn.execute("SELECT code FROM labels WHERE batch = 1 LIMIT 1").fetchone()

    assert run("--void", labels.shown(code), "--reason", "torn") == (0, "1 label of batch 1 is out of use.\n")
    assert run("--void", "2", "--reason", "lost") == (0, "2 labels of batch 2 are out of use.\n")
    _, said = run("--list")

    heads, second, first = (line.split() for line in said.splitlines())
    assert heads[0] == "batch"
    assert (second[0], *second[3:7]) == ("2", "2", "0", "0", "2")
    assert (first[0], *first[3:7]) == ("1", "3", "2", "0", "1")
    assert "Roll, labels of 50 x 30 mm, 203 dpi" in said


def test_a_batch_is_on_record_before_its_file_and_its_rest_can_be_had(tmp_path, run, monkeypatch):
    """A crash, or a full disk, between the two: the codes are gone from the pool, the labels are not lost."""

    def power_cut(*args):
        raise OSError(28, "No space left on device")

    out = tmp_path / "sheet.pdf"
    with monkeypatch.context() as broken:
        broken.setattr(new_file, "sync_file", power_cut)
        status, _ = run("--count", "3", "--out", str(out))
    assert status == 2
    assert "its file was never finished: --again 1 writes it" in run("--list")[1]
    with closing(DataFolder(tmp_path / "d").open()) as db:
        kept = {code for (code,) in db.conn.execute("SELECT code FROM labels")}
    assert len(kept) == 3

    run("--count", "50", "--out", str(out))
    with closing(DataFolder(tmp_path / "d").open()) as db:
        later = {code for (code,) in db.conn.execute("SELECT code FROM labels WHERE batch = 2")}
    assert not kept & later

    status, said = run("--again", "1", "--out", str(tmp_path / "again.svg"))
    assert status == 0
    assert "destroy what was printed of them" in said
    drawing = (tmp_path / "again.svg").read_text()
    assert all(labels.shown(code) in drawing for code in kept)
    assert "never finished" not in run("--list")[1]


@pytest.mark.parametrize(
    ("way", "there"),
    [
        (["--count", "120"], "sheet.svg"),
        (["--count", "120"], "sheet-3.svg"),  # 120 labels take three sheets
        (["--again", "1"], "sheet.svg"),
    ],
)
def test_a_file_that_is_there_is_not_written_over_and_no_label_is_used_up(tmp_path, run, way, there):
    """The sheet may be the only trace of labels that nobody printed yet."""
    assert run("--count", "1", "--out", str(tmp_path / "first.pdf"))[0] == 0
    (tmp_path / there).write_text("mine")

    status, said = run(*way, "--out", str(tmp_path / "sheet.svg"))

    assert (status, len(said.splitlines())) == (2, 1)
    assert f"{tmp_path / there} exists, and nothing is overwritten" in said
    assert (tmp_path / there).read_text() == "mine"
    assert [each.name for each in tmp_path.glob("*.svg")] == [there]
    with closing(DataFolder(tmp_path / "d").open()) as db:
        assert db.table("labels").count == 1


def test_a_link_that_leads_nowhere_is_not_written_over(tmp_path, run):
    out = tmp_path / "sheet.svg"
    out.symlink_to(tmp_path / "elsewhere.svg")
    status, said = run("--count", "1", "--out", str(out))
    assert (status, "nothing is overwritten" in said) == (2, True)
    assert out.is_symlink()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--count", "0", "--out", "a.svg"], "--count 0"),
        (["--count", "5000", "--out", "a.svg"], "--count 5000"),
        (["--count", "3", "--out", "a.png"], "neither .svg nor .pdf"),
        (["--count", "3", "--out", "/nowhere/a.svg"], "does not exist"),
        (["--count", "3"], "--out is missing"),
        (["--count", "3", "--out", "a.svg", "--paper", "a5"], 'paper: found "a5", wanted one of a4, letter'),
        (["--count", "3", "--out", "a.svg", "--grid", "9"], 'grid: found "9"'),
        (
            ["--count", "3", "--out", "a.svg", "--roll", "30x20", "--precut"],
            'precut: found "yes", wanted noth',
        ),
        (["--count", "3", "--out", "a.svg", "--distance", "3"], 'distance: found "3", wanted 5 to 100 cm'),
        (["--count", "3", "--out", "a.svg"], "/d holds no data"),
        (["--again", "1", "--out", "a.svg"], "holds no data"),
        (["--list"], "holds no data"),
        (["--void", "1"], "holds no data"),
    ],
)
def test_what_cannot_be_done_is_refused_in_one_line(tmp_path, run_on_nothing, arguments, said):
    status, error = run_on_nothing(*arguments)

    assert status == 2
    assert said in error
    assert error.count("\n") == 1
    assert not (tmp_path / "d").exists()


@pytest.mark.parametrize(
    ("what", "said"),
    [
        ("JRMMA", "was not printed here"),
        ("AAAAA", "the check character does not fit"),
        ("77", "batch: found 77, wanted the number of a batch"),
        ("1", "reason: found"),
    ],
)
def test_a_label_that_is_none_is_not_taken_out_of_use(tmp_path, run, what, said):
    run("--count", "1", "--out", str(tmp_path / "a.svg"))
    status, error = run("--void", what)
    assert (status, error.count("\n")) == (2, 1)
    assert said in error


# --- what the print screen asks


def test_the_plan_says_what_comes_out_and_what_will_be_hard_to_read(phone):
    plan = phone.get("/api/labels/plan").get_json()
    assert (plan["a_page"], plan["warnings"]) == (56, [])
    assert "level H" in plan["summary"]
    plan = phone.get("/api/labels/plan?roll=30x20&distance=20").get_json()
    assert "Too small to scan from 20 cm" in plan["warnings"][0]
    assert "qrcode.com" in plan["rule"]
    assert phone.get("/api/labels/plan?roll=30").get_json()["fault"].startswith('roll: found "30", wanted')
    fine = phone.get("/api/labels/plan?roll=8x40&distance=20").get_json()
    assert (fine["may_force"], "modules of 1 dot" in fine["fault"]) == (True, True)
    assert phone.get("/api/labels/plan?roll=8x40&distance=20&force=yes").get_json()["fault"] == ""
    picture = phone.get("/api/labels/preview.svg?roll=30x20")
    assert (picture.status_code, picture.mimetype) == (200, "image/svg+xml")
    assert "A23-45" in picture.text


def test_new_labels_come_as_files_and_are_on_record(phone, db):
    made = phone.post("/api/labels", {"count": 3, "format": "svg", "roll": "50x30"}).get_json()
    assert [file["name"] for file in made["files"]] == ["labels-1.svg", "labels-1-2.svg", "labels-1-3.svg"]
    (batch,) = phone.get("/api/labels").get_json()["batches"]
    assert (batch["id"], batch["counts"], batch["finished"]) == (1, {FREE: 3, ON: 0, VOID: 0}, True)
    assert batch["layout"] == "Roll, labels of 50 x 30 mm, 203 dpi"
    shown = phone.get("/api/labels/1").get_json()["labels"]
    gone = phone.post("/api/labels/1/void", {"codes": [shown[0]["code"]], "reason": "torn"}).get_json()
    assert gone == {"void": [shown[0]["code"]]}
    forced = phone.post("/api/labels", {"count": 1, "roll": "8x40", "force": "yes"}).get_json()
    assert forced["labels"] == 1
    again = phone.post("/api/labels/1/again", {"format": "pdf"}).get_json()
    assert (again["labels"], [file["mime"] for file in again["files"]]) == (2, ["application/pdf"])


@pytest.mark.parametrize(
    ("path", "body", "field"),
    [
        ("", {}, "count"),
        ("", {"count": 0}, "count"),
        ("", {"count": 2001}, "count"),
        ("", {"count": True}, "count"),
        ("", {"count": 1, "format": "png"}, "format"),
        ("", {"count": 21, "format": "svg", "roll": "50x30"}, "format"),
        ("", {"count": 1, "paper": ["a4"]}, "paper"),
        ("", {"count": 1, "roll": "1x1"}, "roll"),
        ("", {"count": 1, "roll": "8x40"}, "label"),
        ("", {"count": 1, "distance": "near"}, "distance"),
        ("/1/again", {}, "batch"),
        ("/1/void", {"codes": [], "reason": "x"}, "batch"),
        ("/1/void", {"codes": "JRMMA", "reason": "x"}, "codes"),
    ],
)
def test_what_cannot_be_printed_is_refused_with_field_found_and_wanted(phone, db, path, body, field):
    answer = phone.post(f"/api/labels{path}", body)
    assert answer.status_code == 400
    assert answer.get_json()["error"]["field"] == field
    assert db.table("labels").count == 0


def test_labels_are_for_paired_phones_alone(stranger):
    for path in ("", "/plan", "/preview.svg", "/1"):
        assert stranger.get(f"/api/labels{path}").status_code == 401
    assert stranger.post("/api/labels", {"count": 1}).status_code == 401


def test_labels_of_the_first_version_are_one_more_batch(fresh_db):
    """Rows as that version wrote them: no layout, no printing on record."""
    fresh_db.conn.execute("INSERT INTO label_batches (id, made_at, base) VALUES (1, 5, ?)", [BASE])
    fresh_db.conn.execute("INSERT INTO labels (code, batch) VALUES ('JRMMA', 1)")
    fresh_db.conn.commit()
    (batch,) = batches(fresh_db)
    assert (batch.counts, batch.printed, batch.finished) == ({FREE: 1, ON: 0, VOID: 0}, 1, True)
    assert batch.options == {}
    assert store.again(fresh_db, 1, 0).codes == ["JRMMA"]
