"""Random small cases for the comparison with the enumeration; the seed makes them repeatable."""


def random_case(random):
    """One case of up to five positions with everything that a case can hold."""
    size = random.randint(1, 5)
    groups = random.choice([["rear"], ["rear", "front"], [None]])
    places = [f"p{n}" for n in range(size)]
    positions = [
        {"id": place, "group": random.choice(groups), "reach_minutes": random.choice([1, 2.5, 4])}
        for place in places
    ]
    names = [f"u{n}" for n in range(size + (1 if size < 5 else 0))]
    units = [{"id": name} for name in names]
    if random.random() < 0.5:
        units[0]["prior"] = random.choice([0.5, 0.01, 0.2])
    fitted = dict(zip(places, names, strict=False))
    tests = []
    for _ in range(random.randint(1, 4)):
        tests.append(_test(random, places, names, fitted, positions))
        fitted = dict(tests[-1]["fitted"])
    case = {"positions": positions, "units": units, "tests": tests, "meter": []}
    for place in places:
        if random.random() < 0.15:
            case["meter"].append({"position": place, "reads": random.choice(["good", "bad"])})
    if random.random() < 0.4:
        done = _done(random, places, positions, 0.15)
        moved = dict(fitted)
        _exchange(random, moved, names)
        done["fitted"] = {p: moved[p] for p in moved if moved[p] != fitted.get(p)}
        case["now"] = done
    if random.random() < 0.4:
        case["rates"] = {"shows": random.choice([0.5, 0.8]), "unit": 0.1, "false_alarm": 0.01}
    case["confidence"] = random.choice([0.6, 0.8, 0.95])
    return case


def _exchange(random, fitted, names):
    """Exchange two units, or bring in one that is not fitted."""
    if not fitted:
        return
    place = random.choice(sorted(fitted))
    unit = random.choice(names)
    held = [p for p in fitted if fitted[p] == unit]
    if held:
        fitted[held[0]] = fitted[place]
    fitted[place] = unit


def _done(random, places, positions, often):
    done = {"cleaned": [p for p in places if random.random() < often], "repaired": []}
    if random.random() < often:
        done["repaired"].append("circuit:" + random.choice(places))
    if random.random() < often / 2:
        done["repaired"].append("control")
    group = random.choice(positions)["group"]
    if group is not None and random.random() < often / 2:
        done["repaired"].append("feed:" + group)
    return done


def _test(random, places, names, fitted, positions):
    fitted = dict(fitted)
    for _ in range(random.choice([0, 1, 1, 2])):
        _exchange(random, fitted, names)
    test = _done(random, places, positions, 0.12)
    test["unplugged"] = [p for p in places if random.random() < 0.06]
    test["silent"] = [p for p in places if random.random() < 0.08]
    read = [p for p in places if p not in test["silent"]]
    odds = random.choice([0.0, 0.3, 0.5])
    test["faulted"] = [p for p in read if random.random() < (0.8 if p in test["unplugged"] else odds)]
    test["fitted"] = fitted
    test["heard"] = random.random() < 0.92
    return test


def with_listening(case, random):
    """The same case with units listened at in its tests; in some, nothing but that was done."""
    tests = []
    for test in case["tests"]:
        heard = {p: random.choice(["ticks", "silent"]) for p in test["fitted"] if random.random() < 0.4}
        listen = {p: heard[p] for p in heard if p not in test["unplugged"]}
        tests.append(dict(test, listen=listen))
        if random.random() < 0.3:
            tests[-1] = dict(tests[-1], faulted=[], silent=[p["id"] for p in case["positions"]])
    rates = dict(case.get("rates", {}))
    if random.random() < 0.4:
        rates.update(tick_unit=random.choice([0.3, 0.9]), tick_feed=0.6, tick_false=0.1)
    return dict(case, tests=tests, rates=rates)
