"""The phone's canonical JSON is byte for byte the core's, and that of RFC 8785."""

import hashlib
import json
import random

import pytest
import rfc8785

from server.core import canon
from server.core import envelope

CHARACTERS = 'aZ09 "\\/\b\f\n\r\t\x00\x1f\x7f\u0080äß€\u2028\u2029\ufeff\ufffd😀𝄞'
LARGEST = 2**53 - 1


def random_value(source, depth=0):
    """Return a value of the narrow set."""
    kind = source.randrange(8 if depth < 4 else 6)
    if kind < 3:
        return [None, True, False][kind]
    if kind == 3:
        return source.choice([0, 1, -1, LARGEST, -LARGEST, source.randrange(-(10**9), 10**9)])
    if kind < 6:
        return "".join(source.choices(CHARACTERS, k=source.randrange(8)))
    if kind == 6:
        return [random_value(source, depth + 1) for _ in range(source.randrange(5))]
    keys = ["".join(source.choices("abzAZ09_.$~ \t", k=source.randrange(5))) for _ in range(5)]
    return {key: random_value(source, depth + 1) for key in keys}


def test_text_and_hash_equal_the_cores_and_those_of_rfc_8785(bare_page):
    source = random.Random(8785)
    values = [random_value(source) for _ in range(400)]

    answers = bare_page.evaluate(
        """async (texts) => {
          const { canonicalText, sha256Hex } = await import('/app/canonical.js');
          const answers = [];
          for (const text of texts) {
            const canonical = canonicalText(JSON.parse(text));
            answers.push([canonical, await sha256Hex(canonical)]);
          }
          return answers;
        }""",
        [json.dumps(value) for value in values],
    )

    for value, (text, digest) in zip(values, answers, strict=True):
        assert text == canon.dumps(value)
        assert text.encode() == rfc8785.dumps(value)
        assert digest == hashlib.sha256(text.encode()).hexdigest()


def test_an_event_has_the_same_hash_on_phone_and_server(bare_page):
    event = {
        "device": "d0123456789abcdef",
        "seq": 1,
        "prev": "",
        "v": 1,
        "at": 1790000000000,
        "actor": "Zoë 😀",
        "job": None,
        "kind": "unit_moved",
        "data": {"unit": "u0123456789ab", "place": "stock", "how": "scanned", "note": "\u2028"},
    }

    digest = bare_page.evaluate(
        "async (event) => (await import('/app/canonical.js')).eventHash(event)", event
    )

    assert digest == envelope.hash_of(event)


@pytest.mark.parametrize(
    "expression",
    [
        pytest.param("1.5", id="a float"),
        pytest.param("2 ** 53", id="an integer too large"),
        pytest.param("NaN", id="not a number"),
        pytest.param("'\\ud83d'", id="half a character"),
        pytest.param("({ 'ä': 1 })", id="a key that is not ASCII"),
        pytest.param("({ a: undefined })", id="undefined"),
        pytest.param("[1n]", id="a bigint"),
        pytest.param("[, 1]", id="a hole in a list"),
    ],
)
def test_what_has_no_canonical_form_is_refused(bare_page, expression):
    refused = bare_page.evaluate(
        f"""async () => {{
          const {{ canonicalText, NotCanonical }} = await import('/app/canonical.js');
          try {{ return canonicalText({expression}); }} catch (error) {{
            return error instanceof NotCanonical; }}
        }}"""
    )

    assert refused is True
