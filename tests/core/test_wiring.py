"""The wiring of a parking sensor along its chain: found, repaired, proven; what is left; what is old."""

from datetime import UTC

import pytest

from server.core.facts.kinds import KINDS
from server.core.parts.sorts import by_identity
from server.words.speech import Speech
from tests.core.driver import Driver
from tests.core.scenarios import swapped
from tests.core.test_sorts import begun

OUTER = "rear-right-outer"
OF_OLD = ("connector", "ground", "supply", "signal")
READS = {"good": 0, "bad": 1, "unclear": 2}


@pytest.fixture
def job(core):
    """The fault stays at right outer: its wiring is to be checked."""
    job = swapped(Driver(core), OUTER)
    assert job.step()["id"] == "wiring.measure"
    return job


def go_through(job, **differs):
    """Answer each check good, but those in `differs`; return which checks were asked for."""
    asked = []
    while job.step()["id"].endswith("measure"):
        asked.append(job.step()["expects"]["check"])
        job.choose(READS[differs.get(asked[-1].replace("-", "_"), "good")])
    return asked


def states(job):
    return {each["id"]: each["state"] for each in job.step()["harness"]["segments"]}


def test_a_pushed_back_pin_is_found_repaired_and_proven(job):
    first = job.step()["harness"]
    assert first["where"] == "7 of 8 places can have the fault."
    assert (first["next"]["from"], first["next"]["to"], first["next"]["line"]) == ("pins", "pins", "")
    assert first["next"]["why"].startswith("Looks at the pins of the sensor's plug: ")

    assert go_through(job, pins="bad") == ["pins"]

    step = job.step()
    assert (step["id"], step["form"]) == ("wiring.found", "found")
    assert step["title"] == "Right outer: it is in the pins of the sensor's plug"
    assert step["text"].startswith("Clean the pins")
    assert states(job)["pins"] == "named"
    assert states(job)["wire"] == "sound"
    assert [(each["check"], each["reads"]) for each in step["harness"]["readings"]] == [("pins", "bad")]
    assert step["harness"]["next"] is None
    assert "pins" in [each["id"] for each in step["action"]["segments"]]
    job.tap()
    assert job.core("state")["jobs"][job.job]["repairs"][0]["cause"] == f"circuit:{OUTER}"
    assert job.events[-1]["data"]["segment"] == "pins"
    assert job.step()["id"] == "measure.again"
    assert job.step()["expects"]["check"] == "pins"
    job.choose(READS["good"])
    job.guided()
    while job.step()["form"] == "test":
        job.test()
    assert job.step()["id"] == "walk"


def test_who_doubts_what_is_named_makes_the_next_check(job):
    go_through(job, pins="bad")
    further = job.step()["further"]
    assert further["form"] == "measure"
    assert further["expects"]["check"] not in ("pins", "connector", "ground", "signal")
    job.record(*further["choices"][0]["events"])
    assert job.step()["id"] in ("wiring.found", "wiring.measure")


def test_readings_on_both_sides_leave_the_wire_between_them(job):
    asked = go_through(job, half="bad", to_ground="bad")
    assert {"pins", "seated", "half", "to-ground"} <= set(asked)
    assert states(job)["wire"] in ("named", "possible")
    likely = sorted(job.step()["harness"]["segments"], key=lambda each: -each["ppb"])[0]
    assert likely["id"] == "wire"


def test_a_channel_that_keeps_its_fault_is_named_and_the_wires_are_not(job):
    asked = go_through(job, channels="bad")
    assert asked[-1] == "channels"
    step = job.step()
    assert step["title"] == "Right outer: it is in the channel of the control unit"
    assert step["text"].startswith("The wires are sound.")


def test_all_good_and_a_fault_that_moves_with_the_wires_leaves_what_opens_when_warm(job):
    go_through(job)
    step = job.step()
    assert (step["id"], step["form"]) == ("wiring.stuck", "choices")
    assert step["text"] == (
        "The fault moved with the wires: most likely a break that comes and goes is left."
        " A contact that opens when warm shows when plug and wire are warmed."
    )
    assert job.view()["reasoning"]["verdict"][0]["cause"] == f"circuit:{OUTER}"


def likeliest(job):
    return max(job.step()["harness"]["segments"], key=lambda each: each["ppb"])


