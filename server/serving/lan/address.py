"""Where an installation answers in its network: planned before anything is made, then fixed for good."""

from contextlib import closing
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from sqlite_utils import Database

from server.core.messages import message
from server.refusals import CommandRefused
from server.serving import base_address
from server.serving.lan import naming
from server.storage import DataFolder
from server.storage.folder import change_setting
from server.storage.folder import keep_setting
from server.storage.folder import setting

_TRUST_PORT = "trust_port"
_HIGHEST_PORT = 65535


class Planned(NamedTuple):
    """The address of the app over HTTPS, and the port of the trust page over HTTP."""

    host: str
    port: int
    trust_port: int

    @property
    def base(self) -> str:
        """The address of the app, as a browser writes it."""
        return base_address.joined("https", self.host, self.port)

    @property
    def page(self) -> str:
        """The address of the trust page under the installation's name."""
        return base_address.joined("http", self.host, self.trust_port)


def planned(data: Path, name: str | None, port: int | None, trust_port: int | None) -> Planned:
    """Returns where a data folder is to answer; refuses another place than the one that was fixed."""
    host = naming.checked_name(name) if name is not None else None
    kept, kept_trust_port = _kept(data)
    if kept is not None:
        parts = urlsplit(kept)
        if parts.scheme != "https":
            raise CommandRefused(message("serving-without-https", address=kept, folder=str(data)))
        fixed = parts.hostname or "", base_address.port_of(kept)
        if (host or fixed[0], fixed[1] if port is None else port) != fixed:
            raise CommandRefused(message("serving-stays-in-lan", address=kept))
        host, port = fixed
    host = host or naming.new_name()
    port = base_address.DEFAULT_PORT if port is None else port
    if trust_port is None:
        trust_port = _beside(port) if kept_trust_port is None else kept_trust_port
    for option, number in (("--port", port), ("--trust-port", trust_port)):
        if not 1 <= number <= _HIGHEST_PORT:
            raise CommandRefused(
                message("serving-no-port", option=option, port=str(number), most=str(_HIGHEST_PORT))
            )
    if port == trust_port:
        raise CommandRefused(message("serving-trust-port", port=str(trust_port), other=str(_beside(port))))
    return Planned(host, port, trust_port)


def _beside(port: int) -> int:
    """Returns the port of the trust page where none is asked for."""
    return port - 1 if port == _HIGHEST_PORT else port + 1


def keep(db: Database, plan: Planned) -> None:
    """Fixes the address with the first start; the port of the trust page may change."""
    if base_address.kept(db) is None:
        keep_setting(db, base_address.SETTING, plan.base)
    change_setting(db, _TRUST_PORT, str(plan.trust_port))


def _kept(data: Path) -> tuple[str | None, int | None]:
    folder = DataFolder(data)
    if not folder.database.is_file():
        return None, None
    with closing(folder.open()) as db:
        port = setting(db, _TRUST_PORT)
        return base_address.kept(db), int(port) if port else None
