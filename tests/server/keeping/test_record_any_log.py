"""Whatever is on record, a record of each sensor and job can be made, is intact, and can be shown."""

import json

from hypothesis import HealthCheck
from hypothesis import example
from hypothesis import given
from hypothesis import settings

from server.core.host import Host
from server.core.record.comparison import stand_ins
from server.keeping.record.check import check
from server.keeping.record.make import make
from server.phones.signing import signer
from server.storage import DataFolder
from tests.long_runs import times
from tests.server.folded import test_folded
from tests.server.folded.test_folded import DEVICES
from tests.server.folded.test_folded import LOGS
from tests.server.folded.test_folded import OPEN
from tests.server.folded.test_folded import UNITS
from tests.server.folded.test_folded import Pair
from tests.server.folded.test_folded import empty

scratch = test_folded.scratch


def shown(found):
    """Returns what the core shows of a record that it folds by itself, and the host it did so in."""
    host = Host()

    def ask(op, **arguments):
        reply = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert reply["ok"], reply
        return reply["value"]

    record = found.record
    ask("reset", events=[{"event": event} for event in [*stand_ins(record["elsewhere"]), *found.events]])
    return ask("record", **{name: record[name] for name in ("unit", "jobs", "told", "elsewhere")})


@settings(
    max_examples=times(15, 250),
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
@given(LOGS)
@example([(DEVICES[0], "j000000000001", ("units_mixed", {"units": [UNITS[4]], "note": ""}), False)])
def test_any_log_gives_records_that_are_intact_and_can_be_shown(scratch, tmp_path_factory, drafts):
    empty(scratch)
    pair = Pair(scratch)
    pair.take(OPEN)
    pair.take(drafts)
    folder = DataFolder(tmp_path_factory.getbasetemp() / "keys-of-any-log")
    folder.prepare()
    signs = signer(folder)
    host = Host()
    host.call(json.dumps({"op": "reset", "events": [{"event": each["event"]} for each in pair.log]}))
    state = host.fold.state
    for name in [*state.jobs, *state.units]:
        made = make(scratch, folder.photos, name, signs, 1)
        found = check(made.data)
        assert (found.record["unit"] or found.record["job"]) == name
        view = shown(found)
        if made.entries == len(pair.log):
            assert view["compared"]["same"], view["compared"]
