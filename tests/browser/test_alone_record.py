"""A record that a phone without a server made and sealed: as a server's, and found out when altered."""

import io
import json
import re
import zipfile
from contextlib import ExitStack
from contextlib import closing

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from server.commands.cli import main
from server.core.codes import labels
from server.keeping.record import container
from server.keeping.record.check import HEAD_BYTES
from server.keeping.record.make import make
from server.keeping.record.seal import sealed as seal_text
from server.phones.signing import Signer
from server.phones.signing import fingerprint
from server.phones.signing import signer
from tests.browser.screens import screens
from tests.server.keeping.record_yard import BAD
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import JOB
from tests.server.keeping.record_yard import PHOTOS
from tests.server.keeping.record_yard import filled
from tests.server.phone import NOW
from tests.static.alone_app import AloneApp
from tests.static.app_server import AppServer
from tests.static.conftest import open_bare
from tests.static.phone_parts import start_parts
from tests.unsent_files import unsent_text

TAKE_IN = """async (text) => {
  const { Saved } = await import('/app/parts.js');
  const { takeInHistory } = await import('/app/parts.js');
  const saved = new Saved(store);
  await saved.start(log);
  await takeInHistory({ core, store, device, saved }, new File([text], 'swaptrail-yard.txt'));
}"""
# Keys that can't be kept: reported from private browsing and lockdown on iOS.
NO_KEYS = """(() => {
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (value, key) {
    if (value?.privateKey) throw new DOMException('The object can not be cloned.', 'DataCloneError');
    return put.call(this, value, key);
  };
})()"""


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """Give the app without a server."""
    with closing(AloneApp(tmp_path_factory.mktemp("alone"))) as app:
        yield app


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    """Give a data folder with the whole story of two customers."""
    return filled(tmp_path_factory.mktemp("yard") / "data").stored()


@pytest.fixture
def take_phone(screen_browser, site, yard):
    """Give a maker of phones that hold the same log as the yard, pictures included."""
    with ExitStack() as stack:

        def take(script="", **options):
            phone = stack.enter_context(screens(screen_browser, site.base, **options))
            if script:
                phone.context.add_init_script(script)
            page = open_bare(phone.context, site.base)
            start_parts(page)
            page.evaluate(TAKE_IN, unsent_text(yard.received, list(PHOTOS.values())))
            page.close()
            return phone

        yield take


def record_from(phone, address=f"unit/{BAD}"):
    """Make a record on the screen; returns its bytes and the fingerprint that is shown."""
    page = phone.show(f"/#/{address}/file")
    phone.tap("Make the file")
    page.get_by_role("heading", name="The record is ready").wait_for()
    assert phone.lacks_room_on_any() == {}
    shown = page.locator(".fingerprint").inner_text()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it").click()
    return download.value.path().read_bytes(), shown


def verify(tmp_path, capsys, data):
    """Run `swaptrail verify`; returns its status and what it says."""
    file = tmp_path / "record.zip"
    file.write_bytes(data)
    capsys.readouterr()
    status = main(["verify", str(file)])
    out, err = capsys.readouterr()
    return status, out + err


def members(data):
    return {name: bytes(content) for name, content in container.unpack(data)}


def packed(parts):
    return b"".join(bytes(piece) for _, piece in container.pieces(parts.items()))


def test_a_phone_makes_the_very_record_that_a_server_makes_of_the_same_log(
    take_phone, yard, tmp_path, capsys
):
    data, shown = record_from(take_phone())
    status, said = verify(tmp_path, capsys, data)
    assert (status, said.splitlines()[1]) == (
        0,
        f"Sealed by a phone, fingerprint {shown}. Whose phone it is, the file cannot say.",
    )
    with closing(yard.folder.open()) as db:
        there = members(make(db, yard.folder.photos, BAD_CODE, signer(yard.folder), NOW).data)
    here = members(data)
    assert list(here) == list(there)
    made_apart = {"record.json", "seal.json", "hashes.json"}
    assert {name for name in here if here[name] != there[name]} == made_apart
    hashes, its = (json.loads(each["hashes.json"]) for each in (here, there))
    assert {
        name: hashes[name] for name in its
    } == its  # beside them stands what this phone signed, if anything
    ours, theirs = (json.loads(each["record.json"]) for each in (here, there))
    differs = {name for name in theirs if ours[name] != theirs[name]}
    assert differs == {"app", "made_at", "installation", "key"}  # also what is concluded, and by which core
    assert shown == fingerprint(ours["key"])
    with zipfile.ZipFile(io.BytesIO(data)) as opened:  # any program that unpacks zip files
        assert opened.testzip() is None


def test_the_record_of_a_job_is_the_servers_too(take_phone, yard, tmp_path, capsys):
    data, _ = record_from(take_phone(), f"job/{JOB}")
    assert verify(tmp_path, capsys, data)[0] == 0
    with closing(yard.folder.open()) as db:
        there = members(make(db, yard.folder.photos, JOB, signer(yard.folder), NOW).data)
    assert members(data)["entries.jsonl"] == there["entries.jsonl"]


