"""The device chain: a changed byte, a gap or a second use of a number is visible."""

import copy

import pytest

from tests.core.driver import Driver


@pytest.fixture
def events(core):
    job = Driver(core).begin()
    return job.events


def test_an_untouched_chain_has_no_fault(core, events):
    assert core("chain", events=events)["fault"] is None


def test_a_changed_byte_shows_at_the_next_event(core, events):
    changed = copy.deepcopy(events)
    changed[2]["data"]["note"] = "never said"
    fault = core("chain", events=changed)["fault"]
    assert fault["index"] == 3
    assert "does not continue" in fault["reason"]


def test_a_missing_event_is_named(core, events):
    fault = core("chain", events=events[:2] + events[3:])["fault"]
    assert fault["reason"] == "events 3 to 3 are missing"


def test_a_number_used_twice_is_named(core, events):
    assert "second time" in core("chain", events=[*events[:3], events[2]])["fault"]["reason"]


def test_a_chain_may_be_checked_from_a_trusted_head(core, events):
    head = core("envelope", event=events[1])["hash"]
    assert core("chain", events=events[2:], seq=2, prev=head)["fault"] is None
    assert core("chain", events=events[2:], seq=2, prev="0" * 64)["fault"]["index"] == 0
