"""Figures between yards: what a file holds, whose seal is trusted, what it weighs, what is no such file."""

import json
from contextlib import closing

import pytest

from demo_db.yard import Truth
from server.commands.cli import main
from server.core.log import canon
from server.lessons import given
from server.lessons import weighed_in
from server.lessons.figures import figures
from server.lessons.running import Running
from server.lessons.yards_page import how_many
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.words.spoken import text
from tests.made_up_yard import DAY_MS
from tests.made_up_yard import START
from tests.made_up_yard import Yard
from tests.made_up_yard import receive
from tests.server.phone import entry_after

NOW = START + 400 * DAY_MS
WIRING = Truth(circuit=0.05)


class Installation:
    """A yard with a data folder of its own."""

    def __init__(self, root, jobs=0, truth=None):
        """Fills it with jobs."""
        self.folder = DataFolder(root)
        self.folder.prepare()
        self.signs = signer(self.folder)
        self.name = root.name
        if jobs:
            self.work(jobs, truth)

    def work(self, jobs, truth=None):
        yard = Yard(self.name, jobs, truth)
        with closing(self.folder.open()) as db:
            receive(db, yard.entries)

    def give(self):
        with closing(self.folder.open()) as db:
            return given.give(db, self.signs, NOW)[0]

    def file(self, path, body=None):
        path.write_text(self.give() if body is None else body)
        return str(path)

    def sealed(self, body):
        """The file with other figures under this yard's own seal."""
        body = {name: value for name, value in body.items() if name != "signature"}
        return canon.dumps({**body, "signature": self.signs.sign(canon.dumps(body))})

    def figures(self, running=None):
        with closing(self.folder.open()) as db:
            return figures(db, NOW, running=running)

    def rates(self, running=None):
        return {rate["id"]: rate for rate in self.figures(running)["rates"]}

    @property
    def data(self):
        return str(self.folder.root)


@pytest.fixture
def home(tmp_path):
    return Installation(tmp_path / "home", 20)


@pytest.fixture
def north(tmp_path):
    return Installation(tmp_path / "north", 60, WIRING)


def weigh(home, path, *more):
    """Weighs a file in as a person who has compared the fingerprint."""
    asked = ["--whose", "North", "--compared", "called"]
    return main(["lessons", "--data", home.data, "--weigh-in", path, *asked, *more])


def refused(capsys):
    told = capsys.readouterr().err
    assert told.count("\n") == 1, told
    return told


def test_a_file_holds_figures_alone(north):
    text = north.give()

    with closing(north.folder.open()) as db:
        jobs = [job for (job,) in db.conn.execute("SELECT job FROM job_list")]
        bodies = [json.loads(body)["data"] for (body,) in db.conn.execute("SELECT body FROM events")]
    names = {body["vehicle"]["name"] for body in bodies if "vehicle" in body}
    codes = {body["code"] for body in bodies if body.get("code")}
    assert len(jobs) == 60
    assert names
    assert codes
    for secret in {*jobs, *names, *codes, "rear-left", "Mara", str(START)[:5]}:
        assert secret not in text
    body = json.loads(text)
    assert set(body) == {"app", "v", "key", "number", "first", "last", "jobs", "causes", "readings", "checks",
                         "signature"}  # fmt: skip
    assert (body["first"], body["last"]) == ("2026-Q1", "2026-Q2")
    assert body["jobs"] == sum(each["count"] for each in body["causes"])


def test_figures_count_once_the_seal_is_confirmed_and_at_the_weight_given(home, north, tmp_path, capsys):
    path = north.file(tmp_path / "north.json")
    alone = home.rates()["circuit"]["value_ppm"]

    assert main(["lessons", "--data", home.data, "--weigh-in", path]) == 2
    unconfirmed = refused(capsys)
    assert home.rates()["circuit"]["value_ppm"] == alone
    assert weigh(home, path, "--weight", "0.2") == 0
    little = home.rates()["circuit"]["value_ppm"]
    assert weigh(home, path, "--weight", "1") == 0
    much = home.rates()["circuit"]["value_ppm"]

    assert fingerprint(north.signs.key) in unconfirmed
    assert alone < little < much
    told = capsys.readouterr().out
    assert "60 jobs count now, with 20 %" in told
    assert "counted already. They weigh 100 % now." in told


