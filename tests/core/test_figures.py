"""Figures that a meter shows: how they are read, what copper has, the limits they are held against."""

import pytest

from server.core.meter import copper
from server.core.meter.figure import OPEN
from server.core.meter.figure import read
from server.core.parts import wires
from server.core.parts.sorts import by_identity
from server.words.speech import Speech
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.scenarios import swapped

OUTER = "rear-right-outer"
OHM = VOLT = 1_000_000


@pytest.fixture
def job(core):
    """The fault stays at right outer: its wiring is to be checked."""
    return swapped(Driver(core), OUTER)


def measured(check, value, reads, **more):
    data = {"position": OUTER, "check": check, "value": value, "reads": reads, **more}
    return {"kind": "circuit_measured", "data": data}


@pytest.mark.parametrize(
    ("typed", "unit", "value"),
    [
        ("0.8", "Ω", 800_000),
        ("0,8 Ω", "Ω", 800_000),
        (",5", "Ω", 500_000),
        ("5.", "Ω", 5 * OHM),
        ("4k7", "Ω", 4_700 * OHM),
        ("4K7 Ω", "Ω", 4_700 * OHM),
        ("4R7", "Ω", 4_700_000),
        ("47R", "Ω", 47 * OHM),
        ("R47", "Ω", 470_000),  # IEC 60062: the letter stands where the point would
        ("5 kΩ", "Ω", 5_000 * OHM),
        ("5k\u2126", "Ω", 5_000 * OHM),
        ("1M", "Ω", 1_000_000 * OHM),
        ("200 mOhm", "Ω", 200_000),
        ("12 ohmios", "Ω", 12 * OHM),
        ("1 ohmio", "Ω", OHM),
        ("0.5 ω", "Ω", 500_000),
        ("0.000001", "Ω", 1),
        ("+3", "Ω", 3 * OHM),
        ("-0,0", "Ω", 0),
        ("7\u00a0Ω", "Ω", 7 * OHM),
        ("007", "Ω", 7 * OHM),
        ("OL", "Ω", OPEN),
        ("0.L MΩ", "Ω", OPEN),
        ("ol", "Ω", OPEN),
        ("∞", "Ω", OPEN),
        ("12,40 V", "V", 12_400_000),
        ("850 mV", "V", 850_000),
        ("8.1 volts", "V", 8_100_000),
        ("1 voltio", "V", VOLT),
        ("12,4 V DC", "V", 12_400_000),
        ("12.4Vdc", "V", 12_400_000),
        ("60", "V", 60 * VOLT),
        ("", "V", None),
        ("  ", "Ω", None),
        ("whatever", "", None),
    ],
)
def test_a_figure_is_read_exactly_as_typed(typed, unit, value):
    assert read(typed, unit) == (value, None)


BAD_INPUT = [
    ("-3", "ground", "minus"),
    ("\u22123 kΩ", "ground", "minus"),
    ("-12 V", "supply", "minus"),
    ("OL", "supply", "open"),
    ("1e9", "ground", "number"),
    ("1,234.5", "ground", "number"),
    ("1 000", "ground", "space"),
    ("1.2.3", "supply", "number"),
    (".", "supply", "number"),
    ("-", "supply", "number"),
    ("k7", "ground", "number"),
    ("🙂", "ground", "number"),
    ("5 🙂", "supply", "number"),
    ("\u0665", "ground", "number"),
    ("\uff15", "ground", "number"),
    ("5 A", "ground", "number"),
    ("12 V", "ground", "other"),
    ("12 Ω", "supply", "other"),
    ("-12,4 V", "ground", "other"),
    ("850 mV", "ground", "other"),
    ("4k7 ohm", "supply", "other"),
    ("OL Ω", "supply", "other"),
    ("1 000", "supply", "space"),
    ("V", "ground", "number"),
    ("0.0000001", "ground", "number"),
    ("60.000001", "supply", "most"),
    ("12 kV", "supply", "most"),
    ("1000.000001 MΩ", "ground", "most"),
    ("9" * 40, "ground", "most"),
]
DO = {
    ("minus", "supply"): "Minus: the probes are swapped. Swap them and measure again.",
    ("minus", "ground"): "Minus: there is a voltage on the wire. Take it off and measure again.",
    ("open", "supply"): "OL is a reading in ohms. Set the meter to volts.",
    ("other", "supply"): "That is a reading in ohms. Set the meter to volts and measure again.",
    ("other", "ground"): "That is a voltage. Key off, set the meter to ohms and measure again.",
}
DO |= {
    ("most", each): "That is too much for this wire. Look at the unit and at the point."
    for each in ("supply", "ground")
}
DO |= {
    ("space", each): "Type the digits without a space between them, as the meter shows them."
    for each in ("supply", "ground")
}
DO |= {
    ("number", each): "Type the digits that the meter shows, and its unit." for each in ("supply", "ground")
}
WANTED = {
    "supply": "volts from 0 to 60, as in 12.4, 12,4 or 850 mV",
    "ground": "ohms from 0, as in 0.8, 0,8, 4k7 or 5 kΩ; OL if the meter shows open",
}


