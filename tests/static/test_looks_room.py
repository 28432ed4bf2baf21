"""Nothing on the board, in the trail or in the frame runs into anything else, and fingers fit."""

from collections.abc import Iterator

import pytest

from server.core.parts import sorts
from tests.static.looks_gallery import BOXES
from tests.static.looks_gallery import Gallery
from tests.static.looks_gallery import collisions
from tests.static.looks_gallery import open_gallery

# A small phone, a usual one, and the small one with text at 200 %.
SIZES = [
    pytest.param(320, 100, id="320 px"),
    pytest.param(390, 100, id="390 px"),
    pytest.param(320, 200, id="320 px, text 200 %"),
]
STORIES = ["one", "followed", "stayed", "spare", "aside", "many"]

SMALL_TARGETS = """
(least) => [...document.querySelectorAll('button, a[href], summary, .choice, .check, .field > input')]
  .map((element) => [element.className || element.tagName, element.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && (box.width < least - 0.5 || box.height < least - 0.5))
  .map(([name, box]) => `${name} ${box.width} x ${box.height}`)
"""

SMALL_TEXT = """
() => {
  const found = new Set();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || element.closest('.aloud')) continue;
    const box = element.getBoundingClientRect();
    const size = parseFloat(getComputedStyle(element).fontSize);
    const picture = element.closest('.board, .trail, .stages, .pill, .photo-words');
    if (box.width > 0 && size < (picture ? 13.99 : 17.99)) found.add(`${element.className} ${size}`);
  }
  return [...found];
}
"""

BROKEN_CODES = """
() => [...document.querySelectorAll('.code')]
  .filter((element) => element.getBoundingClientRect().width > 0)
  .filter((element) => {
    const range = document.createRange();
    range.selectNodeContents(element);
    return new Set([...range.getClientRects()].map((box) => Math.round(box.bottom / 4))).size > 1;
  }).map((element) => element.textContent)
"""

WIDER_THAN_SCREEN = """
() => [...document.querySelectorAll('.screen, .screen-head, .stages, .screen-body, .screen-foot, .board')]
  .filter((element) => element.scrollWidth > element.clientWidth + 1)
  .map((element) => `${element.className} ${element.scrollWidth} > ${element.clientWidth}`)
"""


@pytest.fixture(scope="module")
def gallery() -> Iterator[Gallery]:
    with open_gallery() as opened:
        yield opened


def _boxes(gallery: Gallery, root: str) -> list[dict]:
    boxes = gallery.page.evaluate(BOXES, root)
    assert boxes
    return boxes


@pytest.mark.parametrize(("width", "text"), SIZES)
@pytest.mark.parametrize("names", ["", "&own"], ids=["short names", "names of 40 letters"])
@pytest.mark.parametrize("kind", ["rear", "front", "around"])
def test_no_names_collide_on_a_board_of_1_to_24_positions(gallery, kind, names, width, text):
    for count in range(1, 25):
        page = gallery.show(f"scene=board&kind={kind}&count={count}{names}&text={text}", width=width)
        boxes = _boxes(gallery, ".board")
        assert collisions(boxes) == [], count
        assert min(box["left"] for box in boxes) >= 0, count
        assert max(box["right"] for box in boxes) <= width, count
        assert page.evaluate(WIDER_THAN_SCREEN) == [], count
        assert page.evaluate(BROKEN_CODES) == [], count
        assert page.evaluate(SMALL_TARGETS, 48) == [], count
        assert page.locator(".board-position:visible").count() == count


@pytest.mark.parametrize(("count", "sides"), [(24, 10), (24, 12), (23, 6), (2, 1), (24, 0), (5, 2)])
def test_no_names_collide_where_most_positions_lie_on_the_sides_or_none(gallery, count, sides):
    page = gallery.show(f"scene=board&kind=around&count={count}&sides={sides}&own", width=320)
    assert collisions(_boxes(gallery, ".board")) == []
    assert page.locator(".board-position:visible").count() == count


