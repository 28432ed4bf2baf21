"""What one phone brought without proof: all of it is set aside with one tap, and taken back with one."""

from contextlib import closing

import pytest

from server.core.log import canon
from tests.browser.screens import screens
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.phone import job_opened

FLOOD = 60  # more than are listed
SMALLEST = 48


@pytest.fixture
def phone(screen_browser, app_server):
    with screens(screen_browser, app_server.base) as phone:
        page = phone.show(f"/pair#{app_server.token()}")
        page.get_by_label("Your name").fill("Zoë")
        phone.tap("Pair this phone")
        page.get_by_role("button", name="Open a job").wait_for()
        yield phone


def bring(server, name, count, first=0):
    """Put entries of ever new device ids into the database, as a phone of this name brought them."""
    with closing(server.database()) as db:
        by = db.conn.execute(
            "INSERT INTO sessions (token_hash, name, role, created_at) "
            "VALUES (?, ?, 'bench', ?) RETURNING id",
            [name, name, NOW],
        ).fetchone()[0]
        for number in range(first, first + count):
            entry = entry_after([], f"d{number + 4096:016x}", "job_opened", job_opened())
            body = canon.dumps(entry["event"])
            db.conn.execute(
                "INSERT INTO unproven (device, seq, hash, body, brought_by, at, size) "
                "VALUES (?, 1, ?, ?, ?, ?, ?)",
                [entry["event"]["device"], entry["hash"], body, by, NOW, len(body)],
            )
        db.conn.commit()


def test_a_flood_is_set_aside_with_one_tap_and_taken_back(phone, app_server):
    bring(app_server, "Mallory", FLOOD)
    bring(app_server, "Nora", 1, first=1000)
    page = phone.show("/#/phones")
    page.get_by_text(f"Mallory brought {FLOOD} entries of {FLOOD} phones.").wait_for()
    assert page.get_by_text("Brought by Nora").count() == 1
    assert page.get_by_text("Nora brought").count() == 0, "one alone has its own button"

    phone.tap("Set all of them aside")

    page.get_by_text(f"{FLOOD} entries that Mallory brought, set aside").wait_for()
    assert page.get_by_text("Brought by Mallory").count() == 0
    assert page.get_by_text("Brought by Nora").count() == 1
    for width in (320, 390):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        for button in page.locator(".panel button").all():
            assert button.bounding_box()["height"] >= SMALLEST, width

    phone.tap("Take back")

    page.get_by_text(f"Mallory brought {FLOOD} entries of {FLOOD} phones.").wait_for()
    assert app_server.rows("SELECT count(*) FROM unproven WHERE set_aside_at IS NOT NULL") == [(0,)]
