"""Label codes, and labels that a phone prints by itself."""

from ..codes import labels
from ..errors import BadInput
from ..messages import message
from ..state import own_label
from ..state.printed import printed_codes
from .held import Held


class LabelOperations(Held):
    """Draws and reads codes; what only printing or a maker's symbol needs is read when it is asked for."""

    def op_code(self, text, host=""):
        """Parse a label text."""
        return own_label.read(self.fold.state, text, host)

    def op_maker_symbol(self, texts, host=""):
        """Say what part number and serial the symbols in view hold: of several readings the one on record."""
        from ..codes import maker_symbol

        return maker_symbol.read(texts, host, self.fold.state.is_on_record)

    def op_offer_code(self, random):
        """Return a code for writing by hand that no unit has and no printed label, from random bytes."""
        codes = labels.codes_from(random, 1, self.fold.state.codes, labels.HAND_FIRST)
        if not codes:
            raise BadInput("random", random, message("refusals-random"))
        return {"code": codes[0], "shown": labels.shown(codes[0])}

    def op_codes(self, random, count, taken=None):
        """Return up to `count` codes for printing."""
        return labels.codes_from(random, count, taken or [])

    def op_new_labels(self, random, count, device="", taken=None):
        """Return up to `count` codes that no unit has and no label here, of the share of `device`."""
        known = dict(self.fold.state.codes)
        known.update(printed_codes(self.fold.state))
        share = labels.share_of(device) if device else None
        return labels.codes_from(random, count, sorted(known) + (taken or []), share=share)

    def op_label_specimen(self, base):
        """Return the text of a label that is never issued, as long as any."""
        from ..printing import drawing

        return drawing.specimen(base)

    def op_label_plan(self, options, distance, versions, base, forced=False):
        """Say what comes out of a layout, or in `fault` why nothing does."""
        from ..printing import drawing

        return drawing.planned(options, distance, versions, base, forced)

    def op_label_pages(self, options, distance, versions, base, codes=None, one=False):
        """Return pages to draw: with `codes`, with specimens, or with `one` specimen."""
        from ..printing import drawing

        return drawing.drawn(options, distance, versions, base, codes, one)

    def op_label_batches(self):
        """Return the batches that were printed, the newest first."""
        from ..printing import batches

        return batches.listed(self.fold.state)

    def op_label_batch(self, batch):
        """Return one batch by its number, with each of its labels."""
        from ..printing import batches

        found = batches.one(self.fold.state, batch)
        if found is None:
            raise BadInput("batch", batch, message("refusals-batch"))
        return found

    def op_check_character(self, body):
        """Return the ISO 7064 MOD 37,36 check character of `body`."""
        return labels.check_character(body)
