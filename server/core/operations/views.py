"""What screens show of jobs, units and vehicles, and what a scan means at a step."""

from .. import rules
from ..errors import BadInput
from ..evidence import learned
from ..evidence.conclusions import Conclusions
from ..facts.corrections import target_of
from ..guide import scan
from ..messages import message
from ..parts import sorts
from ..state.job import Job
from ..state.job import known_job
from ..views import code_meanings
from ..views import job as view
from ..views import near_labels
from ..views import others
from ..views import support
from ..views.correctable import known_corrections
from ..views.correctable import may_be_put_right
from ..views.job_list import jobs_view
from ..views.job_list import list_view
from ..views.job_list import people_at_work
from ..views.kept_layouts import layouts_view
from ..views.unit import unit_view
from ..views.vehicle import vehicles_view
from ..views.vehicle_page import vehicle_page
from ..words import places
from .held import Held

_FIGURES = ("causes", "explanations", "verdict", "clear", "ignored")


class ViewOperations(Held):
    """Answers with what is drawn."""

    def op_jobs(self):
        """Return the list of jobs."""
        return jobs_view(self.fold.state)

    def op_job_list(self, text="", stands="", most=30, since=0):
        """Return `most` rows of the jobs that `text` finds and that stand so, and how many there are."""
        return list_view(self.fold.state, self._findable(), text, stands, most, since)

    def op_make_findable(self):
        """Make some of the words that a search of jobs needs; tell whether all of them are there."""
        return self._findable().make_some()

    def op_people(self):
        """Return who works on jobs that are not closed: whom a job may be handed over to."""
        return people_at_work(self.fold.state, self._findable())

    def op_layouts(self):
        """Return the layouts to open a job on: ready-made ones, and those drawn for a model of vehicle."""
        return layouts_view(self.fold.state)

    def op_vehicles(self, text="", most=0):
        """Return the vehicles that `text` finds, `most` of them where that is no 0, for a next job on one."""
        return vehicles_view(self.fold.state, self._findable(), text, most)

    def op_learned(self, layout=""):
        """Return what is recorded with the opening of a job on a layout: what the yard has taken."""
        return {"opens_with": learned.opens_with(self.fold.state, sorts.by_layout(layout))}

    def op_vehicle(self, vehicle, now=0, warranty_days=0):
        """Return the page of one vehicle; `now` and the days of warranty as the phone has them."""
        if vehicle not in self.fold.state.vehicles:
            raise BadInput("vehicle", vehicle, message("refusals-vehicle"))
        return vehicle_page(self.fold.state, vehicle, now, warranty_days)

    def op_job(self, job, plan=True):
        """Return the view of one job, reasoning included.

        Without `plan` what takes long is left out unless it is known already: then `planned` is false, there
        are no moves, and a step that hangs on them says so.
        """
        return view.job_view(self._job(job), self._reasoned(job) if plan else self._concluded(job))

    def op_others(self, job, people):
        """Say in one line what the others at a job do, {"name", "doing", "positions"} each; "" for nobody."""
        return others.told(self._job(job), people)

    def op_plan(self, job):
        """Work out the next moves of a job, so that they are known when its view is asked for."""
        self._reasoned(job)
        return True

    def op_evidence(self, job):
        """Return what carries the conclusion of a job and what else it could be, in words."""
        found = self._job(job)
        return support.in_words(found, *self.conclusions.weighed(found))

    def op_reasoned(self, job):
        """Return what the reasoning says of a job, in figures; None before its first test."""
        found = self._reasoned(job)
        if not found:
            return None
        told = {key: found[key] for key in _FIGURES}
        if told["verdict"]:
            told["verdict"] = {key: found["verdict"][key] for key in ("causes", "probability")}
        return told

    def op_beside(self, unit):
        """Return what was recorded of a unit outside any job, each entry to be put right."""
        from ..views import beside

        identity = self.fold.state.now(unit)
        if identity not in self.fold.state.units:
            raise BadInput("unit", unit, message("refusals-unit"))
        return beside.entries_view(self.fold, identity)

    def op_standing(self, job, typed):
        """Return where the pole stands at each position, and what was typed of distances: `standing`."""
        from ..guide import standing

        return standing.standing(self._job(job), typed)

    def op_code_typed(self, job, code, failure_type="", open_list=False):
        """Look at a trouble code typed on a job, and at what people said of it on earlier ones."""
        return code_meanings.look(self._job(job), code, failure_type, open_list)

    def op_entry(self, job, device, seq):
        """Return what of an entry of a job, or None, can be entered anew.

        {"kind", "data", "fields", "over"}; the last is the correction of it that stands.
        """
        from ..views import beside
        from ..views import correcting

        found = None if job is None else self._job(job)
        entry = correcting.of_history(found, device, seq) if found else beside.find(self.fold, device, seq)
        if entry is None or not may_be_put_right(entry):
            raise BadInput("seq", seq, message("refusals-entry"))

        def then() -> Job:
            earlier = self.fold.as_of("{}:{}".format(device, seq), entry)
            return known_job(earlier.state, job)

        fields = correcting.fields(found, entry, then)
        over = known_corrections(entry)
        return {"kind": entry["kind"], "data": entry["data"], "fields": fields, "over": over}

    def op_righted(self, event):
        """Return what the draft of a correction changes.

        {"refusal" or None, "sentence", "unfit", "besides"}; the last are the drafts that go with it.
        """
        from ..views import beside
        from ..views import correcting

        refusal = rules.first_refusal(self.fold, event)
        if refusal:
            told = {name: refusal[name] for name in ("rule", "title", "sentence", "do")}
            return {"refusal": told, "sentence": "", "unfit": [], "besides": []}
        if event["job"] is None:
            told = beside.changes(self.fold, event, self.conclusions.concluded)
            told["refusal"], told["besides"] = None, []
            return told
        after = self.fold.with_right(target_of(event["data"]), event["data"]["entry"])
        before, then = self._job(event["job"]), known_job(after, event["job"])
        results = self.conclusions.concluded(before), Conclusions().concluded(then)
        told = correcting.changes(before, then, *results, self.fold.find)
        told["refusal"] = None
        told["besides"] = correcting.besides(before, then, target_of(event["data"]), self.fold.find)
        return told

    def op_assumptions(self, job):
        """Return what the figures of a job rest on, and how each can be changed."""
        from ..evidence import assumptions

        return assumptions.in_words(self._job(job), self._reasoned(job))

    def op_unit(self, unit="", code="", how="tapped", base=""):
        """Return the view of one unit by id or label code; `how` it was identified, `base` of its label."""
        state = self.fold.state
        identity = state.now(unit) or state.codes.get(code, "")
        if identity not in state.units:
            raise BadInput("code" if code else "unit", code or unit, message("refusals-unit"))
        results = {job: self._concluded(job) for job in state.units[identity]["jobs"]}
        return unit_view(state, identity, results, how, base)

    def op_report(self, job):
        """Return the report of a job for the customer."""
        from ..views.report import report

        return report(self._job(job), self._concluded(job))

    def op_units(self):
        """Return every labelled unit in short."""
        state = self.fold.state
        return [
            view.unit_line(state, identity)
            for identity in sorted(state.units)
            if state.units[identity]["code"]
        ]

    def op_near_labels(self, text, job=""):
        """Return the labels that have the few characters typed, those at hand first."""
        return near_labels.near_labels(self.fold.state, text, job)

    def op_unlabelled(self):
        """Return the units that lost their label and have no other."""
        return places.without_label(self.fold.state)

    def op_scan(self, text, how, host="", job=None, expects=None):
        """Say what a scanned or typed label text means at the current step, or at `expects`."""
        state = self.fold.state
        if job is None:
            return scan.meaning(state, None, {}, text, how, host)
        wanted = expects
        if expects and expects.get("unit"):
            # Another phone may have told it apart meanwhile, or taken it back.
            wanted = dict(expects)
            wanted["unit"] = state.now(expects["unit"])
        if wanted is None or (wanted.get("unit") and wanted["unit"] not in state.units):
            wanted = view.job_view(self._job(job), self._reasoned(job))["step"]["expects"]
        return scan.meaning(state, self._job(job), wanted, text, how, host)
