"""What is printed: nothing is cut, the code on the paper opens the sensor, and greyscale keeps the shapes."""

import re
from itertools import pairwise

import pytest

import demo_db
from demo_db import stories
from demo_db.cars import blue_estate
from tests.browser.paper import PIXELS_A_MM
from tests.browser.paper import Paper
from tests.browser.seeded_job import job_driver
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.app_server import AppServer

# what is chosen on the screen -> the paper (mm) and the width inside its margins
SLIPS = {"A5": ((148, 210), 128), "80 mm roll": ((80, 200), 72), "58 mm roll": ((58, 240), 48)}
CALLED = {"A5": "a5", "80 mm roll": "80", "58 mm roll": "58", "A4 or Letter": "page"}
# paper in the printer -> its size (ISO 216; ANSI X3.151) and the width inside margins of 15 mm
PAGES = {"A4": ((210, 297), 180), "Letter": ((216, 279), 186)}
NOT_PRINTED = 3  # mm at each edge that many printers cannot reach; common practice, no source


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """Give the app with the demo data."""
    server = AppServer(tmp_path_factory.mktemp("demo"))
    demo_db.build(server.data, server.base)
    yield server
    server.close()


@pytest.fixture(scope="module")
def page(demo, screen_browser):
    """Give a page of a phone that is paired and has everything."""
    context = screen_browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    complaints = Complaints(demo.base)
    complaints.listen(page)
    page.goto(demo.link())
    page.get_by_label("Your name").fill("Mara")
    page.get_by_role("button", name="Pair this phone").click()
    page.get_by_role("button", name="Open a job").wait_for()
    page.goto(f"{demo.base}/#/find")
    page.get_by_text("at the parts counter").first.wait_for(timeout=30_000)
    yield page
    context.close()
    assert complaints.heard == []


@pytest.fixture(scope="module")
def bad_unit(page):
    """Give the id of the sensor that the closed job found bad and sent to the counter."""
    return blue_estate().first_unit("rear-right-outer")


def show(page, demo, address):
    """Show a sheet with all its pictures."""
    # Until a screen has its data the one before stays, so that one must be no sheet.
    page.goto(f"{demo.base}/#/you")
    page.locator(".sheet").wait_for(state="detached")
    page.goto(f"{demo.base}/#/{address}")
    page.locator(".sheet").wait_for()
    wait_until(
        page,
        """() => [...document.querySelectorAll('.sheet .picture')].every((each) =>
          each.querySelector('img')?.complete || each.querySelector('.picture-missing'))""",
        seconds=20,
    )
    return page


def choose(page, paper):
    """Choose a paper, as a person taps it."""
    page.locator("label.choice", has_text=paper).click()
    wait_until(page, "(id) => document.querySelector('.sheet').dataset.paper === id", CALLED[paper])


@pytest.mark.parametrize("paper", SLIPS)
def test_a_slip_fits_each_paper_and_its_code_opens_the_sensor(page, demo, bad_unit, paper):
    size, room = SLIPS[paper]
    choose(show(page, demo, f"unit/{bad_unit}/slip"), paper)
    shown = page.locator(".sheet .code-large").inner_text()
    printed = Paper(page, room=room)
    ((width, height),) = printed.sizes()
    if paper == "A5":
        assert (width, height) == size
    else:  # cut where the slip ends
        assert width == size[0]
        assert 4 <= printed.white_below() <= 22
    assert len(printed) == 1
    assert printed.missing() == []
    assert printed.outside == []
    assert printed.ink_at_the_edges(NOT_PRINTED) == 0

    address = f"{demo.base}/U/{shown.replace('-', '')}".upper()
    assert printed.codes() == [address]
    page.goto(address)
    page.get_by_role("heading", name="Its trail").wait_for()
    assert page.locator(".screen-title").inner_text() == f"Sensor {shown}"


@pytest.mark.parametrize("paper", ["A5", *PAGES])
def test_a_record_is_whole_on_each_paper(page, demo, bad_unit, paper):
    size, room = {**SLIPS, **PAGES}[paper]
    choose(show(page, demo, f"unit/{bad_unit}/paper"), "A5" if paper == "A5" else "A4 or Letter")
    printed = Paper(page, room=room, size=size)
    assert printed.sizes() == {size}
    assert printed.missing() == []
    assert printed.outside == []
    assert printed.ink_at_the_edges(NOT_PRINTED) == 0
    assert len(printed.codes()) == 1


@pytest.mark.parametrize("paper", PAGES)
@pytest.mark.parametrize("job", ["CLOSED", "COMES_AND_GOES", "STAYS", "TWO_FAULTS", "FOLLOWS"])
def test_a_report_is_whole_on_each_paper(page, demo, job, paper):
    size, room = PAGES[paper]
    show(page, demo, f"job/{getattr(stories, job)}/report")
    printed = Paper(page, room=room, size=size)
    assert printed.sizes() == {size}
    assert printed.missing() == []
    assert printed.outside == []
    assert printed.ink_at_the_edges(NOT_PRINTED) == 0


