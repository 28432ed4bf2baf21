"""A phone lying on its side, text of twice the size, many positions: nothing is far away."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB
from tests.core.scenarios import follows

BOXES = """(all) => all.map((each) => each.getBoundingClientRect().toJSON())"""


def before_the_test():
    """Return a job whose first self-test is due."""
    return job_driver().begin()


def to_pull():
    """Return a job in which a sensor is to be pulled."""
    driver = job_driver().faulted()
    driver.start_exchange()
    return driver


def to_choose():
    """Return a job whose next move is offered."""
    return job_driver().faulted()


def twelve():
    """Return a job with two suspects of twelve."""
    driver = job_driver().begin(layout="both-12")
    driver.test("front-left-outer", "rear-right-inner")
    driver.photograph()
    return driver


def eight():
    """Return a job with two suspects of eight: three sensors change places at once."""
    driver = job_driver().begin(layout="both-8")
    driver.test("front-left-outer", "rear-right-inner")
    driver.photograph()
    return driver


STEPS = {"test": before_the_test, "pull": to_pull, "move": to_choose, "twelve": twelve}


LYING_OR_WIDE = ((844, 390), (1280, 800))


def at_size(phone, width, height, percent=100):
    """Hold the phone so, its text so large."""
    phone.page.set_viewport_size({"width": width, "height": height})
    phone.text_at(percent)


def stands_beside_the_step(phone, name):
    """Lying down or wide the board stands beside the step."""
    page = phone.page
    for width, height in LYING_OR_WIDE:
        at_size(phone, width, height)
        board, heading = (
            page.locator(".board").bounding_box(),
            page.locator("[data-step] h1").first.bounding_box(),
        )

        assert board["x"] + board["width"] <= heading["x"], (name, width)
        assert abs(board["y"] - heading["y"]) < 130, (name, width)
        drawing = page.locator(".board-drawing").bounding_box()
        foot = page.locator(".screen-foot").bounding_box()
        assert drawing["y"] + drawing["height"] <= foot["y"] + 1, "the whole vehicle is on the screen"
        assert foot["height"] < 0.2 * height, (name, width)
        assert phone.lacks_room() == [], (name, width)


def buttons_take_a_quarter_at_most(phone, name):
    """With text of twice the size, the buttons take no more of any screen."""
    page = phone.page
    for width, height in ((390, 844), (320, 640), (844, 390)):
        at_size(phone, width, height, 200)
        foot = page.locator(".screen-foot").bounding_box()
        assert foot["height"] <= height / 4, (name, width, height)
        sizes = page.locator(".screen-foot button").evaluate_all(
            "(all) => all.map((each) => parseFloat(getComputedStyle(each).fontSize))"
        )
        assert min(sizes) >= 18, (name, width, height)


# The words beside the drawing's marks that a line of an arrow goes through.
_HIDDEN_BY_ARROWS = """() => {
  const points = [...document.querySelectorAll('.board-goes path')].flatMap((path) => {
    const to = path.getScreenCTM();
    const step = path.getTotalLength() / 59;
    return Array.from({ length: 60 }, (_, nth) => path.getPointAtLength(step * nth).matrixTransform(to));
  });
  return [...document.querySelectorAll('.board-number, .board-caption span')].filter((words) => {
    const box = words.getBoundingClientRect();
    return points.some(({ x, y }) => x > box.left && x < box.right && y > box.top && y < box.bottom);
  }).map(({ textContent }) => textContent);
}"""


def the_picture_stands_with_the_button(phone):
    """With twelve positions the move and its picture stand with the button that starts it."""
    page = phone.page
    drawing, title, foot = (
        page.locator(each).first.bounding_box()
        for each in (".board-drawing", "[data-step] h1", ".screen-foot")
    )
    assert page.locator(".board-goes").count() >= 2
    assert page.evaluate(_HIDDEN_BY_ARROWS) == [], "a number that an arrow goes through cannot be read"
    assert drawing["y"] > 0
    assert title["y"] >= drawing["y"] + drawing["height"]
    assert title["y"] + title["height"] <= foot["y"]
    # All of them are behind one tap.
    page.get_by_text("12 positions").click()
    assert page.locator(".board-cell").count() == 12
    assert page.locator(".board-cell").first.is_visible()


def the_vehicle_shrinks(phone):
    """It does with the height of the screen."""
    tall = phone.page.locator(".board-drawing").bounding_box()["height"]
    at_size(phone, 390, 480)
    assert phone.page.locator(".board-drawing").bounding_box()["height"] < tall
    assert phone.lacks_room() == []


def left_and_right_keep_to_their_sides(phone):
    """They do whatever stands between them."""
    page = phone.page
    page.locator(".board-seen").evaluate(
        "(seen) => { seen.textContent = 'parte trasera, vista desde atrás'; }"
    )
    for percent in (100, 200):
        at_size(phone, 320, 640, percent)
        caption, left, right = (
            page.locator(each).first.bounding_box()
            for each in (".board-caption", ".board-side:first-child", ".board-side:last-child")
        )
        assert left["y"] == right["y"], percent
        assert left["x"] == caption["x"], percent
        assert abs(right["x"] + right["width"] - caption["x"] - caption["width"]) < 1, percent


@pytest.mark.parametrize("name", STEPS)
def test_the_board_and_the_buttons_keep_to_their_places_on_every_screen(take_screens, name):
    phone = take_screens().holds(STEPS[name]())
    page = phone.show(f"/#/job/{JOB}")
    page.locator(f"[data-step={'move' if name == 'twelve' else name}]").wait_for()

    if name == "twelve":
        the_picture_stands_with_the_button(phone)
        page.get_by_text("12 positions").click()
    if name == "move":
        the_vehicle_shrinks(phone)
    stands_beside_the_step(phone, name)
    buttons_take_a_quarter_at_most(phone, name)
    if name == "move":
        left_and_right_keep_to_their_sides(phone)


def test_lying_down_or_wide_the_trail_of_a_verdict_stands_beside_it(take_screens):
    driver = job_driver()
    follows(driver)
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    for width, height in LYING_OR_WIDE:
        at_size(phone, width, height)
        said, trail = [
            page.locator(f".verdict > .verdict-{each}").bounding_box() for each in ("sentence", "trail")
        ]
        foot = page.locator(".screen-foot").bounding_box()
        assert said["x"] + said["width"] <= trail["x"], width
        assert trail["y"] + trail["height"] <= foot["y"], "the whole trail is on the screen"
        assert phone.lacks_room() == [], width


def test_with_many_positions_no_standing_comes_between_the_picture_and_its_move(take_screens):
    phone = take_screens().holds(eight())
    page = phone.show(f"/#/job/{JOB}")
    page.locator("[data-step=move]").wait_for()
    for width, height, lines in ((390, 844, 7), (320, 640, 6)):
        at_size(phone, width, height)
        title, standing, foot = (
            page.locator(each).first.bounding_box() for each in ("[data-step] h1", ".verdict", ".screen-foot")
        )
        assert title["y"] < standing["y"], width
        line = page.locator("[data-step] h1").evaluate(
            "(title) => parseFloat(getComputedStyle(title).lineHeight)"
        )
        assert foot["y"] - title["y"] >= min(title["height"], lines * line), width
    assert phone.lacking((320, 640, 100), (320, 640, 200), (844, 390, 100)) == {}
