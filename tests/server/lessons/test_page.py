"""The page over HTTP: what it says with many jobs and with few, and the jobs behind each figure."""

import csv
import io

import pytest

from server.clock import now_ms
from server.commands.cli import main
from server.lessons import kept
from server.lessons.figures import figures
from server.lessons.page import page as page_of
from tests.made_up_yard import DAY_MS
from tests.made_up_yard import START
from tests.made_up_yard import Yard
from tests.made_up_yard import receive
from tests.said import english
from tests.server.phone import assert_refused


def fill(db, count):
    receive(db, Yard("page", count).entries)


def sections(page):
    return {each["id"]: each for each in page["sections"]}


def test_nothing_is_told_of_a_yard_without_a_closed_job(phone):
    page = phone.get("/api/lessons").get_json()

    assert page["sections"] == []
    assert page["summary"][0].startswith("No job is closed yet.")
    assert page["words"]["axis"] == ""
    assert (
        page["yards"]["give_from"] == "From 10 jobs that count on, you can give your own figures to others."
    )
    year = phone.get("/api/lessons?span=year").get_json()
    assert year["summary"] == ["No job is closed in this time."]


def test_of_one_job_nothing_is_told_twice_and_no_bar_is_explained_that_is_not_there(phone, db):
    fill(db, 1)

    page = phone.get("/api/lessons").get_json()

    assert page["summary"] == ["One job closed; one counts, one with a proven cause."]
    assert page["words"]["axis"] == ""
    rows = [row for name in ("minutes", "reach") for row in sections(page)[name]["rows"]]
    assert len(rows) > 4
    assert not [row["note"] for row in rows if " times" in row["note"] or "job" in row["note"]]
    assert not [each["note"] for each in page["sections"] if "bar" in each["note"].split()]
    found = [row["figure"] for row in sections(page)["rates"]["rows"] if row["figure"].startswith("Found")]
    assert "Found: 0" in found
    assert not [each for each in found if each.endswith(".0")]


def test_own_figures_are_offered_to_give_as_soon_as_there_are_enough_of_them_in_whatever_span(phone, db):
    fill(db, 30)
    page = phone.get("/api/lessons").get_json()
    assert page["words"]["axis"]
    assert sections(page)["minutes"]["note"].endswith(
        "The figure is the middle one, the bar the middle half."
    )
    for span in ("all", "quarter"):
        assert phone.get(f"/api/lessons?span={span}").get_json()["yards"]["give_from"] == ""


def test_with_fewer_than_ten_jobs_a_figure_is_the_count_it_is(phone, db):
    fill(db, 5)

    page = phone.get("/api/lessons").get_json()

    figures = [row["figure"] for each in page["sections"] for row in each["rows"] if each["id"] != "rates"]
    assert not [figure for figure in figures if "%" in figure]
    rows = [row for name in ("minutes", "reach") for row in sections(page)[name]["rows"]]
    assert len(rows) > 4
    assert not [row["figure"] for row in rows if " min" in row["figure"] or row["band"]]
    rates = sections(page)["rates"]["rows"]
    assert len(rates) > 5  # with those of readings, of which one job has many
    assert all(row["band"] is None and "%" not in row["figure"] for row in rates)


def test_ten_causes_of_fewer_jobs_are_counted_and_no_percentage(db):
    fill(db, 9)
    found = figures(db, now_ms())
    causes = [cause for cause in found["causes"] for _ in range(3)]
    assert len(causes) > 10

    section = sections(page_of(found | {"causes": causes}, "all"))["causes"]

    assert not [row for row in section["rows"] if "%" in english(row["figure"])]


def test_every_figure_of_work_has_the_jobs_behind_it(phone, db):
    fill(db, 30)

    page = phone.get("/api/lessons").get_json()

    known = len(page["jobs"])
    assert known == 30
    for name in ("reliability", "causes", "minutes", "reach", "parts"):
        for row in sections(page)[name]["rows"]:
            assert row["jobs"], row["words"]
            assert all(0 <= number < known for number in row["jobs"])
    drawn = sections(page)["causes"]["board"]["positions"]
    assert {each["mark"] for each in drawn} <= {"fault", "clean"}
    assert sum(len(each["jobs"]) for each in drawn) > 10


def test_a_rate_of_readings_has_the_jobs_with_such_a_reading_behind_it(phone, db):
    fill(db, 30)
    found = phone.get("/api/lessons.json").get_json()
    page = phone.get("/api/lessons").get_json()

    rows = dict(zip([rate["id"] for rate in found["rates"]], sections(page)["rates"]["rows"], strict=True))
    behind = {page["jobs"][number][0] for number in rows["shows"]["jobs"]}

    held = {}
    kept.refresh(db, held)
    assert behind == {job for job, each in held.items() if each.said["readings"]} != set(found["proven"])
    assert set(found["behind_rates"]) == {"shows", "false_alarm"}  # nobody measured, nobody listened


