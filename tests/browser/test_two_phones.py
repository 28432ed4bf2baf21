"""Two phones on one job, both on line: each sees what the other records, and where the other is."""

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.test_main_job import new_link
from tests.browser_support import start_server
from tests.browser_support import wait_until
from tests.ports import free_port

#: The goal is three seconds; here a machine may be busy with other tests.
SOON = 15
LINE = ".screen-others"


@pytest.fixture
def pair(tmp_path, installed):
    """Give two phones of one server, Mara's and Ben's; neither may have complained."""
    server = start_server(tmp_path / "data", free_port(), installed)
    phones = []
    try:
        mara = Phone(tmp_path / "mara", server.base)
        phones.append(mara)
        mara.visit(server.link)
        mara.page.locator(".pill").tap()
        link = new_link(mara)
        mara.page.goto(server.base)
        ben = Phone(tmp_path / "ben", server.base)
        phones.append(ben)
        ben.visit(link, name="Ben")
        yield mara, ben
        heard = [phone.complaints.heard for phone in phones]
    finally:
        for phone in phones:
            phone.close()
        server.stop()
    assert heard == [[], []]


def line_of(phone):
    """Return what a phone says of the others."""
    line = phone.page.locator(LINE)
    return line.inner_text() if line.count() else ""


def hears(phone, words):
    """Wait until the line about the others says something; "" for nothing."""
    wait_until(
        phone.page,
        "([line, words]) => (document.querySelector(line)?.innerText.trim() ?? '') === words",
        [LINE, words],
        seconds=SOON,
    )


def names_the_plate(phone, job, plate):
    """Correct the plate of the vehicle in the history of a job."""
    phone.page.goto(f"{job}/history")
    phone.page.get_by_role("button", name="Job opened").tap()
    phone.page.locator("[data-do=anew]").tap()
    phone.page.get_by_label("Plate").fill(plate)
    phone.tap("See what it changes")
    phone.page.get_by_role("status").filter(has_text="verdict").wait_for()
    phone.tap("Save the correction")
    phone.page.locator(".history-undone").first.wait_for()


def opens(phone, vehicle="Blue estate"):
    phone.page.get_by_text(vehicle).first.tap()


def test_each_sees_what_the_other_records_and_where_the_other_is(pair):
    mara, ben = pair
    mechanic = Mechanic(mara)
    mechanic.opens_a_job()

    # The list of the other has the job, and its screen the step.
    ben.see("Blue estate")
    opens(ben)
    ben.wait_step("test")
    hears(ben, "Mara is running the self-test.")
    hears(mara, "Ben is running the self-test.")

    Mechanic(ben).enters_a_test("right outer")
    mara.wait_step("photo")
    hears(mara, "Ben is taking pictures.")

    # Who leaves is gone; what was beside the step is not leaving.
    mara.page.locator(".job-links summary").tap()
    mara.page.get_by_role("link", name="History").tap()
    ben.page.wait_for_timeout(1000)
    assert line_of(ben) == "Mara is taking pictures."
    mara.page.goto(mara.base)
    hears(ben, "")


def test_a_line_that_is_cut_loses_nothing_and_heals(pair):
    mara, ben = pair
    Mechanic(mara).opens_a_job()
    ben.see("Blue estate")
    opens(ben)
    hears(ben, "Mara is running the self-test.")

    ben.offline()
    hears(ben, "")
    Mechanic(mara).enters_a_test("right outer")
    mara.wait_step("photo")
    assert ben.step() == "test"
    ben.online()
    ben.wait_step("photo")
    hears(ben, "Mara is taking pictures.")

    # Off line both correct one entry, each in another way: one card for both, settled by one tap.
    job = ben.page.url
    for phone, plate in ((mara, "KL 4711"), (ben, "KL 4117")):
        phone.offline()
        names_the_plate(phone, job, plate)
        phone.page.goto(job)
    for phone in (ben, mara):
        phone.online()
    for phone in (ben, mara):
        phone.wait_step("settle.corrected")
        words = phone.page.locator("main").inner_text()
        assert [words.count(said) for said in ("plate: KL 4711", "plate: KL 4117")] == [2, 2], words
    ben.tap("Mara has it right: plate: KL 4711")
    for phone in (ben, mara):
        phone.wait_step("photo")
