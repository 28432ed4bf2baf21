"""What proves whose entries are, handed out with them: the newest of each phone, whatever their number."""

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from sqlite_utils import Database

from server.log import proof
from server.phones import certificates
from server.phones.certificates import Certificate
from server.phones.signing import Signer
from server.storage.migrations import migrations

DEVICES = [f"d{number:016x}" for number in range(30)]


@pytest.fixture
def yard():
    """A database in memory: all but the last phone have two certificates and three signed heads."""
    db = Database(memory=True)
    migrations.apply(db)
    signs = Signer(Ed25519PrivateKey.generate())
    for number, device in enumerate(DEVICES[:-1]):
        for since in (1, 2):
            key = f"04{number:0126x}{since:02x}"
            certificates.issue(db, signs, Certificate(device, "bench", "Mara", key, since, issuer=""))
        for seq in (1, 3, 2):
            db.conn.execute("INSERT INTO heads VALUES (?, ?, ?, ?)", [device, seq, f"{seq:064x}", "ab" * 64])
    yield db
    db.close()


def test_the_newest_of_each_phone_is_handed_out(yard):
    yard.conn.execute("UPDATE certificates SET ended_at = 5 WHERE device = ? AND since = 2", [DEVICES[1]])
    yard.conn.execute("UPDATE certificates SET ended_at = 5 WHERE device = ?", [DEVICES[2]])

    given = proof.handed_out(yard, {DEVICES[0], DEVICES[1], DEVICES[2], DEVICES[-1]})

    assert [(each["device"], each["since"]) for each in given["certificates"]] == [
        (DEVICES[0], 2),
        (DEVICES[1], 1),
    ]
    assert [(each["device"], each["seq"]) for each in given["signed_heads"]] == [
        (DEVICES[0], 3),
        (DEVICES[1], 3),
        (DEVICES[2], 3),
    ]


def test_many_phones_cost_no_more_questions_than_one(yard):
    asked = []
    yard.conn.set_trace_callback(asked.append)
    proof.handed_out(yard, DEVICES[:1])
    of_one = len(asked)
    proof.handed_out(yard, DEVICES)

    assert len(asked) == 2 * of_one
