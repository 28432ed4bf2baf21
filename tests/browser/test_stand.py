"""The pole walk says where to stand and takes distances; all heard stays one tap."""

from tests.browser.seeded_job import job_driver
from tests.browser.test_exchange_screens import at_the_end
from tests.browser.test_job_screens import last
from tests.core.driver import JOB
from tests.core.driver import home

OUTER = "rear-right-outer"


def test_where_to_stand_is_drawn_and_distances_go_with_the_walk(take_screens):
    phone = take_screens(width=320).holds(at_the_end("walk"))
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_text("Where to stand", exact=True).click()
    page.get_by_role("img", name="Where the pole stands, from above").wait_for()
    assert page.locator(".stand-pole").count() == 4
    page.get_by_label("Bumper's width, cm").fill("1,7 m")
    page.get_by_role("alert").get_by_text("Bumper's width, cm: “1,7 m” does not fit.").wait_for()
    assert page.get_by_role("button", name="All of them sound").is_disabled()
    # It stands beside its field, however many fields follow.
    said, field = [each.bounding_box() for each in (page.get_by_role("alert"), page.get_by_label("Air, °C"))]
    assert 0 < said["y"] - field["y"] < 120
    page.get_by_label("Bumper's width, cm").fill("170")
    page.get_by_label("Air, °C").fill("-20")
    row = page.locator(f"[data-stand={OUTER}]")
    row.get_by_label("By tape, cm").fill("150")
    row.get_by_label("Shown, cm").fill("165")
    row.get_by_text("Air of -20 °C can explain it").wait_for()
    page.get_by_text("At -20 °C sound goes 318.9 m a second").wait_for()
    assert phone.lacks_room() == []
    phone.tap("All of them sound")
    page.get_by_role("heading", name="Walk behind it with a pole").wait_for(state="detached")
    walked = last(page, "walk_checked")
    assert (walked["missed"], walked["width"], walked["celsius"]) == ([], 170, -20)
    assert walked["distances"] == [{"position": OUTER, "left": 0, "tape": 150, "shown": 165}]


# Pairs of numbers that cover each other.
COVERED = """() => {
  const boxes = [...document.querySelectorAll('.stand-number')].map((each) => each.getBoundingClientRect());
  const meet = (a, b) => a.left < b.right + 2 && b.left < a.right + 2 && a.top < b.bottom && b.top < a.bottom;
  const met = (a, n) => boxes.slice(n + 1).flatMap((b, m) => (meet(a, b) ? [[n + 1, n + m + 2]] : []));
  return boxes.flatMap(met);
}"""


def six_at_the_walk():
    driver = job_driver().begin(layout="rear-6")
    bad, good = "rear-left-middle", "rear-left-inner"
    driver.test(bad)
    driver.photograph()
    driver.exchange(rear_left_middle=home(good), rear_left_inner=home(bad))
    while driver.view()["reasoning"]["verdict"] is None:
        driver.test(good)
    driver.new_unit(good)
    driver.guided()
    while driver.step()["id"] != "walk":
        driver.test() if driver.step()["form"] == "test" else driver.tap()
    return driver


def test_numbers_stand_apart_on_the_narrowest_bumper(take_screens):
    phone = take_screens(width=320).holds(six_at_the_walk())
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_text("Where to stand", exact=True).click()
    page.get_by_label("Bumper's width, cm").fill("60")
    page.locator(".stand svg[viewBox^='0 0 150']").wait_for()
    assert page.locator(".stand-number").count() == 6
    assert page.evaluate(COVERED) == []
