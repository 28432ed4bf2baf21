"""A phone is put out while something that it asked for waits in line to be written: none of that is done."""

from contextlib import contextmanager
from threading import Thread

import pytest

from server.storage import connection
from tests.server.phone import assert_refused
from tests.server.phone import job_opened
from tests.server.phones.test_roles import answer_to
from tests.server.signed_phone import SignedPhone

# Of each route that writes to the database what the table of roles asks of it.
WRITES = (
    "POST /api/brought/<device>/accept",
    "POST /api/brought/<device>/set-aside",
    "POST /api/brought/set-aside",
    "POST /api/brought/take-back",
    "POST /api/labels",
    "POST /api/labels/<row:batch>/again",
    "POST /api/pairings",
    "POST /api/phones/<row:phone>/revoke",
    "POST /api/records/makers",
    "POST /api/sync",
    "PUT /api/photos/<digest>",
)


@pytest.fixture
def lost(app, let_in):
    return let_in(SignedPhone(app, "d00000000000000cc"), "Jo", "bench")


@pytest.fixture
def put_out_in_line(monkeypatch, phone, lost):
    """Has the lost phone put out by the other one as soon as something of it waits for its turn to write."""
    [jo] = [each for each in phone.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]
    in_turn, is_out = connection._in_turn, []

    @contextmanager
    def late(waiting):
        if not is_out:
            is_out.append(True)
            puts_out = Thread(target=phone.post, args=[f"/api/phones/{jo['id']}/revoke"])
            puts_out.start()
            puts_out.join()
        with in_turn(waiting):
            yield

    monkeypatch.setattr(connection, "_in_turn", late)
    return is_out


@pytest.mark.parametrize("endpoint", WRITES)
def test_nothing_of_it_is_written(lost, put_out_in_line, endpoint):
    answer = answer_to(lost, endpoint)

    assert put_out_in_line
    assert_refused(answer, 401, "session")


def test_it_leaves_no_link_to_come_in_by_again(lost, put_out_in_line, db):
    lost.post("/api/pairings")

    assert put_out_in_line
    assert db.conn.execute("SELECT count(*) FROM pairings WHERE uses_left > 0").fetchone() == (0,)


def test_it_gets_no_new_certificate_and_its_entries_do_not_come_in(lost, put_out_in_line, db):
    lost.record("job_opened", job_opened())

    lost.sync()

    assert put_out_in_line
    assert db.conn.execute("SELECT count(*) FROM certificates WHERE ended_at IS NULL").fetchone() == (0,)
    assert db.conn.execute("SELECT count(*) FROM events").fetchone() == (0,)


def test_the_next_who_is_lent_the_connection_is_asked_about_itself(lost, put_out_in_line, new_phone, phone):
    lost.post("/api/pairings")

    assert put_out_in_line
    for each in (phone, new_phone("d00000000000000ee", "Sam")):
        assert each.post("/api/pairings").status_code == 200
