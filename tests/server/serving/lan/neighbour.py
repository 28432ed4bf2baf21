"""Another machine in the network, as a program of its own: it listens, asks for a name, or announces one.

python -m tests.server.serving.lan.neighbour listen            prints each answer that is heard, as JSON
python -m tests.server.serving.lan.neighbour ask NAME MS       prints the addresses of a name, as JSON
python -m tests.server.serving.lan.neighbour announce NAME IP  announces a name until it is ended
python -m tests.server.serving.lan.neighbour certificate IP PORT NAME   prints the names that a server shows
python -m tests.server.serving.lan.neighbour fetch URL         prints an answer over plain HTTP, in hex
"""

import ipaddress
import json
import socket
import ssl
import struct
import sys
import threading
import urllib.request

from cryptography import x509
from zeroconf import AddressResolver
from zeroconf import DNSAddress
from zeroconf import DNSIncoming
from zeroconf import InterfaceChoice
from zeroconf import IPVersion
from zeroconf import ServiceInfo
from zeroconf import Zeroconf

from server.serving.lan.leaf import names_of

GROUP, PORT = "224.0.0.251", 5353  # RFC 6762, 3


def listen() -> None:
    """Print name, lifetime and address of every address record that is multicast."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as heard:
        heard.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        heard.bind(("", PORT))
        anywhere = struct.pack("4s4s", socket.inet_aton(GROUP), socket.inet_aton("0.0.0.0"))
        heard.setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP, anywhere)
        print(json.dumps({"listens": True}), flush=True)
        while True:
            message = DNSIncoming(heard.recv(9000))
            for record in message.answers() if message.is_response() else ():
                found = {"name": record.name, "ttl": record.ttl, "type": record.type}
                if isinstance(record, DNSAddress):
                    found["address"] = str(ipaddress.ip_address(record.address))
                print(json.dumps(found), flush=True)


def ask(name: str, wait_ms: str) -> None:
    """Print what the network answers within so long."""
    zeroconf = Zeroconf(interfaces=InterfaceChoice.Default, ip_version=IPVersion.V4Only)
    asked = AddressResolver(f"{name}.")
    asked.request(zeroconf, int(wait_ms))
    print(json.dumps(asked.parsed_addresses()), flush=True)
    zeroconf.close()


def announce(name: str, address: str) -> None:
    """Own a name in this network."""
    zeroconf = Zeroconf(interfaces=[address], ip_version=IPVersion.V4Only)
    kind = "_http._tcp.local."
    service = ServiceInfo(
        kind, f"other.{kind}", port=80, server=f"{name}.", addresses=[socket.inet_aton(address)]
    )
    zeroconf.register_service(service)
    print(json.dumps({"announces": name}), flush=True)
    threading.Event().wait()


def certificate(address: str, port: str, name: str) -> None:
    """Print the names in the certificate that a server shows."""
    context = ssl.create_default_context()
    context.check_hostname, context.verify_mode = False, ssl.CERT_NONE
    with (
        socket.create_connection((address, int(port)), timeout=10) as raw,
        context.wrap_socket(raw, server_hostname=name) as line,
    ):
        shown = x509.load_der_x509_certificate(line.getpeercert(binary_form=True) or b"")
    print(json.dumps([str(found.value) for found in names_of(shown)]), flush=True)


def fetch(url: str) -> None:
    """Print what a plain address answers, as bytes in hex."""
    with urllib.request.urlopen(url, timeout=10) as answer:
        print(json.dumps(answer.read().hex()), flush=True)


if __name__ == "__main__":
    _, what, *rest = sys.argv
    for each in (listen, ask, announce, certificate, fetch):
        if each.__name__ == what:
            each(*rest)
