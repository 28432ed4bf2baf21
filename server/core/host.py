"""The one door into the core: a string in, a string out, the same on the phone and on the server.

Only text crosses, because the phone's border cuts integers to 32 bits. The host keeps the folded
log; whoever calls it keeps the events.
"""

import json

from .errors import BadInput
from .errors import NotLoaded
from .log import canon
from .log import compact
from .messages import message
from .operations.counter import CounterOperations
from .operations.kept import KeptOperations
from .operations.labels import LabelOperations
from .operations.log import LogOperations
from .operations.questions import QuestionOperations
from .operations.record import RecordOperations
from .state import snapshot


class Host(
    LogOperations, KeptOperations, RecordOperations, CounterOperations, LabelOperations, QuestionOperations
):
    """Answers `call(text)`; the operations are the methods named `op_...` of what it is made of."""

    def call(self, text: str) -> str:
        """Answer {"op": ..., arguments}; {"ok": true, "value"} or {"ok": false, "error"}."""
        try:
            try:
                asked = json.loads(text)
            except ValueError:
                raise BadInput("call", text, message("refusals-json"))
            if not isinstance(asked, dict):
                raise BadInput("call", asked, message("refusals-object"))
            if "compact" in asked:
                asked.update(compact.opened(asked.pop("compact")))
            operation = getattr(self, "op_" + str(asked.pop("op", "")), None)
            if operation is None:
                raise BadInput("op", None, message("refusals-operation"))
            try:
                value = operation(**asked)
            except TypeError as error:
                if "argument" not in str(error):
                    raise
                raise BadInput("arguments", sorted(asked), message("refusals-arguments"))
            if isinstance(value, snapshot.Text):
                return '{"ok":true,"value":' + value.text + "}"
            return canon.answer({"ok": True, "value": value})
        except NotLoaded as error:
            return canon.dumps({"ok": False, "missing": self.missing(error.jobs)})
        except BadInput as error:
            return canon.dumps({"ok": False, "error": error.as_dict()})