def test_three_tests_stand_side_by_side_in_the_report_on_a_phone(page, demo):
    show(page, demo, f"job/{stories.CLOSED}/report")
    box = page.locator(".on-screen .trail-scroll")
    assert box.locator("text.trail-head").count() == 3
    assert box.evaluate("(box) => box.scrollWidth - box.clientWidth") <= 0


def test_the_name_of_the_shop_stands_on_all_paper_and_each_page_has_its_number(page, demo, bad_unit):
    show(page, demo, f"unit/{bad_unit}/slip")
    page.get_by_text("The name of your shop").click()
    page.get_by_label("Stands at the head of all you print").fill("Garage at the mill, Mill Lane 4")
    page.get_by_label("Stands at the head of all you print").press("Tab")
    page.locator(".sheet-shop").wait_for()

    choose(show(page, demo, f"unit/{bad_unit}/paper"), "A4 or Letter")
    for address in (f"unit/{bad_unit}/paper", f"job/{stories.COMES_AND_GOES}/report"):
        show(page, demo, address)
        name = page.locator(".screen-title").inner_text()
        printed = Paper(page, room=PAGES["A4"][1], size=PAGES["A4"][0])
        lines = printed.lines()
        assert "Garage at the mill, Mill Lane 4" in lines[0]
        assert len(printed) > 1
        for number, texts in enumerate(lines, 1):
            assert f"{name} {number} / {len(printed)}" in texts


@pytest.mark.parametrize("paper", ["A5", "A4"])
def test_no_page_begins_with_the_end_of_a_trail_and_none_ends_above_a_table(page, demo, bad_unit, paper):
    size, room = {**SLIPS, **PAGES}[paper]
    choose(show(page, demo, f"unit/{bad_unit}/paper"), "A5" if paper == "A5" else "A4 or Letter")
    printed = Paper(page, room=room, size=size)
    pages = [lines[1:] for lines in printed.lines()]  # but for its number
    assert len(pages) > 1
    assert not [lines[0] for lines in pages if lines[0].startswith("Now")]
    assert not [lines[-1] for lines in pages if re.search("Who had it|handovers", lines[-1])]


def test_no_last_page_holds_just_a_few_lines(take_screens):
    """Of reports of all lengths, some of which end a line or two below a page."""
    lasts = []
    phone = take_screens()
    driver = job_driver().begin()
    made = 0
    for tests in range(2, 26, 3):
        for number in range(made, tests):
            driver.test(*(["rear-right-outer"] if number % 5 == 0 else []))
        made = tests
        page = phone.holds(driver).show(f"/#/job/{JOB}/report")
        driver.events.clear()  # they are on the phone
        page.locator(".on-paper .trail").first.wait_for(state="attached")
        lines = Paper(page, room=PAGES["A4"][1], size=PAGES["A4"][0]).lines()
        if len(lines) > 1:
            lasts.append(len(lines[-1]) - 1)  # but for its number
    assert len(lasts) > 2
    assert min(lasts) >= 5, lasts


def test_no_row_and_no_trail_is_cut_between_pages(page, demo, bad_unit):
    """Each is kept in one piece, and none is so tall that a page could not hold it."""
    tallest = (279 - 30) * PIXELS_A_MM
    for address in (f"job/{stories.COMES_AND_GOES}/report", f"unit/{bad_unit}/paper"):
        show(page, demo, address)
        page.emulate_media(media="print")
        cut = page.evaluate(
            """(tallest) => ['.trail', '.photo', 'tr', '.sheet-steps > li', '.sheet-list > li', 'p']
              .flatMap((each) => [...document.querySelectorAll(`.sheet ${each}`)])
              .filter((each) => each.checkVisibility())
              .filter((each) => getComputedStyle(each).breakInside !== 'avoid' || each.offsetHeight > tallest)
              .map((each) => each.outerHTML.slice(0, 60))""",
            tallest,
        )
        page.emulate_media(media="null")
        assert (address, cut) == (address, [])


def test_nothing_of_the_app_around_it_is_printed(page, demo, bad_unit):
    show(page, demo, f"unit/{bad_unit}/slip")
    page.emulate_media(media="print")
    seen = page.evaluate(
        """() => ['.screen-head', '.screen-foot', '.paper-choice', 'button', 'input']
          .filter((each) => document.querySelector(each)?.checkVisibility())"""
    )
    page.keyboard.press("Shift")  # who prints by the keyboard has a frame around the screen
    framed = page.evaluate(
        """() => {
          const main = document.querySelector('main');
          main.focus();
          return [main.matches(':focus-visible'), getComputedStyle(main).outlineStyle];
        }"""
    )
    page.emulate_media(media="null")
    assert seen == []
    assert framed == [True, "none"]


