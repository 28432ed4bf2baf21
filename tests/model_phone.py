"""A phone as the sync protocol sees it: what it keeps, what it sends, what it makes of a reply.

The protocol is the one of `static/sync/sync.js` and `static/sync/received.js`, the core is the real one. What
is in `kept` survives a crash; everything else is gone with it.
"""

import json

from server.core.host import Host
from server.core.log import canon
from server.core.log import envelope
from tests.server.phone import BASE
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.signed_phone import Key

BATCH = 3  # small, so that a few facts need several rounds


class ModelPhone:
    """One installation of the app with its paired session."""

    def __init__(self, number, client):
        """Starts with nothing recorded; `client` is its way to the server."""
        self.device = f"d{number:016x}"
        self.clock = number % 10
        self.client = client
        self.key = Key()
        self.kept = {"cursor": 0, "place": "", "installation": None, "records": {}, "proofs": {}}
        self.started_over = 0
        self.crash()

    def crash(self):
        """Loses what is not stored: the request under way, and the folded state."""
        self.asked = None
        self.reply = None
        self.host = Host()
        self.folded = []

    def record(self, kind, data, job):
        """Stores a fact at the end of this phone's chain, in one transaction."""
        mine = [
            record["entry"] for record in self._records() if record["entry"]["event"]["device"] == self.device
        ]
        entry = entry_after(mine, self.device, kind, data, job)
        entry["event"]["at"] = NOW + 10 * len(mine) + self.clock  # no two phones enter at the same moment
        entry["hash"] = envelope.hash_of(entry["event"])
        self.kept["records"][self.device, len(mine) + 1] = {"entry": entry, "n": None}

    def ask(self):
        """Begins a sync: a request with the first of what is not confirmed."""
        unsent = [self._outgoing(record["entry"]) for record in self._records() if record["n"] is None]
        if len(unsent) > BATCH:
            # A signature covers only a chain that is whole, so what others recorded goes ahead as proof.
            brought = [entry for entry in unsent if "relayed" in entry]
            for start in range(0, len(brought), BATCH):
                self.send(self._request(brought[start : start + BATCH], only_prove=True))
        self.asked = self._request(unsent[:BATCH])
        return self.asked

    def _request(self, batch, **options):
        kept = self.kept
        last = next((each for each in self._records() if each["n"] == kept["cursor"]), None)
        seen = {
            "epoch": kept["installation"] or "",
            "hash": last["entry"]["hash"] if last else "",
            "received_at": last["received_at"] if last else None,
            "signature": kept["place"],
        }
        body = {"app": "b", "v": 1, "device": self.device, "cursor": kept["cursor"], "seen": seen}
        return json.dumps({**body, **self._proofs(batch), **options, "events": batch})

    def _proofs(self, batch):
        """Returns the proofs of a batch: its own last entry signed, of others what is kept."""
        devices = {entry["event"]["device"] for entry in batch} - {self.device}
        known = [self.kept["proofs"].get(device, {}) for device in sorted(devices)]
        own = [entry for entry in batch if entry["event"]["device"] == self.device]
        seq, digest = (own[-1]["event"]["seq"], own[-1]["hash"]) if own else (0, "")
        return {
            "key": self.key.public,
            "certificates": [each["certificate"] for each in known if "certificate" in each],
            "signed_heads": [
                self.key.head(self.device, seq, digest),
                *(each["head"] for each in known if "head" in each),
            ],
        }

    def take(self):
        """Stores the reply and its cursor in one transaction; tells whether there is more to fetch."""
        reply, self.asked, self.reply = self.reply, None, None
        kept = self.kept
        if self._went_back(reply):
            self._start_over()
            return True
        assert reply["refused"] == []
        head = reply["heads"][self.device]
        if head["seq"]:
            assert kept["records"][self.device, head["seq"]]["entry"]["hash"] == head["hash"], "a fork"
        for received in reply["events"]:
            event = received["event"]
            assert envelope.hash_of(event) == received["hash"]
            entry = {"event": event, "hash": received["hash"]}
            known = kept["records"].get((event["device"], event["seq"]), {"entry": entry})
            assert known["entry"] == entry
            came = {"n": received["n"], "received_at": received["received_at"]}
            kept["records"][event["device"], event["seq"]] = {"entry": entry, **came}
        for certificate in reply["certificates"]:
            kept["proofs"].setdefault(certificate["device"], {})["certificate"] = certificate
        for head in reply["signed_heads"]:
            known = kept["proofs"].setdefault(head["device"], {})
            if known.get("head", head)["seq"] <= head["seq"]:
                known["head"] = head
        kept["cursor"] = reply["cursor"]
        kept["place"] = reply.get("place_signature", "")
        kept["installation"] = reply["installation"]
        return reply["more"]

    def _went_back(self, reply):
        """Tells whether the server knows less than it has confirmed, or another epoch has begun."""
        kept = self.kept
        numbered = [key for key, record in kept["records"].items() if record["n"]]
        mine = [seq for device, seq in numbered if device == self.device]
        return (
            kept["installation"] not in (None, reply["installation"])
            or reply["cursor"] < kept["cursor"]
            or max(mine, default=0) > reply["heads"][self.device]["seq"]
        )

    def _start_over(self):
        """Forgets the server's numbers: everything is sent again, and fetched again."""
        self.started_over += 1
        self.kept = {**self.kept, "cursor": 0, "place": "", "installation": None}
        for record in self.kept["records"].values():
            record["n"] = None

    def _outgoing(self, entry):
        """Returns an entry as it is sent: what another phone recorded claims no identity."""
        return entry if entry["event"]["device"] == self.device else {**entry, "relayed": True}

    def confirmed(self):
        """Returns n -> hash of everything that has the server's number."""
        return {record["n"]: record["entry"]["hash"] for record in self._records() if record["n"]}

    def unsent(self):
        """Returns how many facts have no number of the server yet."""
        return sum(record["n"] is None for record in self._records())

    def look(self):
        """Brings the core in step with what is kept, as the app does, and returns its state."""
        order = [record["entry"]["event"] for record in self._records()]
        seen = len(self.folded)
        op, events = ("add", order[seen:]) if order[:seen] == self.folded else ("reset", order)
        self.ask_core({"op": op, "events": [{"event": event} for event in events]})
        self.folded = order
        return self.ask_core({"op": "state"})

    def send(self, text):
        """Lets the server answer a request; returns the reply, or None for an error of the server."""
        session = self.client.get("/api/session", base_url=BASE).get_json()
        headers = {"X-CSRFToken": session["csrf"]}
        answer = self.client.post("/api/sync", data=text, base_url=BASE, headers=headers)
        return answer.get_json() if answer.status_code == 200 else None

    def sync_all(self, most_rounds):
        """Sends and fetches until nothing is left; every answer comes."""
        for _ in range(most_rounds):
            self.reply = self.send(self.ask())
            assert self.reply is not None
            if not self.take() and not self.unsent():
                return
        raise AssertionError(f"{self.device} does not get to the end of sending and fetching")

    def _records(self):
        """Returns everything in order: by the server's number, then what is not confirmed yet."""
        records = self.kept["records"]
        return [records[key] for key in sorted(records, key=lambda key: (records[key]["n"] or 1 << 60, key))]

    def ask_core(self, question):
        """Ask the core of this phone."""
        answer = json.loads(self.host.call(canon.dumps(question)))
        assert answer["ok"], answer
        return answer["value"]
