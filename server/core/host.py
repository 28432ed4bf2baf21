"""The one door into the core: a string in, a string out, the same on the phone and on the server.

Only text crosses, because the phone's border cuts integers to 32 bits. The host keeps the folded
log; whoever calls it keeps the events.
"""

import json

from . import rules
from .codes import labels
from .codes import maker_symbol
from .codes import troublecode
from .codes import vin as vin_numbers
from .errors import BadInput
from .errors import NotLoaded
from .evidence import assumptions
from .evidence.conclusions import Conclusions
from .facts.fold import Fold
from .facts.fold import apply
from .guide import scan
from .log import canon
from .log import chain
from .log import compact
from .log import envelope
from .parts import layouts
from .parts import sorts
from .plan.answer import reason
from .record import comparison
from .state import own_label
from .state import snapshot
from .state.job import known_job
from .state.printed import printed_codes
from .views import counter
from .views import counter_lists
from .views import job as view
from .views import support
from .views.report import report
from .views.unit import unit_view
from .views.vehicle import vehicles_view
from .words import places


class Host:
    """Answers `call(text)`; the operations are the methods named `op_...`."""

    def __init__(self):
        """Start with an empty log."""
        self.fold = Fold()
        self.coming = []  # of a log that is handed over in parts
        self.conclusions = Conclusions()

    def call(self, text: str) -> str:
        """Answer {"op": ..., arguments}; {"ok": true, "value"} or {"ok": false, "error"}."""
        try:
            try:
                asked = json.loads(text)
            except ValueError:
                raise BadInput("call", text, "JSON")
            if not isinstance(asked, dict):
                raise BadInput("call", asked, "an object")
            if "compact" in asked:
                asked.update(compact.opened(asked.pop("compact")))
            operation = getattr(self, "op_" + str(asked.pop("op", "")), None)
            if operation is None:
                raise BadInput("op", None, "the name of an operation")
            try:
                value = operation(**asked)
            except TypeError as error:
                if "argument" not in str(error):
                    raise
                raise BadInput("arguments", sorted(asked), "those of the operation")
            if isinstance(value, snapshot.Text):
                return '{"ok":true,"value":' + value.text + "}"
            return canon.dumps({"ok": True, "value": value})
        except NotLoaded as error:
            return canon.dumps({"ok": False, "missing": self._missing(error.jobs)})
        except BadInput as error:
            return canon.dumps({"ok": False, "error": error.as_dict()})

    # --- the log

    def op_reset(self, events=(), more=False, envelopes=()):
        """Fold [{"event": envelope}, ...] from nothing; with `more`, once the rest of them is there."""
        self.coming = []
        return self.op_append(events, more, envelopes)

    def op_append(self, events=(), more=False, envelopes=()):
        """Take a further part of the log that `reset` began; what was there holds until the last one.

        A phone with a long log hands over the bare `envelopes`: an object around each would stay as a hole in
        the memory of its Python, where all that is made afterwards has to look for room behind it.
        """
        self.coming.extend(_envelopes(events))
        for event in envelopes:
            envelope.check(event)
        self.coming.extend(envelopes)
        if not more:
            self.fold.reset(self.coming)
            self.coming = []
        return {"count": self.fold.count()}

    def op_add(self, events):
        """Fold more events behind the rest; returns the conflicts they brought."""
        before = len(self.fold.state.conflicts)
        self.fold.add(_envelopes(events))
        return self._brought(before)

    def op_insert(self, events, at):
        """Fold events in behind the first `at`; returns the conflicts that there are more of."""
        before = len(self.fold.state.conflicts)
        self.fold.insert(_envelopes(events), at)
        return self._brought(before)

    def op_check_and_add(self, events, envelopes):
        """Check drafts and, where no rule stands against them, fold them as these `envelopes`."""
        checked = self.op_check(events)
        if checked["refusal"]:
            return checked
        added = self.op_add(envelopes)
        added["refusal"] = None
        return added

    def _brought(self, before):
        return {"count": self.fold.count(), "conflicts": self.fold.state.conflicts[before:]}

    def op_check(self, events):
        """Say whether a rule stands against recording these drafts, one after the other."""
        if len(events) == 1:
            return {"refusal": _refused(self.fold, events[0], 0)}
        trial = self.fold.trial(events)
        for index in range(len(events)):
            found = _refused(trial, events[index], index)
            if found:
                return {"refusal": found}
            if events[index]["kind"] != "corrected":
                apply(trial.state, _provisional(events[index], index))
        return {"refusal": None}

    def op_state(self):
        """Return the whole state."""
        return self.fold.state.as_dict()

    def op_conflicts(self):
        """Return what contradicts, and what was not understood."""
        state = self.fold.state
        return {"conflicts": state.conflicts, "not_understood": state.not_understood}

    # --- what a phone keeps from one start to the next; only the phone asks for it

    def op_closed_jobs(self):
        """Return the closed jobs that are in memory."""
        return {"jobs": snapshot.closed_in_memory(self.fold.state)}

    def op_job_pieces(self, jobs):
        """Return jobs as a snapshot keeps them, each for itself."""
        return snapshot.pieces(self.fold.state, jobs)

    def op_snapshot(self, part):
        """Return a part of the state but for the closed jobs; `of` says how many parts there are."""
        return snapshot.head(self.fold, part)

    def op_restore(self, head):
        """Take the state of a snapshot in place of what there is."""
        fold = Fold()
        fold.state, fold.withdrawn, fold.before = snapshot.restored(head)
        self.fold, self.coming, self.conclusions = fold, [], Conclusions()
        return {"count": fold.count()}

    def op_load_jobs(self, jobs):
        """Take closed jobs into memory, as `job_pieces` returned them."""
        snapshot.load(self.fold.state, jobs)

    def op_unload_jobs(self, jobs, count):
        """Take closed jobs out of memory, if the log is still as long as when their pieces were made."""
        if count == self.fold.count():
            snapshot.unload(self.fold.state, jobs)

    def _missing(self, jobs):
        """Say what an answer lacks; beside a job those that its sensors were on: they come next."""
        if not jobs:
            return {"log": True}
        return {"jobs": snapshot.beside(self.fold.state, jobs)}

    # --- views

    def op_jobs(self):
        """Return the list of jobs."""
        return view.jobs_view(self.fold.state)

    def op_vehicles(self):
        """Return the vehicles on record with what a next job on one starts from."""
        return vehicles_view(self.fold.state)

    def op_job(self, job):
        """Return the view of one job, reasoning included."""
        return view.job_view(self._job(job), self._reasoned(job))

    def op_evidence(self, job):
        """Return what carries the conclusion of a job and what else it could be, in words."""
        found = self._job(job)
        return support.in_words(found, *self.conclusions.weighed(found))

    def op_reasoned(self, job):
        """Return what the reasoning says of a job, in figures; None before its first test."""
        found = self._reasoned(job)
        return (
            {key: found[key] for key in ("causes", "explanations", "verdict", "clear", "ignored")}
            if found
            else None
        )

    def op_assumptions(self, job):
        """Return what the figures of a job rest on, and how each can be changed."""
        return assumptions.in_words(self._job(job), self._reasoned(job))

    def op_unit(self, unit="", code="", how="tapped", base=""):
        """Return the view of one unit by id or label code; `how` it was identified, `base` of its label."""
        state = self.fold.state
        identity = state.now(unit) or state.codes.get(code, "")
        if identity not in state.units:
            raise BadInput("code" if code else "unit", code or unit, "a sensor that is on record")
        results = {job: self._concluded(job) for job in state.units[identity]["jobs"]}
        return unit_view(state, identity, results, how, base)

    def op_report(self, job):
        """Return the report of a job for the customer."""
        return report(self._job(job), self._concluded(job))

    def op_units(self):
        """Return every labelled unit in short."""
        state = self.fold.state
        return [
            view.unit_line(state, identity)
            for identity in sorted(state.units)
            if state.units[identity]["code"]
        ]

    def op_unlabelled(self):
        """Return the units that lost their label and have no other."""
        return places.without_label(self.fold.state)

    def op_record_told(self, unit, jobs):
        """Return what is concluded of a unit ("" for none) and of jobs, as a record carries it."""
        return comparison.told(self.op_unit(unit) if unit else None, [self.op_job(job) for job in jobs])

    def op_record_parts(self, unit="", job=""):
        """Return what this phone makes the record of a unit or of a job of, all but bytes and hashes."""
        from .record import file

        if job:
            self._job(job)
        unit = self.fold.state.now(unit)
        if not job and unit not in self.fold.state.units:
            raise BadInput("unit", unit, "a sensor that is on record")
        return file.parts(self.fold, unit, job, lambda jobs: self.op_record_told(unit, jobs))

    def op_record_room(self, sizes, text):
        """Tell which photos go into a record, by their sizes, beside so many bytes of text."""
        from .record import file

        return file.with_room(sizes, text)

    def op_record_seal(self, sizes, text):
        """Return whose seal this is and what its signature is over, or the first `fault`, after `sizes`."""
        from .record import check

        try:
            check.check_sizes(sizes)
            seal = check.opened(text)
        except check.Altered as error:
            return {"fault": list(error.place)}
        return {"fault": None, "by": seal.by, "key": seal.key, "signature": seal.signature, "text": seal.text}

    def op_record_check(self, digests, texts):
        """Return what a record holds whose signature fits, or the first `fault`, or that it is `later`."""
        from .record import check

        try:
            seal = check.opened(texts[check.SEAL])
            sound = check.check(seal, digests, texts, check.read_event)
        except check.Altered as error:
            return {"fault": list(error.place), "later": ""}
        except check.Later as error:
            return {"fault": None, "later": str(error)}
        return {
            "fault": None,
            "later": "",
            "record": sound.record,
            "events": comparison.stand_ins(sound.record["elsewhere"]) + sound.events,
            "photos": sound.photos,
        }

    def op_record(self, unit, jobs, told, elsewhere, same_core=True):
        """Return the views that a record shows, and how they compare with what it was `told` with."""
        shown = self.op_unit(unit) if unit else None
        views = [self.op_job(job) for job in jobs]
        return {
            "unit": shown,
            "where": comparison.where(shown) if shown else "",
            "jobs": views,
            "compared": comparison.compared(told, shown, views, elsewhere, same_core),
        }

    def op_scan(self, text, how, host="", job=None, expects=None):
        """Say what a scanned or typed label text means at the current step, or at `expects`."""
        state = self.fold.state
        if job is None:
            return scan.meaning(state, None, {}, text, how, host)
        wanted = expects
        if wanted is None:
            wanted = view.job_view(self._job(job), self._reasoned(job))["step"]["expects"]
        return scan.meaning(state, self._job(job), wanted, text, how, host)

    # --- the parts counter

    def op_counter(
        self, now, text="", unit="", how="scanned", host="", read=None, window_days=0, record=None
    ):
        """Propose what to do with a unit, named by its label's text or, of one that waits, by its id."""
        state = self.fold.state
        if unit:
            identity = state.now(unit)
            if identity not in state.units:
                raise BadInput("unit", unit, "a sensor that is on record")
            label = counter.label_of(state, state.units[identity])
        else:
            label = counter.read_label(state, text, host)
        if label["outcome"] != "unit":
            return label
        asked = {"how": how, "read": read, "now": now, "window_days": window_days, "record": record}
        return counter.look(state, label, asked, self._reasoned)

    def op_waiting(self):
        """Return the returns that wait for a decision."""
        return counter_lists.waiting(self.fold.state)

    def op_decided(self, start, end):
        """Return the decisions of the counter from `start` to before `end`, in milliseconds."""
        return counter_lists.decided(self.fold.state, start, end)

    def op_find(self, text):
        """Return the units that a text finds."""
        return counter_lists.find(self.fold.state, text)

    # --- small questions

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

    def op_code(self, text, host=""):
        """Parse a label text."""
        return own_label.read(self.fold.state, text, host)

    def op_maker_symbol(self, texts, host=""):
        """Say what part number and serial the symbols in view hold."""
        return maker_symbol.read(texts, host)

    def op_offer_code(self, random):
        """Return a code for writing by hand that no unit has and no printed label, from random bytes."""
        codes = labels.codes_from(random, 1, self.fold.state.codes, labels.HAND_FIRST)
        if not codes:
            raise BadInput("random", random, "more random bytes")
        return {"code": codes[0], "shown": labels.shown(codes[0])}

    def op_codes(self, random, count, taken=None):
        """Return up to `count` codes for printing."""
        return labels.codes_from(random, count, taken or [])

    # --- labels that a phone prints by itself; what only this needs is read when it is asked for

    def op_new_labels(self, random, count, device="", taken=None):
        """Return up to `count` codes that no unit has and no label here, of the share of `device`."""
        known = dict(self.fold.state.codes)
        known.update(printed_codes(self.fold.state))
        share = labels.share_of(device) if device else None
        return labels.codes_from(random, count, sorted(known) + (taken or []), share=share)

    def op_label_specimen(self, base):
        """Return the text of a label that is never issued, as long as any."""
        from .printing import drawing

        return drawing.specimen(base)

    def op_label_plan(self, options, distance, versions, base):
        """Say what comes out of a layout, or in `fault` why nothing does."""
        from .printing import drawing

        return drawing.planned(options, distance, versions, base)

    def op_label_pages(self, options, distance, versions, base, codes=None, one=False):
        """Return pages to draw: with `codes`, with specimens, or with `one` specimen."""
        from .printing import drawing

        return drawing.drawn(options, distance, versions, base, codes, one)

    def op_label_batches(self):
        """Return the batches that were printed, the newest first."""
        from .printing import batches

        return batches.listed(self.fold.state)

    def op_label_batch(self, batch):
        """Return one batch by its number, with each of its labels."""
        from .printing import batches

        found = batches.one(self.fold.state, batch)
        if found is None:
            raise BadInput("batch", batch, "the number of a batch that was printed here")
        return found

    def op_check_character(self, body):
        """Return the ISO 7064 MOD 37,36 check character of `body`."""
        return labels.check_character(body)

    def op_vin(self, vin):
        """Look at a vehicle identification number."""
        return vin_numbers.look(vin)

    def op_trouble_code(self, code, failure_type=""):
        """Look at a trouble code."""
        return troublecode.look(code, failure_type)

    def op_trouble_code_bytes(self, high, low):
        """Return the text of a two-byte trouble code."""
        return troublecode.from_bytes(high, low)

    def op_layouts(self):
        """Return the ready-made layouts."""
        return sorts.all_layouts()

    def op_own_positions(self, names, edge):
        """Return positions for own names, drawn along `edge` from left to right."""
        positions = [layouts.own_position(index, names[index], edge) for index in range(len(names))]
        layouts.check_positions(positions)
        return positions

    def op_reason(self, case):
        """Reason over a case; probabilities in parts per billion."""
        return reason(case)

    def _job(self, identity):
        if identity not in self.fold.state.jobs:
            raise BadInput("job", identity, "a job that is on record")
        return known_job(self.fold.state, identity)

    def _reasoned(self, identity):
        return self.conclusions.reasoned(self._job(identity))

    def _concluded(self, identity):
        return self.conclusions.concluded(self._job(identity))


def _envelopes(events):
    """Return the envelopes of a list of {"event": envelope}, each checked."""
    if not isinstance(events, (list, tuple)):
        raise BadInput("events", events, "a list")
    found = []
    for entry in events:
        envelope.check(entry["event"] if isinstance(entry, dict) and "event" in entry else None)
        found.append(entry["event"])
    return found


def _refused(fold, draft, index):
    found = rules.first_refusal(fold, draft)
    if found:
        found["draft"] = index
    return found


def _provisional(draft, index):
    """Return a draft as an envelope, to fold it on trial."""
    return {
        "device": "d0000000000000000",
        "seq": index + 1,
        "prev": "",
        "v": envelope.FORMAT_VERSION,
        "at": 0,
        "actor": draft.get("actor", ""),
        "job": draft.get("job"),
        "kind": draft["kind"],
        "data": draft["data"],
    }
