"""Canonical JSON and SHA-256 against the authors' vectors, an independent library and FIPS 180-4."""

import hashlib
import json

import pytest
import rfc8785
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.core.log import canon
from tests.canonical_values import LARGEST
from tests.canonical_values import VECTORS
from tests.canonical_values import in_our_set
from tests.canonical_values import random_values
from tests.hosts import CoreError


@pytest.mark.parametrize(("text", "digest"), VECTORS)
def test_published_vectors(core, text, digest):
    value = json.loads(text)
    if in_our_set(value):
        assert core("canonical", value=value)["sha256"] == digest
    else:  # keys beyond ASCII are outside our set, and refused
        with pytest.raises(CoreError, match="ASCII"):
            core("canonical", value=value)


# SHA-256 of FIPS 180-4's example documents; the text is the digest's input, hence canon itself
DIGESTS = [
    ("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
    ("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
    (
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ),
]


@pytest.mark.parametrize(("text", "digest"), DIGESTS)
def test_sha256_of_the_nist_examples(text, digest):
    assert canon.sha256_hex(text) == digest


def test_a_digest_is_over_the_utf8_bytes(core):
    answer = core("canonical", value="ä😀")
    assert answer["text"] == '"ä😀"'
    assert answer["sha256"] == hashlib.sha256('"ä😀"'.encode()).hexdigest()


WHOLE = st.integers(-LARGEST, LARGEST)
TEXT = st.text(st.characters(exclude_categories=["Cs"]))
KEYS = st.text(st.characters(min_codepoint=32, max_codepoint=126), max_size=8)
VALUES = st.recursive(
    st.none() | st.booleans() | WHOLE | TEXT,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4),
    max_leaves=20,
)


@settings(max_examples=300, deadline=None)
@given(VALUES)
def test_the_same_bytes_as_an_independent_library(value):
    """PyPI rfc8785, an implementation of RFC 8785 by other hands."""
    assert canon.dumps(value).encode() == rfc8785.dumps(value)


SAMPLES = [
    {"b": 1, "a": [True, False, None, LARGEST, -LARGEST, 2**31, -(2**31) - 1]},
    {"text": '"\\/\b\f\n\r\t\x00\x1f\x7f  <é€😀'},
    {"z": {"y": {"x": []}}, "": 0, "~": " "},
]


@pytest.mark.parametrize("value", SAMPLES)
def test_both_hosts_give_the_library_bytes(core, value):
    assert core("canonical", value=value)["text"].encode() == rfc8785.dumps(value)


def test_both_hosts_give_the_library_bytes_for_random_values(core):
    for value in random_values(200):
        assert core("canonical", value=value)["text"].encode() == rfc8785.dumps(value)


@pytest.mark.parametrize(
    "value",
    [
        pytest.param(1.5, id="a float"),
        pytest.param(2**53, id="too large"),
        pytest.param([{"a": -(2**53)}], id="too small, inside"),
        pytest.param({"ä": 1}, id="a key beyond ASCII"),
    ],
)
def test_refuses_what_is_outside_the_set(core, value):
    with pytest.raises(CoreError, match="wanted"):
        core("canonical", value=value)
