"""A record from another shop that was kept: it releases its hold, its sensor is returned like one's own."""

import pytest

from tests.core.counter_yard import BAD
from tests.core.counter_yard import DAY_MS
from tests.core.counter_yard import NOW
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.counter_yard import said
from tests.core.counter_yard import standing
from tests.hosts import Core

HOST = "north.example"
DIGEST = "ab" * 32


def weighed(core, unit=BAD, now=NOW, agrees=True, **more):
    return core("record_weighed", unit=unit, now=now, window_days=30, agrees=agrees, **more)


@pytest.fixture
def there(request):
    """The other shop's log alone, as its record holds it."""
    core = Core()
    job = proven(core, serial="S-100")
    return core, job.labels[BAD]


class Here(Clerk):
    """A clerk who has a sensor with that shop's label in hand."""

    def __init__(self, core, code):
        super().__init__(core)
        self.text = f"HTTPS://{HOST.upper()}/U/{code}"
        first = self.look()
        assert (first["proposed"], standing(first, "label")) == ("hold", "hold")
        self.decide(first, "hold")

    def look(self, **read):
        return self.ask(self.text, read=read, host="yard.example")

    def keep(self, evidence):
        data = {"unit": self.look()["unit"], "maker": "North yard", "fingerprint": "aa bb", "file": DIGEST}
        self.record({"kind": "record_received", "data": {**data, **evidence}})


def test_a_whole_record_says_what_it_proves(core):
    proven(core, serial="S-100")
    assert weighed(core) == {
        "part": "PS-1",
        "serial": "S-100",
        "passes": ["place", "serial", "verdict", "custody", "photos", "before", "record", "job", "window"],
        "holds": [],
        "fails": [],
    }
    assert weighed(core, now=NOW + 40 * DAY_MS)["fails"] == ["window"]
    assert weighed(core, agrees=False)["holds"] == ["record"]


def test_a_kept_record_releases_the_hold_and_the_part_in_hand_is_held_against_it(core, there):
    other, code = there
    here = Here(core, code)
    here.keep(weighed(other))
    answer = here.look(serial="S-100")
    assert (answer["proposed"], answer["against"]) == ("accept", [])
    assert "North yard" in said(answer, "evidence")
    assert said(answer, "label").endswith(
        "Its record from north.example is kept here, with the seal of North yard."
    )
    assert (here.look(serial="S-7")["proposed"], standing(here.look(serial="S-7"), "part")) == (
        "refuse",
        "fail",
    )
    assert (here.look()["proposed"], standing(here.look(), "part")) == ("hold", "hold")
    here.decide(answer)
    assert here.look(serial="S-100")["headline"] == "Accepted before"


def test_nobody_compared_by_eye_what_has_no_picture_in_its_record_either(core):
    """A tap on 'It is the same part' told that pictures had been compared, where that record has none."""
    for photos, standing_of_part in ((True, "pass"), (False, "hold")):
        other = Core()
        job = proven(other, photos=photos)
        here = Here(core if photos else Core(), job.labels[BAD])
        here.keep(weighed(other))
        answer = here.look(compared="same")
        assert (answer["pictured"], standing(answer, "part")) == (photos, standing_of_part)


def test_pictures_that_a_record_names_and_its_file_lacks_are_compared_with_nothing(core):
    other = Core()
    job = proven(other)
    taken = [event["data"]["sha256"] for event in job.events if event["kind"] == "photo_taken"]
    for pictures, standing_of_part in ((taken, "pass"), ([], "hold"), (["ee" * 32], "hold")):
        here = Here(core if pictures == taken else Core(), job.labels[BAD])
        here.keep(weighed(other, pictures=pictures))
        answer = here.look(compared="same")
        assert (answer["pictured"], standing(answer, "part")) == (pictures == taken, standing_of_part)


@pytest.mark.parametrize(
    ("field", "rule", "proposed"), [("holds", "photos", "hold"), ("fails", "verdict", "refuse")]
)
def test_what_its_record_leaves_against_it_counts_here(core, there, field, rule, proposed):
    other, code = there
    here = Here(core, code)
    evidence = weighed(other)
    evidence["passes"].remove(rule)
    evidence[field].append(rule)
    here.keep(evidence)
    answer = here.look(serial="S-100")
    assert (answer["proposed"], answer["against"]) == (proposed, ["evidence"])


def test_a_record_kept_by_mistake_is_taken_back(core, there):
    other, code = there
    here = Here(core, code)
    here.keep(weighed(other))
    event = here.events[-1]
    here.record(
        {"kind": "corrected", "data": {"device": event["device"], "seq": event["seq"], "reason": "x"}}
    )
    assert (here.look(serial="S-100")["proposed"], standing(here.look(), "evidence")) == ("hold", None)
