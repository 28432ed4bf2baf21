"""The one door into the core: a string in, a string out, the same on the phone and on the server.

Only text crosses, because the phone's border cuts integers to 32 bits. The host keeps the folded
log; whoever calls it keeps the events. Modules that only some operations need are imported where these begin:
on a phone's first visit their files may come after all others, and until then the answer says that they lack.
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

_SEARCHES = ("job_list", "vehicles", "find")  # what is typed there is looked for as far as it is whole


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
            _hold_whole(text, asked)
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
        except ImportError:
            # Of what is imported where it is asked for; a phone may get those files after the others.
            return canon.dumps({"ok": False, "missing": {"files": True}})
        except BadInput as error:
            return canon.dumps({"ok": False, "error": error.as_dict()})


def _hold_whole(text: str, asked: dict) -> None:
    """Refuse half a character in an argument by its name, before anything is done with it.

    Drafts are refused by the rule on bounds, as a sentence for a person, and a search leaves it out.
    """
    if not ("\\ud" in text or "\\uD" in text) or asked.get("op") in ("check", "check_and_add"):
        return
    if asked.get("op") in _SEARCHES and isinstance(asked.get("text"), str):
        asked["text"] = canon.whole(asked["text"])
    where = canon.half_at(asked, "")
    if where:
        raise BadInput(where, (message("refusals-found-half-pair"),), message("refusals-whole-characters"))
