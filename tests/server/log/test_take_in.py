"""A file of what a phone could not send is taken in once, whole, or refused with the place named."""

import hashlib
import json
import random
from contextlib import closing

import pytest

from server import folded
from server.clock import now_ms
from server.commands.cli import main
from server.core.log import canon
from server.core.log import envelope
from server.keeping.verify.data_folder import FOLDER
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.storage import writing
from tests.server.phone import BASE
from tests.server.phone import JOB
from tests.server.phone import entry_after
from tests.server.phone import entry_of
from tests.server.phone import job_opened
from tests.server.phone import jpeg
from tests.server.signed_phone import Key
from tests.server.signed_phone import SignedPhone
from tests.server.signed_phone import relayed
from tests.unsent_files import unsent_text

DEVICE, OTHER = "d00000000000000aa", "d00000000000000bb"


def entries_of(device, count, job=JOB):
    entries = []
    for number in range(count):
        if number == 0:
            data = job_opened()
            data["vehicle"]["id"] = f"v{job[1:]}"
            entries.append(entry_after(entries, device, "job_opened", data, job))
        else:
            data = {"position": "rear-left", "note": f"ä {number}"}
            entries.append(entry_after(entries, device, "cleaned", data, job))
    return entries


def with_photo(entries, device, photo):
    digest = hashlib.sha256(photo).hexdigest()
    data = {"sha256": digest, "mime": "image/jpeg", "bytes": len(photo), "width": 64, "height": 48,
            "shows": "work", "position": "", "unit": ""}  # fmt: skip
    return [*entries, entry_after(entries, device, "photo_taken", data)]


@pytest.fixture
def data(tmp_path, app):
    """The data folder of a server, which has prepared it."""
    return tmp_path / "data"


@pytest.fixture
def take_in(tmp_path, data, capsys):
    """Writes a text or bytes to a file, lets the command take it in, returns (status, what it said)."""

    def take(content):
        file = tmp_path / "unsent.txt"
        file.write_bytes(content if isinstance(content, bytes) else content.encode())
        status = main(["take-in", str(file), "--data", str(data)])
        said = capsys.readouterr()
        return status, said.out + said.err

    return take


def kept(data):
    """Returns the hashes of the log and the digests of the photos, once the folder was found intact."""
    assert FOLDER.first_fault(data) is None
    with closing(DataFolder(data).open()) as db:
        log = [digest for (digest,) in db.conn.execute("SELECT hash FROM events ORDER BY n")]
        photos = {digest for (digest,) in db.conn.execute("SELECT sha256 FROM photos")}
    return log, photos


def test_entries_of_two_phones_and_their_photos_come_in_whole(take_in, data):
    photo = jpeg()
    mine = with_photo(entries_of(DEVICE, 3), DEVICE, photo)
    others = entries_of(OTHER, 2, "j000000000002")

    status, said = take_in(unsent_text(mine[:2] + others + mine[2:], [photo]))

    assert (status, "6 entries and 1 photo taken in, 0 entries were here already" in said) == (0, True), said
    log, photos = kept(data)
    assert log == [entry["hash"] for entry in mine[:2] + others + mine[2:]]
    assert photos == {hashlib.sha256(photo).hexdigest()}


def test_a_correction_of_a_later_format_in_a_file_is_kept_and_corrects_nothing(take_in, data):
    entries = entries_of(DEVICE, 3)
    last = entry_after(entries, DEVICE, "corrected", {"device": DEVICE, "seq": 2, "reason": "slip"}, None)
    entries.append(entry_of({**last["event"], "v": 2}))

    assert take_in(unsent_text(entries))[0] == 0

    assert len(kept(data)[0]) == 4
    with closing(DataFolder(data).open()) as db, writing(db):
        folded.advance(db, 100)
        assert db.conn.execute("SELECT count(*) FROM withdrawn").fetchone() == (0,)


def test_the_same_file_twice_is_harmless(take_in, data):
    text = unsent_text(with_photo(entries_of(DEVICE, 3), DEVICE, jpeg()), [jpeg()])
    take_in(text)
    before = kept(data)

    status, said = take_in(text)

    assert (status, "0 entries and 0 photos taken in, 4 entries were here already" in said) == (0, True), said
    assert kept(data) == before


def test_a_file_in_pieces_and_out_of_order_comes_in_whole_once_each_is_there(take_in, data):
    entries = entries_of(DEVICE, 9)
    pieces = [unsent_text(entries[start : start + 3]) for start in (6, 3, 0)]

    assert [take_in(piece)[0] for piece in pieces] == [1, 1, 0]
    assert kept(data)[0] == [each["hash"] for each in entries[:3]]
    assert "Events 4 to 6 of this device are missing. Send them first." in take_in(pieces[0])[1]
    assert [take_in(piece)[0] for piece in (*pieces[1:], *pieces)] == [0] * 5

    status, said = take_in(unsent_text(entries))
    assert (status, "0 entries and 0 photos taken in, 9 entries were here already" in said) == (0, True)
    assert kept(data)[0] == [each["hash"] for each in entries]


