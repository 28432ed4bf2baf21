"""Who knows cars and not the app reads each check once: no long sentence, the figure wanted comes first."""

import re

import pytest

from server.core.parts import sorts
from server.words.sheet import example
from server.words.source import sources
from server.words.speech import Speech

MOST_WORDS = 16
FIGURE = re.compile(r"\d|\bOL\b")
CHECKS = [
    pytest.param(sort, check, language, id=f"{sort.identity} {check['id']} {language}")
    for sort in sorts.SORTS
    for check in sort.circuit_checks
    for language in ("en", "es")
]


def sentences(text):
    """Part a text at the end of its sentences; a comma or point within a figure ends none."""
    return [each for each in re.split(r"(?<=[.?!:])\s+(?=\S)", text) if each]


def words(sentence):
    return [each for each in sentence.split() if re.search(r"\w|Ω", each)]


@pytest.mark.parametrize(("sort", "check", "language"), CHECKS)
def test_no_sentence_is_long_and_a_check_with_a_figure_begins_with_the_one_wanted(sort, check, language):
    speech = Speech(language)
    text = speech.text(check["text"])
    told = [text, *(speech.text(check[part]) for part in ("title", "good", "bad"))]
    assert [each for said in told for each in sentences(said) if len(words(each)) > MOST_WORDS] == []
    if check["unit"]:
        first = text.partition(". ")[0]
        assert FIGURE.search(first), first
        assert len(words(first)) <= MOST_WORDS


@pytest.mark.parametrize("language", ["en", "es"])
def test_what_stands_beside_a_check_is_as_short(language):
    """What copper has, what a check read before a repair, what is still bad: by the examples of the words."""
    beside = [each for each in sources("en") if re.match(r"guide-(measure|again|still|wire|found)-", each.id)]
    speech = Speech(language)
    said = {each.id: example(speech, each) for each in beside}
    long = [(name, each) for name in said for each in sentences(said[name]) if len(words(each)) > MOST_WORDS]
    assert len(said) > 5
    assert long == []
