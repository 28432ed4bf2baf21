"""The counter over HTTP: day list, waiting, search, CSV. The csv module reads the file as RFC 4180 has it."""

import csv
import io
from collections import Counter

import pytest

from server.core.codes.labels import address
from server.core.views.search import tokens
from server.log import events
from server.queries.decisions_csv import COLUMNS
from tests.core.counter_yard import BAD
from tests.core.counter_yard import NOW as DECIDED_AT
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.driver import Driver
from tests.hosts import Core
from tests.server.phone import assert_refused

DAY_MS = 86_400_000
SPAN = f"from={DECIDED_AT - 30 * DAY_MS}&to={DECIDED_AT + DAY_MS}"
FORMULAS = ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"]
"""What spreadsheets take for a formula: OWASP, 'CSV Injection'."""


@pytest.fixture
def returned(db):
    """A log in which a unit was accepted and, under all manner of names, others were held."""
    core = Core()
    job = proven(core)
    clerk = Clerk(core, name='Jo "the", clerk\nof the counter')
    clerk.decide(clerk.ask(job.labels[BAD], read={"part": "PS-1", "compared": "same"}))
    for number, signed in enumerate(FORMULAS):
        clerk.actor = signed
        clerk.decide(clerk.ask(job.codes[10 + number]), "refuse", f"{signed} because")
    clerk.actor = "Zoë"
    foreign = address(job.codes[18], "https://other.example.org:8443")
    clerk.decide(clerk.ask(foreign, host="localhost:8765", read={"serial": "sn 0o81-x"}))
    entries = [
        {"event": event, "hash": core("envelope", event=event)["hash"]} for event in job.events + clerk.events
    ]
    assert events.receive(db, entries, None, 1).refused == []
    return core


def rows_of(answer):
    assert answer.status_code == 200, answer.get_data(as_text=True)
    text = answer.data.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def test_the_day_list_is_the_one_of_the_core(counter, returned):
    day = counter.get(f"/api/returns?{SPAN}").get_json()

    assert day == returned("decided", start=DECIDED_AT - 30 * DAY_MS, end=DECIDED_AT + DAY_MS)
    assert day["total"] == 8
    assert counter.get("/api/returns/waiting").get_json() == returned("waiting")


def test_the_file_adds_up_with_the_day_list(counter, returned):
    day = counter.get(f"/api/returns?{SPAN}").get_json()

    rows = rows_of(counter.get(f"/api/returns.csv?{SPAN}"))

    assert tuple(rows[0]) == COLUMNS
    assert [row["entry"] for row in rows] == [line["event"] for line in day["lines"]]
    assert Counter(row["decision"] for row in rows) == Counter(
        {each["decision"]: each["count"] for each in day["counts"] if each["count"]}
    )
    assert rows[-1]["signed"] == 'Jo "the", clerk\nof the counter'
    assert {row["code"] for row in rows} == {line["shown"] for line in day["lines"]}


def test_the_file_has_the_serial_as_it_was_read_and_the_shop_of_a_foreign_label(counter, returned):
    rows = rows_of(counter.get(f"/api/returns.csv?{SPAN}"))

    foreign = [row for row in rows if row["host"]]
    assert [(row["host"], row["serial read"], row["signed"]) for row in foreign] == [
        ("other.example.org:8443", "sn 0o81-x", "Zoë")
    ]
    assert len(rows) > len(foreign)


def test_the_file_is_as_rfc_4180_has_it(counter, returned):
    answer = counter.get(f"/api/returns.csv?{SPAN}")

    assert answer.headers["Content-Type"] == "text/csv; charset=utf-8; header=present"  # section 3
    assert answer.headers["Content-Disposition"].startswith('attachment; filename="returns-20')
    assert answer.data.startswith(b"\xef\xbb\xbf")  # the mark by which a spreadsheet knows UTF-8
    text = answer.data.decode("utf-8-sig")
    assert text.endswith("\r\n")  # section 2, rules 1 and 2
    assert {len(row) for row in csv.reader(io.StringIO(text, newline=""), strict=True)} == {len(COLUMNS)}
    assert 'Jo ""the"", clerk' in text  # rules 6 and 7


