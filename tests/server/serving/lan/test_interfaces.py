"""Which of a machine's addresses phones are sent to, on machines of many kinds."""

import socket
from ipaddress import ip_address
from types import SimpleNamespace

import pytest

from server.refusals import CommandRefused
from server.serving.lan import network

LOOPBACK = ("lo", ["127.0.0.1", "::1"])
CABLE = ("eth0", ["192.168.1.20", "fe80::1", "fd12::20", "2001:db8:5::20"])
RADIO = ("wlan0", ["192.168.7.3"])
CONTAINERS = ("docker0", ["172.17.0.1"])
BRIDGE = ("br-5f3a", ["172.18.0.1"])
SWITCH = ("vEthernet (WSL)", ["172.29.96.1"])
TUNNEL = ("tun0", ["10.8.0.2"])
SELF_GIVEN = ("usb0", ["169.254.10.1", "fe80::2"])
PUBLIC_6 = ("eth1", ["2001:db8:7::20", "fe80::3"])


@pytest.fixture
def machine(monkeypatch):
    """Make this machine one with these interfaces, whose default route leaves from `towards`."""

    def make(*interfaces, towards=None):
        adapters = [
            SimpleNamespace(
                nice_name=name,
                ips=[SimpleNamespace(ip=text if "." in text else (text, 0, 0)) for text in addresses],
            )
            for name, addresses in interfaces
        ]
        monkeypatch.setattr(network.ifaddr, "get_adapters", lambda: adapters)
        own = ip_address(towards) if towards else None

        def own_address(family, _far_away):
            version = 4 if family == socket.AF_INET else 6
            return own if own is not None and own.version == version else None

        monkeypatch.setattr(network, "_own_address_towards", own_address)

    return make


@pytest.mark.parametrize(
    ("interfaces", "towards", "chosen"),
    [
        pytest.param([LOOPBACK, CABLE], "192.168.1.20", "eth0", id="one cable"),
        pytest.param([LOOPBACK, CABLE, RADIO], "192.168.7.3", "wlan0", id="the one to the router"),
        pytest.param([CONTAINERS, BRIDGE, SWITCH, RADIO], "192.168.7.3", "wlan0", id="bridges beside it"),
        pytest.param([TUNNEL, RADIO], "10.8.0.2", "wlan0", id="everything goes through a tunnel"),
        pytest.param([LOOPBACK, RADIO, CONTAINERS], None, "wlan0", id="a network without a router"),
        pytest.param([LOOPBACK, SELF_GIVEN, PUBLIC_6], "2001:db8:7::20", "eth1", id="public IPv6 alone"),
    ],
)
def test_the_network_of_the_phones_is_found(machine, interfaces, towards, chosen):
    machine(*interfaces, towards=towards)
    assert network.chosen_interface(None).name == chosen


def test_of_its_addresses_those_that_last_are_announced(machine):
    machine(CABLE, towards="192.168.1.20")
    assert list(map(str, network.chosen_interface(None).addresses)) == ["192.168.1.20", "fd12::20"]


@pytest.mark.parametrize("asked", ["wlan0", "192.168.7.3"])
def test_another_network_can_be_named(machine, asked):
    machine(LOOPBACK, CABLE, RADIO, towards="192.168.1.20")
    assert network.chosen_interface(asked).name == "wlan0"


@pytest.mark.parametrize(
    ("interfaces", "asked", "words"),
    [
        pytest.param([LOOPBACK, CONTAINERS, SELF_GIVEN], None, "no network address that a phone", id="none"),
        pytest.param([CABLE, RADIO], None, "in 2 networks and none leads to a router: eth0 (", id="two"),
        pytest.param(
            [CABLE, SELF_GIVEN], "usb0", "--interface usb0 is no interface", id="self-given address"
        ),
        pytest.param([CABLE], "192.168.9.9", "There are: eth0 (192.168.1.20, fd12::20)", id="another's"),
    ],
)
def test_where_no_network_can_be_chosen_it_is_said(machine, interfaces, asked, words):
    machine(*interfaces)
    with pytest.raises(CommandRefused) as refusal:
        network.chosen_interface(asked)
    assert words in str(refusal.value)
