"""A record that was altered is found out, whatever was changed, and the first place is named."""

import hashlib
import io
import json
import re
import struct
import zipfile
from contextlib import closing

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from hypothesis import HealthCheck
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.commands.cli import main
from server.core.log import canon
from server.core.log import envelope
from server.core.record.file import LATEST
from server.keeping.record import container
from server.keeping.record import seal
from server.keeping.record.check import Altered
from server.keeping.record.check import check
from server.keeping.record.make import make
from server.phones.signing import Signer
from server.phones.signing import signer
from server.refusals import CommandRefused
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import IVO
from tests.server.keeping.record_yard import JOB
from tests.server.keeping.record_yard import MARA
from tests.server.keeping.record_yard import digest
from tests.server.keeping.record_yard import filled
from tests.server.phone import NOW
from tests.server.phone import jpeg


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    return filled(tmp_path_factory.mktemp("yard") / "data").stored()


@pytest.fixture(scope="module")
def data(yard):
    with closing(yard.folder.open()) as db:
        return make(db, yard.folder.photos, BAD_CODE, signer(yard.folder), NOW).data


@pytest.fixture
def verified(tmp_path, capsys):
    """Runs `verify` over bytes; returns (its status, all that it printed)."""

    def run(data):
        (tmp_path / "r.zip").write_bytes(data)
        capsys.readouterr()
        status = main(["verify", str(tmp_path / "r.zip")])
        out, err = capsys.readouterr()
        return status, out + err

    return run


def members_of(data):
    return {name: bytes(content) for name, content in container.unpack(data)}


def packed(members):
    return b"".join(bytes(piece) for _, piece in container.pieces(members.items()))


def lines_of(members):
    return members["entries.jsonl"].splitlines(keepends=True)


def place(data, device, seq):
    """Returns which line of the entries is this entry."""
    lines = lines_of(members_of(data))
    found = [(json.loads(line)["device"], json.loads(line)["seq"]) for line in lines]
    return found.index((device, seq))


def entry(lines, n):
    event = json.loads(lines[n])
    return f"device {event['device']}, entry {event['seq']}: "


def test_what_is_intact_passes(verified, data):
    status, text = verified(data)
    first, second, whose, what, job, same, other = text.splitlines()
    assert (status, first.startswith("Intact: "), first.endswith(", a record.")) == (0, True, True)
    assert re.fullmatch("Sealed by an installation, fingerprint [0-9a-f ]{24}[.]", second)
    assert whose.startswith("Whose key that is, the file cannot say.")
    assert what == f"It is the record of sensor {BAD_CODE[:3]}-{BAD_CODE[3:]}."
    assert job.startswith("Grey estate: ")
    assert same == "Worked out again here from these entries alone, it comes to the same."
    assert other.endswith("came from other work, which is not in this file.")


def test_a_well_sealed_record_that_concludes_what_does_not_follow_is_a_mismatch(yard, data, verified):
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    record["told"]["unit"]["serial"] = "S-9"
    record["core"] = "0" * 64
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    status, said = verified(resealed(record, members, text))
    assert status == 1
    assert said.splitlines()[-3:-1] == [
        "Worked out again here from these entries alone, it does not come to what was sealed.",
        "Its serial. There: S-9. Here: nothing.",
    ]


def byte_of_an_entry(lines):
    lines[4] = lines[4].replace(b"Mara", b"Nara")
    return entry(lines, 4) + "its bytes do not match its hash."


def an_entry_gone(lines):
    gone = lines.pop(3)
    return entry([gone], 0) + "it is missing."


def the_last_entry_gone(lines):
    return entry([lines.pop()], 0) + "it is missing."


def all_entries_gone(lines):
    first = lines[0]
    lines.clear()
    return entry([first], 0) + "it is missing."


def two_changed_places(lines):
    lines[2], lines[5] = lines[5], lines[2]
    return entry(lines, 5) + "another entry stands in its place."


