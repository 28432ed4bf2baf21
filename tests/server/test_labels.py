"""Printed labels: codes issued once, symbols that read back, sizes that a phone can read on paper."""

import re
import subprocess
from contextlib import closing

import pytest
import zxingcpp
from PIL import Image
from PIL import ImageDraw
from PIL import ImageFilter

from server.cli import main
from server.core import labels
from server.labelling import pdf
from server.labelling import sheet
from server.labelling import store
from server.labelling import svg
from server.labelling.symbol import QUIET_MODULES
from server.labelling.symbol import address
from server.labelling.symbol import matrix
from server.refusals import CommandRefused
from server.storage import DataFolder
from tests.browser_support import find_browser
from tests.server.phones import BASE

DOT_MM = 25.4 / 300


@pytest.fixture
def fresh_db(tmp_path):
    folder = DataFolder(tmp_path / "labels")
    folder.prepare()
    with closing(folder.open()) as db:
        yield db


@pytest.fixture
def codes(fresh_db):
    return store.issue(fresh_db, 60, BASE, 0)


def drawn(page, dots_a_dot=1):
    """Returns a page as a printer of 300 dpi (times `dots_a_dot`) would put it on paper."""
    size = (int(sheet.PAGE_WIDTH) * dots_a_dot, int(sheet.PAGE_HEIGHT) * dots_a_dot)
    image = Image.new("L", size, 255)
    draw = ImageDraw.Draw(image)
    for box in page.boxes:
        x, y = box.x * dots_a_dot, box.y * dots_a_dot
        draw.rectangle([x, y, x + box.width * dots_a_dot - 1, y + box.height * dots_a_dot - 1], fill=0)
    return image


def cell(page, place):
    """Cuts one label out along its marks."""
    x = sheet.LEFT + place % sheet.COLUMNS * sheet.CELL_WIDTH
    y = sheet.TOP + place // sheet.COLUMNS * sheet.CELL_HEIGHT
    return drawn(page).crop((x, y, x + sheet.CELL_WIDTH, y + sheet.CELL_HEIGHT))


def test_every_label_of_a_sheet_reads_back_as_its_address(codes):
    (first, second) = sheet.pages(codes, BASE)

    read = [zxingcpp.read_barcodes(drawn(page)) for page in (first, second)]

    texts = [{symbol.text for symbol in symbols} for symbols in read]
    assert texts[0] | texts[1] == {f"HTTP://LOCALHOST:8765/U/{code}" for code in codes}
    assert [len(symbols) for symbols in read] == [56, 4]


def test_the_address_is_read_as_ours_and_means_the_code(codes):
    for code in codes:
        read = labels.parse(address(code, BASE), "localhost:8765")
        assert (read["outcome"], read["code"]) == ("ours", code)


def test_the_symbol_is_small_and_stands_dirt(codes):
    symbol = zxingcpp.read_barcode(cell(sheet.pages(codes, BASE)[0], 0))

    modules = matrix(address(codes[0], BASE))
    assert len(modules) == 25  # version 2: 29 characters fit at level Q
    assert symbol.ec_level == "Q"
    assert symbol.content_type == zxingcpp.ContentType.Text