def test_a_phone_that_was_in_the_file_goes_on_by_itself(take_in, data, new_phone):
    entries = entries_of(DEVICE, 4)
    take_in(unsent_text(entries[:3]))
    phone = new_phone(DEVICE)
    phone.entries = entries

    answer = phone.synced()

    assert answer["refused"] == []
    assert answer["heads"][DEVICE]["seq"] == 4
    assert kept(data)[0] == [entry["hash"] for entry in entries]


def test_what_a_paired_phone_holds_comes_in_beside_what_it_sends_itself(take_in, data, phone):
    phone.entries = entries_of(DEVICE, 5)
    phone.synced(phone.entries[:2])

    status, said = take_in(unsent_text(phone.entries[2:]))

    assert status == 0, said
    assert phone.synced()["refused"] == []
    assert kept(data)[0] == [entry["hash"] for entry in phone.entries]


def test_a_phone_passes_on_what_another_could_not_send_and_takes_no_identity(new_phone, db):
    one, two = new_phone(DEVICE), new_phone(OTHER)
    one.entries = entries_of(DEVICE, 3)
    one.synced(one.entries[:1])

    refused = two.synced(one.entries[1:])["refused"]
    assert [each["code"] for each in refused] == ["not_yours", "not_yours"]
    refused = two.synced(relayed(one.entries))["refused"]
    assert [each["code"] for each in refused] == ["unproven", "unproven"]

    assert one.synced()["heads"][DEVICE]["seq"] == 3
    one.entries.append(entry_after(one.entries, DEVICE))
    assert one.synced()["refused"] == []
    assert db.table("unproven").count == 0


def test_a_phone_whose_entries_were_taken_in_before_it_ever_came_claims_its_identity(take_in, new_phone):
    chain = entries_of("d00000000000000cc", 2)
    take_in(unsent_text(chain))

    three = new_phone("d00000000000000dd")
    three.device = "d00000000000000cc"  # it took this id after it was paired
    three.entries = [*chain, entry_after(chain, three.device)]

    answer = three.synced()
    assert (answer["refused"], answer["heads"][three.device]["seq"]) == ([], 3)


def test_whoever_takes_in_what_nothing_proves_is_told_that_they_answer_for_it(take_in):
    text = unsent_text([*entries_of(DEVICE, 2), *entries_of(OTHER, 1, "j000000000002")])

    assert "of 2 phones without a key: nothing proves who recorded it. You answer for it." in take_in(text)[1]
    assert "without a key" not in take_in(text)[1]  # nothing more came in


def signed_text(phone, entries, **changed):
    """Returns a phone's file with its proofs, some of them changed."""
    proofs = {
        "key": phone.key.public,
        "certificates": [phone.certificates[phone.device]],
        "signed_heads": [phone.signed_head()],
    }
    return unsent_text(entries, device=phone.device, proofs={**proofs, **changed})


@pytest.fixture
def signed(app, db):
    phone = SignedPhone(app, DEVICE)
    phone.pair_by(make_link(db, BASE, now_ms()))
    phone.ask_session()
    phone.synced([])
    return phone


def test_the_file_of_a_phone_with_a_key_counts_by_its_signature(take_in, data, signed):
    signed.entries = entries_of(DEVICE, 450)  # more than are handed in at once

    status, said = take_in(signed_text(signed, signed.entries))

    assert (status, "without a key" in said) == (0, False), said
    assert kept(data)[0] == [entry["hash"] for entry in signed.entries]


def test_a_file_without_the_signature_of_its_phone_is_kept_apart(take_in, data, signed, db):
    signed.entries = entries_of(DEVICE, 2)

    status, said = take_in(unsent_text(signed.entries))

    assert (status, "Nothing proves which phone recorded this." in said) == (1, True), said
    assert kept(data)[0] == []
    assert db.table("unproven").count == 2
    assert signed.synced()["refused"] == []
    assert db.table("unproven").count == 0


