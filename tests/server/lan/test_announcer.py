"""When a name is announced anew: once a change has stood for two looks, and when a network comes back."""

import threading
from ipaddress import ip_address

import pytest

from server.lan import announce
from server.lan.announce import Announcer
from server.lan.network import Interface
from server.refusals import CommandRefused

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
    told, certified = [], []

    def tell(announcer, addresses):
        told.append(addresses)
        announcer._addresses = addresses

    monkeypatch.setattr(Announcer, "_announce", tell)
    monkeypatch.setattr(announce, "refuse_taken", lambda name, interface: None)
    network = Network(*found)

    with Announcer("yard.local", 8765, network, certified.append, look_seconds=0.005):
        assert network.all_seen.wait(10)

    assert told == announced
    assert certified == announced[1:]


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
