"""What the words are said with: counts are written by our own rule, not by the library's."""

import pytest

from server.words.speech import Speech


@pytest.mark.parametrize(
    ("language", "count", "said"),
    [
        ("en", 1, "1 minute"),
        ("en", 1280, "1280 minutes"),
        ("en", 12800, "12,800 minutes"),
        ("es", 1, "1 minuto"),
        ("es", 1280, "1280 minutos"),
        ("es", 12800, "12.800 minutos"),
    ],
)
def test_a_count_chooses_the_plural_and_is_written_by_our_rule(language, count, said):
    assert Speech(language).say("figures-minutes", count=count) == said
