"""Says messages: an id and arguments become text of one language.

A message is `{"msg": id, "args": {name: value}}`. A value is text that stays as it is (a code, what a
person typed), an integer (a count: it chooses the plural and is written by our rule), another message, or
a figure `{"figure": kind, "of": value}` of one of the kinds `FIGURES`. What a message may call: `_functions`.
"""

import logging
from collections.abc import Callable
from datetime import tzinfo
from functools import cache
from typing import Any

from fluent.runtime import FluentBundle
from fluent.runtime import FluentResource
from fluent.runtime.resolver import CurrentEnvironment
from fluent.runtime.resolver import ResolverEnvironment
from fluent.runtime.types import FluentInt

from server.words.figures import Figures
from server.words.files import FIRST
from server.words.files import entries_of
from server.words.files import languages
from server.words.files import source_of
from server.words.visible import visible

log = logging.getLogger(__name__)

_MESSAGE = {"msg", "args"}
_FIGURE = {"figure", "of"}


class _Bundle(FluentBundle):
    """A bundle that reads each message once it is asked for: reading all takes most of a program's start.

    It takes arguments as they are: the library makes a number of its own of each count.
    """

    def __init__(self, language: str, text: str, functions: dict[str, Any]) -> None:
        super().__init__([language], functions=functions, use_isolating=False)
        self._texts = entries_of(text)

    def has_message(self, message_id: str) -> bool:
        try:
            self._lookup(message_id)
        except LookupError:
            return False
        return True

    def _lookup(self, entry_id: str, term: bool = False) -> Any:
        """Returns a message, or the term `-entry_id`; the library comes here for what one refers to, too.

        Two threads that ask at once both read it, to the same end.
        """
        if entry_id not in (self._terms if term else self._messages):
            self.add_resource(FluentResource(self._texts[f"-{entry_id}" if term else entry_id]))
        return super()._lookup(entry_id, term)

    def format_pattern(self, pattern: Any, args: dict | None = None) -> tuple[Any, list[Exception]]:
        errors: list[Exception] = []
        env = ResolverEnvironment(self, errors, current=CurrentEnvironment(args=args or {}))
        try:
            return pattern(env), errors
        except ValueError as error:
            return "{???}", [*errors, error]


@cache
def bundle_of(language: str) -> FluentBundle:
    """Returns all messages of a language."""
    bundle = _Bundle(language, source_of(language), _functions(lambda: bundle))
    return bundle


def _functions(own: Callable[[], FluentBundle]) -> dict[str, Any]:
    """Returns what the messages of a bundle may call; `own` gives the bundle that they belong to.

    `CAP($cause)` begins a sentence with a text. `PART($sort, form: "the-many")` is how a sort of part is
    called: the attribute of the message `part-SORT`. `JOIN("de", $unit)` puts a word before a text as the
    language does it: where there is a message `join-de-el`, it stands for 'de el'.
    """

    def cap(text: object) -> str:
        said = str(text)
        return said[:1].upper() + said[1:]

    def part(sort: object, form: object = "one") -> str:
        return _pattern(own().get_message(f"part-{sort}").attributes[str(form)])

    def join(word: object, text: object) -> str:
        first, _, rest = str(text).partition(" ")
        joint = f"join-{word}-{first}"
        if rest and own().has_message(joint):
            return f"{_pattern(own().get_message(joint).value)} {rest}"
        return f"{word} {text}"

    def _pattern(pattern: Any) -> str:
        said, faults = own().format_pattern(pattern, {})
        if faults:
            raise faults[0]
        return str(said)

    return {"CAP": cap, "PART": part, "JOIN": join}


class _Count(FluentInt):
    """A count: its plural is the language's, its digits follow our rule."""

    figures: Figures

    def format(self, locale: object) -> str:
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

    def say(self, name: str, /, **args: object) -> str:
        """Returns the text of a message with these arguments."""
        return self._plain(name, {key: self._argument(value) for key, value in args.items()})

    def render(self, value: object) -> object:
        """Returns a value as JSON has it, each message and figure in it as its text."""
        if isinstance(value, dict):
            if value.keys() == _MESSAGE or value.keys() == _FIGURE:
                return self._said(value)
            return {key: self.render(each) for key, each in value.items()}
        if isinstance(value, list | tuple):
            return [self.render(each) for each in value]
        return value

    def text(self, value: object) -> str:
        """Returns a message, a figure or plain text as text."""
        return str(self.render(value))

    def _said(self, value: dict) -> str:
        if "msg" in value:
            return self.say(value["msg"], **value["args"])
        return FIGURES[value["figure"]](self, value["of"])

    def _argument(self, value: object) -> object:
        if isinstance(value, dict):
            return self._said(value)
        if isinstance(value, bool) or not isinstance(value, int):
            return visible(str(value))
        count = _Count(value)
        count.figures = self.figures
        return count

    def _texts(self, items: list) -> list[str]:
        return [text for text in (self.text(item) for item in items) if text]

    def _plain(self, name: str, args: dict) -> str:
        for language in dict.fromkeys((self.language, FIRST)):
            bundle = bundle_of(language)
            pattern = bundle.get_message(name).value if bundle.has_message(name) else None
            if pattern is None:
                log.error("Message %s is not there in %s; arguments %s.", name, language, args)
                continue
            text, faults = bundle.format_pattern(pattern, args)
            if not faults:
                return str(text)
            log.error("Message %s cannot be said in %s: %s; arguments %s.", name, language, faults, args)
        return name


#: The kinds of figure, and how each is said.
FIGURES: dict[str, Callable[[Speech, Any], str]] = {
    "whole": lambda speech, number: speech.figures.whole(number),
    "decimal": lambda speech, of: speech.figures.decimal(*of),
    "percent": lambda speech, ppb: speech.figures.percent(ppb),
    "day": lambda speech, at: speech.figures.day(at),
    "time": lambda speech, at: speech.figures.time(at),
    "moment": lambda speech, at: speech.figures.moment(at),
    "and": lambda speech, items: speech.figures.listed(speech._texts(items), "and"),
    "or": lambda speech, items: speech.figures.listed(speech._texts(items), "or"),
    "also": lambda speech, items: speech.figures.listed(speech._texts(items), "also"),
    "sentences": lambda speech, items: " ".join(speech._texts(items)),
}
