"""Says messages: an id and arguments become text of one language.

A message is `{"msg": id, "args": {name: value}}`. A value is text that stays as it is (a code, what a person typed), an
integer (a count: it chooses the plural and is written by our rule), another message, or a figure, one of `FIGURES`.
"""

import logging
from collections.abc import Callable
from datetime import tzinfo
from functools import cache
from pathlib import Path

from babel import Locale
from fluent.runtime import FluentBundle
from fluent.runtime import FluentResource
from fluent.runtime.types import FluentInt

from server.words.figures import Figures

log = logging.getLogger(__name__)

#: The language that stands in where another one lacks a message.
FIRST = "en"

_FOLDER = Path(__file__).resolve().parent


def languages() -> list[str]:
    """Returns the languages that there are, as their folders are called."""
    return sorted(each.parent.name for each in _FOLDER.glob("*/figures.ftl"))


@cache
def bundle_of(language: str) -> FluentBundle:
    """Returns all messages of a language."""
    bundle = FluentBundle([language], use_isolating=False, functions={"CAP": _capital})
    for file in sorted((_FOLDER / language).glob("*.ftl")):
        bundle.add_resource(FluentResource(file.read_text("utf-8")))
    return bundle


def _capital(text: object) -> str:
    """Has a text begin a sentence: `CAP($cause) is the cause.`"""
    said = str(text)
    return said[:1].upper() + said[1:]


class _Count(FluentInt):
    """A count: its plural is the language's, its digits follow our rule."""

    figures: Figures

    def format(self, locale: Locale) -> str:
        return self.figures.whole(int(self))


class Speech:
    """One language, spoken."""

    def __init__(self, language: str, zone: tzinfo | None = None) -> None:
        """A language that is not there is said once in the log, and English stands in."""
        if language not in languages():
            log.error("There is no language %r; English stands in.", language)
            language = FIRST
        self.language = language
        self.figures = Figures(self._plain, zone)

    def say(self, message: dict) -> str:
        """Returns the text of a message."""
        args = {name: self._argument(value) for name, value in message.get("args", {}).items()}
        return self._plain(message["msg"], args)

    def render(self, value: object) -> object:
        """Returns a value as JSON has it, each message in it as its text."""
        if isinstance(value, dict):
            if "msg" in value:
                return self.say(value)
            if len(value) == 1 and (said := self._figure(value)) is not None:
                return said
            return {key: self.render(each) for key, each in value.items()}
        if isinstance(value, list):
            return [self.render(each) for each in value]
        return value

    def _argument(self, value: object) -> object:
        if isinstance(value, dict):
            if "msg" in value:
                return self.say(value)
            return self._figure(value) or ""
        if isinstance(value, bool) or not isinstance(value, int):
            return str(value)
        count = _Count(value)
        count.figures = self.figures
        return count

    def _figure(self, value: dict) -> str | None:
        (name, what), = value.items()
        said = FIGURES.get(name)
        return said(self, what) if said else None

    def _texts(self, items: list) -> list[str]:
        return [text for text in (str(self.render(item)) for item in items) if text]

    def _plain(self, name: str, args: dict) -> str:
        for language in dict.fromkeys((self.language, FIRST)):
            bundle = bundle_of(language)
            if not bundle.has_message(name) or bundle.get_message(name).value is None:
                log.error("Message %s is not there in %s; arguments %s.", name, language, args)
                continue
            text, faults = bundle.format_pattern(bundle.get_message(name).value, args)
            if not faults:
                return text
            log.error("Message %s cannot be said in %s: %s; arguments %s.", name, language, faults, args)
        return name


#: What a figure is called where a message carries it, and how it is said.
FIGURES: dict[str, Callable[[Speech, object], str]] = {
    "whole": lambda speech, number: speech.figures.whole(number),
    "decimal": lambda speech, of: speech.figures.decimal(*of),
    "percent": lambda speech, ppb: speech.figures.percent(ppb),
    "day": lambda speech, at: speech.figures.day(at),
    "time": lambda speech, at: speech.figures.time(at),
    "moment": lambda speech, at: speech.figures.moment(at),
    "and": lambda speech, items: speech.figures.listed(speech._texts(items), "and"),
    "or": lambda speech, items: speech.figures.listed(speech._texts(items), "or"),
    "sentences": lambda speech, items: " ".join(speech._texts(items)),
}
