"""The certificates and signed heads in a record: what each says is checked here, the signatures by the host.

Beside the hashes of the entries stand, for each phone that has a key, its certificate from the installation
and its signatures over ends of its chain; each covers the entries before it as far as they are in the record
without a gap. Records from before phones had keys have none of them; in some, the certificate of a phone that
was put out is missing, and its signatures prove nothing.
"""

from collections import namedtuple

from ..log import canon
from ..messages import message

CERTIFICATE_APP, HEAD_APP, VERSION = "swaptrail-certificate", "swaptrail-head", 1
_CERTIFICATE = ("app", "v", "device", "role", "name", "key", "since", "issuer", "signature")
_HEAD = ("device", "seq", "hash", "signature")
_NUMBERS = ("v", "since", "seq")

# A signature for the host to check: whose it is, over which text, and at which place it fails.
Signature = namedtuple("Signature", ("by", "key", "signature", "text", "device", "seq"))


def are_sound(certificates: list, heads: list) -> bool:
    """Tell whether these have the form of certificates and of signed heads."""
    for value, names in [(each, _CERTIFICATE) for each in certificates] + [(each, _HEAD) for each in heads]:
        if not isinstance(value, dict) or sorted(value) != sorted(names):
            return False
        for name in names:
            if not isinstance(value[name], int if name in _NUMBERS else str):
                return False
    for each in certificates:
        if each["app"] != CERTIFICATE_APP or each["v"] != VERSION:
            return False
    return True


def signatures(hashes, sealed_by_phone: str, key: str) -> list:
    """Return the signatures to check; `sealed_by_phone` is the device that sealed it with `key`, or ""."""
    found = []
    keys = {sealed_by_phone: key}
    for each in hashes.certificates:
        body = {}
        for name in _CERTIFICATE[:-1]:
            body[name] = each[name]
        keys[each["device"]] = each["key"]
        text = canon.dumps(body)
        found.append(Signature("installation", each["issuer"], each["signature"], text, each["device"], 1))
    for head in hashes.signed_heads:
        device, seq = head["device"], head["seq"]
        if device in keys:
            text = head_text(device, seq, head["hash"])
            found.append(Signature("phone", keys[device], head["signature"], text, device, seq))
    return found


def head_text(device: str, seq: int, digest: str) -> str:
    """Return what a phone signs of the end of its chain."""
    return canon.dumps({"app": HEAD_APP, "v": VERSION, "device": device, "seq": seq, "hash": digest})


def fault(hashes) -> tuple | None:
    """Return the first entry in whose place its phone signed another one, (device, seq, message), or None."""
    for head in hashes.signed_heads:
        kept = hashes.of(head["device"], head["seq"])
        if kept is not None and kept != head["hash"]:
            return head["device"], head["seq"], message("record-signed-other")
    return None


def unfitting(signature) -> tuple:
    """Return the place and the message of a signature that does not fit."""
    what = "record-bad-certificate" if signature.by == "installation" else "record-bad-signature"
    return signature.device, signature.seq, message(what)
