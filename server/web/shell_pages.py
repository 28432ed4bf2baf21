"""The pages of the phone app as they are sent: their own words, whole addresses, what the policy allows."""

import base64
import hashlib
import html
import json
import re

from server.refusals import CommandRefused
from server.words.files import FIRST
from server.words.files import languages

_INLINE_SCRIPT = re.compile(rb"<script(?:\s[^>]*)?>(.+?)</script>", re.DOTALL)


class ShellIncomplete(CommandRefused):
    """Files of the phone app are missing; the text says how to get them."""


def with_own_words(page: bytes, name: str) -> bytes:
    """Returns a page with what it says itself, the area `name`, in every language.

    Scripts find it in an attribute, and with it which languages there are; `{begin-purpose}` in the page
    becomes the text in the first language, `{begin-no-script}`, which no script can change, in all.
    """
    # Here: a build, which has no Fluent reader, needs the rest.
    from server.words.sheet import area

    said = {language: area(name, language) for language in languages()}
    text = page.decode()
    marked = text.replace(
        "<html ", f'<html data-words="{html.escape(json.dumps(said, ensure_ascii=False))}" ', 1
    )
    if marked == text:
        raise ShellIncomplete(f"A page of static/ has no <html ...> to take the words of {name}.")
    for each, first in said[FIRST].items():
        everywhere = " ".join(own[each] for own in said.values() if each in own)
        marked = marked.replace(
            f"{{{each}}}", html.escape(everywhere if each.endswith("-no-script") else first)
        )
    return marked.encode()


def at_whole_addresses(page: bytes, build: str) -> bytes:
    """Returns the page with whole addresses: it is the answer at /u/<code>, too, so none may be relative."""
    return page.replace(b'"./', b'"/').replace(b'"/app/', f'"/app/{build}/'.encode())


def script_sources(page: bytes) -> list[str]:
    """Returns the CSP sources of the page's inline scripts, in practice its import map.

    An import map cannot be a file of its own, and the policy allows no inline script unnamed.
    """
    return [
        "'sha256-" + base64.b64encode(hashlib.sha256(script).digest()).decode() + "'"
        for script in _INLINE_SCRIPT.findall(page)
    ]
