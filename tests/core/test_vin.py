"""VIN check digit against the worked example of the regulation."""

import pytest

from server.core.codes import vin


def test_the_worked_example_of_the_regulation(core):
    """49 CFR 565.15(c), Table V: products add up to 411, 411 mod 11 = 4."""
    answer = core("vin", vin="1G4AH59H45G118341")
    assert (answer["sum"], answer["digit"], answer["state"]) == (411, "4", "fits")


@pytest.mark.parametrize(
    ("number", "total", "digit"),
    [("11111111111111111", 89, "1"), ("1M8GDM9AXKP042788", 351, "X")],
)
def test_widely_used_samples(core, number, total, digit):
    """Widely used sample numbers, from memory; sums computed by the same tables elsewhere."""
    answer = core("vin", vin=number)
    assert (answer["sum"], answer["digit"], answer["state"]) == (total, digit, "fits")


@pytest.mark.parametrize(
    ("number", "state", "word"),
    [
        pytest.param("", "none", "", id="empty"),
        pytest.param("1g4ah59h4-5g118341", "fits", "fits", id="lower case and a hyphen"),
        pytest.param("1G4AH59H5 5G118341", "does_not_fit", "would be 4", id="wrong digit"),
        pytest.param("1G4AH", "incomplete", "5 of 17", id="short"),
        pytest.param("1G4AO59H45G118341", "wrong_character", "Character 5 is O", id="letter O"),
    ],
)
def test_what_is_said_of_a_typed_number(core, number, state, word):
    answer = core("vin", vin=number)
    assert answer["state"] == state
    assert word in answer["sentence"]


def test_any_single_wrong_digit_changes_the_sum():
    good = "1G4AH59H45G118341"
    for index in (11, 12, 13, 14, 15, 16):
        for other in "0123456789":
            if other != good[index]:
                assert vin.weighted_sum(good[:index] + other + good[index + 1 :]) != 411