@pytest.mark.parametrize(("typed", "check", "problem"), BAD_INPUT)
def test_what_is_no_figure_is_refused_with_what_was_found_and_what_is_wanted(job, typed, check, problem):
    refusal = job.check(measured(check, typed, "unclear"))
    assert (refusal["rule"], refusal["override"]) == ("figure", False)
    assert refusal["title"] == "The figure can't be read"
    assert refusal["sentence"] == f'Found "{typed}", wanted {WANTED[check]}.'
    assert refusal["do"] == DO[problem, check]
    assert refusal["fault"]["field"] == "data.value"


def test_the_figure_where_it_works_is_refused_by_its_own_name(job):
    refusal = job.check(measured("supply", "8", "good", compared="1e9"))
    assert refusal["title"] == "The figure where it works can't be read"
    assert refusal["fault"]["field"] == "data.compared"


@pytest.mark.parametrize(
    ("check", "value", "compared", "says"),
    [
        ("ground", "0.3", "", "good"),
        ("ground", "1", "", "good"),
        ("ground", "1,000001", "", "bad"),
        ("ground", "5000 Ω", "", "bad"),
        ("ground", "4k7", "", "bad"),
        ("ground", "OL", "", "bad"),
        ("signal", "2", "", None),
        ("signal", "2.01", "", "bad"),
        ("signal", "5 kΩ", "", "bad"),
        ("signal", "1 MΩ", "", None),
        ("signal", "OL", "", None),
        ("supply", "12", "", None),
        ("supply", "0,1", "", "bad"),
        ("supply", "8.1", "8.6 V", "good"),
        ("supply", "8.1", "8,7", "bad"),
        ("supply", "9.2", "8.7", "good"),
        ("supply", "9.3", "8.7", None),
        ("supply", "499 mV", "0", "bad"),
        ("ground", "", "", None),
        ("connector", "5000", "", None),
        ("ground-drop", "100 mV", "", "good"),
        ("ground-drop", "0,101", "", "bad"),
        ("to-ground", "OL", "", "good"),
        ("to-ground", "1 MΩ", "", "good"),
        ("to-ground", "4k7", "", "bad"),
        ("to-ground", "0", "", "bad"),
        ("to-supply", "0.5", "", "good"),
        ("to-supply", "12.4", "", "bad"),
        ("half", "1.5", "", None),
        ("half", "OL", "", None),
        ("half", "3", "", "bad"),
        ("continuity", "5000", "", "bad"),
    ],
)
def test_a_reading_against_its_figure_is_asked_about(job, check, value, compared, says):
    for reads in ("good", "bad", "unclear"):
        refusal = job.check(measured(check, value, reads, compared=compared))
        against = says is not None and reads not in (says, "unclear")
        assert bool(refusal) == against, (reads, refusal)
        if refusal:
            assert (refusal["rule"], refusal["override"]) == ("reading", True)


def test_good_beside_5000_ohms_is_refused_with_a_question_and_stands_with_a_reason(job):
    with pytest.raises(Refused) as refused:
        job.record(measured("ground", "5000", "good"))
    refusal = refused.value.refusal
    assert refusal["title"] == "Which is right, figure or reading?"
    assert refusal["sentence"] == "Right outer has 5000 Ω. By the limit that is bad: More than 1 Ω, or open."
    assert refusal["do"].endswith("type the figure anew or tap Bad. If both are right, say why.")

    job.record(measured("ground", "5000", "good", override="wrong pin"))

    assert job.view()["history"][0]["sentence"] == (
        "Measure the ground wire at right outer: good (5000 Ω). All the same, because: wrong pin."
    )


