"""What a person reads, in English, for tests of what is said; what is decided is tested by ids."""

import contextlib
import re
from datetime import UTC

import pytest
from fluent.runtime import FluentResource

from server.core.errors import BadInput
from server.words.speech import Speech
from server.words.speech import bundle_of

_SPEECH = Speech("en", UTC)


def english(value):
    """Return what the core says as a person reads it; a message that got into a text is a fault."""
    said = _SPEECH.render(value)
    assert "'msg':" not in repr(said), f"a message was made part of a text: {said}"
    return said


def also_saying(words: str) -> None:
    """Add messages, as a file of words has them, to the English of this process."""
    bundle_of("en").add_resource(FluentResource(words))


@contextlib.contextmanager
def refusing(match: str):
    """Expect bad input whose line matches."""
    with pytest.raises(BadInput) as refused:
        yield
    line = english(refused.value.message())
    assert re.search(match, line), line
