"""Which of several corrections of one entry is right, where phones off line corrected it in different ways.

A tap says it: the entry is corrected once more, and that correction knows of all of them. Where they changed
different texts of the entry, as one its plate and the other its complaint, both may be right.
"""

from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..words import sentences
from ..words.people import who
from ..words.people import whose_phone
from ..words.words import position_name
from ..words.words import unit_name

# What a person types, by the last name on the way to it in the data of an entry.
_TEXTS = ("complaint", "compared", "model", "name", "note", "part", "plate", "serial", "value", "vin")


def asked(job: Job, apart: dict) -> tuple:
    """Return (lines, choices) of an entry that was corrected apart, as the job has it."""
    read = _read(job, apart)
    first = message("stories-corrected-first", said=read.pop(0))
    name = who(job.state, apart["event"], apart["actor"])
    lines, choices = [{"at": apart["at"], "actor": name, "words": first}], []
    for n, rival in enumerate(apart["rivals"]):
        name = who(job.state, rival["by"], rival["actor"])
        lines.append({"at": rival["at"], "actor": name, "words": read[n]})
        words = message(
            "stories-corrected-one",
            phone=whose_phone(job.state, rival["by"], rival["actor"]),
            who=name,
            read=read[n],
        )
        choices.append(_choice(job, apart, words, rival["data"]))
    both = _merged(apart)
    if both:
        choices.append(_choice(job, apart, message("stories-corrected-both", count=len(read)), both))
    return lines, choices


def _choice(job: Job, apart: dict, words: dict, data: dict | None) -> dict:
    """Return the answer that an entry should say `data`, None that it counts for nothing."""
    device, _, seq = apart["event"].rpartition(":")
    of = {"device": device, "seq": int(seq), "reason": "slip", "over": [r["by"] for r in apart["rivals"]]}
    if data is None:
        said = draft("corrected", **of)
    else:
        said = draft("put_right", entry={"kind": apart["kind"], "data": data}, **of)
    return {"words": words, "events": [said], "job": job.id}


def _read(job: Job, apart: dict) -> list:
    """Return what the entry said at first, then what each correction says, no two alike.

    It is the sentence of the entry, or the texts that were changed where nothing else was.
    """
    data = [apart["said"]] + [rival["data"] for rival in apart["rivals"]]
    told = [_sentence(job, apart["kind"], each) for each in data]
    there = [each for each in data if each is not None]
    if not [each for each in there if _without_texts(each) != _without_texts(there[0])]:
        before = _texts(apart["said"])
        differ = _changed(before, [_texts(each) for each in there])
        for n in range(len(data)):
            said = data[n]
            if differ and said is not None:
                texts = _texts(said)
                told[n] = _fields(_changed(before, [texts]) or differ, texts)
    elif [n for n in range(2, len(told)) if told[n] in told[1:n]]:
        told = [told[n] if data[n] is None else _untold(job, data[n]) or told[n] for n in range(len(told))]
    return told


def _sentence(job: Job, kind: str, data: dict | None) -> dict:
    return message("stories-took-back") if data is None else sentences.sentence(job, kind, data)


def _untold(job: Job, data: dict) -> dict | None:
    """Return of an entry what its sentence leaves out, None where that is nothing."""
    if "silent" in data:
        places = all_of([position_name(job, each) for each in data["silent"]])
        return message("stories-silent", positions=places, count=len(data["silent"]))
    return message("stories-of-unit", unit=unit_name(job.unit(data["unit"]))) if "unit" in data else None


def _changed(before: dict, texts: list) -> list:
    """Return the ways to the texts that are others than before in any of these, in order."""
    ways = {way: True for each in [before] + texts for way in each}
    return [
        way for way in sorted(ways) if [each for each in texts if each.get(way, "") != before.get(way, "")]
    ]


def _fields(ways: list, texts: dict) -> dict:
    """Return some of the texts, each with what it is."""
    told = []
    for way in ways:
        field = "called" if way[0] == "positions" else way[-1]
        if texts.get(way):
            told.append(message("stories-field", field=field, value=texts[way]))
        else:
            told.append(message("stories-field-none", field=field))
    return all_of(told)


def _texts(value, way: tuple = ()) -> dict:
    """Return each text that a person typed in the data of an entry, by the names on the way to it."""
    if isinstance(value, str):
        return {way: value} if way[-1] in _TEXTS else {}
    found = {}
    if isinstance(value, dict):
        for name in value:
            found.update(_texts(value[name], way + (name,)))
    elif isinstance(value, list):
        for n, each in enumerate(value):
            found.update(_texts(each, way + (str(n),)))
    return found


def _merged(apart: dict) -> dict | None:
    """Return the data with what each correction changed.

    None where one changed nothing or more than texts, and where two changed the same one.
    """
    data = [rival["data"] for rival in apart["rivals"]]
    if [each for each in data if each is None or each == apart["said"]]:
        return None
    before, bare = _texts(apart["said"]), _without_texts(apart["said"])
    if [each for each in data if _without_texts(each) != bare]:
        return None
    merged, texts = apart["said"], [_texts(each) for each in data]
    for way in _changed(before, texts):
        changed = [each.get(way, "") for each in texts if each.get(way, "") != before.get(way, "")]
        if [each for each in changed if each != changed[0]]:
            return None
        merged = _with(merged, way, changed[0])
    return merged


def _without_texts(value):
    if isinstance(value, dict):
        return {
            name: _without_texts(value[name])
            for name in value
            if not (isinstance(value[name], str) and name in _TEXTS)
        }
    return [_without_texts(each) for each in value] if isinstance(value, list) else value


def _with(value, way: tuple, text: str):
    """Return data with a text in its place."""
    if not way:
        return text
    if isinstance(value, list):
        return [_with(each, way[1:], text) if str(n) == way[0] else each for n, each in enumerate(value)]
    changed = dict(value)
    changed[way[0]] = _with(value.get(way[0]), way[1:], text)
    return changed
