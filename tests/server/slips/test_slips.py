"""Slips at the counter: what is printed, read by the published commands, and a printer that is not there.

ZPL is read by its own grammar (^ and two letters, then parameters; ZPL II guide 45541L-004), ESC/POS by the
lengths of its commands (1D 28 6B pL pH and so on); neither reader is the writer's.
"""

import errno
import io
import json
import re
import socket
import subprocess
import sys
import threading
from contextlib import contextmanager

import pytest
import zxingcpp
from flask import Flask
from PIL import Image

from server.clock import now_ms
from server.core.words.words import DAY_MS
from server.labelling.symbol import matrix
from server.refusals import CommandRefused
from server.slips import escpos
from server.slips import place
from server.slips import zpl
from server.slips.kept import FILE
from server.slips.kept import Waiting
from server.slips.kept import read
from server.slips.slip import Slip
from server.slips.spool import EXTENSION
from server.slips.spool import Spool
from server.slips.spool import printing
from server.storage import DataFolder
from server.words.spoken import text
from tests.waiting import wait_for

ADDRESS = "HTTP://COUNTER.EXAMPLE:8765/U/K7F3M"
SLIP = Slip(
    "Refused", "K7F-3M", ADDRESS, ["Part PS^1", "Serial S_1~2", "For: größer, ñandú", "Jo, 2026-11-28 09:05"]
)

OTHER = SLIP._replace(heading="Accepted")


def zpl_fields(data: bytes) -> list[tuple[list[str], str]]:
    """Return the commands before each field's data, and the data with ^FH undone."""
    fields = []
    before: list[str] = []
    for command in data.decode("ascii").strip().split("^")[1:]:
        name, given = command[:2], command[2:]
        if name == "FD":
            raw = re.sub(r"_([0-9A-F]{2})", lambda hit: chr(int(hit[1], 16)), given)
            fields.append((before, raw.encode("latin-1").decode()))
            before = []
        elif name != "FS":
            before.append(name + given)
    return fields


def escpos_commands(data: bytes) -> tuple[str, list[tuple[int, bytes]]]:
    """Return the text, and function and parameters of each command on a symbol."""
    told, symbols, at = bytearray(), [], 0
    lengths = dict.fromkeys([b"\x1b@", b"\x1b2"], 0)  # of all others, one parameter
    while at < len(data):
        if data[at : at + 3] == b"\x1d(k":
            size = data[at + 3] + 256 * data[at + 4]
            assert data[at + 5] == 0x31
            symbols.append((data[at + 6], data[at + 7 : at + 5 + size]))
            at += 5 + size
        elif data[at] in (0x1B, 0x1D):
            at += 2 + lengths.get(data[at : at + 2], 1)
        else:
            told.append(data[at])
            at += 1
    return told.decode("cp437"), symbols


def test_zpl_says_all_of_it_and_nothing_in_it_is_taken_for_a_command():
    fields = zpl_fields(zpl.bytes_of(SLIP))

    said = [value for before, value in fields if not [each for each in before if each.startswith("BQ")]]
    assert said == ["Refused", "K7F-3M", *SLIP.lines]
    ((_, symbol),) = [field for field in fields if [each for each in field[0] if each.startswith("BQ")]]
    assert symbol == "MA," + ADDRESS  # level, mode, then the text: ^BQ eats what stands before the comma
    assert any(each.startswith("BY2,3,10") for each in fields[0][0]), (
        "else it sinks by what an earlier label set"
    )
    places = [
        [int(n) for n in each[2:].split(",")]
        for before, _ in fields
        for each in before
        if each.startswith("FO")
    ]
    assert places == sorted(places, key=lambda each: each[1])


def test_escpos_says_all_of_it_and_its_symbol_holds_the_label():
    told, symbols = escpos_commands(escpos.bytes_of(SLIP))

    assert [line for line in told.splitlines() if line.strip()][:2] == ["Refused", "K7F-3M"]
    assert "Serial S_1~2" in told
    assert "größer" in told
    functions = dict(symbols)
    assert functions[0x45] == b"1", "level M"
    assert functions[0x50] == b"0" + ADDRESS.encode()
    assert symbols[-1][0] == 0x51, "printed after it was stored"


def test_the_name_of_the_shop_stands_at_the_head_of_a_slip():
    named = SLIP._replace(shop="Garage at the mill, Mill Lane 4")
    said = [value for _, value in zpl_fields(zpl.bytes_of(named))]
    assert said[:3] == ["Garage at the mill, Mill", "Lane 4", "Refused"]
    told, _ = escpos_commands(escpos.bytes_of(named))
    assert [line for line in told.splitlines() if line.strip()][:2] == [named.shop, "Refused"]


def test_a_slip_that_waited_from_before_shops_had_names_is_read(tmp_path):
    waiting = Waiting(SLIP, "d1:7", 5, begun=False)
    (tmp_path / FILE).write_text(json.dumps([{**waiting._asdict(), "slip": list(SLIP)[:4]}]))
    assert read(tmp_path / FILE) == [waiting]


