"""What a person reads, in English, for tests of what is said; what is decided is tested by ids."""

import contextlib
import re
from datetime import UTC

import pytest

from server.core.errors import BadInput
from server.words.speech import Speech

_SPEECH = Speech("en", UTC)


def english(value):
    """Return what the core says as a person reads it; a message that got into a text is a fault."""
    said = _SPEECH.render(value)
    assert "'msg':" not in repr(said), f"a message was made part of a text: {said}"
    return said


@contextlib.contextmanager
def refusing(match: str):
    """Expect bad input whose line matches."""
    with pytest.raises(BadInput) as refused:
        yield
    line = english(refused.value.message())
    assert re.search(match, line), line
