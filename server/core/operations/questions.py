"""Small questions that need no log: canonical text, chains, numbers, layouts, a case to reason over."""

from ..codes import troublecode
from ..codes import vin as vin_numbers
from ..log import canon
from ..log import chain
from ..log import envelope
from ..parts import drawn
from ..parts import sorts
from ..plan.answer import reason


class QuestionOperations:
    """Answers from the question alone."""

    def op_canonical(self, value):
        """Return the canonical JSON of a value and its SHA-256."""
        text = canon.dumps(value)
        return {"text": text, "sha256": canon.sha256_hex(text)}

    def op_chain(self, events, seq=0, prev=""):
        """Return the first fault in one device's chain of envelopes."""
        return {"fault": chain.first_fault(events, seq, prev)}

    def op_envelope(self, event):
        """Check an envelope and return its hash."""
        envelope.check(event)
        return {"hash": envelope.hash_of(event)}

    def op_vin(self, vin):
        """Look at a vehicle identification number."""
        return vin_numbers.look(vin)

    def op_trouble_code(self, code, failure_type="", open_list=False):
        """Look at a trouble code; `open_list` says that its failure type follows the open list."""
        return troublecode.look(code, failure_type, open_list)

    def op_trouble_code_bytes(self, high, low):
        """Return the text of a two-byte trouble code."""
        return troublecode.from_bytes(high, low)

    def op_sorts(self):
        """Return the sorts of part, with the `outline` to draw on and the `layout` that a drawn one is."""
        return [
            {"id": sort.identity, "outline": sort.outline, "layout": drawn.of_job(sort)}
            for sort in sorts.SORTS
        ]

    def op_drawn_positions(self, sort, positions):
        """Return drawn positions as a job records them."""
        return drawn.positions_of(sorts.named(sort), positions)

    def op_layout_file(self, sort, model, positions):
        """Return the text of the file of a drawn layout."""
        return {"text": drawn.file_of(sorts.named(sort), model, positions)}

    def op_read_layout(self, text):
        """Return the drawn layout that a file holds."""
        return drawn.read_file(text)

    def op_reason(self, case, plan=True):
        """Reason over a case, without the next moves unless `plan`; probabilities in parts per billion."""
        return reason(case, plan=plan)