def test_of_two_yards_with_one_name_neither_is_taken_out_by_it(home, north, tmp_path, capsys):
    other = Installation(tmp_path / "other", 12)
    assert weigh(home, north.file(tmp_path / "north.json")) == 0
    assert weigh(home, other.file(tmp_path / "other.json")) == 0
    capsys.readouterr()

    for shown in ("North", " "):
        assert main(["lessons", "--data", home.data, "--take-out", shown]) == 2
        refused(capsys)
        assert len(home.figures()["yards"]) == 2
    assert main(["lessons", "--data", home.data, "--take-out", fingerprint(other.signs.key)]) == 0

    assert [yard["jobs"] for yard in home.figures()["yards"]] == [60]


def test_a_yard_at_full_weight_counts_as_if_its_jobs_were_own_ones(home, north, tmp_path):
    assert weigh(home, north.file(tmp_path / "north.json")) == 0

    with_north = home.rates()
    both = Installation(tmp_path / "home2", 0)
    for name, jobs, truth in (("home", 20, None), ("north", 60, WIRING)):
        device = f"d0000000000000{jobs:03}"
        with closing(both.folder.open()) as db:
            receive(db, Yard(name, jobs, truth, device=device).entries)

    for name, rate in both.rates().items():
        assert with_north[name]["value_ppm"] == pytest.approx(rate["value_ppm"], abs=2)
        assert with_north[name]["high_ppm"] == pytest.approx(rate["high_ppm"], abs=2)
        assert with_north[name]["tries"] == rate["tries"]


def test_what_is_taken_says_from_which_yards_and_weights(home, north, tmp_path, capsys):
    weigh(home, north.file(tmp_path / "north.json"), "--weight", "0.5")

    told = home.figures()

    assert told["yards"] == [{"fingerprint": fingerprint(north.signs.key), "name": "North", "weight": 50,
                              "jobs": 60, "first": "2026-Q1", "last": "2026-Q2"}]  # fmt: skip
    capsys.readouterr()
    assert main(["lessons", "--data", home.data, "--yards"]) == 0
    listed = capsys.readouterr().out
    assert "North (50 %)" in listed
    assert "60 jobs, 2026-Q1 to 2026-Q2" in listed


def test_a_yard_is_taken_out_by_name_or_seal_and_the_figures_are_as_before(home, north, tmp_path, capsys):
    running = Running()
    before = home.rates(running)
    path = north.file(tmp_path / "north.json")
    for shown in ("North", fingerprint(north.signs.key)):
        assert weigh(home, path) == 0
        assert home.rates(running) != before
        assert main(["lessons", "--data", home.data, "--take-out", shown]) == 0
        assert home.rates(running) == before
    capsys.readouterr()
    assert main(["lessons", "--data", home.data, "--take-out", "North"]) == 2
    assert refused(capsys) == "swaptrail: No figures of North count here.\n"


def test_a_seal_is_typed_as_it_was_read_out_and_a_name_in_capitals_or_not(home, north, tmp_path, capsys):
    path = north.file(tmp_path / "north.json")
    seal = fingerprint(north.signs.key)
    for shown in ("NORTH", seal.upper(), seal.replace(" ", ""), seal.replace(" ", "-")):
        assert weigh(home, path) == 0
        assert main(["lessons", "--data", home.data, "--take-out", shown]) == 0
    assert weigh(home, path) == 0

    assert main(["lessons", "--data", home.data, "--take-out", "South"]) == 2
    assert "These count: North." in refused(capsys)


def test_a_yard_that_was_called_otherwise_has_the_name_that_was_said_last(home, north, tmp_path, capsys):
    path = north.file(tmp_path / "north.json")
    assert weigh(home, path) == 0
    capsys.readouterr()

    assert weigh(home, path, "--whose", "North Street") == 0

    assert capsys.readouterr().out.startswith("North Street: ")
    assert [yard["name"] for yard in home.figures()["yards"]] == ["North Street"]


@pytest.mark.parametrize("empty", ["", " "])
@pytest.mark.parametrize("option", ["--take-out", "--give", "--weigh-in", "--whose", "--since", "--weight"])
def test_what_is_left_empty_is_said_to_be_and_nothing_counts(home, north, tmp_path, capsys, option, empty):
    path = north.file(tmp_path / "north.json")
    asked = [option, empty] if option in {"--take-out", "--give", "--weigh-in", "--since"} else []

    code = main(["lessons", "--data", home.data, *asked]) if asked else weigh(home, path, option, empty)

    assert code == 2
    told = refused(capsys)
    assert "No weight was given" in told if option == "--weight" else f'{option}: found "{empty}"' in told
    assert home.figures()["yards"] == []