@pytest.mark.parametrize(
    ("changed", "told"),
    [
        pytest.param(
            lambda phone: {"signed_heads": [Key().head(DEVICE, 2, phone.entries[1]["hash"])]},
            f"device {DEVICE}, entry 2: the signature of its phone does not fit",
            id="another key",
        ),
        pytest.param(
            lambda phone: {"signed_heads": [phone.key.head(DEVICE, 2, "ab" * 32)]},
            f"device {DEVICE}, entry 2: its phone signed another entry in its place",
            id="another entry",
        ),
        pytest.param(
            lambda phone: {"certificates": [{**phone.certificates[DEVICE], "role": "counter"}]},
            "its certificate was not signed by the installation that it names",
            id="another role",
        ),
    ],
)
def test_verify_names_the_signature_that_does_not_fit(tmp_path, signed, capsys, changed, told):
    signed.entries = entries_of(DEVICE, 2)
    file = tmp_path / "unsent.txt"
    file.write_text(signed_text(signed, signed.entries))
    assert main(["verify", str(file)]) == 0
    file.write_text(signed_text(signed, signed.entries, **changed(signed)))
    capsys.readouterr()

    assert main(["verify", str(file)]) == 1

    assert told in capsys.readouterr().out


def test_an_entry_that_is_passed_on_is_checked_like_any_other(app, phone, db):
    other = SignedPhone(app, OTHER)
    other.pair_by(make_link(db, BASE, now_ms()))
    other.ask_session()
    other.synced([])
    chain = other.entries = entries_of(OTHER, 3)
    changed = json.loads(json.dumps(chain[1]))
    changed["event"]["actor"] = "Mira"
    twin = entry_of({**chain[0]["event"], "actor": "Mira"})
    heads = [other.key.head(OTHER, each["event"]["seq"], each["hash"]) for each in (*chain, twin)]

    answer = phone.sync(
        relayed([chain[0], changed, chain[2], twin, entry_of({"seq": 1})]), signed_heads=heads
    ).get_json()

    assert [each["code"] for each in answer["refused"]] == ["changed", "gap", "forked", "malformed"]
    assert db.table("quarantine").count == 1


def test_a_file_that_was_cut_off_gives_what_is_there_and_says_what_is_missing(take_in, data):
    entries = with_photo(entries_of(DEVICE, 5), DEVICE, jpeg())
    text = unsent_text(entries, [jpeg()])
    lines = text.splitlines(keepends=True)

    status, said = take_in("".join(lines[:4]) + lines[4][:40])

    assert status == 1
    assert "3 entries and 0 photos taken in" in said
    assert "cut off: 3 entries and 1 photo of it are missing" in said
    assert kept(data)[0] == [entry["hash"] for entry in entries[:3]]
    assert take_in(text)[0] == 0
    assert kept(data)[0] == [entry["hash"] for entry in entries]


def refusal_of(changed):
    """Which refusal a file with one byte changed gets: by its first line, or by where it was altered."""
    try:
        head = json.loads(changed.split(b"\n", 1)[0])
    except ValueError:
        head = None
    if not isinstance(head, dict) or head.get("app") != "swaptrail":
        return "is no file that a phone makes of its records"
    if head.get("v") != 2:
        return "of version"
    return "First place: "


@pytest.mark.parametrize("seed", range(3))
def test_no_byte_can_be_changed_unseen(take_in, data, seed):
    content = bytearray(unsent_text(with_photo(entries_of(DEVICE, 4), DEVICE, jpeg()), [jpeg(8, 8)]).encode())
    dice = random.Random(seed)
    for _ in range(60):
        at = dice.randrange(len(content) - 1)  # without the last line end, the file is the same
        changed = bytes(content[:at]) + bytes([content[at] ^ (1 << dice.randrange(7))]) + content[at + 1 :]

        status, said = take_in(changed)

        assert status == 2, (at, said)
        assert refusal_of(changed) in said
    assert kept(data) == ([], set())


@pytest.mark.parametrize(
    ("change", "place"),
    [
        pytest.param(
            lambda lines: [line.replace("ä 2", "ä 7") for line in lines],
            f"device {DEVICE}, entry 3: its bytes do not match its hash",
            id="a word",
        ),
        pytest.param(
            lambda lines: [*lines[:3], *lines[4:]], f"device {DEVICE}, entry 3: it is missing", id="one gone"
        ),
        pytest.param(
            lambda lines: [*lines[:4], *lines[5:]], "names 4 entries and 1 photo", id="the last gone"
        ),
        pytest.param(
            lambda lines: [*lines[:5], *lines[6:]], "names 4 entries and 1 photo", id="a photo gone"
        ),
        pytest.param(
            lambda lines: [lines[0].replace('"entries":4', '"entries":3'), *lines[1:]],
            "its first or its last line",
            id="the first line",
        ),
        pytest.param(
            lambda lines: [*lines[:2], lines[2].replace(":", ": ", 1), *lines[3:]],
            "line 3 is not as it was written",
            id="a blank",
        ),
        pytest.param(
            lambda lines: [*lines[:5], lines[5].replace('"bytes":"/9j/', '"bytes":"/9k/'), *lines[6:]],
            "the photo on line 6 does not match its hash",
            id="a photo",
        ),
    ],
)
def test_an_altered_file_is_refused_with_the_place_named(take_in, data, tmp_path, capsys, change, place):
    lines = unsent_text(entries_of(DEVICE, 4), [jpeg()]).splitlines(keepends=True)

    status, said = take_in("".join(change(lines)))

    assert status == 2
    assert "nothing was taken in" in said
    assert place in said
    assert kept(data) == ([], set())
    assert main(["verify", str(tmp_path / "unsent.txt")]) == 1
    assert place in capsys.readouterr().out


