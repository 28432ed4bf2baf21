"""What an entry names: by that entries hang together."""

_TOGETHER = ("units_mixed", "labels_printed")
_FIELDS = ("unit", "expected", "code")


def names(event: dict) -> list[str]:
    """Return what an entry (or draft) names, whatever its data is: jobs, vehicles, sensors, labels alike."""
    kind, data = event["kind"], event["data"]
    named = []
    if event.get("job"):
        named.append(event["job"])
    if not isinstance(data, dict):
        return named
    for field in _FIELDS:
        named.append(data.get(field))
    if kind in _TOGETHER:
        named.append(kind)
    if kind == "units_mixed" and isinstance(data.get("units"), list):
        named.extend(data["units"])
    elif kind == "move_started" and isinstance(data.get("fitted"), dict):
        named.extend(data["fitted"].values())
    elif kind == "job_opened" and isinstance(data.get("vehicle"), dict):
        vehicle = data["vehicle"].get("id")
        named.append(vehicle)
        if isinstance(data.get("positions"), list):
            for position in data["positions"]:
                if isinstance(position, dict):
                    named.append("{}.{}".format(vehicle, position.get("id")))
    return [name for name in named if name and isinstance(name, str)]
