"""The hash that tells whether a kept state is still this fold's covers what folding needs."""

from server.folded import version

FOLDING = {
    "log/canon.py",
    "log/envelope.py",
    "log/ids.py",
    "errors.py",
    "messages.py",
    "facts/amounts.py",
    "facts/apart.py",
    "facts/conflicts.py",
    "facts/fields.py",
    "facts/kind.py",
    "facts/kinds.py",
    "facts/naming.py",
    "harness/chain.py",
    "meter/copper.py",
    "meter/figure.py",
    "meter/limits.py",
    "meter/sound.py",
    "parts/declared.py",
    "parts/door_speaker.py",
    "parts/ignition_coil.py",
    "parts/layouts.py",
    "parts/parking_sensor.py",
    "parts/parking_sounder.py",
    "parts/parking_wiring.py",
    "parts/sort.py",
    "parts/sorts.py",
    "parts/wheel_sender.py",
    "state/contradictions.py",
    "codes/numbers.py",
    "codes/troublecode.py",
    "state/jobs_in_part.py",
    "state/kept_facts.py",
    "state/serials.py",
    "state/stories.py",
    "state/index.py",
    "state/state.py",
    "facts/apply.py",
    "facts/connected.py",
    "facts/corrections.py",
    "facts/fold.py",
    "facts/custody.py",
    "facts/places.py",
    "facts/several.py",
    "facts/units.py",
    "facts/evidence.py",
    "facts/measuring.py",
    "facts/job.py",
    "facts/labelling.py",
    "facts/learned.py",
    "facts/listening.py",
    "facts/looks.py",
    "facts/mixups.py",
    "facts/moves.py",
    "facts/pausing.py",
    "facts/printing.py",
    "facts/repairing.py",
    "facts/returns.py",
    "facts/roles.py",
    "facts/whose.py",
    "facts/settings.py",
    "facts/settling.py",
    "facts/sounder.py",
    "facts/partial.py",
    "state/printed.py",
}


def test_everything_that_folding_needs_is_covered_and_nothing_else():
    """A module that comes in here makes every server fold its log again at each change of it."""
    assert set(version._sources("facts", "fold")) == FOLDING
    assert all((version._CORE / name).is_file() for name in FOLDING)


def test_a_change_in_a_module_that_folding_needs_changes_the_hash(tmp_path, monkeypatch):
    before = version.fold_version()
    copy = tmp_path / "core"
    for file in version._CORE.rglob("*.py"):
        place = copy / file.relative_to(version._CORE)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(file.read_bytes())
    monkeypatch.setattr(version, "_CORE", copy)
    assert version.fold_version.__wrapped__() == before
    with (copy / "state" / "state.py").open("a") as file:
        file.write("# changed\n")

    assert version.fold_version.__wrapped__() != before