@pytest.fixture(scope="module")
def sealed(screen_browser, site, yard):
    """Give the bytes of one record made by a phone."""
    with screens(screen_browser, site.base) as phone:
        page = open_bare(phone.context, site.base)
        start_parts(page)
        page.evaluate(TAKE_IN, unsent_text(yard.received, list(PHOTOS.values())))
        page.close()
        return record_from(phone)[0]


def test_every_byte_that_is_altered_is_found(sealed, tmp_path, capsys):
    """Each 97th byte, so that every part is hit many times, behind what says which sort of file it is."""
    assert verify(tmp_path, capsys, sealed)[0] == 0
    names = set()
    for at in [*range(30), *range(HEAD_BYTES, len(sealed), 97)]:
        altered = bytearray(sealed)
        altered[at] ^= 1
        status, said = verify(tmp_path, capsys, bytes(altered))
        assert status == 1, (at, said)
        names.update(re.findall(r"record\.json|hashes\.json|seal\.json|photo|entry \d+", said))
    assert {"record.json", "hashes.json", "seal.json", "photo"} < names


def test_what_was_taken_out_or_put_in_is_named(sealed, tmp_path, capsys):
    parts = members(sealed)
    lines = parts["entries.jsonl"].splitlines(keepends=True)
    gone = json.loads(lines[3])
    status, said = verify(
        tmp_path, capsys, packed({**parts, "entries.jsonl": b"".join(lines[:3] + lines[4:])})
    )
    assert status == 1
    assert f"device {gone['device']}, entry {gone['seq']}: it is missing" in said
    photo = next(name for name in parts if name.startswith("photos/"))
    left = {name: content for name, content in parts.items() if name != photo}
    status, said = verify(tmp_path, capsys, packed(left))
    assert (status, f"the photo {photo[7:-4]} is missing" in said) == (1, True)
    status, said = verify(tmp_path, capsys, packed({**parts, f"photos/{'0' * 64}.jpg": b"another"}))
    assert (status, "was added to it" in said) == (1, True)


def resealed(parts, **changes):
    """Seal a phone's record anew with the key of an installation, which says that it is a phone's."""
    seal = json.loads(parts["seal.json"]) | changes
    return packed({**parts, "seal.json": json.dumps(seal, sort_keys=True, separators=(",", ":")).encode()})


def test_a_seal_can_be_written_in_one_way_only(sealed, tmp_path, capsys):
    """The other s of ECDSA, capitals in the digits, another kind of maker: none of it passes."""
    parts = members(sealed)
    seal = json.loads(parts["seal.json"])
    order = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551
    r, s = seal["signature"][:64], int(seal["signature"][64:], 16)
    other = Signer(Ed25519PrivateKey.generate())
    for changes in (
        {"signature": f"{r}{order - s:064x}"},
        {"signature": seal["signature"].upper()},
        {"key": seal["key"].upper()},
        {"key": f"04{0:0128x}"},
        {"app": "swaptrail seal"},
        {"app": "swaptrail seal", "key": other.key},
        {"app": "swaptrail later seal"},
        {"signature": "00" * 64},
    ):
        status, said = verify(tmp_path, capsys, resealed(parts, **changes))
        assert (status, "seal.json" in said) == (1, True), changes
    assert verify(tmp_path, capsys, resealed(parts))[0] == 0


def test_an_installations_seal_on_a_phones_record_is_found(sealed, tmp_path, capsys):
    parts = members(sealed)
    maker = Signer(Ed25519PrivateKey.generate())
    digests = json.loads(parts["seal.json"])["digests"]
    status, said = verify(
        tmp_path, capsys, packed({**parts, "seal.json": seal_text(digests, maker).encode()})
    )
    assert (status, "it names another key than the seal" in said) == (1, True)


def test_a_foreign_file_is_none(sealed, tmp_path, capsys):
    for data in (b"", b"PK\x03\x04 something else", sealed[40:], b"{}" * 4000):
        assert verify(tmp_path, capsys, data)[0] == 2


def test_a_browser_that_keeps_no_key_makes_the_record_and_says_so(take_phone, tmp_path, capsys):
    phone = take_phone(NO_KEYS)
    page = phone.show(f"/#/unit/{BAD}/file")
    phone.tap("Make the file")
    page.get_by_text("This browser keeps no keys").wait_for()
    assert phone.lacks_room() == []
    first = page.locator(".fingerprint").inner_text()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it").click()
    status, said = verify(tmp_path, capsys, download.value.path().read_bytes())
    assert (status, first in said) == (0, True)

    page = phone.show("/#/you")
    page.get_by_text("This browser keeps no keys").wait_for()
    assert page.locator(".fingerprint").inner_text() == first  # the same while the app is open
    page.reload()
    page.get_by_text("This browser keeps no keys").wait_for()
    assert page.locator(".fingerprint").inner_text() != first
    page.get_by_role("link", name=re.compile("Back")).first.click()
    page.get_by_text("Grey estate").first.wait_for()  # nothing that was recorded is lost


