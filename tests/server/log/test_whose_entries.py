"""Whatever a phone sends, no other phone's name or role stands beside what it wrote."""

import tempfile
from contextlib import closing
from pathlib import Path

from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.long_runs import times
from tests.server.conftest import SMALL_APP
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.signed_phone import Key
from tests.server.signed_phone import SignedPhone

MARA, JO, MALLORY, FREE = ("d00000000000000a1", "d00000000000000b2", "d00000000000000c3", "d00000000000000d4")
PEOPLE = {MARA: ("Mara", "bench"), JO: ("Jo", "counter"), MALLORY: ("Mallory", "bench")}
RECEIVED = {"unit": "u000000000001", "how": "scanned", "code": "JRMMA", "part": "", "serial": "",
            "compared": "", "note": ""}  # fmt: skip
DEVICES = st.sampled_from([MARA, JO, MALLORY, FREE])
WHOSE = st.sampled_from(["own", "mallory", "other", "stolen", "none"])

# What Mallory does: writes on after somebody's chain and sends it in some way, with some proofs; or pairs
# anew under somebody's id; or an honest phone works.
FORGERY = st.fixed_dictionaries(
    {
        "device": DEVICES,
        "on": st.sampled_from(["the end", "the beginning", "beyond"]),
        "count": st.integers(1, 3),
        "relayed": st.booleans(),
        "as": DEVICES,
        "certificate": WHOSE,
        "head": WHOSE,
        "only_prove": st.booleans(),
        "key": st.booleans(),
    }
)
PAIRING = st.tuples(DEVICES, st.sampled_from(["bench", "counter"]), WHOSE)
STEPS = st.lists(st.one_of(FORGERY, PAIRING, st.sampled_from([MARA, JO])), max_size=12)


class Yard:
    """A server, two honest phones and Mallory's."""

    def __init__(self, scratch: Path):
        for name, text in SMALL_APP.items():
            (scratch / "static" / name).parent.mkdir(parents=True, exist_ok=True)
            (scratch / "static" / name).write_text(text)
        self.app = create_app(Config(scratch / "data", BASE, scratch / "static"))
        self.folder = DataFolder(scratch / "data")
        self.phones = {device: SignedPhone(self.app, device) for device in PEOPLE}
        for device, phone in self.phones.items():
            name, role = PEOPLE[device]
            assert phone.pair_by(self.link(role), name).status_code == 200
            phone.ask_session()
            phone.synced([])
        self.mallory = self.phones[MALLORY]
        self.other_key = Key()

    def link(self, role):
        with closing(self.folder.open()) as db:
            return make_link(db, BASE, now_ms(), role=role)

    def works(self, device):
        """An honest phone records something and sends all."""
        phone = self.phones[device]
        if device == JO:
            phone.record("return_received", RECEIVED, None)
        else:
            phone.record("job_opened", job_opened(), f"j{len(phone.entries):012x}")
        assert phone.synced()["refused"] == []

    def forges(self, forgery):
        """Mallory writes on after a chain that all know, and sends that."""
        device = forgery["device"]
        known = list(self.phones[device].entries) if device in self.phones else []
        if forgery["on"] == "the beginning":
            known = []
        elif forgery["on"] == "beyond":
            known.append({"hash": "ab" * 32})
        chain = list(known)
        for _ in range(forgery["count"]):
            chain.append(entry_after(chain, device, "cleaned", {"position": "rear-left", "note": "forged"}))
        sent = chain[len(known) :]
        marked = [{**entry, "relayed": True} if forgery["relayed"] else entry for entry in sent]
        last = sent[-1]["event"]["seq"], sent[-1]["hash"]
        self.mallory.sync(
            marked,
            device=forgery["as"],
            certificates=self._certificates(device, forgery["certificate"]),
            signed_heads=self._heads(device, forgery["head"], *last),
            key=self.mallory.key.public if forgery["key"] else "",
            only_prove=forgery["only_prove"],
        )

    def pairs(self, device, role, whose):
        """Mallory pairs a further phone under an id."""
        link = self.link(role)
        key = {"own": self.mallory.key, "other": self.other_key}.get(whose)
        thief = SignedPhone(self.app, device, key) if key else Phone(self.app, device)
        thief.pair_by(link, "Mallory")

    def _certificates(self, device, whose):
        held = {phone.device: phone.certificates[phone.device] for phone in self.phones.values()}
        mine = held[MALLORY]
        return {
            "own": [held[device]] if device in held else [],
            "mallory": [mine],
            "other": [{**mine, "device": device, "key": self.other_key.public}],
            "stolen": [{**held.get(device, mine), "key": mine["key"]}],
            "none": [],
        }[whose]

    def _heads(self, device, whose, seq, digest):
        true = self.phones[device].signed_head() if device in PEOPLE and device != MALLORY else None
        return {
            "own": [self.mallory.key.head(device, seq, digest)],
            "mallory": [self.mallory.key.head(MALLORY, seq, digest)],
            "other": [self.other_key.head(device, seq, digest)],
            "stolen": [{**true, "seq": seq, "hash": digest}, true] if true else [],
            "none": [],
        }[whose]


@settings(max_examples=times(25, 400))
@given(steps=STEPS)
def test_no_other_phones_name_or_role_stands_beside_what_a_phone_wrote(steps):
    with tempfile.TemporaryDirectory() as scratch:
        yard = Yard(Path(scratch))
        for step in steps:
            if isinstance(step, dict):
                yard.forges(step)
            elif isinstance(step, tuple):
                yard.pairs(*step)
            else:
                yard.works(step)
        for device in (MARA, JO):
            yard.works(device)  # whatever happened, nobody else's stands in the way
        with closing(yard.folder.open()) as db:
            log = db.conn.execute("SELECT device, hash FROM events ORDER BY n").fetchall()
            bound = db.conn.execute("SELECT device, name, role, key FROM certificates").fetchall()
        for device in (MARA, JO):
            own = [digest for each, digest in log if each == device]
            assert own == [entry["hash"] for entry in yard.phones[device].entries]
            [(_, *bound_to)] = [row for row in bound if row[0] == device]
            assert bound_to == [*PEOPLE[device], yard.phones[device].key.public]