def test_the_symbol_on_paper_is_read():
    """The printer draws it from text, level and size; qrcode stands in for it here."""
    (stored,) = [
        given[1:] for function, given in escpos_commands(escpos.bytes_of(SLIP))[1] if function == 0x50
    ]
    modules = matrix(stored.decode())
    side = len(modules) + 8
    picture = Image.new("L", (side, side), 255)
    for y, row in enumerate(modules):
        for x, dark in enumerate(row):
            picture.putpixel((x + 4, y + 4), 0 if dark else 255)
    (read,) = zxingcpp.read_barcodes(picture.resize((side * 6, side * 6), Image.Resampling.NEAREST))
    assert read.text == ADDRESS
    assert side <= 33 + 8, "room for version 4 is kept on the ZPL label"


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("", "names no printer"),
        ("zpl", "names no printer"),
        ("pcl:/dev/lp0", "names no printer"),
        ("zpl:tcp://printer", "most printers listen at 9100"),
        ("zpl:tcp://:9100", "most printers listen at 9100"),
        ("escpos:tcp://printer:99999", "most printers listen at 9100"),
        ("zpl:/nowhere/lp0", "there is no folder"),
        ("zpl:/dev", "is a folder"),
        ("zpl:/tmp", "is a folder"),
    ],
)
def test_what_can_never_print_is_refused_at_the_start(given, said):
    with pytest.raises(CommandRefused) as refused:
        place.checked(given)

    assert said in text(refused.value.message)


def test_serve_refuses_it_in_one_line(tmp_path):
    command = [
        sys.executable,
        "-m",
        "server.commands.cli",
        "serve",
        "--data",
        str(tmp_path / "d"),
        "--printer",
        "zpl:",
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=False)

    assert (done.returncode, done.stdout, len(done.stderr.splitlines())) == (2, "", 1)
    assert not (tmp_path / "d").exists()


class Server:
    """Runs a spool as the server does, over the file of one data folder."""

    def __init__(self, kept):
        """Run nothing yet."""
        self.kept = kept
        self._running = []

    def start(self, printer):
        spool, ended = Spool(printer, self.kept), threading.Event()
        thread = threading.Thread(target=spool.go, args=(ended,))
        thread.start()
        self._running.append((spool, ended, thread))
        return spool

    def stop(self):
        for spool, ended, thread in self._running:
            ended.set()
            spool.wake()
            thread.join()
        self._running = []


@pytest.fixture
def server(tmp_path):
    server = Server(tmp_path / "slips.json")
    yield server
    server.stop()


def test_slips_go_to_a_file_one_after_the_other(tmp_path, server):
    file = tmp_path / "slips.zpl"
    spool = server.start(place.checked(f"zpl:{file}"))
    for number in range(3):
        assert spool.add(SLIP, f"d1:{number}")
    wait_for(lambda: not spool.waiting)

    assert file.read_bytes() == 3 * zpl.bytes_of(SLIP)


def ends(work):
    """Tell whether work comes to its end."""
    thread = threading.Thread(target=work, daemon=True)
    thread.start()
    thread.join(10)
    return not thread.is_alive()


def test_an_end_that_comes_while_the_printer_looks_for_it_is_not_slept_through(tmp_path):
    spool = Spool(place.checked(f"zpl:{tmp_path / 'slips.zpl'}"), tmp_path / "slips.json")

    class Ending(threading.Event):
        def is_set(self):
            was_set = super().is_set()
            self.set()
            spool.wake()
            return was_set

    assert ends(lambda: spool.go(Ending()))


def test_the_end_is_known_before_the_printer_is_woken_for_it(tmp_path, monkeypatch):
    spools, wake = [], Spool.wake

    def wake_and_wait(spool):
        spools.append(spool)
        wake(spool)
        wait_for(lambda: not spool._wanted.is_set())

    monkeypatch.setattr(Spool, "wake", wake_and_wait)

    def serve():
        app = Flask("counter")
        app.extensions["data_folder"] = DataFolder(tmp_path)
        with printing(app, place.checked(f"zpl:{tmp_path / 'slips.zpl'}")):
            pass

    try:
        assert ends(serve)
    finally:
        wake(spools[0])


