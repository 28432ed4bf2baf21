"""What a person reads, in English, for tests of what is said; what is decided is tested by ids."""

import contextlib
import json
import re
from datetime import UTC

import pytest
from fluent.runtime import FluentResource

from server.core.errors import BadInput
from server.words.speech import Speech
from server.words.speech import bundle_of


class _Remembering(Speech):
    """Says each message once in a process: the same ones stand in most answers."""

    def __init__(self, *arguments: object) -> None:
        """Begin with nothing said."""
        super().__init__(*arguments)
        self.heard: dict[str, str] = {}

    def _said(self, value: dict) -> str:
        key = json.dumps(value, sort_keys=True)
        if key not in self.heard:
            self.heard[key] = super()._said(value)
        return self.heard[key]


_SPEECH = _Remembering("en", UTC)


def english(value):
    """Return what the core says as a person reads it; a message that got into a text is a fault."""
    said = _SPEECH.render(value)
    assert "'msg':" not in repr(said), f"a message was made part of a text: {said}"
    return said


def also_saying(words: str) -> None:
    """Add messages, as a file of words has them, to the English of this process."""
    bundle_of("en").add_resource(FluentResource(words))
    _SPEECH.heard.clear()


@contextlib.contextmanager
def refusing(match: str):
    """Expect bad input whose line matches."""
    with pytest.raises(BadInput) as refused:
        yield
    line = english(refused.value.message())
    assert re.search(match, line), line
