"""When a name is announced anew: once a change has stood for two looks, and when a network comes back."""

import threading
from ipaddress import ip_address

import pytest
from zeroconf import EventLoopBlocked
from zeroconf import NotRunningException
from zeroconf import ServiceNameAlreadyRegistered

from server.refusals import CommandRefused
from server.serving.lan import announce
from server.serving.lan.announce import Announcer
from server.serving.lan.network import Interface

OLD, NEW = ((ip_address(f"192.168.1.{number}"),) for number in (20, 21))


class Network:
    """What the looks find, one after the other; the last of it for good."""

    def __init__(self, *found):
        self.found = list(found)
        self.all_seen = threading.Event()

    def __call__(self):
        now = self.found[0]
        if len(self.found) > 1:
            self.found.pop(0)
        else:
            self.all_seen.set()
        if now is None:
            raise CommandRefused("no network")
        return Interface("eth0", now)


@pytest.mark.parametrize(
    ("found", "announced"),
    [
        pytest.param([OLD, OLD, OLD, OLD], [OLD], id="nothing changes"),
        pytest.param([OLD, NEW, OLD, OLD], [OLD], id="a change that did not last"),
        pytest.param([OLD, NEW, NEW, NEW, NEW], [OLD, NEW], id="a change that lasts"),
        pytest.param([OLD, None, OLD, OLD, OLD], [OLD, OLD], id="a network that came back"),
        pytest.param([OLD, None, None, NEW, NEW, NEW], [OLD, NEW], id="another network"),
    ],
)
def test_it_is_announced_anew(monkeypatch, found, announced):
    told, certified, unfit = [], [], []

    def tell(announcer, addresses):
        told.append(addresses)
        announcer._addresses = addresses
        if certified != told[1:]:
            unfit.append(addresses)

    monkeypatch.setattr(Announcer, "_announce", tell)
    monkeypatch.setattr(announce, "refuse_taken", lambda name, interface: None)
    network = Network(*found)

    with Announcer("yard.local", 8765, network, certified.append, look_seconds=0.005):
        assert network.all_seen.wait(10)

    assert told == announced
    assert certified == announced[1:]
    assert unfit == [], "a phone that comes at once would meet a certificate for the address before"


def test_a_name_that_cannot_be_told_anew_is_said_once_and_tried_again(monkeypatch, capsys):
    tries = []
    enough = threading.Event()

    def refuse(name, interface):
        tries.append(name)
        if len(tries) == 3:
            enough.set()
        raise CommandRefused("it is taken")

    monkeypatch.setattr(announce, "refuse_taken", refuse)
    monkeypatch.setattr(Announcer, "_announce", lambda *_: None)
    with Announcer("yard.local", 8765, Network(OLD, NEW), look_seconds=0.005):
        assert enough.wait(10)
    assert capsys.readouterr().err == "swaptrail: it is taken\n"


class Failing:
    """Does what it stands for, but for a few times at first."""

    def __init__(self, error, times, then):
        self.error, self.times, self.then = error, times, then

    def __call__(self, *args):
        if self.times:
            self.times -= 1
            raise self.error
        return self.then(*args)


@pytest.mark.parametrize(
    ("place", "error", "said"),
    [
        ("interface", OSError(19, "No such device"), "No such device"),
        ("asked", EventLoopBlocked(), "EventLoopBlocked"),
        ("announced", ServiceNameAlreadyRegistered(), "ServiceNameAlreadyRegistered"),
        ("silent", NotRunningException(), "NotRunningException"),
        ("changed", OSError(28, "No space left on device"), "No space left on device"),
        ("others", RuntimeError("dictionary changed"), "dictionary changed"),
    ],
)
def test_whatever_fails_is_said_once_and_the_name_is_announced_all_the_same(
    monkeypatch, capsys, place, error, said
):
    told, certified, told_anew = [], threading.Event(), threading.Event()

    def failing(here, then):
        return Failing(error, 2, then) if here == place else then

    def tell(announcer, addresses):
        told.append(addresses)
        announcer._addresses = addresses
        if addresses == NEW:
            told_anew.set()

    announcing = failing("announced", lambda *_: None)
    looks = failing("interface", Network(OLD, NEW))

    def change(addresses):
        assert addresses == NEW
        certified.set()

    monkeypatch.setattr(announce, "refuse_taken", failing("asked", lambda *_: None))
    monkeypatch.setattr(Announcer, "_announce", tell)
    monkeypatch.setattr(Announcer, "_look_for_others", lambda self: others())
    monkeypatch.setattr(Announcer, "_be_silent", lambda self: silent())
    others, silent = failing("others", lambda: None), failing("silent", lambda: None)
    announcer = Announcer("yard.local", 8765, Network(OLD), failing("changed", change), look_seconds=0.005)
    with announcer:  # the first is not to fail: the start says so by itself
        announcer._interface = looks
        monkeypatch.setattr(Announcer, "_announce", lambda self, at: (announcing(), tell(self, at)))
        assert certified.wait(10)
        assert told_anew.wait(10)

    assert told[-1] == NEW
    errors = capsys.readouterr().err.splitlines()
    assert len(errors) == 1
    assert errors[0].startswith("swaptrail: The name yard.local could not be announced in the network: ")
    assert said in errors[0]
