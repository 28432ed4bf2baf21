"""Pictures: a tap enlarges one, two at a position stand side by side, each says its place and moment."""

import functools
import hashlib
import re

import pytest
from PIL import Image
from PIL import ImageDraw

from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.app_server import BARE_PAGE
from tests.static.pictures import as_text
from tests.static.pictures import encoded

OUTER, INNER = "rear-right-outer", "rear-right-inner"
KEEP = """async (pictures) => {
  const { openStore } = await import('/app/parts.js');
  const store = await openStore();
  for (const { sha256, bytes } of pictures) {
    const { buffer } = Uint8Array.from(atob(bytes), (sign) => sign.charCodeAt(0));
    await store.write(['photos', 'photo_bytes'], async (tx) => {
      await tx.objectStore('photos').put({ sha256, mime: 'image/jpeg', size: buffer.byteLength, at: 1 });
      await tx.objectStore('photo_bytes').put(buffer, sha256);
    });
  }
}"""
ZOOM = "() => Number(document.querySelector('.viewer-pictures').style.getPropertyValue('--zoom'))"
ALONG = "() => document.querySelector('.viewer-pictures').style.getPropertyValue('--x')"


def drawn(words: str, ground: str) -> bytes:
    """Return a picture that says what it is of."""
    image = Image.new("RGB", (1600, 1200), ground)
    pen = ImageDraw.Draw(image)
    pen.ellipse((500, 300, 1100, 900), fill="#22262a", outline="#ffffff", width=12)
    pen.text((120, 80), words, fill="#ffffff", font_size=120)
    return encoded(image)


def takes(driver, words: str, ground: str, **shows) -> dict:
    """Record a picture as the driver's phone takes it; return it with its bytes, as `as_text` gives them."""
    data = drawn(words, ground)
    digest = hashlib.sha256(data).hexdigest()
    facts = {
        "mime": "image/jpeg",
        "bytes": len(data),
        "width": 1600,
        "height": 1200,
        "position": "",
        "unit": "",
    }
    driver.fact("photo_taken", **{**facts, "sha256": digest, **shows})
    return {"sha256": digest, "bytes": as_text(data)}


@functools.cache
def job_with_pictures():
    """Return a driver whose job has pictures of two positions before and after and of a screen, and these."""
    driver = job_driver().begin()
    driver.fact(
        "test_run",
        heard=True,
        faulted=[OUTER],
        silent=[],
        unplugged=[],
        codes=[],
        came_and_went=False,
        note="",
    )
    taken = [
        takes(driver, "screen", "#40566b", shows="screen"),
        takes(driver, "right inner, before", "#35523f", shows="position", position=INNER),
        takes(driver, "right outer, before", "#6b3b2a", shows="position", position=OUTER),
    ]
    driver.start_exchange(OUTER, INNER)
    driver.guided()
    taken.append(takes(driver, "right outer, after", "#6b5f2a", shows="position", position=OUTER))
    return driver, taken


@pytest.fixture
def pictured(take_screens):
    """Give a phone with that job."""
    driver, taken = job_with_pictures()
    phone = take_screens(has_touch=True).holds(driver)
    phone.page.goto(phone.base + BARE_PAGE)
    phone.page.evaluate(KEEP, taken)
    phone.digests = [each["sha256"] for each in taken]
    return phone


def shown(page) -> list[str]:
    """Return what the pictures on the screen are of, once each is drawn."""
    wait_until(
        page,
        "() => { const all = [...document.querySelectorAll('.viewer-picture')];"
        " return all.length && all.every((each) => each.querySelector('img')?.naturalWidth > 0); }",
    )
    return page.locator(".viewer-picture img").evaluate_all("(all) => all.map(({ alt }) => alt)")


def test_pictures_stand_by_position_in_the_order_of_the_board_with_their_moment(pictured):
    page = pictured.show(f"/#/job/{JOB}/photos")

    assert page.locator("main h2").all_inner_texts() == [
        "Right inner",
        "Right outer",
        "Screen of the self-test",
    ]
    said = page.locator(".photo-words").all_inner_texts()
    assert said[0].startswith("Before anything was pulled here")
    assert said[1].startswith("Before anything was pulled here")
    assert re.match(r"With \w+-\w+ fitted\n", said[2])
    assert said[3].startswith("After test 1")
    assert pictured.lacking((390, 844, 100), (320, 640, 100), (320, 640, 200), (844, 390, 100)) == {}


