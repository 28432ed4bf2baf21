"""The phone's canonical JSON is byte for byte the core's, and that of RFC 8785."""

import hashlib
import json

import pytest
import rfc8785

from server.core.log import canon
from server.core.log import envelope
from tests.canonical_values import VECTORS
from tests.canonical_values import in_our_set
from tests.canonical_values import random_values


def test_text_and_hash_equal_the_cores_and_those_of_rfc_8785(asked_page):
    values = random_values(400)

    answers = asked_page.evaluate(
        """async (texts) => {
          const { canonicalText, sha256Hex } = await import('/app/parts.js');
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


@pytest.mark.parametrize(("text", "digest"), VECTORS)
def test_published_vectors(asked_page, text, digest):
    found = asked_page.evaluate(
        """async (text) => {
          const { canonicalText, sha256Hex, NotCanonical } = await import('/app/parts.js');
          try { return await sha256Hex(canonicalText(JSON.parse(text))); } catch (error) {
            if (error instanceof NotCanonical) return 'refused';
            throw error;
          }
        }""",
        text,
    )

    # keys beyond ASCII are outside our set
    assert found == (digest if in_our_set(json.loads(text)) else "refused")


def test_an_event_has_the_same_hash_on_phone_and_server(asked_page):
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

    digest = asked_page.evaluate("async (event) => (await import('/app/parts.js')).eventHash(event)", event)

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
        pytest.param("[new Date(0)]", id="a date"),
    ],
)
def test_what_has_no_canonical_form_is_refused(asked_page, expression):
    refused = asked_page.evaluate(
        f"""async () => {{
          const {{ canonicalText, NotCanonical }} = await import('/app/parts.js');
          try {{ return canonicalText({expression}); }} catch (error) {{
            return error instanceof NotCanonical; }}
        }}"""
    )

    assert refused is True


def test_a_field_may_have_any_ascii_name(asked_page):
    text = '{"__proto__":1,"constructor":2,"toJSON":"x"}'

    found = asked_page.evaluate(
        "async (text) => (await import('/app/parts.js')).canonicalText(JSON.parse(text))", text
    )

    assert found == canon.dumps(json.loads(text)) == text
