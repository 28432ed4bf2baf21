"""A phone with a key of its own, as the app is since phones sign their chains."""

from cryptography.hazmat.primitives.asymmetric.ec import ECDSA
from cryptography.hazmat.primitives.asymmetric.ec import SECP256R1
from cryptography.hazmat.primitives.asymmetric.ec import generate_private_key
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import PublicFormat

from server.core.log import canon
from tests.server.phone import Phone

ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551


class Key:
    """A P-256 key pair as a phone has one."""

    def __init__(self):
        self._private = generate_private_key(SECP256R1())
        point = self._private.public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
        self.public = point.hex()

    def sign(self, value) -> str:
        """Return the signature over a value's canonical text: r and the lower s, in hex."""
        r, s = decode_dss_signature(self._private.sign(canon.dumps(value).encode(), ECDSA(SHA256())))
        return f"{r:064x}{min(s, ORDER - s):064x}"

    def head(self, device, seq, digest) -> dict:
        """Return a signed head."""
        told = {"app": "swaptrail-head", "v": 1, "device": device, "seq": seq, "hash": digest}
        return {"device": device, "seq": seq, "hash": digest, "signature": self.sign(told)}

    def pairing(self, device, token) -> dict:
        """Return what a phone adds to its pairing."""
        told = {"app": "swaptrail-pairing", "v": 1, "device": device, "token": token}
        return {"key": self.public, "signature": self.sign(told)}


class SignedPhone(Phone):
    """Signs what it sends, and keeps the proofs that it is given."""

    def __init__(self, app, device="d00000000000000aa", key=None, **options):
        super().__init__(app, device, **options)
        self.key = key or Key()
        self.certificates = {}
        self.heads = {}

    def pair_by(self, link, name="Mara"):
        self.ask_session()
        token = link.partition("#")[2]
        body = {"token": token, "device": self.device, "name": name}
        return self.post("/api/pair", {**body, **self.key.pairing(self.device, token)})

    def signed_head(self, entries=None):
        """Return the signed end of this phone's own chain, or of what it has of it in `entries`."""
        own = [each for each in (self.entries if entries is None else entries) if self._is_mine(each)]
        seq, digest = (own[-1]["event"]["seq"], own[-1]["hash"]) if own else (0, "")
        return self.key.head(self.device, seq, digest)

    def sync(self, entries=None, cursor=0, **fields):
        sent = self.entries if entries is None else entries
        brought = {each["event"]["device"] for each in sent if isinstance(each, dict) and each.get("relayed")}
        proofs = {
            "key": self.key.public,
            "certificates": [each for name, each in sorted(self.certificates.items()) if name in brought],
            "signed_heads": [
                self.signed_head(sent),
                *(each for name, each in sorted(self.heads.items()) if name in brought),
            ],
        }
        answer = super().sync(sent, cursor, **{**proofs, **fields})
        if answer.status_code == 200:
            told = answer.get_json()
            self.certificates.update((each["device"], each) for each in told["certificates"])
            self.heads.update((each["device"], each) for each in told["signed_heads"])
        return answer

    def _is_mine(self, entry):
        return isinstance(entry, dict) and entry["event"].get("device") == self.device


def relayed(entries):
    """Return entries as one phone passes them on for another."""
    return [{"event": each["event"], "hash": each["hash"], "relayed": True} for each in entries]
