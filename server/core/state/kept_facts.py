"""What the state keeps of a unit, a vehicle, a job: plain dicts, as they begin, and what each says itself."""


def new_unit(identity: str, part: str = "", serial: str = "") -> dict:
    """Return a unit that has no place yet; the caller puts it somewhere at once.

    `code` is its label, `also` are further ones that two phones put on it, `old_codes` the void ones.
    """
    return {
        "id": identity,
        "code": "",
        "also": [],
        "old_codes": [],
        "part": part,
        "serial": serial,
        "place": "out",
        "vehicle": None,
        "position": None,
        "job": None,
        "pulled_from": None,
        "claims": [],
        "jobs": [],
        "moves": [],
        "mixed": None,
        "lost": [],
        "returns": [],
    }


def new_vehicle(vehicle: dict) -> dict:
    """Return a vehicle; `holds` is position -> unit now, `home` position -> unit when first seen.

    Where its plate was given it has that too, as `plate`.
    """
    return {
        "id": vehicle["id"],
        "name": vehicle["name"],
        "vin": vehicle["vin"],
        "holds": {},
        "home": {},
        "jobs": [],
    }


def new_job(identity: str, data: dict, at: int) -> dict:
    """Return a job as it stands right after it was opened.

    `entries` is how many entries on it count, `phones` the last one of each phone (`apply.note_entry`); a job
    that one phone closed while another worked on is `reopened`, as {"closed", "went_on"}.
    """
    return {
        "id": identity,
        "vehicle": data["vehicle"]["id"],
        "complaint": data["complaint"],
        "layout": data["layout"],
        "part": data["part"],
        "positions": data["positions"],
        "opened_at": at,
        "cautions": {},
        "lamps": {},
        "looked": None,
        "photos": [],
        "tests": [],
        "meter": [],
        "pending": {"cleaned": [], "repaired": []},
        "repairs": [],
        "comes_and_goes": False,
        "rates": {},
        "reach": {},
        "code_weights": {},
        "money": {},
        "at_opening": [],
        "confidence_ppm": 950000,
        "move": None,
        "locked": {},
        "plugged_off": [],
        "fit_checks": {},
        "walk": None,
        "left": {},
        "stops": [],
        "closed": None,
        "reopened": None,
        "entries": 0,
        "phones": {},
        "history": [],
    }


def position_of(job: dict, identity: str) -> dict | None:
    """Return a position of the job by its id, or None."""
    for position in job["positions"]:
        if position["id"] == identity:
            return position
    return None


def is_hanging(facts: dict) -> bool:
    """Tell of a unit's facts whether it was plugged in for a test and not pushed home since."""
    return facts["place"] == "fitted" and bool(facts["moves"]) and facts["moves"][-1].get("hanging", False)
