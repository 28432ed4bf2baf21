"""Files of what a phone could not send, as static/log/unsent-file.js writes them."""

import base64
import hashlib

from server.core.log import canon


def unsent_text(entries, photos=(), device="d00000000000000aa", proofs=None) -> str:
    """Return the text of a file with these entries and photos; `proofs` shows whose they are."""
    first = canon.dumps(
        {
            "app": "swaptrail",
            "device": device,
            "entries": len(entries),
            "made_at": 1_790_000_000_000,
            "photos": len(photos),
            "v": 2,
            **(proofs or {}),
        }
    )
    lines = [first, *(canon.dumps(entry) for entry in entries)]
    for photo in photos:
        coded, digest = base64.b64encode(photo).decode(), hashlib.sha256(photo).hexdigest()
        lines.append(canon.dumps({"bytes": coded, "sha256": digest}))
    lines.append(canon.dumps({"end": hashlib.sha256(first.encode()).hexdigest()}))
    return "".join(f"{line}\n" for line in lines)