def test_a_job_by_a_wrong_clock_is_in_no_span_and_said_to_be_left_out_of_it(phone, db):
    yard = Yard("page", 12)
    ahead = Yard("ahead", 1, start=START + 40_000 * DAY_MS, device="d00000000000000cc")
    receive(db, yard.entries)
    receive(db, ahead.entries)

    page = phone.get("/api/lessons?span=year").get_json()

    (row,) = [row for row in sections(page)["left-out"]["rows"] if row["words"] == "A clock that was wrong"]
    assert [page["jobs"][number][0] for number in row["jobs"]] == list(ahead.causes)


def test_times_at_a_position_stand_beside_what_the_plan_reckons_there(phone, db):
    fill(db, 30)

    reach = phone.get("/api/lessons.json").get_json()["reach"]

    # Two minutes to an outer one of this layout, three to an inner one, and half a minute to pull it.
    plans = {each["position"]: each["plan_x100"] for each in reach if each["layout"] == "rear-4"}
    assert plans["rear-right-outer"] == 250
    assert plans["rear-right-inner"] == 350
    (row, *_) = sections(phone.get("/api/lessons").get_json())["reach"]["rows"]
    assert row["note"].startswith(("Rear, 4 sensors. Plan ", "Front and rear, 8 sensors. Plan "))


def test_a_band_lies_on_its_scale_and_holds_its_middle(phone, db):
    fill(db, 30)

    bands = [row["band"] for each in phone.get("/api/lessons").get_json()["sections"] for row in each["rows"]]

    assert len([band for band in bands if band]) > 8
    for band in filter(None, bands):
        assert 0 <= band["low"] <= band["high"] <= band["most"]
        assert 0 <= band["value"] <= band["most"]
        assert 0 <= band["mark"] <= band["most"]


def test_the_page_speaks_the_language_of_the_phone(phone, db):
    fill(db, 12)

    page = phone.get("/api/lessons", headers={"Accept-Language": "es"}).get_json()

    assert page["title"] == "Lo que enseñan tus trabajos"
    assert "minutes" in sections(page)


@pytest.mark.parametrize("span", ["all", "year", "quarter"])
def test_the_files_hold_the_jobs_of_the_span(phone, db, span):
    fill(db, 12)

    figures = phone.get(f"/api/lessons.json?span={span}").get_json()
    table = phone.get(f"/api/lessons.csv?span={span}")

    assert table.headers["Content-Disposition"].startswith('attachment; filename="lessons-20')
    assert table.data.startswith(b"\xef\xbb\xbf")  # the mark by which a spreadsheet knows UTF-8
    rows = list(csv.DictReader(io.StringIO(table.data.decode("utf-8-sig"), newline="")))
    work = [row["name"] for row in rows if row["figure"] == "job_minutes_x100"]
    assert work == [job for job, _, _ in figures["work"]]


def test_a_span_that_is_none_is_refused(phone):
    assert_refused(phone.get("/api/lessons?span=week"), 400, "span")


def test_the_command_says_the_same_in_rows(phone, db, folder, capsys):
    fill(db, 12)
    page = phone.get("/api/lessons").get_json()

    assert main(["lessons", "--data", str(folder.root)]) == 0

    told = capsys.readouterr().out
    for each in page["sections"]:
        assert each["title"] in told
        for row in each["rows"]:
            assert row["figure"] in told


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (["--json", "--csv"], "--csv does not go with --json"),
        (["--give", "new.json", "--yards"], "--yards does not go with --give"),
        (["--yards", "--since", "2026-03-01"], "--since does not go with --yards"),
        (["--give", "new.json", "--since", "2026-03-01"], "--since does not go with --give"),
        (["--weight", "0.5"], "--weight goes with --weigh-in"),
        (["--whose", "North", "--yards"], "--whose goes with --weigh-in"),
        (["--weigh-in", "north.json", "--whose", "North"], "--whose goes with --compared"),
        (["--weigh-in", "north.json", "--compared", "met"], "--compared goes with --whose"),
    ],
)
def test_the_command_does_one_thing_at_a_time(folder, capsys, asked, said):
    with pytest.raises(SystemExit) as end:
        main(["lessons", "--data", str(folder.root), *asked])

    assert end.value.code == 2
    assert said in capsys.readouterr().err