def test_a_tap_enlarges_and_buttons_keys_and_swipes_lead_on(pictured):
    page = pictured.show(f"/#/job/{JOB}/photos")
    page.get_by_role("link", name="Right outer").first.tap()

    assert shown(page) == ["Right outer, before anything was pulled here"]
    assert page.get_by_text("2 of 4").is_visible()
    # The browser makes a click of a finger's touch a moment after it.
    page.get_by_role("button", name="Larger").tap()
    wait_until(page, f"({ZOOM})() === 1.5")
    page.get_by_role("button", name="Smaller").tap()
    wait_until(page, f"({ZOOM})() === 1")
    page.locator(".viewer-pictures").focus()
    page.keyboard.press("+")
    page.keyboard.press("+")
    assert page.evaluate(ZOOM) == 2.25
    page.keyboard.press("ArrowRight")
    assert page.get_by_text("2 of 4").is_visible()
    page.keyboard.press("0")
    page.keyboard.press("ArrowRight")
    page.get_by_text("3 of 4").wait_for()
    swipe(page, -150)
    page.get_by_text("4 of 4").wait_for()
    swipe(page, 150)
    page.get_by_text("3 of 4").wait_for()
    assert page.get_by_role("button", name="The next picture").is_enabled()
    page.get_by_role("button", name="The picture before").click()
    page.get_by_text("2 of 4").wait_for()
    page.go_back()
    page.get_by_role("heading", name="Right inner").wait_for()


def swipe(page, along: int) -> None:
    """Draw one finger over the picture."""
    shown(page)
    fingers(page, [(200, 300)], [(200 + along, 304)])


def fingers(page, begin: list, end: list) -> None:
    """Put fingers down, draw them from one place to another in steps, lift them."""
    client = page.context.new_cdp_session(page)
    steps = 6
    for number in range(steps + 1):
        points = [
            {"x": a[0] + (b[0] - a[0]) * number / steps, "y": a[1] + (b[1] - a[1]) * number / steps, "id": n}
            for n, (a, b) in enumerate(zip(begin, end, strict=True))
        ]
        client.send(
            "Input.dispatchTouchEvent",
            {"type": "touchMove" if number else "touchStart", "touchPoints": points},
        )
    client.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


def test_two_fingers_look_closer_and_one_then_moves_the_picture(pictured):
    page = pictured.show(f"/#/job/{JOB}/photo/{pictured.digests[2]}")
    shown(page)

    fingers(page, [(180, 300), (220, 300)], [(120, 300), (280, 300)])

    wait_until(page, f"({ZOOM})() > 3")
    assert page.evaluate(ZOOM) <= 6
    before = page.evaluate(ALONG)
    fingers(page, [(200, 300)], [(260, 320)])
    wait_until(page, f"(before) => ({ALONG})() !== before", before)
    assert page.get_by_text("2 of 4").is_visible()


def test_before_and_after_stand_side_by_side_and_move_together(pictured):
    page = pictured.show(f"/#/job/{JOB}/photo/{pictured.digests[3]}")
    shown(page)
    pictured.tap("Before and after")

    wait_until(page, "() => document.querySelectorAll('.viewer-picture').length === 2")
    both = shown(page)
    assert both[0] == "Right outer, before anything was pulled here"
    assert both[1].startswith("Right outer, with ")
    left, right = page.locator(".viewer-picture").evaluate_all(
        "(all) => all.map((each) => each.getBoundingClientRect().toJSON())"
    )
    assert left["right"] <= right["left"]
    assert (left["top"], left["height"]) == (right["top"], right["height"])
    page.get_by_role("button", name="Larger").tap()
    wait_until(page, f"({ZOOM})() > 1")
    moved = page.locator(".viewer-picture img").evaluate_all(
        "(all) => all.map((each) => getComputedStyle(each).transform)"
    )
    assert moved[0] == moved[1] != "none"
    assert pictured.lacking((390, 844, 100), (320, 640, 100), (320, 640, 200), (844, 390, 100)) == {}


def test_the_picture_of_a_position_enlarges_by_a_tap(pictured):
    page = pictured.show(f"/#/job/{JOB}/position/{OUTER}")
    page.get_by_role("link", name="Look at it large").tap()

    assert shown(page)[0].startswith("Right outer, with ")


NOT_ALLOWED = """globalThis.ask = MediaDevices.prototype.getUserMedia;
MediaDevices.prototype.getUserMedia = async () => {
  throw new DOMException('no', 'NotAllowedError');
};"""


@pytest.mark.parametrize(
    ("part", "opens", "takes"),
    [
        ("", "Open the camera", "Take left outer"),
        (f"/position/{OUTER}", "Take a picture", "Take the picture"),
    ],
    ids=["one after the other", "a single one"],
)
def test_a_camera_that_is_not_allowed_leaves_one_way_to_start_it_and_a_file_beside_it(
    take_screens, part, opens, takes
):
    driver = job_driver().begin()
    driver.test(OUTER)
    phone = take_screens(width=320, height=640).holds(driver)
    phone.context.add_init_script(NOT_ALLOWED)
    page = phone.show(f"/#/job/{JOB}{part}")

    phone.tap(opens)
    page.get_by_role("heading", name="The camera is not allowed").wait_for()
    again = page.get_by_role("button", name="Start the camera again")
    assert again.count() == 1
    assert page.get_by_role("button", name=takes).count() == 0
    assert page.get_by_text("Use a picture").is_visible()

    page.evaluate("() => { MediaDevices.prototype.getUserMedia = globalThis.ask; }")
    again.click()
    phone.sees()
    page.get_by_role("button", name=takes).wait_for()
