"""The units that an event names: the quick look over the text agrees with the core's way through it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.core.log import canon
from server.core.record import named as core_named
from server.log import named
from tests.server.keeping.record_yard import filled

NAMES = [
    "u00000000000a",
    "u00000000000",
    "u00000000000g",
    "U00000000000a",
    "xu00000000000a",
    "v00000000000b.rear-left",
    "v00000000000b.",
    "v00000000000b.rear left",
    "v00000000000b. rear",
    "v00000000000b." + "p" * 80,
    "v00000000000b." + "p" * 81,
    "v00000000000b.hinten-größe",
    'v00000000000b.a"b',
    "v00000000000b.a\\b",
    "v1.rear-left",
    "",
]
VALUES = st.recursive(
    st.sampled_from(NAMES) | st.integers(0, 9) | st.none() | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["a", NAMES[0], "b"]), inner),
    max_leaves=8,
)


def both(event):
    return named.units(event, canon.dumps(event)), core_named.units(event)


def test_they_agree_on_a_whole_log(tmp_path):
    for entry in filled(tmp_path / "data").received:
        quick, thorough = both(entry["event"])
        assert quick == thorough


@given(st.dictionaries(st.sampled_from(["unit", "fitted", "note"]), VALUES))
def test_they_agree_on_anything(data):
    quick, thorough = both({"data": data, "kind": "unit_pulled"})
    assert quick == thorough


@pytest.mark.parametrize("name", NAMES)
def test_what_has_the_form_of_a_unit_is_one(name):
    wanted = [name] if name in {NAMES[0], *(NAMES[n] for n in (5, 9, 11, 12, 13))} else []
    assert both({"data": {"unit": name}, "kind": "unit_pulled"}) == (wanted, wanted)
