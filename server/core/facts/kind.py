"""A kind of event: everything that is known of it, in one declaration.

From its fields follows what is validated, what must be on record, and which ids an event names.
"""

from ..errors import BadInput
from ..log import canon
from ..messages import message

# Whether an event of the kind belongs to a job.
NEEDS_JOB, MAY_HAVE_JOB, OPENS_JOB = "needs", "may have", "opens"
# Which phones record it.
BENCH, COUNTER, BOTH = "bench", "counter", "both"
# What it may be after the job was closed: not expected, so that work must have gone on; expected, but not
# recorded on a phone that knows of the closing; recorded.
REOPENS, KEPT, RECORDED = "reopens", "kept", "recorded"


class Kind:
    """One kind of event."""

    def __init__(
        self,
        name,
        *fields,
        does,
        tells,
        job=NEEDS_JOB,
        role=BENCH,
        after_closing=REOPENS,
        fits=None,
    ):
        """Declare a kind.

        `name` is in the past tense. `does(state, event, job)` folds it and never raises. `tells` is its
        sentence: a message with the names of the fields that are its arguments, each as its value is
        called, or a function `tells(names, data)`. `fits(data, job)` returns what else keeps it from
        being understood, or None.
        """
        self.name = name
        self.fields = fields
        self.does = does
        self.job = job
        self.role = role
        self.after_closing = after_closing
        self._fits = fits
        self._tells = tells
        self._told = ()
        if isinstance(tells, tuple):
            self._told = tuple([field for field in fields if field.name in tells[1:]])
        by_name = {field.name: field for field in fields}
        in_order = [by_name[name] for name in sorted(by_name)]
        self._checks = tuple(
            [(each.name, "data." + each.name, each.later, each.check) + each.length for each in in_order]
        )
        self._bounds = tuple([(each.name, "data." + each.name, each.bound) for each in in_order])
        self._naming_positions = tuple([field for field in fields if field.names_positions])
        self._naming_units = tuple([field for field in fields if field.names_units])

    def problem(self, data: dict) -> BadInput | None:
        """Return what is wrong with the form of an event's data, or None; extra fields are let through."""
        try:
            for name, path, later, check, least, most in self._checks:
                if name in data:
                    value = data[name]
                    # Most fields are texts, and right: a call for each would take most of the time.
                    if not (most and isinstance(value, str) and least <= len(value) <= most):
                        check(path, value)
                elif not later:
                    return BadInput(path, None, message("refusals-field-there"))
        except BadInput as error:
            return self._called(error)
        return None

    def out_of_bounds(self, data: dict) -> BadInput | None:
        """Return what of an event's data, well-formed, no host could show, or None; extra fields too."""
        try:
            canon.check(data, "data")
            for name, path, bound in self._bounds:
                if name in data:
                    bound(path, data[name])
        except BadInput as error:
            return self._called(error)
        return None

    def not_meant(self, data: dict) -> BadInput | None:
        """Return what of an event's data, well-formed and within bounds, nobody can mean, or None."""
        try:
            for field in self.fields:
                if field.name in data:
                    field.meant("data." + field.name, data[field.name])
        except BadInput as error:
            return self._called(error)
        return None

    def _called(self, error: BadInput) -> BadInput:
        """Return an error with the name that its field has on the screen, if it is typed on one."""
        for field in self.fields:
            if error.field == "data." + field.name:
                error.called = field.called
        return error

    def misfit(self, data: dict, job_id: str | None, job: dict | None) -> dict | None:
        """Return why well-formed data cannot be folded here, or None."""
        if job is None or self._fits or self.job == OPENS_JOB:
            why = self.misplaced(data, job_id, job)
            if why or job is None:
                return why
        for field in self._naming_positions:
            if field.name in data:
                why = field.misfit(data[field.name], job)
                if why:
                    return why
        return None

    def misplaced(self, data: dict, job_id: str | None, job: dict | None) -> dict | None:
        """Return why an event with well-formed data has no place in the job that it names, or None."""
        if self.job == OPENS_JOB:
            return None if job_id else message("refusals-no-job")
        if job is None and job_id is not None:
            return message("refusals-job-unknown")
        why = self._fits(data, job) if self._fits else None
        if why is None and job is None and self.job == NEEDS_JOB:
            return message("refusals-no-job")
        return why

    def unknown(self, data: dict, job: dict | None, units: dict) -> tuple | None:
        """Return (BadInput, sentence) for the first position or unit named that is not on record, or None."""
        if job is not None:
            for field in self._naming_positions:
                if field.name in data:
                    found = field.unknown_position(data[field.name], job)
                    if found:
                        return _as_fault(field, found)
        for field in self._naming_units:
            if field.name in data:
                found = field.unknown_unit(data[field.name], units)
                if found:
                    return _as_fault(field, found)
        return None

    def under_present_ids(self, data: dict, now) -> dict:
        """Return well-formed data with the units it names under the ids that they are on record by now."""
        changed = dict(data)
        for field in self._naming_units:
            if field.name in data:
                changed[field.name] = field.under_present_ids(data[field.name], now)
        return changed

    def names(self, data: dict) -> tuple:
        """Return (positions, units) that well-formed data names, new units as well."""
        positions, units = [], []
        for field in self._naming_positions:
            if field.name in data:
                positions.extend(field.positions(data[field.name]))
        for field in self._naming_units:
            if field.name in data:
                units.extend(field.every_unit(data[field.name]))
        return positions, units

    def sentence(self, names, data: dict) -> dict:
        """Return what an event says; `names` has the names of things on record."""
        if isinstance(self._tells, tuple):
            told = {field.name: field.told(data[field.name], names) for field in self._told}
            return message(self._tells[0], **told)
        return self._tells(names, data)


def _as_fault(field, found: tuple) -> tuple:
    place, identity, wanted, said = found
    return BadInput("data." + field.name + place, identity, wanted), said
