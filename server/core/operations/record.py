"""The record of a unit or a job as a file: what goes in, its seal, how it is checked and shown."""

from ..errors import BadInput
from ..messages import message
from .views import ViewOperations


class RecordOperations(ViewOperations):
    """Makes and reads records; what only this needs is read when it is asked for."""

    def op_record_told(self, unit, jobs):
        """Return what is concluded of a unit ("" for none) and of jobs, as a record carries it."""
        from ..record import comparison

        return comparison.told(self.op_unit(unit) if unit else None, [self.op_job(job) for job in jobs])

    def op_record_parts(self, unit="", job=""):
        """Return what this phone makes the record of a unit or of a job of, all but bytes and hashes."""
        from ..record import file

        if job:
            self._job(job)
        unit = self.fold.state.now(unit)
        if not job and unit not in self.fold.state.units:
            raise BadInput("unit", unit, message("refusals-unit"))
        return file.parts(self.fold, unit, job, lambda jobs: self.op_record_told(unit, jobs))

    def op_record_room(self, sizes, text):
        """Tell which photos of these sizes fit into a record beside so much text, and how much is over."""
        from ..record import file

        return {"fits": file.with_room(sizes, text), "over": file.over(sizes, text)}

    def op_record_seal(self, sizes, text):
        """Return whose seal this is and what its signature is over, or the first `fault`, after `sizes`."""
        from ..record import check

        try:
            check.check_sizes(sizes)
            seal = check.opened(text)
        except check.Altered as error:
            return {"fault": list(error.place)}
        return {"fault": None, "by": seal.by, "key": seal.key, "signature": seal.signature, "text": seal.text}

    def op_record_check(self, digests, texts):
        """Return what a record holds whose seal fits, or the first `fault`, or that it is `later`.

        `signatures` are for the host to check, each with its `fault`.
        """
        from ..record import check
        from ..record import comparison
        from ..record import events
        from ..record import signed

        try:
            seal = check.opened(texts[check.SEAL])
            sound = check.check(seal, digests, texts, events.read_event)
        except check.Altered as error:
            return {"fault": list(error.place), "later": ""}
        except check.Later as error:
            return {"fault": None, "later": error.message}
        return {
            "fault": None,
            "later": "",
            "record": sound.record,
            "events": comparison.stand_ins(sound.record["elsewhere"]) + sound.events,
            "photos": sound.photos,
            "smaller": sound.smaller,
            "phones": sound.phones,
            "signatures": [
                {
                    "by": each.by,
                    "key": each.key,
                    "signature": each.signature,
                    "text": each.text,
                    "fault": list(signed.unfitting(each)),
                }
                for each in sound.signatures
            ],
        }

    def op_record(self, unit, jobs, told, elsewhere, same_core=True):
        """Return the views that a record shows, and how they compare with what it was `told` with."""
        from ..record import comparison

        shown = self.op_unit(unit) if unit else None
        views = [self.op_job(job) for job in jobs]
        return {
            "unit": shown,
            "where": comparison.where(shown) if shown else "",
            "jobs": views,
            "compared": comparison.compared(told, shown, views, elsewhere, same_core),
        }