def one_added(lines):
    event = {**json.loads(lines[-1]), "device": "d00000000000000cc", "seq": 1, "prev": ""}
    lines.insert(3, envelope.canonical(event).encode() + b"\n")
    return "device d00000000000000cc, entry 1: it was added."


def one_added_at_the_end(lines):
    event = json.loads(lines[-1])
    event["seq"] += 1
    lines.append(envelope.canonical(event).encode() + b"\n")
    return f"device {event['device']}, entry {event['seq']}: it was added."


def one_twice(lines):
    lines.insert(3, lines[2])
    return entry(lines, 4) + "another entry stands in its place."


def written_otherwise(lines):
    lines[1] = json.dumps(json.loads(lines[1])).encode() + b"\n"
    return entry(lines, 1) + "its bytes do not match its hash."


def something_behind(lines):
    lines.append(b"x")
    return "entries.jsonl was changed at its end."


@pytest.mark.parametrize(
    "change",
    [
        byte_of_an_entry, an_entry_gone, the_last_entry_gone, all_entries_gone, two_changed_places, one_added,
        one_added_at_the_end, one_twice, written_otherwise, something_behind,
    ],
)  # fmt: skip
def test_a_change_to_the_entries_is_named(verified, data, change):
    members = members_of(data)
    lines = lines_of(members)
    named = change(lines)
    members["entries.jsonl"] = b"".join(lines)
    status, text = verified(packed(members))
    assert status == 1
    assert text.endswith(f", a record. First place: {named}\n")


def swapped_photos(members):
    one, other = (f"photos/{digest(name)}.jpg" for name in ("screen", "unit"))
    members[one], members[other] = members[other], members[one]
    return f"device {MARA}, entry 10: the photo {digest('screen')} is another one, or was changed."


def another_photo(members):
    members[f"photos/{digest('unit')}.jpg"] = jpeg(colour=(1, 1, 1))
    return f"the photo {digest('unit')} is another one, or was changed."


def a_photo_gone(members):
    del members[f"photos/{digest('unit')}.jpg"]
    return f"the photo {digest('unit')} is missing."


def a_photo_added(members):
    members[f"photos/{digest('others')}.jpg"] = jpeg(colour=(10, 20, 30))
    return f"photos/{digest('others')}.jpg was added to it."


def hash_in_the_list(members):
    text = members["hashes.json"].decode()
    at = text.index('"hashes":["') + 11
    members["hashes.json"] = (text[:at] + ("0" if text[at] != "0" else "1") + text[at + 1 :]).encode()
    return "hashes.json was changed."


def order_in_the_list(members):
    told = json.loads(members["hashes.json"])
    told["order"].reverse()
    members["hashes.json"] = canon.dumps(told).encode()
    return "hashes.json was changed."


def field(name, value):
    def change(members):
        record = json.loads(members["record.json"])
        record[name] = value
        members["record.json"] = canon.dumps(record).encode()
        return f"record.json: {name} was changed."

    change.__name__ = f"field_{name}"
    return change


def field_gone(members):
    record = json.loads(members["record.json"])
    del record["made_at"]
    members["record.json"] = canon.dumps(record).encode()
    return "record.json: made_at is missing."


def field_added(members):
    record = json.loads(members["record.json"])
    record["price"] = 1
    members["record.json"] = canon.dumps(record).encode()
    return "record.json: price was added."


def spaces(members):
    members["record.json"] = members["record.json"].replace(b'","', b'", "', 1)
    return "record.json was changed; it is not written as a record is."


def in_seal(name, value):
    def change(members):
        told = json.loads(members["seal.json"])
        told[name] = value(told[name])
        members["seal.json"] = canon.dumps(told).encode()
        return "seal.json: its signature does not fit."

    change.__name__ = f"seal_{name}"
    return change


def a_member_gone(members):
    del members["hashes.json"]
    return "hashes.json is missing in it."


