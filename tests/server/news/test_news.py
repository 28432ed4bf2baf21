"""What is new to a phone, and who else is at its job, as a phone asks for it."""

import pytest

from server.news.board import LINGERS_SECONDS
from server.news.board import Board
from server.news.board import Place
from server.phones.sessions import Session
from server.serving.connections.hold import Hold
from tests.server.phone import JOB
from tests.server.phone import assert_refused
from tests.server.phone import job_opened

OTHER_JOB = "j000000000002"
EXCHANGING = {"job": JOB, "doing": "exchange", "positions": ["rear-left"]}


def ask(phone, at=None, cursor=0, stamp="", window="00000001", **fields):
    body = {"v": 1, "window": window, "at": at, "cursor": cursor, "stamp": stamp, **fields}
    return phone.post("/api/news", body)


@pytest.fixture
def ben(new_phone):
    return new_phone("d00000000000000bb", "Ben")


def test_entries_are_new_until_the_phone_has_them(phone, ben):
    ben.record("job_opened", job_opened())
    ben.synced()

    told = ask(phone).get_json()
    assert told["entries"] == 1
    assert told["pause"] == 0
    # The test's server can keep nothing back: the phone asks again after a while.
    assert ask(phone, cursor=1, stamp=told["stamp"]).get_json()["pause"] > 0


def test_who_else_is_at_the_job_is_told_to_those_at_it(phone, ben):
    ask(ben, EXCHANGING)

    told = ask(phone, {"job": JOB, "doing": "test", "positions": []}).get_json()
    assert told["others"] == [{"name": "Ben", "doing": "exchange", "positions": ["rear-left"]}]
    assert [each["name"] for each in ask(ben, EXCHANGING).get_json()["others"]] == ["Mara"]
    assert ask(phone, {"job": OTHER_JOB, "doing": "test", "positions": []}).get_json()["others"] == []
    assert ask(phone).get_json()["others"] == []


def test_who_leaves_is_gone_at_once(phone, ben):
    ask(ben, EXCHANGING)
    ask(ben, None)
    assert ask(phone, EXCHANGING).get_json()["others"] == []


def test_a_phone_that_was_put_out_is_gone_at_once(phone, ben):
    ask(ben, EXCHANGING)
    [identity] = [each["id"] for each in phone.get("/api/phones").get_json()["phones"] if not each["this"]]
    phone.post(f"/api/phones/{identity}/revoke")
    assert ask(phone, EXCHANGING).get_json()["others"] == []
    assert_refused(ask(ben, EXCHANGING), 401, "session")


def test_the_counter_is_neither_told_nor_told_of(phone, counter):
    ask(counter, EXCHANGING)
    assert ask(phone, EXCHANGING).get_json()["others"] == []
    assert ask(counter, EXCHANGING).get_json()["others"] == []


def test_presence_is_no_entry(phone, ben, db):
    ask(ben, EXCHANGING)
    assert ask(phone, EXCHANGING).get_json()["entries"] == 0
    assert "Ben" not in str(db.conn.execute("SELECT * FROM events").fetchall())


@pytest.mark.parametrize(
    ("field", "fields"),
    [
        ("v", {"v": 2}),
        ("window", {"window": "no"}),
        ("window", {"window": 7}),
        ("cursor", {"cursor": -1}),
        ("cursor", {"cursor": True}),
        ("stamp", {"stamp": "a" * 17}),
        ("at", {"at": "here"}),
        ("job", {"at": {**EXCHANGING, "job": ""}}),
        ("job", {"at": {**EXCHANGING, "job": "j" * 65}}),
        ("doing", {"at": {**EXCHANGING, "doing": "x" * 33}}),
        ("at.positions", {"at": {**EXCHANGING, "positions": "all"}}),
        ("at.positions", {"at": {**EXCHANGING, "positions": ["p"] * 25}}),
        ("at.positions", {"at": {**EXCHANGING, "positions": ["p" * 65]}}),
        ("at.positions", {"at": {**EXCHANGING, "positions": [""]}}),
    ],
)
def test_what_is_malformed_is_refused_by_its_field(phone, field, fields):
    body = {"v": 1, "window": "00000001", "at": None, "cursor": 0, "stamp": "", **fields}
    assert_refused(phone.post("/api/news", body), 400, field)


