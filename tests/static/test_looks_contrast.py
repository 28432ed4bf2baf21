"""Text reads at 7:1 in both themes, and no mark is told by its colour.

Relative luminance and contrast ratio as in WCAG 2.2, section 6 (glossary); 7:1 is success
criterion 1.4.6, 3:1 for outlines is 1.4.11.
"""

import re
from collections.abc import Iterator

import pytest

from server.building.bundle import colours_for_older_phones
from tests.static.looks_gallery import ROOT
from tests.static.looks_gallery import Gallery
from tests.static.looks_gallery import open_gallery

# Each text colour with the grounds it stands on.
TEXT = {
    "--ink": [
        "--paper",
        "--card",
        "--act-ground",
        "--fault-ground",
        "--clean-ground",
        "--ask-ground",
        "--body",
        "--panel",
    ],
    "--soft": ["--paper", "--card", "--ask-ground", "--act-ground"],
    "--act-ink": ["--paper", "--card", "--act-ground"],
    "--fault-ink": ["--paper", "--card", "--fault-ground", "--act-ground"],
    "--clean-ink": ["--paper", "--card", "--clean-ground", "--act-ground"],
    "--ask-ink": ["--paper", "--card", "--ask-ground", "--act-ground"],
    "--on-act": ["--act"],
}
OUTLINES = {
    "--ghost": ["--paper", "--card"],
    "--fault": ["--paper", "--card", "--fault-ground", "--panel", "--body"],
    "--clean": ["--paper", "--card", "--clean-ground", "--panel", "--body"],
    "--ask": ["--paper", "--card", "--ask-ground", "--panel", "--body"],
    "--act": ["--paper", "--card", "--act-ground"],
}


@pytest.fixture(scope="module")
def gallery() -> Iterator[Gallery]:
    with open_gallery() as opened:
        yield opened


def _luminance(colour: str) -> float:
    assert re.fullmatch(r"#[0-9a-f]{6}", colour), colour
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _contrast(one: str, other: str) -> float:
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _tokens(gallery: Gallery, query: str, scheme: str) -> dict[str, str]:
    gallery.page.emulate_media(color_scheme=scheme)
    page = gallery.show(query)
    names = sorted(
        {
            *TEXT,
            *OUTLINES,
            *(g for grounds in TEXT.values() for g in grounds),
            *(g for grounds in OUTLINES.values() for g in grounds),
        }
    )
    return page.evaluate(
        """(names) => {
          // A custom property is handed out as it is written; the theme chooses when a colour is made of it.
          const probe = document.body.appendChild(document.createElement('i'));
          const hex = (part) => Number(part).toString(16).padStart(2, '0');
          const shown = (name) => {
            probe.style.color = `var(${name})`;
            return `#${getComputedStyle(probe).color.match(/\\d+/g).map(hex).join('')}`;
          };
          const found = Object.fromEntries(names.map((name) => [name, shown(name)]));
          probe.remove();
          return found;
        }""",
        names,
    )


def test_black_on_white_is_21_to_1():
    assert _contrast("#000000", "#ffffff") == pytest.approx(21)


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_every_text_colour_reaches_7_to_1(gallery, theme):
    tokens = _tokens(gallery, f"scene=parts&theme={theme}", "light")
    weak = {
        (text, ground): round(_contrast(tokens[text], tokens[ground]), 2)
        for text, grounds in TEXT.items()
        for ground in grounds
        if _contrast(tokens[text], tokens[ground]) < 7
    }
    assert weak == {}


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_every_outline_reaches_3_to_1(gallery, theme):
    tokens = _tokens(gallery, f"scene=parts&theme={theme}", "light")
    weak = {
        (outline, ground): round(_contrast(tokens[outline], tokens[ground]), 2)
        for outline, grounds in OUTLINES.items()
        for ground in grounds
        if _contrast(tokens[outline], tokens[ground]) < 3
    }
    assert weak == {}


def test_the_phone_chooses_the_theme_and_the_user_may_overrule_it(gallery):
    light = _tokens(gallery, "scene=parts&theme=light", "light")
    dark = _tokens(gallery, "scene=parts&theme=dark", "light")
    assert light != dark
    assert _tokens(gallery, "scene=parts", "light") == light
    assert _tokens(gallery, "scene=parts", "dark") == dark
    assert _tokens(gallery, "scene=parts&theme=light", "dark") == light
    gallery.page.emulate_media(color_scheme="light")


def test_a_browser_without_light_dark_gets_the_same_colours_from_the_build(gallery):
    """The condition is turned round and the function's name spoiled, as if this browser did not know it."""
    styles = (ROOT / "static/styles/tokens.css").read_text("utf-8")
    added = colours_for_older_phones(styles).replace(
        "@supports not (color:light-dark(#000,#fff))", "@media all"
    )
    asked = [
        ("theme=light", "light"),
        ("theme=dark", "light"),
        ("", "light"),
        ("", "dark"),
        ("theme=light", "dark"),
    ]
    known = [_tokens(gallery, f"scene=parts&{theme}", scheme) for theme, scheme in asked]
    gallery.page.evaluate(
        """(styles) => {
          const sheet = new CSSStyleSheet();
          sheet.replaceSync(styles);
          document.adoptedStyleSheets = [sheet];
        }""",
        styles.replace("light-dark(", "not-known(") + added,
    )
    older = [_tokens(gallery, f"scene=parts&{theme}", scheme) for theme, scheme in asked]
    gallery.page.evaluate("() => { document.adoptedStyleSheets = []; }")
    gallery.page.emulate_media(color_scheme="light")

    assert older == known
    assert added.count("--paper") == 3


def test_marks_differ_in_shape_without_any_colour(gallery):
    page = gallery.show("scene=parts")
    # One ink for every stroke and none for any fill: what is left is the shape.
    page.evaluate(
        """() => {
          const sheet = new CSSStyleSheet();
          sheet.replaceSync('.mark-shape * { stroke: #000 !important; fill: none !important; }');
          document.adoptedStyleSheets = [sheet];
        }"""
    )
    pictures = page.locator(".mark-key .mark-picture")
    assert pictures.count() == 5
    assert len({pictures.nth(n).screenshot() for n in range(5)}) == 5
    words = page.locator(".mark-key .mark-word").all_inner_texts()
    assert words == ["clean", "fault", "not tested", "set aside", "empty"]


def test_a_trail_prints_in_black_and_white(gallery):
    page = gallery.show("scene=trail&story=followed")
    page.emulate_media(media="print")
    colours = page.evaluate(
        """() => [...document.querySelectorAll('.trail-picture *')].flatMap((element) => {
          const style = getComputedStyle(element);
          return [style.stroke, style.fill];
        })"""
    )
    page.emulate_media(media="screen")
    for colour in colours:
        if colour.startswith("rgb"):
            red, green, blue = re.findall(r"\d+", colour)[:3]
            assert red == green == blue, colour