@pytest.mark.parametrize(("width", "text"), SIZES)
@pytest.mark.parametrize("story", STORIES)
def test_no_words_collide_in_a_trail(gallery, story, width, text):
    page = gallery.show(f"scene=trail&story={story}&text={text}", width=width, height=1600)
    # The names stay while the picture scrolls away under them: each side is looked at alone.
    assert collisions(_boxes(gallery, ".trail-names")) == []
    picture = page.locator(".trail-picture:visible")
    assert picture.count() == 1
    wide = "trail-wide" in str(picture.get_attribute("class"))
    picture_now = ".trail-wide" if wide else ".trail-picture:not(.trail-wide)"
    assert collisions(_boxes(gallery, picture_now)) == []
    assert page.evaluate(WIDER_THAN_SCREEN) == []


@pytest.mark.parametrize("width", range(320, 400, 10))
def test_who_may_be_who_under_a_trail_breaks_no_code_over_a_line(gallery, width):
    page = gallery.show(f"scene=trail&story=mixed&width={width}", width=width, height=1600)
    codes = page.locator(".trail-mixed .code")
    assert codes.all_inner_texts() == ["P2W-9D", "K7F-3M"]
    assert codes.evaluate_all("(all) => all.map((each) => each.getClientRects().length)") == [1, 1]
    assert "99.9\u00a0% sure" in page.locator(".trail-mixed").inner_text()


def test_no_line_of_a_trail_crosses_a_code(gallery):
    for story in STORIES:
        gallery.show(f"scene=trail&story={story}", width=320, height=1600)
        crossed = gallery.page.evaluate(
            """() => {
              const picture = document.querySelector('.trail-picture:not(.trail-wide)');
              const codes = [...picture.querySelectorAll('.trail-code')].map((code) =>
                [code.textContent, code.getBBox()]);
              const found = [];
              for (const line of picture.querySelectorAll('.trail-line, .trail-band-edge')) {
                const half = parseFloat(getComputedStyle(line).strokeWidth) / 2;
                const length = line.getTotalLength();
                for (let at = 0; at <= length; at += 2) {
                  const {x, y} = line.getPointAtLength(at);
                  for (const [code, box] of codes) {
                    if (x + half > box.x + 1 && x - half < box.x + box.width - 1
                      && y > box.y + 2 && y < box.y + box.height - 2) found.push(`${code} ${x} ${y}`);
                  }
                }
              }
              return found;
            }"""
        )
        assert crossed == [], story


@pytest.mark.parametrize(("width", "text"), SIZES)
@pytest.mark.parametrize("scene", ["board&move", "trail", "stop", "parts"])
def test_frame_and_parts_keep_their_room(gallery, scene, width, text):
    page = gallery.show(f"scene={scene}&text={text}", width=width, height=1800)
    for part in (".screen-head", ".stages", ".screen-foot"):
        assert collisions(_boxes(gallery, part)) == [], part
    assert page.evaluate(WIDER_THAN_SCREEN) == []
    assert page.evaluate(BROKEN_CODES) == []
    assert page.evaluate(SMALL_TARGETS, 48) == []
    assert page.evaluate(SMALL_TEXT) == []
    main = page.locator(".main-button").bounding_box()
    assert main
    assert main["height"] >= 64
    assert main["y"] + main["height"] <= 1800


def test_the_main_button_stays_on_the_screen_while_the_body_scrolls(gallery):
    for width, height in ((320, 568), (390, 844), (844, 390)):
        page = gallery.show("scene=parts", width=width, height=height)
        box = page.locator(".main-button").bounding_box()
        assert box
        assert box["y"] + box["height"] <= height


def test_a_tap_on_a_position_names_it(gallery):
    for count, width in ((4, 390), (24, 320)):
        page = gallery.show(f"scene=board&count={count}", width=width)
        page.locator('.board-position[data-position="rear-2"]').click()
        assert page.title() == "rear-2"


def test_front_is_drawn_as_it_is_seen_from_the_front(gallery):
    page = gallery.show("scene=board&kind=front&count=4")
    assert page.locator(".board-name").all_inner_texts() == [
        "right outer",
        "right inner",
        "left inner",
        "left outer",
    ]
    assert page.locator(".board-side").all_inner_texts() == ["right", "left"]


def test_every_caution_has_an_icon_of_its_own(gallery):
    page = gallery.show("scene=icons")
    names = page.evaluate("import('/static/shapes/icons.js').then((icons) => icons.ICON_NAMES)")
    shown = {caution.icon for sort in sorts.SORTS for caution in sort.cautions.values()}
    assert shown <= set(names)
