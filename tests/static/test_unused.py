"""What is written is used: each export of a script by another one, each class of a style sheet by a screen.

Some names of classes are made at run time, `mark-${kind}`: one that begins so counts as used when the rest of
it stands in a script as a text, or is a number.
"""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
STATIC = ROOT / "static"

_EXPORT = re.compile(r"^export (?:async )?(?:function\*?|const|let|class) (\w+)", re.MULTILINE)
_TYPED = re.compile(r"import\([^)]*\)\.(\w+)")
_SELECTOR = re.compile(r"([^{};]+)\{")
_CLASS = re.compile(r"\.(-?[a-zA-Z_][\w-]*)")
_ATTRIBUTE = re.compile(r'class=(?:"([^"]*)"|\$\{([^}]*)\})')
_NAME = re.compile(r"(?<![\w-])[a-z][\w-]*")
_BEGUN = re.compile(r"([a-z][\w-]*-)\$\{")
# Of words alone; looking ahead, because a quotation mark may end one text and begin another.
_TEXT = re.compile(r"""["'](?=([\w -]+)["'])""")


def without_comments(text: str) -> str:
    return re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", text, flags=re.DOTALL)


@pytest.fixture(scope="module")
def scripts():
    return {
        file.relative_to(STATIC).as_posix(): file.read_text("utf-8")
        for file in STATIC.rglob("*.js")
        if not {"vendor", "node_modules"} & set(file.relative_to(STATIC).parts)
    }


def unused_exports(scripts: dict[str, str], tests: str) -> list[str]:
    """Return exports that no other script and no test names; a type may stand in a comment."""
    named = {
        name: _words(without_comments(text)) | set(_TYPED.findall(text)) for name, text in scripts.items()
    }
    in_tests = _words(tests)
    return [
        f"{name}: {export}"
        for name, text in scripts.items()
        for export in _EXPORT.findall(text)
        if export not in in_tests
        and not any(export in words for each, words in named.items() if each != name)
    ]


def _words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text))


def unused_classes(styles: dict[str, str], markup: list[str]) -> list[str]:
    """Return classes that no markup has."""
    named, begun, said = set(), set(), set()
    for text in markup:
        for attribute in _ATTRIBUTE.findall(text):
            named.update(_NAME.findall("".join(attribute)))
        begun.update(_BEGUN.findall(text))
        said.update(word for one in _TEXT.findall(text) for word in one.split())
    found = []
    for name, text in styles.items():
        selectors = " ".join(_SELECTOR.findall(without_comments(text)))
        for each in sorted(set(_CLASS.findall(selectors)) - named - said):
            ends = [each.removeprefix(part) for part in begun if each.startswith(part)]
            if not any(end in said or re.fullmatch(r"[\d-]+", end) for end in ends):
                found.append(f"{name}: {each}")
    return found


def test_each_export_is_used(scripts):
    tests = "".join(
        file.read_text("utf-8")
        for pattern in ("*.py", "*.js")
        for file in sorted((ROOT / "tests").rglob(pattern))
    )
    assert unused_exports(scripts, tests) == []


def test_each_class_is_used(scripts):
    styles = {file.name: file.read_text("utf-8") for file in STATIC.glob("styles/*.css")}
    # The help's pages are turned into markup by the server.
    beside = [STATIC / "index.html", ROOT / "server/web/help_pages.py"]
    markup = [without_comments(text) for text in scripts.values()]

    assert unused_classes(styles, markup + [file.read_text("utf-8") for file in beside]) == []


def test_what_nobody_uses_is_found():
    scripts = {
        "a.js": "export function used() {}\nexport const left = 1;\nexport class Typed {}\n",
        "b.js": "import { used } from './a.js';\n/** @param {import('./a.js').Typed} one  not `left` */\n",
    }
    assert unused_exports(scripts, "") == ["a.js: left"]
    markup = ['<p class="one ${more ? "two" : "three"} mark-${kind}">', "const kind = 'bad';"]
    styles = {"a.css": ".one, .two > .three, .mark-bad, .mark-odd { } /* .said */ .four:hover { }"}
    assert unused_classes(styles, markup) == ["a.css: four", "a.css: mark-odd"]
