"""The maker's symbol: envelopes as ISO/IEC 15434 and MH10.8.2 have them, plain texts, and what is refused.

The first two envelopes are published: one stands in a public parser's test file, one in a public note on a
label format. The rest is our own. That an envelope is well formed is also zxing-cpp's word: it names the
content of such a symbol ISO15434.
"""

import pytest
import zxingcpp

from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import CoreError
from tests.static.symbols import envelope

PARSERS_EXAMPLE = "[)>\x1e06\x1d9N112097776020\x1dS496320471563\x1d1TABC123\x1dD290331\x1e\x04"
NOTES_EXAMPLE = "[)>\x1e06\x1d17V98897\x1d1P4L0014-163B\x1dSSA10197\x1e\x04"


@pytest.mark.parametrize(
    ("text", "part", "serial"),
    [
        pytest.param(PARSERS_EXAMPLE, "", "496320471563", id="published: serial, lot and date"),
        pytest.param(NOTES_EXAMPLE, "4L0014-163B", "SA10197", id="published: supplier's part number"),
        pytest.param(envelope("P12345678", "SABC123", "1TL0042"), "12345678", "ABC123", id="ours"),
        pytest.param(envelope("S7", "P1"), "1", "7", id="in any order"),
        pytest.param(envelope("P55", "1P55"), "55", "", id="the same number twice"),
        pytest.param("[)>\x1e06\x1dP12345678", "12345678", "", id="its end left out"),
        pytest.param("[)>\x1e05\x1d0112345\x1e06\x1dP9\x1e\x04", "9", "", id="behind another format"),
    ],
)
def test_an_envelope_fills_part_number_and_serial(core, text, part, serial):
    read = core("maker_symbol", texts=[text])

    assert (read["outcome"], read["part"], read["serial"]) == ("numbers", part, serial)
    for value in filter(None, (part, serial)):
        assert value in read["sentence"]


@pytest.mark.parametrize("left_out", ["\x1d", "\x1e", "\x1d\x1e\x04"])
def test_an_envelope_without_its_separators_gives_no_numbers(core, left_out):
    """Scanners that type leave them out in some settings (OCA/stock-logistics-barcode#230)."""
    typed = "".join(sign for sign in envelope("1PPS-1", "SSN-1") if sign not in left_out)

    assert core("maker_symbol", texts=[typed])["outcome"] == "broken"


@pytest.mark.parametrize("text", [PARSERS_EXAMPLE, NOTES_EXAMPLE, envelope("P12345678", "SABC123")])
@pytest.mark.parametrize("symbol", [zxingcpp.BarcodeFormat.DataMatrix, zxingcpp.BarcodeFormat.QRCode])
def test_an_independent_reader_takes_them_for_envelopes_too(text, symbol):
    image = zxingcpp.create_barcode(text, symbol).to_image(scale=4)

    (read,) = zxingcpp.read_barcodes(image, text_mode=zxingcpp.TextMode.Plain)

    assert read.content_type == zxingcpp.ContentType.ISO15434
    assert read.text == text


def test_two_part_numbers_are_asked_about(core):
    read = core("maker_symbol", texts=[envelope("PCUST-1", "1PSUPP-2", "S9")])

    assert read["outcome"] == "choices"
    assert [(each["part"], each["serial"]) for each in read["choices"]] == [
        ("CUST-1", ""),
        ("SUPP-2", ""),
        ("", "9"),
    ]
    assert "customer's" in read["choices"][0]["words"]
    assert "supplier's" in read["choices"][1]["words"]


def test_a_plain_text_is_offered_for_either_field(core):
    read = core("maker_symbol", texts=[" 66-20 17 "])

    assert read["outcome"] == "choices"
    assert [(each["part"], each["serial"]) for each in read["choices"]] == [
        ("66-20 17", ""),
        ("", "66-20 17"),
    ]


@pytest.mark.parametrize(
    ("text", "first"),
    [("1P4L0014-163B", ("4L0014-163B", "")), ("SSA10197", ("", "SA10197")), ("P12", ("12", ""))],
)
def test_a_plain_text_with_a_mark_is_offered_without_it_first_and_whole_as_well(core, text, first):
    choices = [(each["part"], each["serial"]) for each in core("maker_symbol", texts=[text])["choices"]]

    assert choices == [first, (text, ""), ("", text)]


def test_a_choice_says_by_which_mark_it_goes(core):
    words = [core("maker_symbol", texts=[text])["choices"][0]["words"] for text in ("S0042", "1P77")]

    assert words == ["Serial 0042 (marked S)", "Part number 77 (supplier's part number, marked 1P)"]


def test_a_text_parted_by_group_marks_is_offered_piece_by_piece(core):
    choices = core("maker_symbol", texts=["P12\x1dS34"])["choices"]

    assert [(each["part"], each["serial"]) for each in choices[:1] + choices[3:4]] == [("12", ""), ("", "34")]


