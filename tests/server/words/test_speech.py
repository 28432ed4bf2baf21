"""What the words are said with: counts are written by our own rule, not by the library's."""

import functools

import pytest
from fluent.runtime import FluentResource
from fluent.syntax.ast import Message
from fluent.syntax.ast import Term

from server.core.log import envelope
from server.words import speech
from server.words.figures import TOO_LATE
from server.words.files import languages
from server.words.files import source_of
from server.words.speech import Speech
from server.words.visible import visible


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


def test_a_language_that_is_not_there_is_english_and_is_logged(caplog):
    assert Speech("xx").say("figures-minutes", count=2) == "2 minutes"
    assert "There is no language 'xx'; English stands in." in caplog.text


def test_a_message_that_a_language_lacks_or_has_with_a_fault_is_english_and_is_logged(monkeypatch, caplog):
    spanish = "figures-mark-group-from = 5\nfigures-minutes = { $minutos } minutos\n"
    monkeypatch.setattr(
        speech, "source_of", lambda language, real=source_of: spanish if language == "es" else real(language)
    )
    monkeypatch.setattr(speech, "bundle_of", functools.cache(speech.bundle_of.__wrapped__))

    assert Speech("es").say("figures-minutes", count=2) == "2 minutes"
    assert "Message figures-minutes cannot be said in es" in caplog.text
    assert "Unknown external: minutos" in caplog.text
    assert "arguments {'count': " in caplog.text
    caplog.clear()
    assert Speech("es").say("figures-month-2") == "February"
    assert "Message figures-month-2 is not there in es; arguments {}." in caplog.text


@pytest.mark.parametrize("language", languages())
def test_a_message_read_by_itself_is_the_one_of_its_file(language):
    bundle = speech.bundle_of.__wrapped__(language)
    whole = FluentResource(source_of(language)).body
    entries = [entry for entry in whole if isinstance(entry, Message | Term)]
    assert len(entries) > 1000
    for entry in entries:
        bundle._lookup(entry.id.name, term=isinstance(entry, Term))
        read = (bundle._terms if isinstance(entry, Term) else bundle._messages)[entry.id.name]
        assert read.equals(entry, ["span", "comment"])


def read_one_by_one(monkeypatch, text):
    """Return a bundle of this text, and the list of what it will have read."""
    read = []
    monkeypatch.setattr(speech, "FluentResource", lambda part: read.append(part) or FluentResource(part))
    return speech._Bundle("en", text, {}), read


def test_only_what_is_said_is_read_and_once(monkeypatch):
    text = "one = { two } and { -three }\ntwo = 2\n# on three\n-three = 3\nfour = 4\n"
    bundle, read = read_one_by_one(monkeypatch, text)
    assert bundle.has_message("one")
    for _ in range(2):
        assert bundle.format_pattern(bundle.get_message("one").value) == ("2 and 3", [])
    assert read == ["one = { two } and { -three }\n", "two = 2\n", "-three = 3\n"]


def test_one_with_a_fault_is_as_one_that_lacks_and_hurts_no_other(monkeypatch):
    bundle, _ = read_one_by_one(monkeypatch, "one = { two\ntwo = 2\n\n    = 3\ntwo = second\n")
    assert not bundle.has_message("one")
    assert not bundle.has_message("none")
    assert bundle.format_pattern(bundle.get_message("two").value)[0].startswith("2")


def test_an_argument_that_lacks_leaves_the_id_and_is_logged_with_it(caplog):
    said = Speech("es").say("you-language-lacks", tongue="Español")

    assert said == "you-language-lacks"
    for language in ("en", "es"):
        assert f"Message you-language-lacks cannot be said in {language}" in caplog.text
    assert "Unknown external: language" in caplog.text
    assert "'tongue': 'Español'" in caplog.text


@pytest.mark.parametrize("at", [-1, TOO_LATE, 2**53 - 1])
def test_a_time_beyond_all_calendars_is_said_to_be_unknown(at):
    speaks = Speech("en")
    said = [speaks.render({"figure": figure, "of": at}) for figure in ("day", "time", "moment")]
    assert said == ["unknown day", "unknown time", "unknown time"]


def test_what_the_log_takes_in_can_be_shown():
    assert envelope.TOO_LATE == TOO_LATE
    assert Speech("en").render({"figure": "moment", "of": TOO_LATE - 1}).startswith("3")


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("left\u202etfel", "left[U+202E]tfel"),
        ("\u2066a\u2069\ufeff", "[U+2066]a[U+2069][U+FEFF]"),
        ("bell \x07 \x9b", "bell [U+0007] [U+009B]"),
        ("a\tb\nc", "a\tb\nc"),
        ("Ann\u200d\u200ca", "Ann[U+200D][U+200C]a"),
        ("\u200bKim", "[U+200B]Kim"),
        # What some writing needs stays: emoji that are joined, Persian, Hebrew, an accent of its own.
        ("\U0001f468\u200d\U0001f527", "\U0001f468\u200d\U0001f527"),
        ("\u0645\u06cc\u200c\u062e\u0648", "\u0645\u06cc\u200c\u062e\u0648"),
        ("\u05e2\u05d1 e\u0301", "\u05e2\u05d1 e\u0301"),
    ],
)
def test_signs_that_nobody_sees_are_said_as_their_codes(typed, shown):
    assert visible(typed) == shown
    assert shown in Speech("en").say("refusals-no-position", position=typed)
