"""How the two hosts are compared: each question about each log is put to the phone once, and none is lost."""

import json

import pytest

from server.core.host import Host
from tests.core.driver import Driver
from tests.hosts import Core
from tests.hosts import PhoneAnswers


class Phone:
    """A phone's host in this process, which notes what it is asked and may answer otherwise."""

    def __init__(self):
        self.asked: list[dict] = []
        self.wrong_on = ""
        self._host = Host()

    def call_all(self, texts):
        return [self._call(text) for text in texts]

    def _call(self, text):
        self.asked.append(json.loads(text))
        answer = self._host.call(text)
        return answer + " " if self.asked[-1]["op"] == self.wrong_on else answer


@pytest.fixture
def phone():
    return Phone()


@pytest.fixture
def answers(phone):
    return PhoneAnswers(phone)


def count(phone, op):
    return [each["op"] for each in phone.asked].count(op)


def test_a_question_about_the_same_log_is_put_once(phone, answers):
    for _ in range(3):
        job = Driver(Core(answers)).begin()
        job.view()
        answers.compare()

    once = Phone()
    alone = PhoneAnswers(once)
    Driver(Core(alone)).begin().view()
    alone.compare()
    assert phone.asked == once.asked


def test_the_same_question_about_another_log_is_put_again(phone, answers):
    one, other = Driver(Core(answers)).open(), Driver(Core(answers)).open()
    other.test("rear-right-outer")
    for job in (one, other, one):
        job.core("state")
    answers.compare()

    assert count(phone, "state") == 2


def test_logs_that_part_are_each_told_to_the_phone(answers):
    """What a test began with and another went on from differently: the answers are those of each log."""
    begun = [Driver(Core(answers)).begin() for _ in range(3)]
    for job, faulted in zip(begun, ([], ["rear-right-outer"], ["rear-left-outer"]), strict=True):
        job.test(*faulted)
        job.view()
        answers.compare()
    for job in begun:
        job.view()
        job.core("state")
    answers.compare()


def test_a_phone_that_answers_otherwise_fails_the_test_that_asked(phone, answers):
    phone.wrong_on = "state"
    job = Driver(Core(answers)).open()
    answers.compare()
    job.core("state")

    with pytest.raises(AssertionError, match="the two hosts differ on"):
        answers.compare()


def test_after_a_phone_that_broke_off_the_next_test_tells_it_the_whole_log(phone, answers):
    job = Driver(Core(answers)).begin()
    job.view()
    broken, phone.call_all = phone.call_all, None
    with pytest.raises(TypeError):
        answers.compare()
    phone.call_all = broken

    job.core("state")
    answers.compare()
    assert count(phone, "state") == 1