def test_a_figure_is_told_with_its_unit_once_and_with_that_of_the_good_position(job):
    job.record(measured("supply", "8.1 V", "bad", compared="12,1"))
    assert job.view()["history"][0]["sentence"] == (
        "Measure the supply at right outer: bad (8.1 V). Where it works: 12,1 V."
    )


@pytest.mark.parametrize(
    ("check", "value", "more", "wanted"),
    [  # a mark and three digits: thousands to some, decimals to others, and the limit lies between
        ("ground", "1,000", {}, "1000 or 1,00"),
        ("ground", "1.000 Ω", {}, "1000 or 1.00"),
        ("signal", "+1,234 ohm", {}, "1234 or 1,23"),
        ("to-ground", "1.500 kΩ", {}, "1500 or 1.50"),
        ("to-supply", "12,400 mV", {}, "12400 or 12,40"),
        ("supply", "8", {"compared": "9.200 mV"}, "9200 or 9.20"),
    ],
)
def test_a_mark_that_some_read_as_thousands_is_asked_about(job, check, value, more, wanted):
    refusal = job.check(measured(check, value, "good", **more))
    assert (refusal["rule"], refusal["override"]) == ("figure", False)
    assert refusal["title"] == (
        "Where it works: thousands, or decimals?" if more else "Thousands, or decimals?"
    )
    assert refusal["sentence"] == f'Found "{more.get("compared", value)}", wanted {wanted}.'
    assert refusal["do"].startswith("Some read the mark as thousands, some as decimals.")
    assert refusal["fault"]["field"] == ("data.compared" if more else "data.value")


@pytest.mark.parametrize(
    ("check", "value", "reads"),
    [
        ("ground", "0,800", "good"),  # nobody writes a thousand with a nought before it
        ("ground", "1,00", "good"),
        ("ground", "1000", "bad"),
        ("ground", "5,000", "bad"),  # bad either way
        ("ground", "1,0000", "good"),
        ("to-ground", "1.234", "bad"),
        ("supply", "12,400", "unclear"),  # no car has twelve thousand volts
    ],
)
def test_a_mark_that_makes_no_difference_is_not_asked_about(job, check, value, reads):
    assert job.check(measured(check, value, reads)) is None


def test_entries_from_before_stand_whatever_they_say(job):
    for value in ("as the others", "0 V", "-3", "1,000"):
        job.force("circuit_measured", position=OUTER, check="signal", value=value, reads="good")
    assert [each["value"] for each in job.core("state")["jobs"][job.job]["meter"][-4:]] == [
        "as the others",
        "0 V",
        "-3",
        "1,000",
    ]


def test_putting_a_figure_right_wants_one_that_can_be_read(job):
    job.record(measured("ground", "0.3", "good"))
    entry = job.events[-1]
    right = {"device": entry["device"], "seq": entry["seq"], "reason": "misread"}
    for value, rule in (("1e9", "figure"), ("0.4", None)):
        data = {**entry["data"], "value": value}
        refusal = job.check(
            {"kind": "put_right", "data": {**right, "entry": {"kind": "circuit_measured", "data": data}}}
        )
        assert (refusal["rule"] if refusal else None) == rule


def test_the_step_says_in_which_units_and_what_copper_has(job):
    steps = {}
    while job.step()["form"] == "measure":
        steps[job.step()["expects"]["check"]] = job.step()
        job.choose(2)
    step = steps["continuity"]
    assert step["expects"] == {
        "position": OUTER, "check": "continuity", "units": ["Ω", "kΩ", "MΩ", "OL"], "compares": False,
    }  # fmt: skip
    assert step["more"].endswith("5 m of sound copper, 0.5 mm², have 0.20 Ω at 20 °C. At 85 °C: 0.24 Ω.")
    expects = steps["supply"]["expects"]
    assert (expects["units"], expects["compares"]) == (["V", "mV"], True)


# Milliohms a metre at 20 °C. IEC 60228, class 5: mycableengineering.com/knowledge-base/
# iec-60228-dc-resistance; AWG in ohms a thousand feet:
# hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html
IEC_60228 = {"0.5": 39.0, "0.75": 26.0, "1": 19.5}
AWG_OHMS_A_KILOFOOT = {"AWG 18": 6.385, "AWG 20": 10.15, "AWG 22": 16.14}
# What warmth makes of it: 1 + 0.00393 (t - 20), IEC 60028; and 1/kt = (230 + t)/250, how IEC 60228 corrects
# to 20 °C, which agrees to a hundredth (kt at 85 °C is 0.794:
# uecables.com/471-power-copper-conductors-according-to-iec-60228.html).
WARMTH = {-40: (0.7642, 190 / 250), 20: (1.0, 1.0), 85: (1.25545, 1 / 0.794)}