def test_a_kept_key_stays_and_a_lost_one_is_a_new_one(take_phone):
    phone = take_phone()
    _, first = record_from(phone)
    page = phone.show("/#/you")
    assert page.locator(".fingerprint").inner_text() == first
    assert phone.lacks_room() == []
    bare = open_bare(phone.context, phone.base)
    start_parts(bare)
    exported = bare.evaluate("""async () => {
      const { privateKey } = await store.getMeta('record_key');
      return crypto.subtle.exportKey('pkcs8', privateKey).then(() => 'exported', (error) => error.name);
    }""")
    assert exported == "InvalidAccessError"
    bare.evaluate("store.write(['meta'], (tx) => tx.objectStore('meta').delete('record_key'))")
    bare.close()
    page.reload()
    page.locator(".fingerprint").wait_for()
    assert page.locator(".fingerprint").inner_text() != first
    page = phone.show(f"/#/unit/{BAD}")
    page.get_by_text(labels.shown(BAD_CODE)).first.wait_for()


def test_a_counter_sees_that_a_phone_made_it(sealed, screen_browser, tmp_path):
    record = tmp_path / "record.zip"
    record.write_bytes(sealed)
    shown = fingerprint(json.loads(members(sealed)["record.json"])["key"])
    with closing(AppServer(tmp_path / "counter")) as server, screens(screen_browser, server.base) as phone:
        page = phone.show(server.link().removeprefix(server.base))
        page.get_by_label("Your name").fill("Jo")
        phone.tap("Pair this phone")
        page.get_by_role("link", name="Check a record").click()
        page.locator("#record-file").set_input_files(record)
        page.get_by_text("Not changed since it was sealed").wait_for(timeout=30_000)
        page.get_by_text("Sealed by a phone on").wait_for()
        assert page.locator(".fingerprint").first.inner_text() == shown
        page.get_by_text("an installation. Whose phone it is, the file cannot say.").wait_for()
        page.get_by_text("From a phone that works by itself").wait_for()
        page.get_by_text("Worked out again here from these entries alone, it comes to the same.").wait_for()
        assert phone.lacks_room() == []


def look_at(phone, data, path):
    """Choose a file on the screen that checks records; returns the page once it has said something."""
    path.write_bytes(data)
    page = phone.show("/#/record")
    page.locator("#record-file").set_input_files(path)
    page.get_by_role("button", name="Another file").wait_for(timeout=30_000)
    return page


def test_a_phone_without_a_server_checks_records_by_itself(sealed, yard, take_phone, tmp_path):
    phone = take_phone()
    file = tmp_path / "record.zip"
    with closing(yard.folder.open()) as db:
        installations = make(db, yard.folder.photos, BAD_CODE, signer(yard.folder), NOW).data
    page = look_at(phone, installations, file)
    page.get_by_text("Not changed since it was sealed").wait_for()
    assert page.locator(".fingerprint").inner_text() == fingerprint(signer(yard.folder).key)
    page.get_by_text("it comes to the same").wait_for()
    assert page.get_by_text("The maker is a phone").count() == 0
    assert phone.lacks_room() == []

    page = look_at(phone, sealed, file)
    page.get_by_text("Sealed by a phone on").wait_for()
    page.get_by_text("an installation. Whose phone it is, the file cannot say.").wait_for()
    page.get_by_text("it comes to the same").wait_for()
    page = look_at(phone, record_from(phone)[0], file)
    page.get_by_text("This phone sealed it itself.").wait_for()

    parts = members(sealed)
    lines = parts["entries.jsonl"].splitlines(keepends=True)
    gone = json.loads(lines[3])
    photo = next(name for name in parts if name.startswith("photos/"))
    altered = {
        f"device {gone['device']}, entry {gone['seq']}: it is missing": packed(
            {**parts, "entries.jsonl": b"".join(lines[:3] + lines[4:])}
        ),
        f"the photo {photo[7:-4]} is another one, or was changed": packed({**parts, photo: b"another"}),
        "its signature does not fit": resealed(parts, signature="00" * 64),
        "what lies between its parts was changed": sealed[:14] + b"\0" + sealed[15:],
        "record.json: code was changed": packed(
            {**parts, "record.json": parts["record.json"].replace(BAD_CODE.encode(), b"K7F3M")}
        ),
    }
    for said, data in altered.items():
        page = look_at(phone, data, file)
        page.get_by_text("This record was altered").wait_for()
        page.get_by_text(said).wait_for()
    incomplete = {
        "It is cut short after record.json": sealed[: sealed.index(b"PK\x03\x04", 4)],
        "It is cut short in entries.jsonl": sealed[: sealed.index(b"hashes.json") - 40],
        "It is cut short in the list at its end": sealed[:-5],
    }
    for said, data in incomplete.items():
        page = look_at(phone, data, file)
        page.get_by_text("This record is incomplete").wait_for()
        page.get_by_text(said).wait_for()
        page.get_by_text("Ask for the file again").wait_for()
    assert phone.lacks_room() == []
    page = look_at(phone, b"PK\x03\x04 something else", file)
    page.get_by_text("This file is no record of a sensor or a job.").wait_for()