def test_newer_figures_of_a_yard_replace_older_ones_which_are_refused_then(home, north, tmp_path, capsys):
    old = north.file(tmp_path / "old.json")
    new = north.file(tmp_path / "new.json")
    assert weigh(home, old) == 0
    assert weigh(home, new, "--weight", "0.5") == 0
    assert "replace its older ones" in capsys.readouterr().out
    assert [(yard["jobs"], yard["weight"]) for yard in home.figures()["yards"]] == [(60, 50)]

    assert weigh(home, old) == 2
    assert "Newer figures" in refused(capsys)


@pytest.mark.parametrize("more", [[], ["--yards"]], ids=["figures", "yards"])
def test_a_look_needs_no_key_and_makes_none(tmp_path, more):
    folder = DataFolder(tmp_path / "data")
    folder.prepare()

    assert main(["lessons", "--data", str(folder.root), *more]) == 0
    assert not (folder.keys / "signing.key").exists()


def test_other_figures_under_a_number_that_counted_replace_it(home, north, tmp_path, capsys):
    """As a yard gives them that came back from a backup."""
    body = json.loads(north.give())
    fewer = {**body, "causes": body["causes"][1:], "readings": []}
    fewer["jobs"] = sum(each["count"] for each in fewer["causes"])
    weigh(home, north.file(tmp_path / "north.json", canon.dumps(body)))
    capsys.readouterr()

    assert weigh(home, north.file(tmp_path / "fewer.json", north.sealed(fewer))) == 0
    assert "replace" in capsys.readouterr().out
    assert weigh(home, str(tmp_path / "fewer.json")) == 0
    assert "counted already" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("first", "last", "said"),
    [("2026-Q1", "2026-Q3", "2 jobs, 2026-Q1 to 2026-Q3"), ("2026-Q1", "2026-Q1", "2 jobs in 2026-Q1"),
     ("", "", "2 jobs")],
)  # fmt: skip
def test_the_quarters_of_a_yard_are_said_once_and_only_where_they_are_known(first, last, said):
    assert text(how_many(2, first, last)) == said


def test_own_figures_are_not_weighed_into_themselves(home, tmp_path, capsys):
    assert weigh(home, home.file(tmp_path / "own.json")) == 2
    assert "your own figures" in refused(capsys)


@pytest.mark.parametrize("weight", ["0", "-1", "nan", "inf", "1.01", "1e300", "0.001", "much", ""])
def test_a_weight_that_is_none_is_refused(home, north, tmp_path, capsys, weight):
    path = north.file(tmp_path / "north.json")

    assert weigh(home, path, f"--weight={weight}") == 2
    assert "from 0.01 to 1" in refused(capsys)
    assert home.figures()["yards"] == []


def test_fewer_than_ten_jobs_are_not_given(tmp_path, capsys):
    small = Installation(tmp_path / "small", 9)

    assert main(["lessons", "--data", small.data, "--give", str(tmp_path / "small.json")]) == 2
    assert "(9)" in refused(capsys)
    assert not (tmp_path / "small.json").exists()


def test_a_file_that_is_there_is_not_written_over(north, tmp_path, capsys):
    there = tmp_path / "there.json"
    there.write_text("mine")

    assert main(["lessons", "--data", north.data, "--give", str(there)]) == 2
    assert there.read_text() == "mine"
    assert main(["lessons", "--data", north.data, "--give", str(tmp_path / "new.json")]) == 0
    assert given.read((tmp_path / "new.json").read_bytes()).jobs == 60


NONE = [b"", b"{}", b"[]", b"null", b"\xff\xfe", b"[" * 100_000, b" " * 2_000_000, b'{"app": NaN}']


@pytest.mark.parametrize("data", NONE, ids=[str(each[:12]) for each in NONE])
def test_what_is_no_such_file_is_refused_in_one_line(data):
    with pytest.raises(CommandRefused, match="no figures of a yard"):
        given.read(data)


def test_a_version_that_is_not_known_asks_for_an_update(north):
    body = json.loads(north.give())

    with pytest.raises(CommandRefused, match="newer version"):
        given.read(north.sealed({**body, "v": 2}).encode())
    for version in (0, -1, "2", None, [2]):  # which no version wrote
        with pytest.raises(CommandRefused, match="no figures of a yard"):
            given.read(north.sealed({**body, "v": version}).encode())


def test_a_file_that_was_altered_is_refused(north, tmp_path):
    text = north.give()
    other = Installation(tmp_path / "other")

    for altered in (text.replace('"jobs":60', '"jobs":61'), text.replace('"number":1', '"number":2'),
                    json.dumps({**json.loads(text), "key": other.signs.key}),
                    json.dumps({**json.loads(text), "signature": ""}),
                    json.dumps({**json.loads(text), "extra": 0.5})):  # fmt: skip
        assert altered != text
        with pytest.raises(CommandRefused, match="altered"):
            given.read(altered.encode())