def test_a_label_reads_when_blurred_turned_scaled_and_dirty(codes):
    label = cell(sheet.pages(codes, BASE)[0], 0)
    dirty = label.copy()
    ImageDraw.Draw(dirty).rectangle([150, 110, 170, 150], fill=0)
    cases = {
        "turned": label.rotate(27, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC),
        "blurred": label.filter(ImageFilter.GaussianBlur(2.5)),
        "small": label.resize((label.width // 3, label.height // 3)),
        "dirty": dirty,
    }

    for name, image in cases.items():
        symbol = zxingcpp.read_barcode(image)
        assert symbol is not None, name
        assert symbol.text.endswith(codes[0])


def test_modules_are_whole_dots_and_wide_enough(codes):
    page = sheet.pages(codes[:1], BASE)[0]
    modules = [box for box in page.boxes if box.height == sheet.MODULE]

    assert modules
    for box in modules:
        assert (box.x, box.y, box.width) == (int(box.x), int(box.y), int(box.width))
        assert box.width % sheet.MODULE == 0
    assert sheet.MODULE * DOT_MM >= 0.5


@pytest.mark.parametrize("base", [BASE, "https://swaptrail.workshop.lan:48765"])
def test_four_modules_of_margin_stay_free_on_every_side(codes, base):
    page = sheet.pages(codes[:1], base)[0]
    symbol = [box for box in page.boxes if box.height == sheet.MODULE]
    quiet = QUIET_MODULES * sheet.MODULE
    left, right = min(b.x for b in symbol) - quiet, max(b.x + b.width for b in symbol) + quiet
    top, bottom = min(b.y for b in symbol) - quiet, max(b.y + b.height for b in symbol) + quiet

    assert left >= sheet.LEFT + sheet.MARK_WIDTH
    assert right <= sheet.LEFT + sheet.CELL_WIDTH - sheet.MARK_WIDTH
    marks = [box for box in page.boxes if box.height != sheet.MODULE]
    for mark in marks:
        beside = mark.x >= right or mark.x + mark.width <= left
        above_or_below = mark.y >= bottom or mark.y + mark.height <= top
        assert beside or above_or_below
    (line,) = [line for line in page.lines if line.centred]
    assert line.baseline - line.size * 0.75 >= bottom - 1


def test_everything_lies_on_the_page_and_out_of_the_printers_margin(codes):
    page = sheet.pages(codes, BASE)[0]
    margin = 5 / DOT_MM

    assert min(box.x for box in page.boxes) >= margin
    assert max(box.x + box.width for box in page.boxes) <= sheet.PAGE_WIDTH - margin
    assert min(box.y for box in page.boxes) >= margin
    assert max(box.y + box.height for box in page.boxes) <= sheet.PAGE_HEIGHT - margin


def test_the_code_is_written_large_in_two_groups(codes):
    page = sheet.pages(codes, BASE)[0]
    written = [line for line in page.lines if line.centred]

    assert [line.text for line in written] == [labels.shown(code) for code in codes[:56]]
    assert all(line.size * DOT_MM >= 6 for line in written)
    assert all(len(line.text) * line.size * 0.6 < sheet.CELL_WIDTH for line in written)


def test_the_ruler_is_as_long_as_it_says(codes):
    page = sheet.pages(codes, BASE)[0]

    assert page.boxes[-1].width * DOT_MM == pytest.approx(100)
    assert any("100 mm" in line.text for line in page.lines)


def test_an_address_too_long_for_a_label_is_refused():
    with pytest.raises(CommandRefused, match="too long"):
        sheet.pages(["JRMMA"], "https://" + "a" * 60 + ".example:48765")


def test_the_svg_has_its_size_on_paper_and_reads_back(codes, tmp_path):
    page = sheet.pages(codes[:5], BASE)[0]
    file = tmp_path / "sheet.svg"
    file.write_bytes(svg.draw(page))
    picture = tmp_path / "sheet.png"

    # Headless and with a profile of its own, as a person's browser would show it.
    command = [find_browser(), "--headless", "--no-sandbox", f"--user-data-dir={tmp_path}/profile"]
    command += [f"--screenshot={picture}", "--window-size=794,1123", file.as_uri()]
    subprocess.run(command, check=True, capture_output=True, timeout=60)

    symbols = zxingcpp.read_barcodes(Image.open(picture))
    assert {symbol.text[-5:] for symbol in symbols} == set(codes[:5])
    source = file.read_text()
    assert 'width="210mm" height="297mm"' in source
    width = float(re.search(r'viewBox="0 0 ([\d.]+)', source).group(1))
    assert width * DOT_MM == pytest.approx(210, abs=0.001)


def test_the_pdf_is_well_formed_page_by_page(codes):
    data = pdf.draw(sheet.pages(codes, BASE))

    assert data.startswith(b"%PDF-1.4")
    table = int(re.search(rb"startxref\n(\d+)", data).group(1))
    assert data[table:].startswith(b"xref")
    places = [int(place) for place in re.findall(rb"(\d{10}) 00000 n", data)]
    for number, place in enumerate(places, 1):
        assert data[place:].startswith(f"{number} 0 obj".encode())
    assert len(re.findall(rb"/Type /Page ", data)) == 2
    width, height = (float(x) for x in re.search(rb"MediaBox \[0 0 (\S+) (\S+)\]", data).groups())
    assert (width / 72 * 25.4, height / 72 * 25.4) == pytest.approx((210, 297), abs=0.01)


def test_the_pdf_draws_the_same_boxes_as_the_svg(codes):
    page = sheet.pages(codes[:1], BASE)[0]
    content = pdf.content(page).decode("cp1252")
    boxes = re.findall(r"(\S+) (\S+) (\S+) (\S+) re", content)

    assert content.startswith("0.24 0 0 0.24 0 0 cm")
    assert len(boxes) == len(page.boxes)
    x, foot, width, height = (float(value) for value in boxes[0])
    first = page.boxes[0]
    assert (x, width, height) == pytest.approx((first.x, first.width, first.height), abs=0.01)
    assert foot == pytest.approx(sheet.PAGE_HEIGHT - first.y - first.height, abs=0.01)
    assert f"({labels.shown(codes[0])}) Tj" in content


def test_codes_are_never_issued_twice(fresh_db):
    batches = [store.issue(fresh_db, 400, BASE, n) for n in range(5)]

    issued = [code for batch in batches for code in batch]
    assert len(set(issued)) == 2000
    assert all(labels.may_be_issued(code) for code in issued)
    assert fresh_db.table("labels").count == 2000


def test_codes_written_by_hand_on_a_phone_are_not_issued_again(phone, db, monkeypatch):
    written = store.issue(db, 1, BASE, 0)[0]
    db.conn.execute("DELETE FROM labels")
    db.conn.commit()
    data = {"unit": "u00000000000a", "code": written, "how": "written"}
    phone.record(kind="unit_labelled", data=data)
    phone.synced()
    body = [labels.ALPHABET.index(character) for character in written[:4]]
    other = [0, 1, 2, 3] * 40
    monkeypatch.setattr("secrets.token_bytes", lambda count: bytes(body + other + list(range(200))))

    assert written not in store.issue(db, 1, BASE, 0)


def test_when_the_codes_run_out_it_says_so(fresh_db, monkeypatch):
    monkeypatch.setattr("secrets.token_bytes", lambda count: bytes(count))

    with pytest.raises(CommandRefused, match=r"Only \d of 50 codes are left"):
        store.issue(fresh_db, 50, BASE, 0)
    assert fresh_db.table("labels").count == 0


@pytest.mark.parametrize("name", ["sheet.svg", "sheet.pdf"])
def test_the_command_writes_the_file_and_names_it(tmp_path, capsys, name):
    out = tmp_path / name

    status = main(["labels", "--data", str(tmp_path / "d"), "--count", "3", "--out", str(out)])

    assert status == 0
    assert out.stat().st_size > 1000
    printed = capsys.readouterr().out
    assert str(out) in printed
    assert "http://localhost:8765" in printed


def test_more_labels_than_a_sheet_holds_make_numbered_svg_files(tmp_path):
    out = tmp_path / "sheet.svg"

    main(["labels", "--data", str(tmp_path / "d"), "--count", "120", "--out", str(out)])

    assert sorted(file.name for file in tmp_path.glob("*.svg")) == [
        "sheet-2.svg",
        "sheet-3.svg",
        "sheet.svg",
    ]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--count", "0", "--out", "a.svg"], "--count 0"),
        (["--count", "5000", "--out", "a.svg"], "--count 5000"),
        (["--count", "3", "--out", "a.png"], "neither .svg nor .pdf"),
        (["--count", "3", "--out", "/nowhere/a.svg"], "does not exist"),
    ],
)
def test_what_cannot_be_printed_is_refused_in_one_line(tmp_path, capsys, arguments, said):
    status = main(["labels", "--data", str(tmp_path / "d"), *arguments])

    assert status == 2
    error = capsys.readouterr().err
    assert said in error
    assert error.count("\n") == 1
    assert not (tmp_path / "d").exists()
