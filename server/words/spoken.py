"""The language in use: of the request that is answered, else of the command that runs."""

from contextvars import ContextVar
from functools import cache
from typing import TYPE_CHECKING

from server.words.files import FIRST
from server.words.files import languages

if TYPE_CHECKING:
    from server.words.speech import Speech

_language = ContextVar("language", default=FIRST)


@cache
def speech_of(language: str) -> "Speech":
    """Returns the speech of a language, dates in this machine's zone."""
    # Here: a build, which says nothing, has no Fluent.
    from server.words.speech import Speech

    return Speech(language)


def spoken() -> "Speech":
    """Returns the speech of the language in use."""
    return speech_of(_language.get())


def speak(language: str) -> None:
    """Uses a language from here on, in this context (a request, a thread, a command)."""
    _language.set(language)


def nearest(wanted: str | None) -> str | None:
    """Returns the language that a system or browser means by es_MX.UTF-8 or es-419; None if none is here."""
    base = (wanted or "").replace("_", "-").partition(".")[0].partition("-")[0].lower()
    return base if base in languages() else None


class Told(Exception):
    """What went wrong, as a message or text; as `str` in the language in use."""

    def __init__(self, message: object):
        """Keeps the message."""
        super().__init__(message)
        self.message = message

    def __str__(self) -> str:
        return text(self.message)


def say(name: str, /, **args: object) -> str:
    """Returns a message in the language in use."""
    return spoken().say(name, **args)


def text(value: object) -> str:
    """Returns a message, a figure or plain text in the language in use."""
    return spoken().text(value)