@pytest.mark.parametrize(
    "change",
    [
        swapped_photos, another_photo, a_photo_gone, a_photo_added, hash_in_the_list, order_in_the_list,
        field("made_at", 1), field("installation", "00"), field("unit", "u000000000000"), field("jobs", []),
        field("told", {"unit": None, "jobs": {}}), field("core", "0" * 64), field("missing", ["0" * 64]),
        field("key", "0" * 64), field("elsewhere", []), field("code", ""), field_gone, field_added, spaces,
        in_seal("signature", lambda old: "0" * 128), in_seal("key", lambda old: "0" * 64),
        in_seal("digests", lambda old: {**old, "entries.jsonl": "0" * 64}), a_member_gone,
    ],
)  # fmt: skip
def test_a_change_to_another_part_is_named(verified, data, change):
    members = members_of(data)
    named = change(members)
    if members == members_of(data):
        pytest.fail("the test changed nothing")
    status, text = verified(packed(members))
    assert status == 1
    assert text.endswith(f"{named}\n"), text


def test_whoever_changes_all_that_follows_from_an_entry_still_lacks_the_key(yard, data):
    members = members_of(data)
    forge(members)
    record = json.loads(members["record.json"])
    del members["record.json"]
    old = json.loads(members.pop("seal.json"))
    body = {"app": "swaptrail seal", "v": 1, "key": record["key"], "digests": seal.digests(record, members)}
    text = canon.dumps({**body, "signature": old["signature"]})
    with pytest.raises(Altered, match=r"seal\.json: its signature does not fit"):
        check(resealed(record, members, text))


def test_a_record_sealed_anew_with_another_key_bears_the_other_key(data):
    own = check(data).record["key"]
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    other = Signer(Ed25519PrivateKey.generate())
    record["key"] = other.key
    found = check(resealed(record, members, seal.sealed(seal.digests(record, members), other)))
    assert found.record["key"] == other.key != own


def forge(members):
    """Changes the last entry of Mara's and her hash in the list with it."""
    lines = lines_of(members)
    event = json.loads(lines[-1])
    event["data"]["note"] = "forged"
    text = envelope.canonical(event)
    told = json.loads(members["hashes.json"])
    told["devices"][event["device"]]["hashes"][-1] = canon.sha256_hex(text)
    members["entries.jsonl"] = b"".join([*lines[:-1], text.encode() + b"\n"])
    members["hashes.json"] = canon.dumps(told).encode()


def told(sentence, **more):
    """Return what a record of one job is told with."""
    job = {"sentence": sentence, "probability": None, "clear": None, "causes": [], **more}
    return {"unit": None, "jobs": {JOB: job}}


def resealed(record, members, text):
    order = {"record.json": canon.dumps(record).encode(), **members, "seal.json": text.encode()}
    return packed(order)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("elsewhere", [{"unit": 1}]), ("told", {"unit": None, "jobs": {"j": {}}}), ("jobs", [[]]),
        ("code", "<b>x</b>"), ("missing", ["../x"]), ("made_at", "now"), ("unit", ""), ("told", []),
        ("format", None), ("elsewhere", {"a": 1}), ("told", told("It is.", causes="unit:u1")),
        ("told", told({"msg": "reasons-not-settled"})), ("told", told({"figure": "day", "of": "today"})),
        ("told", told(None)), ("v", 1),
    ],
)  # fmt: skip
def test_a_well_sealed_record_of_another_form_is_refused_too(yard, data, name, value):
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    record[name] = value
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    with pytest.raises(Altered, match="not written as a record is"):
        check(resealed(record, members, text))


@pytest.mark.parametrize(
    "value", [{}, {"order": [["d", "1"]], "devices": {}}, {"order": 3, "devices": []}, []]
)
def test_a_well_sealed_list_of_another_form_is_refused_too(yard, data, value):
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    members["hashes.json"] = canon.dumps(value).encode()
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    with pytest.raises(Altered, match="not written as a list of hashes is"):
        check(resealed(record, members, text))