def test_a_printer_that_is_off_holds_up_nobody_and_prints_later(server, monkeypatch):
    monkeypatch.setattr("server.slips.spool.AGAIN_SECONDS", 0.05)
    with socket.socket() as printer:
        printer.bind(("127.0.0.1", 0))  # so the port is nobody else's
        off = place.checked(f"escpos:tcp://127.0.0.1:{printer.getsockname()[1]}")
        spool = server.start(off)
        assert spool.add(SLIP, "d1:7")
        assert spool.add(SLIP, "d1:7"), "asked for again by a phone that got no answer"
        wait_for(lambda: spool.trouble)
        assert spool.waiting == 1
        server.stop()

        spool = server.start(off)  # the server starts again, and the slip waits still
        wait_for(lambda: spool.trouble)
        printer.listen()
        line, _ = printer.accept()
        with line:
            got = io.BytesIO()
            while part := line.recv(4096):
                got.write(part)
    assert got.getvalue() == escpos.bytes_of(SLIP)
    wait_for(lambda: not spool.waiting)
    assert spool.trouble == ""
    wait_for(lambda: not server.kept.exists())


def test_a_device_that_is_not_plugged_in_is_waited_for_and_never_made(tmp_path, server, monkeypatch):
    """As root a file came to be among the devices, and took the slips that nobody printed."""
    monkeypatch.setattr("server.slips.spool.AGAIN_SECONDS", 0.05)
    monkeypatch.setattr("server.slips.place.DEVICES", str(tmp_path / "dev"))
    device = tmp_path / "dev" / "usb" / "lp0"
    spool = server.start(place.checked(f"zpl:{device}"))
    assert spool.add(SLIP, "d1:7")
    wait_for(lambda: spool.trouble)
    assert (spool.trouble, spool.waiting) == ("No such file or directory", 1)
    device.parent.mkdir(parents=True)
    server.stop()
    spool = server.start(place.checked(f"zpl:{device}"))
    wait_for(lambda: spool.trouble)
    assert not device.exists()
    device.touch()
    wait_for(lambda: not spool.waiting)
    assert (device.read_bytes(), spool.trouble) == (zpl.bytes_of(SLIP), "")


def test_a_slip_that_the_printer_had_as_the_server_was_killed_is_never_printed_by_itself(tmp_path, server):
    file = tmp_path / "slips.zpl"
    killed = Spool(place.checked(f"zpl:{file}"), server.kept)
    killed.add(SLIP, "d1:7")
    killed._change(killed._slips[0], killed._slips[0]._replace(begun=True))
    killed.add(OTHER, "d1:9")

    spool = server.start(killed.printer)
    wait_for(lambda: not spool.waiting)
    assert file.read_bytes() == zpl.bytes_of(OTHER)
    assert [each.slip for each in spool.aside] == [SLIP]

    spool.settle(prints=True)
    wait_for(lambda: not spool.waiting)
    assert file.read_bytes() == zpl.bytes_of(OTHER) + zpl.bytes_of(SLIP)
    assert spool.aside == []


def test_a_line_that_breaks_off_in_the_midst_of_a_slip_leaves_it_to_a_person(server, monkeypatch):
    @contextmanager
    def breaks(printer):
        def hand_over(data):
            raise ConnectionResetError(errno.ECONNRESET, "reset")

        yield hand_over

    monkeypatch.setattr("server.slips.place.opened", breaks)
    spool = server.start(place.checked("zpl:tcp://127.0.0.1:9100"))
    spool.add(SLIP, "d1:7")
    wait_for(lambda: spool.aside)
    assert (spool.waiting, spool.trouble) == (0, "reset")


def test_a_slip_from_the_day_before_is_told_and_left_where_nobody_wants_it(tmp_path, server, monkeypatch):
    file = tmp_path / "slips.zpl"
    before = Spool(place.checked(f"zpl:{file}"), server.kept)
    monkeypatch.setattr("server.slips.spool.now_ms", lambda: now_ms() - DAY_MS - 1000)
    before.add(SLIP, "d1:7")
    monkeypatch.undo()

    spool = server.start(before.printer)
    spool.add(OTHER, "d1:9")
    wait_for(lambda: not spool.waiting)
    assert file.read_bytes() == zpl.bytes_of(OTHER)
    assert [each.slip for each in spool.aside] == [SLIP]
    spool.settle(prints=False)
    assert spool.aside == []
    assert not server.kept.exists()


@pytest.mark.parametrize("damaged", [b"", b"[{}]", b"\xff", b'[{"slip": [], "decision": 1}]'])
def test_a_file_of_slips_that_cannot_be_read_keeps_no_server_from_starting(server, damaged):
    server.kept.write_bytes(damaged)
    assert Spool(place.checked("zpl:/tmp/none.zpl"), server.kept).waiting == 0


def test_slips_that_wait_for_a_word_are_told_to_the_counter_and_settled_there(tmp_path, app, counter):
    with printing(app, place.checked(f"zpl:{tmp_path / 'slips.zpl'}")):
        app.extensions[EXTENSION]._keep([Waiting(SLIP, "d1:7", 5, begun=False)])
        told = counter.get("/api/slips").json
        assert told["aside"] == [{"heading": "Refused", "shown": "K7F-3M", "at": 5, "begun": False}]
        assert counter.post("/api/slips/aside", {"print": 1}).status_code == 400
        assert counter.post("/api/slips/aside", {"print": False}).json["aside"] == []
