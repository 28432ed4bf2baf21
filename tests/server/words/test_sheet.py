"""The page of all words: complete, in use, alike in all languages; each fault of an editor is named."""

import functools
import shutil

import pytest

from server.words import __main__ as page
from server.words import files
from server.words import sheet
from server.words import source
from server.words import speech


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Give a copy of some words that a test may change."""
    copied = tmp_path / "words"
    for language in files.languages():
        (copied / language).mkdir(parents=True)
        for area in ("figures", "parking-sensor", "you"):
            shutil.copy(files.FOLDER / language / f"{area}.ftl", copied / language)
    for module in (files, source):
        monkeypatch.setattr(module, "FOLDER", copied)
    monkeypatch.setattr(speech, "bundle_of", functools.cache(speech.bundle_of.__wrapped__))
    monkeypatch.setattr(sheet, "bundle_of", speech.bundle_of)
    return copied


def change(file, old: str, new: str) -> None:
    text = file.read_text("utf-8")
    assert text.count(old) == 1
    file.write_text(text.replace(old, new), "utf-8")


def test_the_words_have_no_fault():
    assert sheet.faults() == []


def test_the_page_has_each_message_in_each_language_with_words_and_characters(capsys):
    assert page.main() == 0
    lines = capsys.readouterr().out.splitlines()

    assert "figures-minutes\ten\t2\t10\t12 minutes" in lines
    assert "figures-minutes\tes\t2\t10\t12 minutos" in lines
    assert "part-parking-sensor.the-many\ten\t2\t11\tthe sensors" in lines
    assert "join-de-el\tes\t1\t3\tdel" in lines
    assert lines[-1] == "Nothing is missing, unused or too long."
    rows = [line.split("\t") for line in lines if "\t" in line]
    assert {len(row) for row in rows} == {5}
    assert not [row for row in rows if "{" in row[4] or row[4] == row[0]]


@pytest.mark.parametrize(
    ("language", "old", "new", "fault"),
    [
        ("en", "you-language-after", "you-language-odd", "you-language-odd: nothing says it"),
        ("en", "you-language-after", "you-language-odd", "you-language-odd: missing in es"),
        ("es", "you-language-after", "you-language-odd", "you-language-after: missing in es"),
        ("es", "you-language-after", "you-language-odd", "you-language-odd: only in es"),
        ("es", "you-language-after", "you-language-heading", "you-language-heading: twice in es"),
        ("es", "{ $language } no", "{ $tongue } no", "you-language-lacks: es has tongue, which en lacks"),
        ("es", "{ $language } no", "No", "you-language-lacks: es lacks language, which en has"),
        ("en", "# $language: Español\n", "", "you-language-lacks: no example of language"),
        (
            "es",
            "Como en el teléfono",
            "Como lo tiene el teléfono mismo",
            "you-language-phone: 31 characters in es, and room for 24: Como lo tiene el teléfono mismo",
        ),
    ],
)
def test_a_fault_is_named(folder, capsys, language, old, new, fault):
    change(folder / language / "you.ftl", old, new)

    assert fault in sheet.faults()
    assert page.main() == 1
    assert fault in capsys.readouterr().out


def test_a_form_that_a_sort_of_part_lacks_is_named(folder):
    change(folder / "es" / "parking-sensor.ftl", "    .the-many = los sensores\n", "")
    change(folder / "es" / "you.ftl", "{ $language } no", '{ PART($language, form: "the-many") } no')

    assert "part-parking-sensor.the-many: missing in es" in sheet.faults()


def test_an_entry_that_cannot_be_read_is_named_with_its_place(folder, capsys):
    change(folder / "es" / "you.ftl", "{ $language } no", "{ $language no")

    assert page.main() == 1
    assert "es/you.ftl: " in capsys.readouterr().out


def test_what_only_the_other_library_forgives_is_a_fault(folder):
    """JavaScript's takes a positional argument after a named one; Python's does not."""
    change(folder / "es" / "you.ftl", "{ $language } no", '{ PART(form: "the", $language) } no')

    assert sheet.faults()[0].startswith("es/you.ftl: ")


def test_a_further_language_is_one_more_folder(folder, monkeypatch):
    shutil.copytree(folder / "es", folder / "pt")
    for module in (sheet, speech):
        monkeypatch.setattr(module, "languages", files.languages.__wrapped__)

    assert speech.languages() == ["en", "es", "pt"]
    assert sheet.faults() == []
    assert speech.Speech("pt").say("figures-month-1") == "enero"
