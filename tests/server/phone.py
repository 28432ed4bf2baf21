"""A phone as the server sees it, the events and photos it sends, and how a refusal must look."""

import io

from PIL import Image

from server.core.log import envelope

BASE = "http://localhost:8765"
NOW = 1_790_000_000_000
JOB = "j000000000001"


class Phone:
    """A cookie jar, a CSRF token, a device and its chain."""

    def __init__(self, app, device="d00000000000000aa", base=BASE):
        self.client = app.test_client()
        self.base = base
        self.device = device
        self.csrf = ""
        self.actor = "Mara"
        self.entries = []

    def get(self, path, **options):
        return self.client.get(path, base_url=self.base, **options)

    def head(self, path):
        return self.client.head(path, base_url=self.base)

    def post(self, path, body=None, **options):
        return self.write("POST", path, json={} if body is None else body, **options)

    def put(self, path, data, **options):
        return self.write("PUT", path, data=data, **options)

    def write(self, method, path, headers=None, **options):
        headers = {"X-CSRFToken": self.csrf, **(headers or {})}
        return self.client.open(path, method=method, base_url=self.base, headers=headers, **options)

    def ask_session(self):
        session = self.get("/api/session").get_json()
        self.csrf = session["csrf"]
        self.actor = session.get("name") or self.actor
        return session

    def pair_by(self, link, name="Mara"):
        self.ask_session()
        token = link.partition("#")[2]
        return self.post("/api/pair", {"token": token, "device": self.device, "name": name})

    def record(self, kind="walk_checked", data=None, job=JOB):
        """Appends an event to this phone's chain and returns its entry."""
        entry = entry_after(self.entries, self.device, kind, data, job, actor=self.actor)
        self.entries.append(entry)
        return entry

    def sync(self, entries=None, cursor=0, **fields):
        body = {"app": "b1", "v": 1, "device": self.device, "cursor": cursor}
        body["events"] = self.entries if entries is None else entries
        return self.post("/api/sync", {**body, **fields})

    def synced(self, entries=None, cursor=0):
        """Syncs, holds the server to having taken it, and returns the answer."""
        answer = self.sync(entries, cursor)
        assert answer.status_code == 200, answer.get_data(as_text=True)
        return answer.get_json()


def entry_after(entries, device, kind="walk_checked", data=None, job=JOB, seq=None, actor="Mara"):
    """Returns the next {"event", "hash"} of a device's chain; `seq` where only its end is at hand."""
    return entry_of(
        {
            "device": device,
            "seq": seq or len(entries) + 1,
            "prev": entries[-1]["hash"] if entries else "",
            "v": 1,
            "at": NOW,
            "actor": actor,
            "job": job,
            "kind": kind,
            "data": {"positions": [], "missed": []} if data is None else data,
        }
    )


def entry_of(event):
    return {"event": event, "hash": envelope.hash_of(event)}


def job_opened():
    """Returns the data of a job on a car with two sensors."""
    positions = [
        {"id": f"rear-{side}", "name": f"Rear {side}", "group": "rear", "edge": "rear"}
        for side in ("left", "right")
    ]
    return {
        "vehicle": {"id": "v00000000000a", "name": "Grey estate", "vin": ""},
        "complaint": "Rear parking aid beeps once, then nothing",
        "layout": "own",
        "part": "SN-1",
        "positions": [{**position, "reach_minutes": 3} for position in positions],
    }


def jpeg(width=64, height=48, colour=(200, 190, 180), **options) -> bytes:
    """Returns a plain JPEG."""
    file = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(file, "JPEG", **options)
    return file.getvalue()


def assert_refused(answer, status, field):
    """Holds an answer against the one error shape and returns the inside."""
    assert answer.status_code == status, answer.get_data(as_text=True)
    assert answer.mimetype == "application/json"
    body = answer.get_json()
    assert list(body) == ["error"]
    error = body["error"]
    assert set(error) == {"field", "found", "wanted", "message"}
    assert all(isinstance(value, str) for value in error.values())
    assert error["message"]
    assert error["field"] == field
    return error