def test_a_well_sealed_chain_that_does_not_hold_is_refused_too(yard, data):
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    lines = lines_of(members)
    at = place(data, MARA, 10)
    event = {**json.loads(lines[at]), "prev": "0" * 64}
    lines[at] = envelope.canonical(event).encode() + b"\n"
    told = json.loads(members["hashes.json"])
    first = told["devices"][MARA]["first"]
    told["devices"][MARA]["hashes"][10 - first] = hashlib.sha256(lines[at][:-1]).hexdigest()
    members.update({"entries.jsonl": b"".join(lines), "hashes.json": canon.dumps(told).encode()})
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    with pytest.raises(Altered, match=f"device {MARA}, entry 10: it does not continue the entry before it"):
        check(resealed(record, members, text))


@pytest.mark.parametrize("change", ["twice", "earlier", "later"])
def test_a_well_sealed_entry_that_stands_twice_or_out_of_its_order_is_refused_too(yard, data, change):
    """Each is as its phone recorded it; but a test that counts twice, or before its exchange, proves more."""
    members = members_of(data)
    record = json.loads(members.pop("record.json"))
    del members["seal.json"]
    lines, told = lines_of(members), json.loads(members["hashes.json"])
    order = told["order"]
    at = [place for place, (device, _) in enumerate(order) if device == MARA][-3]
    to = {"twice": at + 1, "earlier": 1, "later": len(order) - 1}[change]
    moved = (lines[at], order[at]) if change == "twice" else (lines.pop(at), order.pop(at))
    lines.insert(to, moved[0])
    order.insert(to, moved[1])
    members.update({"entries.jsonl": b"".join(lines), "hashes.json": canon.dumps(told).encode()})
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    with pytest.raises(Altered, match=f"device {MARA}, entry .*: it does not continue the entry before it"):
        check(resealed(record, members, text))


# --- the container


@pytest.mark.parametrize("share", [0.999, 0.9, 0.5, 0.1, 0.03])
def test_one_cut_short_is_found(verified, data, share):
    status, text = verified(data[: int(len(data) * share)])
    assert status == 1
    assert text.startswith("Incomplete: ")
    assert "cut short" in text
    assert "Altered" not in text


def test_one_with_its_end_that_calls_a_part_longer_is_altered(verified, data):
    size = data.index(b"entries.jsonl") - 30 + 18  # where its length stands twice; APPNOTE.TXT 4.3.7
    longer = struct.pack("<LL", *[len(data)] * 2)
    status, text = verified(data[:size] + longer + data[size + 8 :])
    assert status == 1
    assert text.startswith("Altered: ")


def test_one_whose_line_ends_were_turned_is_altered_and_not_called_cut(verified, data):
    status, text = verified(data.replace(b"\n", b"\r\n"))
    assert (status, "cut short" in text) == (1, False)


def test_bytes_that_an_unpacking_program_reads_past_are_found(verified, data):
    assert verified(data + b"more")[0] == 1
    behind_the_list = data.index(b"PK\1\2")
    assert verified(data[:behind_the_list] + b"more" + data[behind_the_list:])[0] == 1
    with_comment = data[:-2] + struct.pack("<H", 4) + b"more"
    assert zipfile.is_zipfile(io.BytesIO(with_comment))
    assert verified(with_comment)[0] == 1


@pytest.mark.parametrize(
    "name", ["../../etc/passwd", "/etc/passwd", "photos/../x.jpg", "C:\\x", "keys/a", "x"]
)
def test_names_that_lead_elsewhere_are_refused_and_nothing_is_unpacked(verified, data, tmp_path, name):
    members = members_of(data)
    members[name] = b"x"
    status, text = verified(packed(members))
    assert status == 1
    assert "does not belong in it" in text
    assert [path.name for path in tmp_path.iterdir()] == ["r.zip"]


def test_a_name_that_stands_in_it_twice_is_refused(verified, data):
    twice = [*members_of(data).items(), ("seal.json", b"{}")]
    status, text = verified(b"".join(bytes(piece) for _, piece in container.pieces(twice)))
    assert (status, "seal.json stands in it twice" in text) == (1, True)


