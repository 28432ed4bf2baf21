"""No sentence stands in code: what people read is in server/words/, by id.

A text of three words or more in the core or in a screen is one that whoever edits the words never sees. What
is said to programmers may stay: names of fields, what an assertion or an Error says.
"""

from pathlib import Path

import pytest

from tests.literals import javascript_literals
from tests.literals import python_literals
from tests.literals import words

ROOT = Path(__file__).resolve().parents[1]
CORE = sorted((ROOT / "server/core").rglob("*.py"))
SCREENS = sorted((ROOT / "static/screens").rglob("*.js"))
# (file, the text) -> why it stands in code.
CODE = "a code: compared, kept in logs or states, never shown"
MARKUP = "style or markup of a printed sheet"
MAY_STAND: dict[tuple[str, str], str] = {
    ("server/core/record/file.py", "swaptrail phone record"): CODE,
    ("server/core/record/file.py", "swaptrail phone seal"): CODE,
    ("server/core/facts/moves.py", "a move that names a sensor which is not on record"): CODE,
    ("server/core/facts/job.py", "closed with a sensor not accounted for"): CODE,
    ("server/core/plan/exchanges.py", "same part, easiest"): CODE,
    ("server/core/infer/reasons.py", "same part, easiest"): CODE,
    ("static/screens/phone/standing.js", "server in trouble"): CODE,
    ("static/screens/job/steps/moves.js", "card card-now move"): "classes of an element",
    ("static/screens/app.js", "input, textarea, select"): "a selector",
    ("static/screens/frame/last-view.js", "video, canvas, iframe, .banner, .screen-others"): "a selector",
    (
        "static/screens/labels/sheet-page.js",
        '.label-codes { font-family: ui-monospace, "DejaVu Sans Mono", "Courier New", monospace; }',
    ): MARKUP,
    (
        "static/screens/labels/sheet-page.js",
        ".label-page { display: block; break-after: page; } .label-page:last-child { break-after: auto; }",
    ): MARKUP,
    (
        "static/screens/labels/sheet-page.js",
        '<html lang="{}"><head><meta charset="utf-8"><title>{}</title>',
    ): MARKUP,
    ("static/screens/labels/sheet-page.js", "@page labels { size: {}; margin: 0; }"): MARKUP,
    ("static/screens/labels/sheet-page.js", "{} body { margin: 0; page: labels; }"): MARKUP,
    ("static/screens/paper/sheet-file.js", '<html lang="{}"><head><meta charset="utf-8">'): MARKUP,
    (
        "static/screens/paper/sheet-file.js",
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
    ): MARKUP,
    (
        "static/screens/lessons/looks.js",
        ".figures { display: grid; grid-template-columns: 1fr 1fr; column-gap: 48px; }",
    ): MARKUP,
    ("server/core/errors.py", "not in memory: {}"): "of an exception that the host answers by its jobs",
}


def sentences(files, literals):
    """Return (file, text) of each text with three words or more."""
    return {
        (each.file.relative_to(ROOT).as_posix(), " ".join(each.text.split()))
        for file in files
        for each in literals(file)
        if words(each.text) >= 3
    }


@pytest.mark.parametrize(
    ("files", "literals"), [(CORE, python_literals), (SCREENS, javascript_literals)], ids=["core", "screens"]
)
def test_no_sentence_stands_in_code(files, literals):
    assert sorted(sentences(files, literals) - set(MAY_STAND)) == []


def test_each_exception_is_needed_and_they_are_few():
    found = sentences(CORE, python_literals) | sentences(SCREENS, javascript_literals)
    assert sorted(set(MAY_STAND) - found) == []
    assert len(MAY_STAND) <= 20
    assert all(MAY_STAND.values())


def test_a_sentence_is_seen_wherever_it_stands(tmp_path):
    module = tmp_path / "screen.js"
    module.write_text(
        "// one two three\n"
        "const a = html`<p class='one two three' aria-label='said one aloud'>"
        "shown one ${'given one two'} on</p>`;\n"
        "const b = `made one ${a} two`; throw new Error('for whoever programs');\n"
    )
    assert [(each.line, each.text) for each in javascript_literals(module) if words(each.text) >= 3] == [
        (2, "said one aloud"),
        (2, "shown one {} on"),
        (2, "given one two"),
        (3, "made one {} two"),
    ]

    module = tmp_path / "room.py"
    module.write_text('"""One two three."""\nA = f"made one {1} two"\nassert A, "for whoever programs"\n')
    assert [each.text for each in python_literals(module)] == ["made one ", " two"]