def test_a_long_trail_goes_on_below_in_pieces_with_no_test_left_out(take_screens):
    driver = job_driver().begin()
    for number, position in enumerate(["rear-right-outer"] + ["rear-left-inner"] * 7):
        driver.force(
            "photo_taken", sha256=f"{number:064x}", mime="image/jpeg", bytes=9, width=4, height=3,
            shows="position", position=position, unit="")  # fmt: skip
    for number in range(16):
        driver.test(*(["rear-right-outer"] if number % 5 == 0 else []))
    page = take_screens().holds(driver).show(f"/#/job/{JOB}/report")
    page.locator(".on-paper .trail").first.wait_for(state="attached")
    told = page.locator(".sheet .photo-words").all_inner_texts()
    assert [each.partition(",")[0] for each in told] == ["Right outer"] + ["Left inner"] * 5
    assert page.get_by_text("2 more pictures are with the job.").count() == 1
    heads = page.locator(".on-paper .trail").evaluate_all(
        """(figures) => figures.map((figure) =>
          [...figure.querySelectorAll('.trail-picture:not(.trail-wide) .trail-head:not(.trail-head-more)')]
            .map((head) => head.textContent))"""
    )
    assert [len(piece) for piece in heads] == [7, 7, 4]
    assert all(one[-1] == other[0] for one, other in pairwise(heads))
    shown = heads[0] + [head for piece in heads[1:] for head in piece[1:]]
    assert shown == [f"test {number + 1}" for number in range(16)]
    printed = Paper(page, room=PAGES["A4"][1], size=PAGES["A4"][0])
    assert printed.outside == []
    assert printed.missing() == []


def test_on_grey_paper_a_fault_and_a_clean_reading_differ_by_shape(page, demo):
    """The style sheet leaves no colour; the marks keep their own outlines (square, round)."""
    show(page, demo, f"job/{stories.CLOSED}/report")
    page.emulate_media(media="print")
    drawn = page.evaluate(
        """() => ['fault', 'clean'].map((kind) => {
          const body = document.querySelector(`.on-paper .mark-${kind} .mark-body`);
          return [body.tagName, getComputedStyle(body).stroke];
        })"""
    )
    page.emulate_media(media="null")
    assert drawn == [["rect", "rgb(0, 0, 0)"], ["circle", "rgb(0, 0, 0)"]]


def test_print_waits_for_the_pictures_and_a_file_carries_them(page, demo, tmp_path):
    show(page, demo, f"job/{stories.CLOSED}/report")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    file = tmp_path / download.value.suggested_filename
    download.value.save_as(file)
    assert file.name == "Report-Blue-estate.html"
    text = file.read_text("utf-8")
    pictures = page.locator(".sheet img").count()
    assert pictures > 4
    assert len(re.findall(r'src="data:image/jpeg;base64,', text)) == pictures
    assert "blob:" not in text
    assert demo.base not in re.sub(r"<style>.*?</style>", "", text, flags=re.S)

    alone = page.context.browser.new_page(viewport={"width": 320, "height": 700})
    alone.context.set_offline(True)
    alone.goto(file.as_uri())
    assert alone.get_by_role("heading", level=1).inner_text().startswith("One of the parking sensors")
    loaded = alone.locator("img").evaluate_all("(all) => all.every((each) => each.naturalWidth > 0)")
    wide = alone.evaluate("() => document.documentElement.scrollWidth")
    alone.close()
    assert loaded
    assert wide <= 320


def test_the_phones_own_share_sheet_gets_the_file_where_there_is_one(page, demo):
    show(page, demo, f"job/{stories.CLOSED}/report")
    page.evaluate(
        """() => {
          window.shared = [];
          navigator.canShare = ({ files }) => files.every(({ type }) => type === 'text/html');
          navigator.share = async ({ title, files: [file] }) =>
            window.shared.push(title, file.name, file.size);
        }"""
    )
    page.get_by_role("button", name=re.compile("Save as a file|Share it")).click()
    wait_until(page, "() => window.shared.length === 3")
    title, name, size = page.evaluate("() => window.shared")
    assert (title, name) == ("Report · Blue estate", "Report-Blue-estate.html")
    assert size > 10_000
    page.reload()


@pytest.mark.parametrize("wrong", [True, False])
def test_days_of_a_clock_that_was_wrong_are_marked_on_the_paper(take_screens, wrong):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    screens = take_screens()
    if wrong:
        screens.page.clock.set_fixed_time("1999-06-01T12:00:00Z")
    page = screens.holds(driver).show(f"/#/job/{JOB}/report")
    page.locator(".sheet-head", has_text="1999" if wrong else "Begun").wait_for()
    page.emulate_media(media="print")
    note = page.locator(".sheet-head").get_by_text("The clock of the phone was wrong.")
    assert note.is_visible() == wrong
