"""What the phone writes compact is what the core reads, in both hosts."""

import json

from tests.canonical_values import random_values
from tests.hosts import Core


def test_the_core_reads_what_the_phone_wrote(asked_page, core):
    values = random_values(200)

    compact = asked_page.evaluate(
        """async (text) => {
          const { compactText } = await import('/app/parts.js');
          return compactText({ value: JSON.parse(text) });
        }""",
        json.dumps(values),
    )

    assert core("canonical", compact=json.loads(compact)) == Core()("canonical", value=values)


def test_what_stands_for_nothing_in_json_is_left_out(asked_page):
    compact = asked_page.evaluate(
        """async () => {
          const { compactText } = await import('/app/parts.js');
          return compactText({ value: { here: 1, not: undefined } });
        }"""
    )

    assert Core()("canonical", compact=json.loads(compact))["text"] == '{"here":1}'
