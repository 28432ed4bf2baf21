"""Two browsers on line and a third off line tap about at one job; afterwards all three show the same of it.

What is tapped is drawn by lot among what can be tapped at the step. tests/test_three_phones.py does so with
many more steps, in the core; here the app itself records, sends and draws. SWAPTRAIL_LONG=1 taps longer.
"""

import random
import time

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.test_main_job import new_link
from tests.browser_support import ROOT
from tests.browser_support import start_server
from tests.browser_support import wait_until
from tests.long_runs import times
from tests.ports import free_port

TURNS, TAPS = times(30, 500), 3
SOON = 60

#: Taps one of what can be tapped in the step or under it; what opens a camera or another page is left out.
_TAP = """(lot) => {
  const apart = /camera|scan|picture|speak|listen|print|file|screen|back to/i;
  const found = [...document.querySelectorAll(
    '[data-step] button, [data-step] input[type=radio], [data-step] input[type=checkbox], .screen-foot button'
  )].filter((each) => !each.disabled && !apart.test(each.innerText ?? ''));
  found[Math.floor(lot * found.length)]?.click();
}"""
#: What all must agree on: what happened, and what is next; each with what stands on its screen.
SCREENS = {"/history": ".history-text", "": "[data-step]"}
_SHOWN = """(selector) => [...document.querySelectorAll(selector)].map((each) =>
  each.dataset.step ? `${each.dataset.step} ${each.querySelector('h1')?.innerText}` : each.innerText)"""


@pytest.fixture
def three(tmp_path):
    """Give three phones of one server; none may have complained."""
    server = start_server(tmp_path / "data", free_port(), ROOT)
    phones, link = [], server.link
    try:
        for name in ("Mara", "Ben", "Eva"):
            phones.append(Phone(tmp_path / name, server.base))
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


def taps_about(phone, address, dice):
    """Go to the job and tap a few times."""
    phone.page.goto(address)
    phone.page.locator("[data-step], .screen-foot button").first.wait_for()
    for _ in range(TAPS):
        phone.page.evaluate(_TAP, dice.random())
        phone.page.wait_for_timeout(dice.choice([30, 200]))


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


def test_after_random_taps_of_three_all_show_the_same(three):
    mara, _, eva = three
    dice = random.Random(12)
    Mechanic(mara).opens_a_job()
    address = mara.page.url
    for phone in three[1:]:
        phone.see("Blue estate")
        phone.page.goto(address)
        phone.wait_step("test")
    begun = entries(mara, address)

    eva.offline()
    for turn in range(TURNS):
        taps_about(dice.choice(three), address, dice)
        if turn % 20 == 19:
            eva.online()
            eva.page.wait_for_timeout(500)
            eva.offline()
    eva.online()
    for phone in three:
        phone.page.goto(f"{address}/history")
        sent(phone)

    assert entries(mara, address) > begun + TURNS // 5
    for part in SCREENS:
        ends = time.monotonic() + SOON
        while len(told := {shown(phone, address, part) for phone in three}) > 1:
            assert time.monotonic() < ends, f"{part}: {told}"