def test_a_packed_file_is_not_unfolded(verified, data):
    """A few kB that unpack to 100 MB of zeros: taken for what it is, bytes that do not match."""
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in members_of(data).items():
            info = zipfile.ZipInfo(name)
            info.compress_type = zipfile.ZIP_DEFLATED if name == "hashes.json" else zipfile.ZIP_STORED
            archive.writestr(info, bytes(100_000_000) if name == "hashes.json" else content)
    status, text = verified(file.getvalue())
    assert (status, "hashes.json is packed otherwise" in text) == (1, True)


def test_one_larger_than_any_record_is_refused(verified, data, monkeypatch):
    monkeypatch.setattr("server.keeping.record.check.MOST_BYTES", len(data) - 1)
    status, text = verified(data)
    assert (status, "larger than" in text) == (1, True)
    monkeypatch.undo()
    monkeypatch.setattr("server.core.record.check.MOST_TEXT", 100)
    status, text = verified(data)
    assert (status, "larger than in any record" in text) == (1, True)


def test_a_record_of_a_later_version_is_refused_and_says_so(verified, yard, data):
    members = members_of(data)
    record = {**json.loads(members.pop("record.json")), "v": LATEST + 1}
    del members["seal.json"]
    text = seal.sealed(seal.digests(record, members), signer(yard.folder))
    status, said = verified(resealed(record, members, text))
    assert (status, f"version {LATEST + 1}" in said) == (2, True)


def test_what_is_no_record_is_told_from_an_altered_one(verified):
    assert verified(b"")[0] == 2
    assert verified(jpeg())[0] == 2
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as archive:
        archive.writestr("record.json", '{"app":"something else"}')
    assert verified(file.getvalue())[0] == 2


def deep(members):
    lines = lines_of(members)
    lines[0] = b'{"a":' + b"[" * 100_000 + b"\n"
    members["entries.jsonl"] = b"".join(lines)


def deep_record(members):
    members["record.json"] = b'{"app":"swaptrail record","a":' + b"[" * 100_000


def no_text(members):
    members["record.json"] = members["record.json"][:-1] + b"\xff\xfe}"


def no_text_in_the_seal(members):
    members["seal.json"] = b"\xff" * 100


@pytest.mark.parametrize("change", [deep, deep_record, no_text, no_text_in_the_seal])
def test_what_is_no_json_is_altered_and_breaks_nothing(verified, data, change):
    members = members_of(data)
    change(members)
    assert verified(packed(members))[0] == 1


# --- any byte


def outcome(data):
    """Returns what `verify` would end with, without a file."""
    try:
        check(data)
    except Altered:
        return 1
    except CommandRefused:
        return 2
    return 0


@settings(max_examples=400, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_a_record_with_any_byte_changed_is_not_intact(data, drawn):
    at = drawn.draw(st.integers(0, len(data) - 1))
    put = drawn.draw(st.integers(1, 255))
    changed = bytearray(data)
    changed[at] ^= put
    assert outcome(bytes(changed)) != 0, at


@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_a_member_with_any_byte_changed_and_packed_well_again_is_not_intact(data, drawn):
    members = members_of(data)
    name = drawn.draw(st.sampled_from(sorted(members)))
    at = drawn.draw(st.integers(0, len(members[name]) - 1))
    changed = bytearray(members[name])
    changed[at] ^= drawn.draw(st.integers(1, 255))
    members[name] = bytes(changed)
    assert outcome(packed(members)) != 0, (name, at)


@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.binary(max_size=400), st.booleans())
def test_whatever_bytes_come_in_are_refused_in_words(data, noise, begun):
    assert outcome((data[:41] if begun else b"") + noise) == 1


def test_the_yards_two_devices_are_both_in_it(data):
    assert {event["device"] for event in check(data).events} == {MARA, IVO}