@pytest.mark.parametrize("celsius", sorted(WARMTH))
def test_copper_has_the_resistance_of_the_tables(celsius):
    by_coefficient, by_correction = WARMTH[celsius]
    tables = {size: ohms / 304.8 * 1000 for size, ohms in AWG_OHMS_A_KILOFOOT.items()} | IEC_60228
    for size, milliohms in tables.items():
        ours = copper.resistance(size, 1000, celsius) / 1000
        assert ours == pytest.approx(milliohms * by_coefficient, rel=1e-4)
        assert ours == pytest.approx(milliohms * by_correction, rel=0.01)


@pytest.mark.parametrize("gauge", [10, 16, 18, 20, 22, 24, 26])
def test_gauges_follow_the_rule_that_their_table_is_made_by(gauge):
    # ASTM B258: the diameter is 0.127 mm times 92 to the power of (36 - n)/39; copper of 58 m/(Ω·mm²).
    area = 3.141592653589793 / 4 * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2
    assert copper.AT_20[f"AWG {gauge}"] / 1e6 == pytest.approx(1 / 58 / area, rel=5e-4)


@pytest.mark.parametrize(
    ("size", "metres", "milliamperes", "celsius", "millivolts"),
    [  # V = I R' L (1 + 0.00393 (t - 20)), worked by hand from IEC 60228, class 5
        ("0.5", 10, 20, 20, 7.80),
        ("0.5", 10, 20, 60, 9.03),
        ("0.75", 4, 1000, 20, 104.0),
        ("0.75", 4, 1000, -20, 87.65),
    ],
)
def test_drops_are_those_of_worked_examples(size, metres, milliamperes, celsius, millivolts):
    micro_ohms = copper.resistance(size, metres * 1000, celsius)
    assert micro_ohms * milliamperes / 1e6 == pytest.approx(millivolts, abs=0.006)


@pytest.mark.parametrize(
    ("language", "figure", "told"),
    [("en", "0.75", "have 0.13 Ω at 20 °C"), ("es", "0,75", "tienen 0,13 Ω a 20 °C")],
)
def test_the_size_of_a_wire_is_written_as_the_language_writes_figures(language, figure, told):
    speech = Speech(language)
    called = {size: speech.text(copper.called(size)) for size in copper.AT_20}
    assert (called["0.75"], called["1"], called["AWG 20"]) == (f"{figure} mm²", "1 mm²", "AWG 20")
    check = by_identity("parking-sensor").circuit_check("continuity")
    noted = {"size": "0.75", "centimetres": 500, "celsius": 20}
    for wire, size in ((None, called["0.5"]), (noted, called["0.75"])):
        assert f", {size}, " in speech.text(wires.told(check, wire))
    assert speech.text(wires.told(check, noted)).endswith(told + ".")


FOOT = 304.8  # mm


@pytest.mark.parametrize(
    ("size", "feet", "amperes", "celsius", "volts"),
    [
        # engineeringtoolbox.com/voltage-drop-d_1550.html: 2 x 100 ft of no. 10 at 1.02 ohms a thousand feet,
        # which is copper at 25 °C, 10 A: 2.04 V.
        ("AWG 10", 200, 10, 25, 2.04),
        # electrician2.com/weltrain05/lpage135.html: 2 x 100 ft of no. 16, 4 A: 4.0 V, with 4.99 ohms a
        # thousand feet at 75 °C of stranded wire, whose strands are 2 % longer than a solid one.
        ("AWG 16", 200 * 1.02, 4, 75, 4.0),
    ],
)
def test_drops_are_those_of_published_examples(size, feet, amperes, celsius, volts):
    micro_ohms = copper.resistance(size, round(feet * FOOT), celsius)
    assert micro_ohms * amperes / 1e6 == pytest.approx(volts, rel=0.005)


def test_a_sound_wire_keeps_within_the_limit_of_its_check_at_any_temperature():
    for check in by_identity("parking-sensor").circuit_checks:
        if "wire" in check:
            hot = copper.resistance(check["wire"].size, check["wire"].metres * 1000, 85)
            assert hot < check["limit"].most / 2
