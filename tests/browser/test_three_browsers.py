"""Two browsers on line and a third off line work at one job; afterwards all three show the same of it.

What is done is drawn by lot, mostly what an honest person does at the step. tests/test_three_phones.py does
so with many more steps, in the core; here the app itself records, sends and draws. SWAPTRAIL_LONG=1 works
longer.
"""

import json
import random
import time

import pytest

from tests.browser import phone_log
from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.test_main_job import new_link
from tests.browser.three_pages import LISTEN
from tests.browser.three_pages import Fingers
from tests.browser_support import start_server
from tests.browser_support import wait_until
from tests.long_runs import times
from tests.ports import free_port
from tests.test_three_phones import contradictions
from tests.test_three_phones import settle_all

TURNS, AT_ONCE = times(20, 160), 3
SEEDS = times(1, 10)
SOON = 60
CARD = "contradiction"

#: What all must agree on: what happened, and what is next; each with what stands on its screen.
SCREENS = {"/history": ".history-text", "": "[data-step]"}
_SHOWN = """(selector) => [...document.querySelectorAll(selector)].map((each) => {
  const heading = each.querySelector('h1:not(.reader-heading)')?.innerText ?? '';
  return each.dataset.step ? `${each.dataset.step} ${heading}` : each.innerText;
})"""


@pytest.fixture
def three(tmp_path, installed):
    """Give three phones of one server; none may have complained."""
    server = start_server(tmp_path / "data", free_port(), installed)
    phones, link = [], server.link
    try:
        for name in ("Mara", "Ben", "Eva"):
            phones.append(Phone(tmp_path / name, server.base))
            phones[-1].page.add_init_script(f"({LISTEN})()")
            phones[-1].visit(link, name=name)
            phones[0].page.locator(".pill").tap()
            link = new_link(phones[0])
            phones[0].page.goto(server.base)
        yield phones
        heard = [phone.complaints.heard for phone in phones]
    finally:
        for phone in phones:
            phone.close()
        server.stop()
    assert heard == [[], [], []]


def sent(phone):
    wait_until(
        phone.page, "() => document.querySelector('.pill')?.innerText.includes('all sent')", seconds=SOON
    )


def shown(phone, address, part):
    """Return what a screen of the job says, as far as all must agree on it."""
    phone.page.goto(address + part)
    phone.page.locator(SCREENS[part]).first.wait_for()
    return "\n".join(phone.page.evaluate(_SHOWN, SCREENS[part]))


def entries(phone, address):
    phone.page.goto(f"{address}/history")
    phone.page.locator(".history-text").first.wait_for()
    return phone.page.locator(".history-text").count()


def assert_all_are_counted(three, address):
    """Each entry of the job that one of three phones has all have, and show in its history."""
    job = address.rpartition("/")[2]
    logs = [phone_log.entries(phone.page) for phone in three]
    kept = [{(each["device"], each["seq"]) for each in log if each["job"] == job} for log in logs]
    assert kept[0] == kept[1] == kept[2]
    assert [entries(phone, address) for phone in three] == [len(each) for each in kept]


def agree(told):
    """Tell whether screens say the same; where somebody reads a label, the reader stands over the step."""
    longest = max(told, key=len)
    return all(longest == each or (each.endswith(" ") and longest.startswith(each)) for each in told)


def alike(fingers, address):
    """Wait until all three show the same of the job; return what the core of the first says of it."""
    three = [each.phone for each in fingers]
    for phone in three:
        phone.page.goto(f"{address}/history")
        sent(phone)
    for part in SCREENS:
        ends = time.monotonic() + SOON
        while not agree(told := {shown(phone, address, part) for phone in three}):
            assert time.monotonic() < ends, f"{part}: {told}"
    views = {json.dumps(each.looks(), sort_keys=True) for each in fingers}
    assert len(views) == 1, views
    return fingers[0].view


@pytest.mark.parametrize("seed", range(SEEDS))
def test_after_random_work_of_three_all_show_the_same_and_settle_what_contradicts(three, seed):
    mara, _, eva = three
    dice = random.Random(seed)
    Mechanic(mara).opens_a_job()
    address = mara.page.url
    for phone in three[1:]:
        phone.see("Blue estate")
        phone.page.goto(address)
        phone.wait_step("test")
    begun = entries(mara, address)
    fingers = [Fingers(phone, number, dice) for number, phone in enumerate(three)]

    eva.offline()
    for turn in range(TURNS):
        who = fingers[(0, 2)[turn]] if turn < 2 else dice.choice(fingers)  # the first two test apart
        who.goes_to(address)
        for _ in range(AT_ONCE):
            who.works()
        if turn % 20 == 19:
            eva.online()
            eva.page.wait_for_timeout(500)
            eva.offline()
    eva.online()
    view = alike(fingers, address)
    assert_all_are_counted(three, address)
    assert entries(mara, address) > begun + TURNS // 2, [each.story for each in fingers]

    fingers[0].goes_to(address)
    # Long work settles them on its way, for who meets one does what the card asks for.
    assert contradictions(view) or any(CARD in each.met for each in fingers)
    settle_all(fingers[0], dice.choice)
    assert not contradictions(alike(fingers, address))
