"""The screens that say why: the trail with what carries it, the moves, the clean tests still to come."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.core.driver import home
from tests.core.scenarios import INNER
from tests.core.scenarios import SCENARIOS
from tests.core.scenarios import first_test
from tests.core.scenarios import follows
from tests.said import english


@pytest.fixture(params=[(390, "light"), (320, "dark")], ids=["390 light", "320 dark"])
def show(request, take_screens):
    """Give a way to open a page of a scenario's job, on a wide phone by day and a small one by night."""
    width, scheme = request.param

    def opened(name, part=""):
        driver = job_driver()
        SCENARIOS[name](driver)
        phone = take_screens(width=width, color_scheme=scheme).holds(driver)
        phone.show(f"/#/job/{JOB}{part}")
        return phone

    return opened


def test_the_trail_page_says_what_carries_the_verdict(show):
    phone = show("follows", "/trail")
    told = phone.page.locator(".evidence").inner_text()

    assert "Test 2 carries this: without it, you would be only 74\u00a0% sure." in told
    assert "No other single cause fits all that was seen." in told
    assert phone.page.locator(".evidence .outlook-then").count() == 2
    assert phone.lacks_room() == []


def test_a_trail_without_a_conclusion_carries_nothing(show):
    phone = show("single", "/trail")
    phone.page.get_by_text("How likely each cause is").wait_for()

    assert phone.page.locator(".evidence").count() == 0
    assert phone.lacks_room() == []


def test_clean_tests_still_to_come_are_counted_where_the_next_one_is_chosen(show):
    phone = show("comes_and_goes_vanished")
    card = phone.page.locator(".proof")

    assert "About 10 more clean tests" in card.inner_text()
    assert card.locator(".proof-mark").count() == 12
    assert "The success-run rule alone" in card.locator(".proof-run").inner_text()
    assert phone.lacks_room() == []


def test_the_moves_have_at_most_five_results_each(show):
    phone = show("two_faults", "/moves")
    cards = phone.page.locator(".move")

    assert cards.count() > 2
    for n in range(cards.count()):
        assert 1 <= cards.nth(n).locator(".outlook tr").count() <= 5
    assert phone.lacks_room() == []


SUSPECTS = ("front-left-outer", "rear-left-middle", "rear-right-inner")
PARTNERS = ("front-left-middle", "rear-left-inner", "rear-right-middle")


def three_of_twelve():
    """Return a job on which the faults of three of twelve went along with their sensors."""
    driver = job_driver()
    first_test(driver, *SUSPECTS, layout="both-12")
    for one, other in zip(SUSPECTS, PARTNERS, strict=True):
        driver.exchange(**{one: home(other), other: home(one)})
    driver.test(*PARTNERS)
    return driver


def test_three_suspects_of_twelve_fit_a_screen_in_the_order_of_the_board(take_screens):
    driver = three_of_twelve()
    phone = take_screens(width=390, height=844).holds(driver)
    page = phone.show(f"/#/job/{JOB}/trail")
    board = [each["name"] for each in english(driver.view())["board"]["positions"]]

    names = page.locator(".trail > .trail-rows .trail-name").all_inner_texts()
    box = page.locator(".trail > .trail-rows").bounding_box()

    told = {" ".join(name.split()).lower() for name in names}
    order = [name.lower() for name in board if name.lower() in told]
    assert [" ".join(name.split()).lower() for name in names] == order
    assert len(names) == 6
    assert box["height"] < 844 - 2 * 64
    lines = page.locator(".trail > .trail-rows svg:visible .trail-suspect")
    assert len({each.get_attribute("class") for each in lines.all()}) == 3
    page.get_by_text("6 more positions").click()
    assert page.locator(".trail-folded .trail-name:visible").count() == 6
    assert phone.lacks_room() == []


def beyond(page, way):
    return page.locator(".trail-more button", has_text=way).all_inner_texts()


def goes(page, way, words):
    """Tap the button with these words, and wait until the trail has moved so far that it says others."""
    page.locator(".trail-more button", has_text=way).click()
    wait_until(page, "(words) => !document.querySelector('.trail-more').innerText.includes(words)", words)


def test_a_trail_that_goes_on_sideways_says_how_many_tests_are_out_of_sight(take_screens):
    """Six tests: three or four stand on a phone, and nothing else shows that there were others."""
    driver = job_driver()
    follows(driver)
    for _ in range(4):
        driver.test(INNER)
    phone = take_screens().holds(driver)
    phone.show()
    for width, part in ((320, "/trail"), (390, "/report"), (390, "/trail"), (320, "/report")):
        phone.page.set_viewport_size({"width": width, "height": 844})
        page = phone.show_anew(f"/#/job/{JOB}{part}")
        page.locator(".trail-more button").first.wait_for()
        seen = [6, 0]
        while found := beyond(page, "earlier"):
            earlier = int(found[0].split()[0])
            assert earlier < seen[0], (width, part)
            seen[0] = earlier
            goes(page, "earlier", found[0])
        while found := beyond(page, "later"):
            goes(page, "later", found[0])
            seen[1] += 1
        assert seen[1] >= 1, (width, part)
        assert beyond(page, "earlier"), (width, part)
        assert phone.lacks_room() == [], (width, part)


def test_a_trail_that_stands_whole_says_nothing_of_more(show):
    phone = show("follows", "/trail")
    phone.page.locator(".trail-scroll").first.wait_for()
    assert phone.page.locator(".trail-more button").count() == 0