@pytest.mark.parametrize("number", ["1" + "0" * 300, "1e300", "NaN", "Infinity", "0.5"])
def test_a_number_that_no_file_of_ours_has_is_refused(north, number):
    text = north.give().replace('"jobs":60', f'"jobs":{number}')

    with pytest.raises(CommandRefused, match="altered"):
        given.read(text.encode())


MOST = canon.LARGEST_INTEGER


def nonsense(body):
    """Figures that cannot be so, each by one change."""
    first = body["causes"][0]
    reading = body["readings"][0]
    yield "jobs", {"jobs": MOST}
    yield "jobs", {"jobs": 0}
    yield "jobs", {"jobs": True}
    yield "number", {"number": -1}
    yield "first", {"first": "2026-03-14"}
    yield "file", {"vehicle": "Red van"}
    yield "causes", {"causes": body["causes"][1:]}
    for count in (MOST, -3, 0, "7", None, [1]):
        yield "causes[0].count", {"causes": [{**first, "count": count}, *body["causes"][1:]]}
    for has in ([0] * 5, [4, 4, 4, 1], [MOST, 4, 4, 1, 1], [-4, 4, 4, 1, 1], "44411"):
        yield "causes[0].has", {"causes": [{**first, "has": has}, *body["causes"][1:]]}
    one = [1, 0, 0, 0, 0]
    for weights in ([], [[one, 5]], [[one, MOST]], [[[MOST, 0, 0, 0, 0], 10**9]], [7]):
        yield "causes[0].weights", {"causes": [{**first, "weights": weights}, *body["causes"][1:]]}
    for base in ([0, 2000], [950_000], [950_000, 10**6]):
        yield "readings[0].base", {"readings": [{**reading, "base": base}]}
    for counts in ([[1, MOST, 0]], [[99, 1, 0]], [[1, 2]], 7):
        yield "readings[0].explained", {"readings": [{**reading, "explained": [[10**9, counts]]}]}
    yield "checks", {"checks": {"unit": [1, 2]}}
    yield "checks.meter_sees", {"checks": {"meter_sees": [3, 2]}}


def test_nonsense_under_a_good_seal_is_refused_with_its_place(north):
    body = json.loads(north.give())

    changed = list(nonsense(body))
    for place, more in changed:
        with pytest.raises(CommandRefused) as caught:
            given.read(north.sealed({**body, **more}).encode())
        assert f"at {place}" in str(caught.value)
    assert len(changed) > 25


def test_the_page_weighs_in_lists_and_takes_out(new_phone, db, folder, tmp_path):
    phone = new_phone("d00000000000000bb")
    north = Installation(tmp_path / "north", 40, WIRING)
    receive(db, Yard("own", 12).entries)
    asked = {"file": north.give(), "weight": "0.5"}

    first = phone.post("/api/lessons/yards", asked).get_json()
    confirmed = {"fingerprint": first["fingerprint"], "name": "North", "how": "met"}
    assert phone.post("/api/records/makers", confirmed).status_code == 200
    second = phone.post("/api/lessons/yards", asked).get_json()
    page = phone.get("/api/lessons").get_json()
    taken = page["offer"]["choices"][0]["events"][0]["data"]
    phone.entries.append(entry_after(phone.entries, phone.device, "rates_learned", taken, None))
    phone.synced()
    out = phone.post("/api/lessons/yards/out", {"fingerprint": first["fingerprint"]}).get_json()
    after = phone.get("/api/lessons").get_json()

    assert (first["outcome"], second["outcome"]) == ("unconfirmed", "new")
    assert first["fingerprint"] in first["says"]
    assert [row["words"] for row in page["yards"]["rows"]] == ["North (50 %)"]
    assert "those of other yards" in str(page)
    assert after["offer"]["taken"][0]["says"].endswith("weighed in: North (50 %).")
    assert taken["yards_x100"] == {first["fingerprint"].replace(" ", "-"): 50}
    assert out["says"].startswith("North: its 40 jobs count no more.")
    assert after["yards"]["rows"] == []
    own = phone.get("/api/lessons/yards/own")
    assert "attachment" in own.headers["Content-Disposition"]
    assert given.read(own.data).jobs == 12


def test_weights_are_read_in_hundredths():
    typed = ("1", "0.5", "0,25", "0.01", "1e-1")

    assert [weighed_in.weight_of(each) for each in typed] == [100, 50, 25, 1, 10]