def test_all_good_and_a_fault_that_moves_with_the_wires_clears_the_channel(job):
    """It was told as one more good reading: the channel kept 52 %, and a new control unit was near."""
    go_through(job)
    assert likeliest(job)["id"] == "loom"
    assert {each["id"]: each["chance"] for each in job.step()["harness"]["segments"]}["channel"] == "10 %"


def test_a_round_on_record_in_which_the_fault_moved_stays_complete_as_it_was(job):
    """By the list of then: no further check is asked for, and nothing that was told changes."""
    for check in ALL_OF_LIST_4:
        job.fact("circuit_measured", position=OUTER, check=check, value="", reads="good", since=4)
    assert job.step()["id"] == "wiring.stuck"
    assert (likeliest(job)["id"], likeliest(job)["chance"]) == ("channel", "61 %")


def test_a_fault_that_moves_with_the_wires_is_no_wiring_fault_before_its_sensor_was_exchanged(core):
    """The sensor moves with its wires, too: all read good, and a bad sensor was called the wiring."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("move_started", move="meter", fitted={}, position=OUTER, reason="to see")
    asked = []
    while job.step()["form"] == "measure":
        asked.append(job.step()["expects"]["check"])
        job.choose(0)
    assert "channels" in asked
    assert job.core("reasoned", job=job.job)["causes"][0]["cause"].startswith("unit:")


def test_all_good_moves_the_conclusion(job):
    before = job.view()["reasoning"]["verdict"]
    go_through(job, channels="unclear")
    assert before
    assert job.view()["reasoning"]["verdict"] is None
    assert job.step()["form"] == "moves"


def test_a_bad_reading_that_names_nothing_tells_what_is_likeliest_and_how_to_mend_it(job):
    go_through(job, wiggle="bad", pins="unclear", seated="unclear")
    step = job.step()
    assert step["id"] == "wiring.measure.done"
    assert step["action"]["words"] == "I have repaired it"
    assert "1 of " in step["text"]
    assert step["harness"]["next"] is None


def measured_before_any_exchange(core, cannot_tell):
    """Go through the checks of a position, good but for those it cannot tell; return (job, last step).

    `cannot_tell(n, check)` is asked of each, the first one with n = 0.
    """
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("move_started", move="meter", fitted={}, position=OUTER, reason="to see")
    made = 0
    while job.step()["form"] == "measure":
        check = job.step()["expects"]["check"]
        job.choose(READS["unclear" if cannot_tell(made, check) else "good"])
        made += 1
    return job, job.step()


def test_a_control_unit_is_not_bought_because_its_channel_is_likely(core):
    """Its channels were not exchanged: the wires were called sound, and a new control unit what is left."""
    _, step = measured_before_any_exchange(core, lambda _, check: check in ("channels", "half"))

    assert step["id"] == "measure.done"
    assert "Most likely it is in the channel of the control unit: 89 %." in step["text"]
    assert "new control unit" not in step["text"]
    assert "The exchange of two channels tells them apart" in step["text"]


def test_nothing_is_to_be_mended_where_the_checks_leave_many_places(core):
    job, step = measured_before_any_exchange(core, lambda n, _: n % 3 == 0)

    assert step["id"] == "measure.done"
    assert step["text"] == "0 of 15 read bad. Could not be made: 5. 4 of 8 places can have the fault."
    job.tap()
    assert job.view()["moves"][0]["move"] == "exchange"


def test_a_second_round_adds_to_the_first(job):
    go_through(job, wiggle="bad", pins="unclear", seated="unclear")
    job.fact("move_started", move="meter", fitted={}, position=OUTER, reason="", round=1)
    assert job.step()["progress"]["now"] == 1
    go_through(job, pins="bad")
    assert job.step()["title"] == "Right outer: it is in the pins of the sensor's plug"


def test_checks_that_were_complete_before_there_were_more_stay_complete(job):
    for check in OF_OLD:
        job.fact("circuit_measured", position=OUTER, check=check, value="", reads="good")
    assert job.view()["reasoning"]["verdict"] is None
    assert job.step()["form"] == "moves"
    job.fact("circuit_measured", position=OUTER, check="pins", value="", reads="bad", since=2)
    assert job.view()["reasoning"]["verdict"][0]["cause"] == f"circuit:{OUTER}"


def test_checks_begun_of_old_go_on_along_the_chain(job):
    job.fact("circuit_measured", position=OUTER, check="connector", value="", reads="bad")
    segments = {each["id"]: each["ppb"] for each in job.step()["harness"]["segments"]}
    assert segments["pins"] + segments["connector"] > 900_000_000
    asked = go_through(job, pins="bad")
    assert asked[-1] == "pins"
    assert job.step()["id"] == "wiring.found"


def wire(**differs):
    data = {"position": OUTER, "size": "0.5", "centimetres": 450, "celsius": 20, "colour": "", "pins": ""}
    return {"kind": "wire_noted", "data": {**data, **differs}}


def at_continuity(job):
    """Go on until the wire is measured from end to end."""
    while job.step()["expects"]["check"] != "continuity":
        job.choose(READS["unclear"])
    return job.step()


def test_the_wire_at_a_position_sets_its_limit(job):
    step = at_continuity(job)
    assert step["choices"][0]["words"] == "2 Ω or less"
    assert step["harness"]["wire"] is None

    job.record(wire(colour="white and blue", pins="1 signal, 2 supply, 3 ground"))

    step = job.step()
    # 4.5 m of 39 mΩ/m, and half an ohm for contacts and probes.
    assert step["choices"][0]["words"] == "0.68 Ω or less"
    assert step["more"].endswith("4.50 m of sound copper, 0.5 mm², have 0.18 Ω at 20 °C.")
    assert step["harness"]["wire"]["words"] == "0.5 mm², 4.50 m, 20 °C"
    assert step["harness"]["pins"] == "1 signal, 2 supply, 3 ground"
    assert job.view()["history"][0]["sentence"] == (
        "Wire at right outer: 0.5 mm², 4.50 m, 20 °C. Colour: white and blue. "
        "Pins: 1 signal, 2 supply, 3 ground."
    )
    assert step["harness"]["colours"] == []
    fact = step["choices"][0]["events"][0]
    for value, against in (("0.6", False), ("0.7", True), ("5000", True)):
        refusal = job.check({**fact, "data": {**fact["data"], "value": value}})
        assert bool(refusal) == against
    assert (
        refusal["sentence"] == "Right outer has 5000 Ω. By the limit that is bad: More than 0.68 Ω, or open."
    )

    job.record(wire(size="AWG 24", centimetres=1000, celsius=85))
    assert job.step()["choices"][0]["words"] == "1.56 Ω or less"


def test_each_wire_of_a_position_has_its_colour(job):
    job.record(wire(signal_colour="white and blue", ground_colour="brown"))

    assert at_continuity(job)["harness"]["colours"] == [
        {"line": "signal", "colour": "white and blue"},
        {"line": "ground", "colour": "brown"},
    ]
    [told] = [each for each in job.view()["history"] if each["kind"] == "wire_noted"]
    assert told["sentence"] == (
        "Wire at right outer: 0.5 mm², 4.50 m, 20 °C. Signal wire: white and blue. Ground wire: brown."
    )
    assert job.check(wire(supply_colour=5))["fault"]["field"] == "data.supply_colour"


def marked(**differs):
    data = {"position": OUTER, "signal_colour": "", "supply_colour": "", "ground_colour": "", "pins": ""}
    return {"kind": "wires_marked", "data": {**data, **differs}}


def test_colours_and_pins_stand_without_the_length_of_the_wire(job):
    job.record(marked(signal_colour="white and blue", pins="1 signal, 3 ground"))

    step = at_continuity(job)
    assert step["choices"][0]["words"] == "2 Ω or less"
    assert step["harness"]["wire"] is None
    assert step["harness"]["colours"] == [{"line": "signal", "colour": "white and blue"}]
    assert step["harness"]["pins"] == "1 signal, 3 ground"
    [told] = [each for each in job.view()["history"] if each["kind"] == "wires_marked"]
    assert told["sentence"] == (
        "Wires at right outer. Signal wire: white and blue. Pins: 1 signal, 3 ground."
    )
    assert job.check(marked(pins=5))["fault"]["field"] == "data.pins"


def test_what_is_said_last_of_the_wires_stands(job):
    job.record(marked(signal_colour="white"))
    job.record(wire(ground_colour="brown"))
    assert at_continuity(job)["harness"]["colours"] == [{"line": "ground", "colour": "brown"}]

    job.record(marked(supply_colour="red"))
    harness = job.step()["harness"]
    assert harness["colours"] == [{"line": "supply", "colour": "red"}]
    assert harness["wire"]["words"] == "0.5 mm², 4.50 m, 20 °C"


LENGTH = {
    "en": "“Length, cm”: {} does not fit. Wanted: a whole number from 1 to 10000.",
    "es": "«Longitud, cm»: {} no sirve. Se espera un número entero de 1 a 10000.",
}
WARMTH = {
    "en": "“Warm as, °C”: {} does not fit. Wanted: a whole number from -90 to 90.",
    "es": "«Temperatura, °C»: {} no sirve. Se espera un número entero de -90 a 90.",
}


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize(
    ("field", "value", "found", "told"),
    [("centimetres", 50000, "50000", LENGTH), ("centimetres", 0, "0", LENGTH),
     ("centimetres", -5, "-5", LENGTH), ("centimetres", "5 m", '"5 m"', LENGTH),
     ("celsius", 91, "91", WARMTH), ("celsius", "warm", '"warm"', WARMTH)],
)  # fmt: skip
def test_a_figure_that_no_wire_has_is_refused_in_a_sentence_that_names_its_field(
    language, field, value, found, told
):
    """A wire of 500 m was refused as data.centimetres, and one of 0 cm was kept."""
    kind = KINDS["wire_noted"]
    data = wire(**{field: value})["data"]
    fault = kind.problem(data) or kind.out_of_bounds(data) or kind.not_meant(data)
    assert Speech(language, UTC).render(fault.message()) == told[language].format(found)


def test_a_wire_without_length_that_was_kept_before_is_taken_in(job):
    fact = wire(centimetres=0)
    assert job.check(fact)["fault"]["found"] == "0"
    assert KINDS["wire_noted"].out_of_bounds(fact["data"]) is None
    job.force(fact["kind"], **fact["data"])
    assert at_continuity(job)["harness"]["wire"]["words"] == "0.5 mm², 0.00 m, 20 °C"


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("size", "0.6"),
        ("size", ""),
        ("centimetres", -1),
        ("centimetres", 10001),
        ("celsius", 91),
        ("colour", 5),
    ],
)
def test_what_is_no_wire_is_refused_by_its_field(job, field, value):
    assert job.check(wire(**{field: value}))["fault"]["field"] == f"data.{field}"


def test_another_sort_goes_through_its_checks_in_order(core):
    job = begun(Driver(core), "wheel-sender/wheels-4")
    job.test("wheel-rear-left")
    job.fact("move_started", move="meter", fitted={}, position="wheel-rear-left", reason="")
    assert job.step()["harness"] is None
    first = job.step()["expects"]["check"]
    job.fact("circuit_measured", position="wheel-rear-left", check=first, value="", reads="good", since=7)
    assert job.step()["progress"]["now"] == 2


def test_a_break_in_the_wire_itself_is_named(job):
    """Without a check of the wire alone it could only be left over: most such faults were not named."""
    asked = go_through(job, wire="bad", half="bad", continuity="bad", signal="bad")
    assert "wire" in asked
    assert job.step()["title"] == "Right outer: it is in the wire to the bumper plug"


ALL_OF_LIST_4 = [each["id"] for each in by_identity("parking-sensor").circuit_checks if "warms" not in each]
BEFORE_WIRES_ALONE = [
    each["id"]
    for each in by_identity("parking-sensor").circuit_checks
    if each["since"] < 3 and "warms" not in each
]


@pytest.mark.parametrize("since", [2, 3])
def test_a_round_by_the_list_without_the_wires_alone_stays_complete(job, since):
    for check in BEFORE_WIRES_ALONE:
        reads = "unclear" if check == "channels" else "good"
        job.fact("circuit_measured", position=OUTER, check=check, value="", reads=reads, since=since)
    assert (job.view()["reasoning"]["verdict"] is None) == (since == 2)
    assert job.step()["form"] == ("moves" if since == 2 else "measure")


def test_what_positions_share_is_repaired_at_what_they_share(job):
    """All nine places of a circuit were offered, the sensor's own pins first."""
    go_through(job, ground_drop="bad", elsewhere="bad")
    offered = [each["id"] for each in job.step()["action"]["segments"]]
    assert offered == ["splice", "loom", "control-plug", "supply", "ground"]
