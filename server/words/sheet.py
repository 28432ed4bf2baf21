"""The page of all words: every message with its area and an example, in all languages, and its faults."""

import re
from collections.abc import Iterator
from pathlib import Path

from server.words.files import FIRST
from server.words.files import FOLDER
from server.words.files import languages
from server.words.source import Source
from server.words.source import sources
from server.words.speech import Speech

_PROGRAM = FOLDER.parents[1]
# Where messages are named: these folders, beside the words themselves.
_NAMED_IN = (("server", ".py"), ("server", ".html"), ("static", ".js"), ("demo_db", ".py"))
_NOT_OURS = {"vendor", "node_modules", "_static"}
_ID = re.compile(r"[a-z]+(?:-[a-z0-9]+)+")


def lines() -> Iterator[str]:
    """Yields the page line by line; a tab parts id, language, words, characters and text."""
    speeches = {language: Speech(language) for language in languages()}
    by_id = {language: {each.id: each for each in sources(language)} for language in speeches}
    area = ""
    for source in by_id[FIRST].values():
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
    return speech.say(source.id, **{**missing, **source.examples})


def area(name: str, language: str) -> dict[str, str]:
    """Returns the messages of an area that need no arguments, by id."""
    speech = Speech(language)
    own = [source for source in sources(language) if source.area == name and not source.arguments]
    return {source.id: speech.say(source.id) for source in own}


def faults() -> list[str]:
    """Returns what is missing, unused, unlike in its arguments or longer than its place allows."""
    first = {each.id: each for each in sources(FIRST)}
    found = [f"{name}: nothing says it" for name in sorted(set(first) - _named())]
    for language in languages():
        speech = Speech(language)
        there = {each.id: each for each in sources(language)}
        found += [f"{name}: missing in {language}" for name in sorted(set(first) - set(there))]
        found += [f"{name}: only in {language}" for name in sorted(set(there) - set(first))]
        for name in sorted(set(first) & set(there)):
            unlike = ", ".join(sorted(there[name].arguments - first[name].known()))
            if unlike:
                found.append(f"{name}: {language} has {unlike}, which {FIRST} lacks")
            room = first[name].room
            said = example(speech, first[name])
            if room is not None and len(said) > room:
                found.append(f"{name}: {len(said)} characters in {language}, and room for {room}: {said}")
    return found


def _named() -> set[str]:
    """Returns what the program names, in quotes or as the beginning of a name, such as `figures-month-`."""
    text = "".join(file.read_text("utf-8") for file in _files())
    whole = set(_ID.findall(text))
    begun = tuple(set(re.findall(r"[a-z]+(?:-[a-z0-9]+)*-(?=[{$])", text)))
    ids = {each.id for each in sources(FIRST)}
    return {each for each in ids if each in whole or each.startswith(begun)}


def _files() -> Iterator[Path]:
    for folder, suffix in _NAMED_IN:
        for file in sorted((_PROGRAM / folder).rglob(f"*{suffix}")):
            ours = file.relative_to(_PROGRAM).parts
            if not _NOT_OURS & set(ours[1:]):
                yield file
