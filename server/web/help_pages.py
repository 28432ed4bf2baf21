"""The help as the phone app shows it: Markdown from static/help/, rendered once when the app is loaded.

A folder there is a language; one whose first page is not written yet has the English pages. The same files
are read in the repository, so links name `page.md` there and become addresses of the app here.
Raw HTML is off: what a page holds is text, and the app may put it on the screen as it is.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from markdown_it import MarkdownIt
from markdown_it.token import Token
from PIL import Image

from server.words.files import FIRST

INDEX = "README"  # the name under which a folder's first page is shown in the repository
_PAGE = re.compile(r"([a-z][a-z0-9-]*|README)\.md")
# Of the same language, or of another one where a picture holds no words that would have to be said anew.
_PICTURE = re.compile(r"(\.\./[a-z]+/)?pictures/[a-z0-9-]+\.webp")
_ELSEWHERE = "https://"


class HelpBroken(Exception):
    """A page of the help names something that is not there; the text says where and what."""


@dataclass(frozen=True)
class HelpPage:
    """One page, ready for the screen; `links` are the names of the pages it leads to."""

    name: str
    title: str
    html: str
    links: list[str]
    pictures: list[Path]


def help_folder(folder: Path, language: str) -> Path:
    """Returns where the pages for a language are, in the folder of all help."""
    own = folder / language
    return own if (own / f"{INDEX}.md").is_file() else folder / FIRST


def help_bundle(folder: Path, pages: list[HelpPage]) -> bytes:
    """Returns all pages of a folder as the one JSON file that a phone keeps.

    {"folder": "en", "pages": [{"name", "title", "html"}]}; pictures are named as seen from the folder.
    """
    told = [{"name": page.name, "title": page.title, "html": page.html} for page in pages]
    return json.dumps({"folder": folder.name, "pages": told}, ensure_ascii=False, sort_keys=True).encode()


def help_pages(folder: Path) -> list[HelpPage]:
    """Returns the pages in the order in which the first one names them; others come last."""
    pages = {file.stem: _page(file) for file in sorted(folder.glob("*.md"))}
    named = dict.fromkeys([INDEX, *pages[INDEX].links, *pages])
    return [pages[name] for name in named]


def _page(file: Path) -> HelpPage:
    markdown = MarkdownIt("commonmark", {"html": False})
    tokens = markdown.parse(file.read_text("utf-8"))
    links, pictures = [], []
    for token in _all(tokens):
        if token.type == "link_open":
            links += _lead(token, file)
        elif token.type == "image":
            pictures.append(_size(token, file))
        elif token.type == "code_inline" and " " not in token.content:
            token.attrSet("class", "help-word")  # an option is not broken after its hyphens
        elif token.type == "inline":
            _mark_row(token.children or [])
    if [token.tag for token in tokens if token.type == "heading_open"].count("h1") != 1:
        raise HelpBroken(f"{file.name} must have exactly one heading of the first level.")
    html = markdown.renderer.render(tokens, markdown.options, {})
    return HelpPage(file.stem, _title(tokens), html, links, pictures)


def _all(tokens: list[Token]) -> Iterator[Token]:
    for token in tokens:
        yield token
        yield from _all(token.children or [])


def _title(tokens: list[Token]) -> str:
    heading = next(n for n, token in enumerate(tokens) if token.type == "heading_open" and token.tag == "h1")
    return tokens[heading + 1].content


def _lead(token: Token, file: Path) -> list[str]:
    """Lets a link lead to a page of the app; returns the page's name, none for a link to elsewhere."""
    target = str(token.attrGet("href"))
    page = _PAGE.fullmatch(target)
    if page and (file.parent / target).is_file():
        token.attrSet("href", "#/help" if page[1] == INDEX else f"#/help/{page[1]}")
        return [page[1]]
    if not target.startswith(_ELSEWHERE):
        raise HelpBroken(f"{file.name} leads to {target}, which is no page of the help.")
    token.attrSet("target", "_blank")
    token.attrSet("rel", "noreferrer")
    return []


def _mark_row(children: list[Token]) -> None:
    """Marks a link that stands alone: it is a row for a thumb, not a word in a sentence."""
    if [child.type for child in children] == ["link_open", "text", "link_close"]:
        children[0].attrSet("class", "help-row")


def _size(token: Token, file: Path) -> Path:
    """Gives a picture its size, so that nothing moves when it comes, and lets it wait until it is near.

    Returns its file.
    """
    source = str(token.attrGet("src"))
    if not _PICTURE.fullmatch(source) or not (file.parent / source).is_file():
        raise HelpBroken(f"{file.name} shows {source}, which is no picture of the help.")
    with Image.open(file.parent / source) as picture:
        width, height = picture.size
    token.attrSet("width", str(width))
    token.attrSet("height", str(height))
    token.attrSet("loading", "lazy")
    return (file.parent / source).resolve()