def test_a_body_that_is_too_long_is_refused(phone):
    assert_refused(ask(phone, more="x" * 9000), 413, "body")


def test_a_stranger_and_a_forged_request_are_refused(phone, stranger):
    assert_refused(ask(stranger), 401, "session")
    phone.csrf = ""
    assert_refused(ask(phone), 400, "X-CSRFToken")


# --- who waits, and for what


class Clock:
    """Stands still unless it is set."""

    now = 1000.0

    def __call__(self):
        return self.now


MARA, BEN, JO = Session(1, "Mara", "bench"), Session(2, "Ben", "bench"), Session(3, "Jo", "counter")
HERE = Place(JOB, "test", ())


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def board(clock):
    return Board(clock)


def waits(board, session=MARA, place=HERE, window="00000001"):
    """Has a phone wait that knows what there is."""
    hold = Hold(1000)
    standing = board.arrive(session, place)
    board.wait(session, window, place, hold, board.turn(), standing.stamp)
    return hold


def is_released(hold):
    return hold.is_due(0)


def test_who_is_at_the_job_hears_of_its_entries_at_once(board):
    hold = waits(board)
    board.entries_came({JOB}, BEN.id)
    assert is_released(hold)


def test_a_list_hears_a_moment_later_and_another_job_later_still(board):
    at_list, elsewhere = waits(board, place=Place()), waits(board, JO, Place(OTHER_JOB))
    board.entries_came({JOB}, BEN.id)
    assert not is_released(at_list)
    assert at_list.until < elsewhere.until < waits(board, BEN).until


def test_entries_of_no_job_are_heard_of_too(board):
    hold = waits(board)
    before = hold.until
    board.entries_came(set(), BEN.id)
    assert not is_released(hold)
    assert hold.until < before


def test_who_sent_entries_has_them(board):
    hold = waits(board)
    before = hold.until
    board.entries_came({JOB}, MARA.id)
    assert hold.until == before


def test_what_came_while_the_phone_asked_is_not_missed(board):
    turn = board.turn()
    stamp = board.arrive(MARA, HERE).stamp
    board.entries_came({JOB}, BEN.id)
    hold = Hold(1000)
    board.wait(MARA, "00000001", HERE, hold, turn, stamp)
    assert is_released(hold)
    assert board.waiting() == 0


def test_who_came_while_the_phone_asked_is_not_missed(board):
    stamp = board.arrive(MARA, HERE).stamp
    board.arrive(BEN, HERE)
    hold = Hold(1000)
    board.wait(MARA, "00000001", HERE, hold, board.turn(), stamp)
    assert is_released(hold)


@pytest.mark.parametrize("then", [Place(JOB, "exchange", ("rear-left",)), Place(), Place(OTHER_JOB, "test")])
def test_a_step_of_another_is_heard_of_at_once(board, then):
    board.arrive(BEN, HERE)
    hold = waits(board)
    board.arrive(BEN, HERE)
    assert not is_released(hold)
    board.arrive(BEN, then)
    assert is_released(hold)


def test_the_counter_disturbs_nobody(board):
    hold = waits(board)
    board.arrive(JO, HERE)
    assert not is_released(hold)


def test_a_window_waits_once_and_a_phone_with_few(board):
    first = waits(board)
    second = waits(board)
    assert is_released(first)
    assert not is_released(second)
    others = [waits(board, window=f"0000001{n}") for n in range(4)]
    assert [is_released(each) for each in others].count(True) == 2


def test_what_has_ended_is_forgotten(board):
    hold = waits(board)
    assert board.waiting() == 1
    hold.end()
    assert board.waiting() == 0


def test_who_was_not_heard_of_for_a_while_is_gone(board, clock):
    board.arrive(BEN, HERE)
    clock.now += LINGERS_SECONDS - 1
    assert [each["name"] for each in board.arrive(MARA, HERE).others] == ["Ben"]
    clock.now += 2
    assert board.arrive(MARA, HERE).others == []


def test_a_phone_is_alone_while_no_other_looks(board, clock):
    board.arrive(MARA, HERE)
    assert board.is_alone(MARA.id)
    board.arrive(BEN, Place())
    assert not board.is_alone(MARA.id)
    clock.now += 301
    assert board.is_alone(MARA.id)
