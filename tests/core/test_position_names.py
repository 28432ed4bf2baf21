"""What positions are called: ready-made ones in each language, others as a person named them."""

import pytest

from server.core.parts import sorts
from server.core.parts.drawn import positions_of
from server.core.parts.parking_sensor import PARKING_SENSOR
from server.words.files import languages
from server.words.speech import Speech
from tests.core.driver import Driver


@pytest.mark.parametrize("language", languages())
def test_each_ready_made_position_has_a_name_of_its_own(language):
    speech = Speech(language)
    for layout in sorts.all_layouts():
        said = [speech.text(layout["called"][position["id"]]) for position in layout["positions"]]
        assert len(set(said)) == len(layout["positions"])


def test_english_calls_them_as_logs_always_did():
    speech = Speech("en")
    for layout in sorts.all_layouts():
        for position in layout["positions"]:
            assert isinstance(layout["called"][position["id"]], dict)
            assert speech.text(layout["called"][position["id"]]) == position["name"]


def test_spanish_calls_them_in_spanish():
    rear, both = [each for each in sorts.all_layouts() if each["id"] in ("rear-4", "both-8")]
    speech = Speech("es")
    assert speech.text(rear["called"]["rear-right-outer"]) == "exterior derecho"
    assert speech.text(both["called"]["rear-right-outer"]) == "trasero exterior derecho"


def test_what_a_person_typed_stays_even_where_a_layout_has_the_same_words():
    drawn = [{"name": name, "group": "rear", "reach_minutes": 3, "x": 100 * n, "y": 990}
             for n, name in enumerate(("left outer", "by the hook"))]  # fmt: skip
    called = [PARKING_SENSOR.called(each) for each in positions_of(PARKING_SENSOR, drawn)]
    assert called == ["left outer", "by the hook"]


def test_the_next_job_on_a_vehicle_records_the_words_and_shows_the_names(core):
    job = Driver(core).open()
    [vehicle] = core("vehicles")
    assert vehicle["positions"] == core("layouts")[0]["positions"]
    assert vehicle["called"] == core("layouts")[0]["called"]
    again = Driver(core, device="d0000000000000fff", job="j000000000002")
    again.fact("job_opened", vehicle={"id": "v1", "name": "Blue estate", "vin": ""}, complaint="",
               layout="rear-4", part="PS-1", positions=vehicle["positions"])  # fmt: skip
    assert again.events[0]["data"]["positions"] == job.events[0]["data"]["positions"]