@pytest.mark.parametrize(
    ("text", "outcome", "says"),
    [
        pytest.param("[)>06\x1dP1", "broken", "not whole", id="no record mark"),
        pytest.param("[)>\x1e05\x1d0112345\x1e\x04", "no_numbers", "05", id="another format"),
        pytest.param(envelope("1TL0042", "Q5"), "no_numbers", "supplier's lot L0042", id="only a lot"),
        pytest.param(envelope("3Z9"), "no_numbers", "3Z 9", id="an identifier that is not known"),
        pytest.param("[)>\x1e", "no_numbers", "empty", id="empty envelope"),
        pytest.param(envelope("P" + "9" * 81), "broken", "80", id="too long"),
        pytest.param("9" * 81, "broken", "80", id="plain, too long"),
        pytest.param("12\x0034", "broken", "characters", id="a control character"),
        pytest.param("Größe 7", "broken", "characters", id="not printed on parts"),
        pytest.param("  ", "no_numbers", "empty", id="blank"),
        pytest.param("https://example.org/p/1", "foreign", "not opened", id="an address"),
        pytest.param("HTTP://YARD:8765/U/DEFHM", "label", "which part", id="our own label"),
        pytest.param("HTTP://OTHER/U/DEFHM", "label", "which part", id="a label from elsewhere"),
    ],
)
def test_what_holds_no_numbers_says_what_to_do(core, text, outcome, says):
    read = core("maker_symbol", texts=[text], host="yard:8765")

    assert read["outcome"] == outcome
    assert says in read["title"] + " " + read["sentence"]
    assert read["sentence"].endswith(".")


def test_several_symbols_on_one_bag_are_put_together(core):
    read = core("maker_symbol", texts=[envelope("1P4L0014"), "https://example.org", envelope("SA1")])

    assert (read["outcome"], read["part"], read["serial"]) == ("numbers", "4L0014", "A1")


def test_symbols_that_contradict_each_other_are_asked_about(core):
    read = core("maker_symbol", texts=[envelope("P1"), envelope("P2")])

    assert [each["part"] for each in read["choices"]] == ["1", "2"]


def test_several_plain_texts_are_all_offered(core):
    read = core("maker_symbol", texts=["1P77", "S88", "Q1"])

    assert [(each["part"], each["serial"]) for each in read["choices"]][:4] == [
        ("77", ""),
        ("1P77", ""),
        ("", "1P77"),
        ("", "88"),
    ]


@pytest.fixture
def known(core):
    """A core that has the part PS-1 on record, and serial numbers S-100 and PS-2 of it."""
    job = Driver(core).begin(part="PS-1")
    job.force("part_noted", unit=home("rear-right-outer"), part="PS-1", serial="S-100")
    job.force("part_noted", unit=home("rear-right-inner"), part="PS-1", serial="PS-2")
    return core


@pytest.mark.parametrize(
    ("texts", "part", "serial"),
    [
        pytest.param(["PS-1"], "PS-1", "", id="not the part S-1 that the mark P makes of it"),
        pytest.param(["ps 1"], "ps 1", "", id="as it is compared everywhere"),
        pytest.param(["S-100"], "", "S-100", id="a serial, not the serial 100 marked S"),
        pytest.param(["SS-100"], "", "S-100", id="the marked one"),
        pytest.param(["PS-1", "S-100"], "PS-1", "S-100", id="two symbols"),
        pytest.param(["PS-1\x1dS-100"], "PS-1", "S-100", id="two pieces"),
        pytest.param([envelope("PCUST-1", "1PPS-1", "S9")], "PS-1", "9", id="of two in an envelope"),
    ],
)
def test_a_symbol_that_reads_in_several_ways_takes_the_one_on_record(known, texts, part, serial):
    read = known("maker_symbol", texts=texts)

    assert (read["outcome"], read.get("part"), read.get("serial")) == ("numbers", part, serial)


def test_where_the_record_does_not_settle_it_what_is_known_comes_first(known):
    known_as_both = Driver(known, device="d00000000000000ff")
    known_as_both.force("part_noted", unit=home("rear-left-outer"), part="PS-2", serial="")
    both = known("maker_symbol", texts=["PS-2"])
    beside = known("maker_symbol", texts=["A-17", "PS-1"])

    assert [(each["part"], each["serial"]) for each in both["choices"]] == [
        ("PS-2", ""),
        ("", "PS-2"),
        ("S-2", ""),
    ]
    assert [(each["part"], each["serial"]) for each in beside["choices"]] == [
        ("PS-1", ""),
        ("A-17", ""),
        ("", "A-17"),
    ]


@pytest.mark.parametrize("texts", [[], "1P77", [7]])
def test_what_is_no_list_of_texts_is_named(core, texts):
    with pytest.raises(CoreError) as refused:
        core("maker_symbol", texts=texts)
    assert refused.value.field == "texts"


@pytest.mark.parametrize("second", [envelope("1PPS-1", "SSN-9"), "HTTPS://YARD.EXAMPLE/U/AAAAA"])
def test_two_codes_in_one_text_are_not_taken_for_one(core, second):
    """A hand scanner without an end after each code: the number that is on record was taken for both."""
    first = envelope("1PPS-1", "SSN-1")
    Driver(core).open().force("part_noted", unit=home("rear-left-outer"), part="PS-1", serial="SN-1")
    read = core("maker_symbol", texts=[first + second])
    assert (read["outcome"], read["title"]) == ("broken", "Two codes came as one")
    assert core("maker_symbol", texts=[first + first])["serial"] == "SN-1", "the same bag, read twice"
