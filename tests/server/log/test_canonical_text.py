"""The quick way to an event's canonical text writes what the core writes, or leaves it to the core."""

import json

import pytest
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.core.errors import BadInput
from server.core.log import envelope
from server.core.record import named as core_named
from server.log import intake
from server.log import named
from tests.server.phone import entry_after

# Everything that JSON can bring, with what is special to canonical JSON well represented.
TEXT = st.one_of(
    st.text(max_size=8),
    st.text(st.characters(codec="ascii"), max_size=8),
    st.sampled_from(["1.5", ":1.5", ",12345678901234567", 'a"b', "\\", "\x7f", "\u2028", "ß", "\ud800", ""]),
)
NUMBERS = st.one_of(
    st.integers(),
    st.sampled_from([2**53 - 1, 2**53, -(2**53), 10**15, 10**16, -0, 1.0, -1.5, 1e16, 1e-7]),
    st.sampled_from([float("inf"), float("nan")]),
)
NEARLY_UNITS = [
    "u00000000000a", "u00000000000ag", "v00000000000b.rear-left", "v00000000000b.a b", "v00000000000b.",
    'v00000000000b.x"y', "v00000000000b.\\", "v00000000000b.ü",
]  # fmt: skip
VALUES = st.recursive(
    st.one_of(st.none(), st.booleans(), NUMBERS, TEXT),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(TEXT, inner, max_size=3)),
    max_leaves=8,
)


@settings(deadline=None, max_examples=400)
@given(VALUES)
def test_the_quick_text_is_the_cores(value):
    event = entry_after([], "d00000000000000aa", "cleaned", {}, "j1")["event"]
    event = {**event, "data": {"x": value}}
    try:
        wanted = envelope.canonical(event)
    except BadInput:
        wanted = None
    quick = intake._quickly(event)

    assert quick in (None, wanted)
    if wanted is None:
        with pytest.raises(intake.Malformed):
            intake.read(event)
    else:
        assert intake.read(event) == wanted


def test_the_quick_way_is_the_usual_one():
    event = entry_after([], "d00000000000000aa", "unit_pulled", {"unit": "v1.a", "n": 123}, "j1")["event"]
    assert intake._quickly(event) == envelope.canonical(event)


@settings(deadline=None, max_examples=300)
@given(
    st.recursive(
        st.one_of(TEXT, st.sampled_from(NEARLY_UNITS)),
        lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(TEXT, inner, max_size=3)),
        max_leaves=6,
    )
)
def test_the_units_in_a_text_are_the_units_in_its_values(value):
    event = {**entry_after([], "d00000000000000aa", "cleaned", {}, None)["event"], "data": {"x": value}}
    body = json.dumps(event, ensure_ascii=False, sort_keys=True, separators=(",", ":"))

    assert named.units(event, body) == core_named.units(event)
