"""The page of all words: every message with its area and an example, in all languages, and its faults."""

import re
from collections import Counter
from collections.abc import Collection
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from server.words.files import FIRST
from server.words.files import FOLDER
from server.words.files import languages
from server.words.source import Source
from server.words.source import of_area
from server.words.source import sources
from server.words.speech import Speech
from server.words.speech import bundle_of

_PROGRAM = FOLDER.parents[1]
# Where messages are named: these folders, beside the words themselves.
_NAMED_IN = (
    ("server", ".py"),
    ("server", ".html"),
    ("static", ".js"),
    ("static", ".html"),
    ("demo_db", ".py"),
)
# Which of these there are follows from the language: what a word and the article after it become.
_BY_LANGUAGE = "join-"
# Said by a function, by the identity of a sort of part.
_BY_FUNCTION = "part-"
_NOT_OURS = {"vendor", "node_modules", "_static"}
_ID = re.compile(r"[a-z]+(?:-[a-z0-9]+)+")


def lines() -> Iterator[str]:
    """Yields the page line by line; a tab parts id, language, words, characters and text."""
    speeches = {language: Speech(language) for language in languages()}
    by_id = {language: {each.id: each for each in sources(language)} for language in speeches}
    # The first language's has the examples.
    every = {each.id: each for own in (by_id[FIRST], *by_id.values()) for each in own.values()} | by_id[FIRST]
    area = ""
    for source in sorted(every.values(), key=lambda each: each.area):
        if source.area != area:
            area = source.area
            yield f"\n{area}"
        for language, speech in speeches.items():
            if source.id in by_id[language]:
                said = example(speech, source)
                yield f"{source.id}\t{language}\t{len(said.split())}\t{len(said)}\t{said}"


def example(speech: Speech, source: Source) -> str:
    """Returns a message with the examples of its arguments; one without an example stands for itself."""
    missing = {name: f"<{name}>" for name in source.arguments - set(source.examples)}
    name, _, attribute = source.id.partition(".")
    if attribute:
        bundle = bundle_of(speech.language)
        return str(bundle.format_pattern(bundle.get_message(name).attributes[attribute])[0])
    return speech.say(name, **{**missing, **source.examples})


def area(name: str, language: str) -> dict[str, str]:
    """Returns the messages of an area that need no arguments, by id."""
    speech = Speech(language)
    own = [source for source in of_area(name, language) if not source.arguments]
    return {source.id: speech.say(source.id) for source in own}


def faults() -> list[str]:
    """Returns what is missing, unused, unlike in its arguments or longer than its place allows.

    A file that cannot be read is the only fault that is told.
    """
    try:
        by_language = {language: list(sources(language)) for language in languages()}
    except ValueError as fault:
        return [str(fault)]
    first = {each.id: each for each in by_language[FIRST]}
    found = [f"{name}: nothing says it" for name in sorted(set(first) - _named(first))]
    for each in first.values():
        found += [f"{each.id}: no example of {one}" for one in sorted(each.arguments - set(each.examples))]
    for language, own in by_language.items():
        there = {each.id: each for each in own}
        found += [
            f"{name}: twice in {language}" for name, times in Counter(e.id for e in own).items() if times > 1
        ]
        found += [f"{name}: missing in {language}" for name in sorted(_needed(first) - set(there))]
        found += [f"{name}: only in {language}" for name in sorted(_needed(there) - set(first))]
        found += _lacking_forms(language, there)
        speech = Speech(language)
        for name in sorted(set(first) & set(there)):
            found += _unlike(language, speech, first[name], there[name])
    return found


def _unlike(language: str, speech: Speech, first: Source, own: Source) -> Iterator[str]:
    """Yields in what a message differs from the first language's; its comment may name what it leaves out."""
    for one in sorted(own.arguments - first.known()):
        yield f"{own.id}: {language} has {one}, which {FIRST} lacks"
    for one in sorted(first.arguments - own.known()):
        yield f"{own.id}: {language} lacks {one}, which {FIRST} has"
    said = example(speech, first)
    if first.room is not None and len(said) > first.room:
        yield f"{own.id}: {len(said)} characters in {language}, and room for {first.room}: {said}"


def _needed(there: Collection[str]) -> set[str]:
    """Returns the messages that every language must have; forms of a word it has as it needs them."""
    return {name for name in there if "." not in name and not name.startswith(_BY_LANGUAGE)}


def _lacking_forms(language: str, there: dict[str, Source]) -> list[str]:
    """Returns the forms of a sort of part that a message names and the sort has not."""
    sorts = {name.partition(".")[0] for name in there if name.startswith(_BY_FUNCTION)}
    wanted = {form for each in there.values() for form in each.forms}
    names = {f"{sort}.{form}" for sort in sorts for form in wanted}
    return [f"{name}: missing in {language}" for name in sorted(names - set(there))]


def _named(ids: Collection[str]) -> set[str]:
    """Returns what the program names, in quotes or as the beginning of a name, such as `figures-month-`."""
    whole, begun = _names()
    return {each for each in ids if each in whole or each.startswith((*begun, _BY_LANGUAGE, _BY_FUNCTION))}


@cache
def _names() -> tuple[set[str], tuple[str, ...]]:
    """Returns what may be names of messages in the program, whole ones and beginnings."""
    text = "".join(file.read_text("utf-8") for file in _files())
    return set(_ID.findall(text)), tuple(set(re.findall(r"[a-z]+(?:-[a-z0-9]+)*-(?=[{$])", text)))


def _files() -> Iterator[Path]:
    for folder, suffix in _NAMED_IN:
        for file in sorted((_PROGRAM / folder).rglob(f"*{suffix}")):
            ours = file.relative_to(_PROGRAM).parts
            if not _NOT_OURS & set(ours[1:]):
                yield file
