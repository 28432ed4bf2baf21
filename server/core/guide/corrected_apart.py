"""Which of several corrections of one entry is right, where phones off line corrected it in different ways.

A tap says it: the entry is corrected once more, and that correction knows of all of them. Where they changed
different texts of the entry, as one its plate and the other its complaint, both may be right. So it is with
the numbers that phones read off one unit: one more reading knows of all.
"""

from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..state.contradictions import NUMBERS
from ..state.job import Job
from ..state.unit import Unit
from ..words import sentences
from ..words.people import who
from ..words.people import whose_phone
from ..words.words import position_name
from ..words.words import unit_name

# What a person types, by the last name on the way to it in the data of an entry.
_TEXTS = ("complaint", "compared", "model", "name", "note", "part", "plate", "serial", "value", "vin")


def asked(of: Job | Unit, apart: dict) -> tuple:
    """Return (lines, choices) of an entry that was corrected apart, as its job has it.

    One that was recorded outside any job is told of its unit, and corrected outside any job too.
    """
    read = _read(of, apart)
    first = message("stories-corrected-first", said=read.pop(0))
    name = who(of.state, apart["event"], apart["actor"])
    lines, choices = [{"at": apart["at"], "actor": name, "words": first}], []
    for n, rival in enumerate(apart["rivals"]):
        line, words = story(of.state, rival, read[n])
        lines.append(line)
        choices.append(_choice(of, apart, words, rival["data"]))
    both = _merged(apart)
    if both:
        choices.append(_choice(of, apart, message("stories-corrected-both", count=len(read)), both))
    return lines, choices


def numbers(unit: Unit, job: str | None, apart: dict) -> tuple:
    """Return (lines, choices) of numbers that phones read off one unit, of which each differs.

    Once somebody says which is right that is noted, on the job of this id, with all else that was read.
    """
    was, differ = _texts(apart["said"]), [(name,) for name in apart["numbers"]]
    lines, choices = [], []
    if [way for way in differ if was[way]]:
        lines.append({"at": None, "actor": "", "words": message("stories-before", said=_fields(differ, was))})
    for rival in apart["rivals"]:
        line, words = story(unit.state, rival, _fields(differ, _texts(rival["data"])))
        lines.append(line)
        data = {name: rival["data"][name] if name in apart["numbers"] else unit[name] for name in NUMBERS}
        data.update(unit=unit.id, over=[each["by"] for each in apart["rivals"]])
        if data not in [each["events"][0]["data"] for each in choices]:
            choices.append({"words": words, "events": [draft("part_noted", **data)], "job": job})
    return lines, choices


def story(state, rival: dict, read) -> tuple:
    """Return (line, words of the answer) of what one phone said."""
    name = who(state, rival["by"], rival["actor"])
    phone = whose_phone(state, rival["by"], rival["actor"])
    line = {"at": rival["at"], "actor": name, "words": read}
    return line, message("stories-corrected-one", phone=phone, who=name, read=read)


def _choice(of: Job | Unit, apart: dict, words: dict, data: dict | None) -> dict:
    """Return the answer that an entry should say `data`, None that it counts for nothing."""
    device, _, seq = apart["event"].rpartition(":")
    over = [rival["by"] for rival in apart["rivals"]]
    named = {"device": device, "seq": int(seq), "reason": "slip", "over": over}
    if data is None:
        said = draft("corrected", **named)
    else:
        said = draft("put_right", entry={"kind": apart["kind"], "data": data}, **named)
    return {"words": words, "events": [said], "job": of.id if isinstance(of, Job) else None}


def _read(of: Job | Unit, apart: dict) -> list:
    """Return what the entry said at first, then what each correction says, no two alike.

    It is the sentence of the entry, or the texts that were changed where nothing else was.
    """
    data = [apart["said"]] + [rival["data"] for rival in apart["rivals"]]
    told = [_sentence(of, apart["kind"], each) for each in data]
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
        told = [told[n] if data[n] is None else _untold(of, data[n]) or told[n] for n in range(len(told))]
    return told


def _sentence(of: Job | Unit, kind: str, data: dict | None) -> dict:
    if data is None:
        return message("stories-took-back")
    if isinstance(of, Job):
        return sentences.sentence(of, kind, data)
    return sentences.sentence_beside(of, kind, data)


def _untold(of: Job | Unit, data: dict) -> dict | None:
    """Return of an entry what its sentence leaves out, None where that is nothing."""
    if isinstance(of, Job) and "silent" in data:
        places = all_of([position_name(of, each) for each in data["silent"]])
        return message("stories-silent", positions=places, count=len(data["silent"]))
    if "unit" not in data:
        return None
    return message("stories-of-unit", unit=unit_name(Unit(of.state, data["unit"])))


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