def test_no_cell_begins_like_a_formula(counter, returned):
    rows = rows_of(counter.get(f"/api/returns.csv?{SPAN}"))

    cells = [cell for row in rows for cell in row.values()]
    assert not [cell for cell in cells if cell[:1] in {"=", "+", "-", "@", "\t", "\r"}]
    assert {f"'{each}" for each in FORMULAS} <= {row["signed"] for row in rows}


def test_times_are_those_of_the_clerk(counter, returned):
    utc = rows_of(counter.get(f"/api/returns.csv?{SPAN}"))
    there = rows_of(counter.get(f"/api/returns.csv?{SPAN}&offset=-330"))

    assert [row["utc"] for row in utc] == [row["utc"] for row in there]
    assert utc[0]["utc"] == f"{utc[0]['date']}T{utc[0]['time']}Z"
    assert utc[0]["time"] != there[0]["time"]


@pytest.mark.parametrize(
    ("query", "field"),
    [
        ("", "from"),
        ("from=5", "to"),
        ("from=5&to=5", "to"),
        ("from=x&to=5", "from"),
        ("from=-1&to=5", "from"),
        (f"from=0&to={401 * DAY_MS}", "to"),
        ("from=0&to=9&offset=2000", "offset"),
    ],
)
def test_a_span_that_is_none_is_refused(counter, query, field):
    assert_refused(counter.get(f"/api/returns.csv?{query}"), 400, field)


@pytest.mark.parametrize(
    "text",
    [
        "estate",
        "beeps mara",
        "PS-1",
        "zoë",
        "JO clerk",
        "nothing",
        "",
        "estaet",
        "mbra",
        "PS-12",
        "clrek",
        "ps_i x",
        '"',
        "a*b",
    ],
)
def test_a_search_finds_what_going_through_everything_finds(counter, returned, text):
    found = counter.get("/api/search", query_string={"text": text}).get_json()

    assert found == returned("find", text=text)


def test_a_search_finds_a_unit_by_code_part_serial_vehicle_complaint_and_name(counter, returned):
    code = next(line["code"] for line in returned("find", text="PS-1") if line["decided"])
    for text in (code, code[:3].lower(), "PS-1", "blue estate", "without reason", "mara", "jo the clerk"):
        found = counter.get("/api/search", query_string={"text": text}).get_json()
        assert BAD in [line["unit"] for line in found], text


@pytest.mark.parametrize(
    ("text", "said"),
    [("estaet", "Vehicle Blue estate"), ("jo clrek", None), ("bule", "Vehicle Blue estate")],
)
def test_a_search_forgives_one_slip_and_says_what_comes_close(counter, returned, text, said):
    lines = counter.get("/api/search", query_string={"text": text}).get_json()
    assert lines
    assert all(line["near"] for line in lines)
    assert said is None or said in lines[0]["found_by"]


def test_a_new_name_of_the_vehicle_is_found_and_the_old_one_is_not(counter, db, returned):
    before = counter.get("/api/search?text=estate").get_json()
    driver = Driver(returned, device="d00000000000000ee", job="j000000000077")
    opened = next(each for each in proven(Core()).events if each["kind"] == "job_opened")
    renamed = {**opened["data"], "vehicle": {**opened["data"]["vehicle"], "name": "Grey van"}}
    driver.force("job_opened", **renamed)
    entry = {"event": driver.events[0], "hash": returned("envelope", event=driver.events[0])["hash"]}
    assert events.receive(db, [entry], None, 2).refused == []

    assert before
    assert [line for line in counter.get("/api/search?text=estate").get_json() if not line["near"]] == []
    assert counter.get("/api/search?text=grey van").get_json() == returned("find", text="grey van")


def test_words_are_split_the_same_way_everywhere():
    assert tokens("K7F-3M, Part:PS_1") == ["k7f", "3m", "part", "ps", "1"]
    assert tokens("Zoë-É Straße") == ["zoe", "e", "strasse"]


def test_a_text_that_is_too_long_is_refused(counter):
    assert_refused(counter.get("/api/search", query_string={"text": "a" * 201}), 400, "text")
