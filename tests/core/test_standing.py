"""Where the pole stands, and distances that are shown, by the speed of sound at today's temperature."""

import pytest

from server.core.meter import sound
from server.core.parts.sorts import SORTS
from tests.core.driver import Driver
from tests.said import english

# Dry air at 101,325 Pa by CoolProp, m/s; ISO 9613-1's form, 343.2 times the root of T / 293.15 K, lies
# within 0.05 %.
TABLE = [(-20, 319.06), (0, 331.44), (20, 343.34), (40, 354.82)]
# 331.3 at 0 °C (liquisearch.com, accepted 331.2 to 331.6); 340.294 at 15 °C (US Standard Atmosphere 1976,
# from memory); 343.20358 at 20 and 351.87 at 35 °C (hpmuseum.org, thread 21581).
PUBLISHED = [(0, 331.3), (15, 340.294), (20, 343.20358), (35, 351.87)]
# Milliseconds for 1 m, there and back: 2 m by the table's third column.
ECHOES = [(-20, 6.271), (0, 6.037), (20, 5.827), (40, 5.638)]


@pytest.mark.parametrize(("celsius", "metres"), TABLE + PUBLISHED)
def test_the_speed_of_sound_is_that_of_the_table(celsius, metres):
    assert sound.speed(celsius) / 1000 == pytest.approx(metres, rel=1e-3)


@pytest.mark.parametrize(("celsius", "milliseconds"), ECHOES)
def test_an_echo_from_a_metre_is_back_in_time(celsius, milliseconds):
    assert sound.echo(100, celsius) / 1000 == pytest.approx(milliseconds, abs=0.002)


@pytest.mark.parametrize(("celsius", "shown"), [(-20, 108), (0, 104), (20, 100), (40, 97)])
def test_who_counts_with_20_degrees_shows_too_much_in_the_cold_and_too_little_in_the_heat(celsius, shown):
    """7.6 % long at -20 °C, 3.2 % short at 40 °C."""
    assert sound.uncorrected(100, celsius) == shown


@pytest.mark.parametrize(
    ("tape", "shown", "celsius", "how"),
    [(60, 60, 20, "fits"), (60, 70, 20, "fits"), (60, 71, 20, "off"),
     (60, 49, 20, "off"),
     (150, 165, -20, "temperature"), (150, 165, 20, "off"), (150, 165, -5, "temperature"),
     (60, 90, -20, "off")],
)  # fmt: skip
def test_a_distance_is_judged_by_tape_step_and_temperature(tape, shown, celsius, how):
    assert sound.judged(tape, shown, celsius) == how


OUTER, INNER = "rear-right-outer", "rear-right-inner"


def asked(job, width="", celsius="", **at):
    typed = {"width": width, "celsius": celsius, "at": {each.replace("_", "-"): at[each] for each in at}}
    return job.core("standing", job=job.job, typed=typed)


def test_the_pole_stands_sixty_centimetres_from_each_sensor_however_wide_the_bumper(core):
    job = Driver(core).begin()
    for width in ("", "160"):
        (edge,) = asked(job, width)["edges"]
        assert (edge["width"], edge["measured"]) == (int(width or 180), False)
        for position in edge["positions"]:
            away = (position["pole_x"] - position["x"]) ** 2 + position["pole_y"] ** 2
            assert away == 60**2
    left, inner_left, inner_right, right = edge["positions"]
    assert [left["x"], inner_left["x"], inner_right["x"], right["x"]] == [20, 60, 100, 140]
    assert left["pole_x"] < left["x"]
    assert right["pole_x"] > right["x"]


def test_who_faces_the_front_has_the_left_of_the_vehicle_at_the_right_hand(core):
    job = Driver(core)
    job.open(layout="front-4")
    (edge,) = asked(job)["edges"]
    assert edge["positions"][0]["id"] == "front-right-outer"


def test_what_was_measured_is_drawn_judged_and_recorded_with_the_walk(core):
    job = Driver(core).begin()
    told = asked(job, "170", "-20", rear_right_outer={"left": "150", "tape": "150", "shown": "165"})
    assert told["edges"][0]["positions"][3]["x"] == 150
    (judged,) = told["judged"]
    words = "Right outer: 165 cm shown, 150 cm by tape. Air of -20 °C can explain it."
    assert english(judged["words"]) == words
    assert english(told["sound"]).startswith(
        "At -20 °C sound goes 318.9 m a second. From 60 cm the echo is back in 3.8"
    )
    everything = [position["id"] for position in job.view()["board"]["positions"]]
    job.test()
    job.fact("walk_checked", positions=everything, missed=[], **told["data"])
    assert english(job.view()["history"][0]["sentence"]).endswith(words)
    assert words in english(core("report", job=job.job)["proof"])


@pytest.mark.parametrize(
    ("typed", "told"),
    [({"width": "1,82"}, "Bumper's width, cm: “1,82” does not fit. Wanted: a whole number from 60 to 300."),
     ({"width": "59"}, "“59” does not fit"), ({"width": "-180"}, "“-180” does not fit"),
     ({"celsius": "warm"}, "Air, °C: “warm” does not fit. Wanted: a whole number from -40 to 60."),
     ({"celsius": "-41"}, "“-41” does not fit"),
     ({"width": "1e9"}, "1e9"), ({"width": "🚗"}, "🚗"), ({"width": "99999"}, "99999"),
     ({"rear_right_outer": {"tape": "60 cm"}},
      "Right outer, By tape, cm: “60 cm” does not fit. Wanted: a whole number from 1 to 500."),
     ({"rear_right_outer": {"shown": "0"}}, "Right outer, Shown, cm: “0” does not fit."),
     ({"rear_right_outer": {"left": "301"}}, "From the left end, cm: “301” does not fit."),
     ({"width": "150", "rear_right_outer": {"left": "151"}}, "beyond the bumper's end")],
)  # fmt: skip
def test_bad_input_is_answered_clearly_and_nothing_of_it_recorded(core, typed, told):
    answer = asked(Driver(core).begin(), **typed)
    assert told in english(answer["problem"])
    assert answer["data"] == {}


@pytest.mark.parametrize(
    ("walked", "field", "told"),
    [({"width": 1800}, "data.width",
      "“Bumper's width, cm”: 1800 does not fit. Wanted: a whole number from 60 to 300."),
     ({"celsius": -41}, "data.celsius",
      "“Air, °C”: -41 does not fit. Wanted: a whole number from -40 to 60."),
     ({"distances": [{"position": OUTER, "left": 0, "tape": 900, "shown": 0}]}, "data.distances[0].tape",
      "wanted a whole number from 1 to 500")],
)  # fmt: skip
def test_the_bounds_of_the_screen_are_those_of_what_is_recorded(core, walked, field, told):
    fact = {"kind": "walk_checked", "data": {"positions": [OUTER], "missed": [], **walked}}
    fault = Driver(core).begin().check(fact)["fault"]
    assert fault["field"] == field
    assert told in english(fault["message"])


def test_only_a_sort_whose_check_is_done_with_a_pole_says_where_to_stand(core):
    assert [sort.identity for sort in SORTS if sort.pole] == ["parking-sensor"]
