"""A unit and what the trade asks of it: whether it is labelled, in hand, in dispute, and where it is."""

from ..parts import sorts
from ..parts.sort import Sort
from .kept_facts import is_hanging


class Unit:
    """A unit by its id, as it is on record; `job` is the job from which it is looked at, or None.

    `facts` is the plain dict that the state keeps, None for a unit that is not on record.
    """

    def __init__(self, state, identity: str, job=None):
        """Look a unit up under the id that it has by now."""
        self.state = state
        self.job = job
        self.id = state.now(identity)
        self.facts = state.units.get(self.id)

    def __getitem__(self, name: str):
        """Return a fact as the state keeps it."""
        return self.facts[name]

    @property
    def sort(self) -> Sort:
        """Its sort of part: of the job from which it is looked at, else of the last job that it was on."""
        if self.job:
            return self.job.sort
        return (self.facts and sort_on_record(self.state, self.id)) or sorts.PARKING_SENSOR

    @property
    def code(self) -> str:
        """The code of its label, "" without one."""
        return self.facts["code"]

    @property
    def part(self) -> str:
        """Its part number, "" where nobody read it."""
        return self.facts["part"]

    @property
    def position(self) -> str | None:
        """The position that it is fitted at, or None."""
        return self.facts["position"]

    @property
    def pulled_from(self) -> str | None:
        """The position that it was pulled from last, or None."""
        return self.facts["pulled_from"]

    @property
    def transfers(self) -> list[dict]:
        """What changed its custody, the first change first."""
        return self.facts["moves"]

    def is_on_record(self) -> bool:
        """Tell whether anything is known of it."""
        return self.facts is not None

    def is_labelled(self) -> bool:
        """Tell whether a label is on it."""
        return self.is_on_record() and self.facts["code"] != ""

    def is_disputed(self) -> bool:
        """Tell whether two places are on record of it."""
        return len(self.facts["claims"]) > 0

    def is_fitted(self) -> bool:
        """Tell whether it sits at a position of a vehicle."""
        return self.facts["place"] == "fitted"

    def is_fitted_on(self, vehicle: str) -> bool:
        """Tell whether it is on record and sits on a vehicle, by the vehicle's id."""
        return self.is_on_record() and self.is_fitted() and self.facts["vehicle"] == vehicle

    def is_hanging(self) -> bool:
        """Tell whether it is plugged in for a test and was not pushed home since."""
        return is_hanging(self.facts)

    def is_in_hand(self) -> bool:
        """Tell whether it was pulled or taken and put down nowhere yet, on whatever job."""
        return self.facts["place"] == "out"

    def is_in_hand_here(self) -> bool:
        """Tell whether it is in hand on the job from which it is looked at."""
        return self.is_in_hand() and self.facts["job"] == self.job.id

    def is_fitted_here(self) -> bool:
        """Tell whether it sits on the vehicle of the job from which it is looked at."""
        return self.is_fitted_on(self.job.vehicle_id)

    def is_in_stock(self) -> bool:
        """Tell whether it is a spare."""
        return self.facts["place"] == "stock"

    def vehicle(self) -> dict:
        """Return the vehicle that it is fitted on."""
        return self.state.vehicles[self.facts["vehicle"]]

    def mixup(self) -> dict | None:
        """Return the mix-up that it is a body of, while nobody knows which unit it is."""
        return self.state.mixup(self.id)


def sort_on_record(state, unit: str) -> Sort | None:
    """Return the sort of part that a unit on record is, by the last job that it was on; None without one."""
    jobs = state.units[unit]["jobs"]
    return sorts.by_layout(state.job_line(jobs[-1])["layout"]) if jobs else None