def test_a_hash_that_follows_its_changed_entry_breaks_the_next(take_in, data):
    entries = entries_of(DEVICE, 4)
    event = {**entries[1]["event"], "actor": "Mira"}
    entries[1] = {"event": event, "hash": envelope.hash_of(event)}

    status, said = take_in(unsent_text(entries))

    assert (status, f"device {DEVICE}, entry 3: it does not continue the entry before it" in said) == (
        2,
        True,
    )


def test_what_the_server_never_takes_is_left_out_with_its_reason_and_the_rest_comes_in(take_in, data):
    entries = entries_of(DEVICE, 2)
    other = entry_of({**entry_after([], OTHER)["event"], "kind": "X" * 500})
    broken = b"\xff\xd8\xff no picture"

    status, said = take_in(unsent_text([*entries, other], [broken, jpeg()]))

    assert status == 1
    assert f"Entry 1 of device {OTHER}: " in said
    assert f"Photo {hashlib.sha256(broken).hexdigest()}: This is no JPEG." in said
    assert kept(data) == ([entry["hash"] for entry in entries], {hashlib.sha256(jpeg()).hexdigest()})


def test_a_file_of_the_first_version_is_taken_in(take_in, data):
    entries = entries_of(DEVICE, 3)

    status, said = take_in(canon.dumps({"app": "swaptrail", "device": DEVICE, "events": entries, "v": 1}))

    assert status == 0, said
    assert kept(data)[0] == [entry["hash"] for entry in entries]


@pytest.mark.parametrize(
    ("content", "words"),
    [
        pytest.param(b"", "is no file that a phone makes of its records", id="empty"),
        pytest.param(jpeg(), "is no file that a phone makes of its records", id="a picture"),
        pytest.param(b'{"app":"other"}\n', "is no file that a phone makes of its records", id="another's"),
        pytest.param(b'{"app":"swaptrail","v":9}\n', "of version 9; up to 2 is known", id="newer"),
        pytest.param(b"[" * 100_000, "is no file that a phone makes of its records", id="deep"),
    ],
)
def test_another_file_is_refused(take_in, data, content, words):
    status, said = take_in(content)

    assert (status, words in said) == (2, True), said


@pytest.mark.parametrize(
    ("behind", "place"),
    [
        pytest.param("self", "line 6 begins a second file; take in each file by itself", id="the file twice"),
        pytest.param("one more\n", "line 6 stands after the end of the file", id="a word"),
    ],
)
def test_what_stands_behind_the_end_of_a_file_is_named_and_nothing_is_taken(take_in, data, behind, place):
    text = unsent_text(entries_of(DEVICE, 2), [jpeg()])
    assert len(text.splitlines()) == 5

    status, said = take_in(text + (text if behind == "self" else behind))

    assert (status, place in said, "nothing was taken in" in said) == (2, True, True), said
    assert kept(data) == ([], set())


def test_an_empty_line_behind_the_end_is_harmless(take_in, data):
    status, said = take_in(unsent_text(entries_of(DEVICE, 2)) + "\n \n")

    assert (status, len(kept(data)[0])) == (0, 2), said


def test_verify_tells_an_intact_file_and_one_that_was_cut_off(tmp_path, capsys):
    file = tmp_path / "unsent.txt"
    text = unsent_text(entries_of(DEVICE, 3), [jpeg()])
    file.write_text(text)
    assert main(["verify", str(file)]) == 0
    assert "Intact" in capsys.readouterr().out

    file.write_text(text[:-300])
    assert main(["verify", str(file)]) == 1
    assert "it was cut off: 3 of 3 entries and 0 of 1 photos are there" in capsys.readouterr().out


def test_a_folder_without_data_is_refused(tmp_path, capsys):
    (tmp_path / "unsent.txt").write_text(unsent_text(entries_of(DEVICE, 1)))

    assert main(["take-in", str(tmp_path / "unsent.txt"), "--data", str(tmp_path / "none")]) == 2
    assert "holds no data of this program" in capsys.readouterr().err
