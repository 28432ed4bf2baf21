"""A small yard: two customers' jobs on one log, a sensor that went from one to the other, photos."""

import hashlib
from contextlib import closing
from pathlib import Path

from server.core.codes import labels
from server.log import events
from server.photos import store as photo_store
from server.storage import DataFolder
from tests.server.phone import NOW
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.phone import jpeg

MARA, IVO = "d00000000000000aa", "d00000000000000bb"
OTHERS_JOB, JOB = "j00000000000b", "j00000000000a"
OTHERS_CAR, CAR = "v00000000000b", "v00000000000a"
BAD, GOOD = f"{CAR}.rear-left", f"{CAR}.rear-right"
SPARE = f"{OTHERS_CAR}.rear-left"
SHELF = "u000000000001"
CODES = labels.codes_from([(index * 89 + 13) % 256 for index in range(900)], 6)
BAD_CODE, SPARE_CODE, SHELF_CODE = CODES[:3]
SECRET = "Complaint of another customer"
PHOTOS = {"unit": jpeg(), "others": jpeg(colour=(10, 20, 30)), "screen": jpeg(colour=(90, 20, 30))}


def digest(name: str) -> str:
    return hashlib.sha256(PHOTOS[name]).hexdigest()


class Yard:
    """A data folder that is filled fact by fact."""

    def __init__(self, root: Path):
        self.folder = DataFolder(root)
        self.folder.prepare()
        self.chains = {MARA: [], IVO: []}
        self.received = []

    def fact(self, kind, job=JOB, by=MARA, **data):
        entry = entry_after(self.chains[by], by, kind, data, job)
        self.chains[by].append(entry)
        self.received.append(entry)
        return entry

    def opened(self, job, vehicle, name, complaint):
        data = job_opened()
        data.update(vehicle={"id": vehicle, "name": name, "vin": ""}, complaint=complaint)
        self.fact("job_opened", job, **data)

    def test(self, *faulted, job=JOB):
        self.fact(
            "test_run", job, heard=True, faulted=list(faulted), silent=[], unplugged=[], codes=[],
            came_and_went=False, note="",
        )  # fmt: skip

    def photo(self, name, job=JOB, unit=""):
        self.fact(
            "photo_taken", job, sha256=digest(name), mime="image/jpeg", bytes=len(PHOTOS[name]), width=64,
            height=48, shows="unit" if unit else "screen", position="", unit=unit,
        )  # fmt: skip

    def stored(self, *photos):
        """Puts all of it into the data folder."""
        with closing(self.folder.open()) as db:
            receipt = events.receive(db, self.received, None, NOW)
            assert (receipt.stored, receipt.refused) == (len(self.received), [])
            for name in photos or PHOTOS:
                photo_store.keep(db, self.folder.photos, digest(name), PHOTOS[name], NOW)
        return self


def filled(root: Path) -> Yard:
    """Returns the whole story: the estate's bad sensor is found with a spare off another's car."""
    yard = Yard(root)
    shelf = {"unit": SHELF, "part": "SN-1", "serial": "S-1", "code": SHELF_CODE, "how": "scanned"}
    yard.fact("unit_added", None, **shelf, place="stock")
    yard.opened(OTHERS_JOB, OTHERS_CAR, "Red hatchback", SECRET)
    yard.test(job=OTHERS_JOB)
    yard.fact("unit_labelled", OTHERS_JOB, unit=SPARE, code=SPARE_CODE, how="scanned")
    yard.fact("unit_pulled", OTHERS_JOB, unit=SPARE, position="rear-left", how="scanned")
    yard.photo("others", OTHERS_JOB, unit=SPARE)
    yard.fact("unit_moved", OTHERS_JOB, unit=SPARE, place="stock", how="scanned", note="")
    yard.opened(JOB, CAR, "Grey estate", "Beeps once, then nothing")
    yard.test("rear-left")
    yard.fact("cleaned", by=IVO, position="rear-right", note="slip of the finger")
    yard.photo("screen")
    yard.fact("unit_labelled", unit=BAD, code=BAD_CODE, how="scanned")
    yard.fact("unit_pulled", unit=BAD, position="rear-left", how="scanned")
    yard.photo("unit", unit=BAD)
    yard.fact("unit_moved", unit=SPARE, place="out", how="scanned", note="")
    yard.fact("unit_fitted", unit=SPARE, position="rear-left", how="scanned", override="")
    yard.fact("corrected", None, IVO, device=IVO, seq=1, reason="wrong position")
    yard.test()
    yard.test()
    yard.fact("unit_moved", None, unit=SHELF, place="counter", how="scanned", note="not of this job")
    yard.fact("unit_moved", unit=BAD, place="stock", how="scanned", note="")
    yard.fact("job_closed", note="")
    yard.fact("unit_moved", None, unit=BAD, place="counter", how="scanned", note="")
    yard.fact("unit_moved", None, unit=SPARE, place="scrapped", how="tapped", note="later, elsewhere")
    return yard
