"""The structure of trouble codes, by worked values in openly readable explanations of SAE J2012."""

import pytest

# cnblogs.com/cokefentas/p/17514220.html and the csdn articles on ISO 15031-6; U3FFF is the largest
WORKED = [
    (0x01, 0x43, "P0143"),
    (0x92, 0x34, "B1234"),
    (0x80, 0x39, "B0039"),
    (0x40, 0x31, "C0031"),
    (0xC0, 0x73, "U0073"),
    (0x90, 0x00, "B1000"),
    (0x00, 0x00, "P0000"),
    (0xFF, 0xFF, "U3FFF"),
    (0x5E, 0x1A, "C1E1A"),
]


@pytest.mark.parametrize(("high", "low", "code"), WORKED)
def test_two_bytes_spell_a_code(core, high, low, code):
    assert core("trouble_code_bytes", high=high, low=low) == code
    assert core("trouble_code", code=code)["ok"]


def test_a_failure_type_may_follow_a_hyphen_and_is_put_in_words(core):
    """Type 13 means an open circuit: J2012-DA is not open, so this is from memory."""
    answer = core("trouble_code", code="c1e1a-13")
    assert (answer["code"], answer["failure_type"], answer["sentence"]) == (
        "C1E1A", "13", "open circuit",
    )  # fmt: skip


@pytest.mark.parametrize("code", ["X1234", "B4234", "B12G4", "B123", "B12345", "12345"])
def test_another_form_is_kept_and_said_so(core, code):
    answer = core("trouble_code", code=code)
    assert not answer["ok"]
    assert code in answer["sentence"]


def test_a_failure_type_that_is_none_is_named(core):
    assert "G1" in core("trouble_code", code="B1234", failure_type="g1")["sentence"]
