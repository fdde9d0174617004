"""The runner's word: said, judged anew with it, taken back, undone."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from tercet import resources
from tercet.library import corrections, operations, season
from tercet.library.library import Library
from tercet.store import queries


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    samples = resources.samples()
    made.take_in([samples / "season.toml", samples / "2026-04-14-1843.fit"])
    yield made
    made.close()


def only(library: Library):
    (session,) = library.call(season.session_views)
    return session


def test_a_stretch_said_to_be_hard_is_hard_and_undo_gives_the_judgement_back(library) -> None:
    before = only(library)
    library.call(corrections.shade_stretch, before.id, 0.0, before.elapsed_s + 1.0, "H")
    after = only(library)
    assert after.seconds[0] == after.seconds[1] == 0.0
    assert sum(after.seconds) == pytest.approx(sum(before.seconds))
    assert after.seconds[2] == pytest.approx(sum(before.seconds[:3]) + before.seconds[4])
    detail = library.call(season.session_detail, before.id)
    assert detail.said == 1
    library.call(operations.undo)
    assert only(library) == before
    library.call(operations.redo)
    assert only(library) == after


def test_what_was_said_outlives_judging_again(library) -> None:
    run = only(library)
    library.call(corrections.shade_stretch, run.id, 60.0, 660.0, "X", "1:00 to 11:00")
    said = only(library)
    assert said.seconds[3] > run.seconds[3] + 500.0
    left_out = said.metres[3] - run.metres[3]
    assert said.distance_m == pytest.approx(run.distance_m - left_out, abs=run.metres[3] + 1.0)
    assert left_out > 1000.0
    library.judge_all_again()
    assert only(library) == said
    library.call(corrections.take_back, run.id)
    assert only(library) == run


def test_a_stretch_becomes_a_repetition(library) -> None:
    run = only(library)
    library.call(corrections.make_repetition, run.id, 300.0, 480.0)
    reps = library.call(season.session_detail, run.id).trace.repetitions
    made = next(rep for rep in reps if rep.start_s == 300.0)
    assert made.duration_s == 180.0 and 300.0 < made.distance_m < 1200.0
    assert only(library).seconds == run.seconds
    assert all(a.start_s + a.duration_s <= b.start_s for a, b in pairwise(reps))


def test_a_belts_speed_judges(library) -> None:
    run = only(library)
    library.call(corrections.set_belt_speed, run.id, 6.5, 0.0, run.elapsed_s + 1.0)
    row = library.call(queries.judgement, run.id)
    assert row["hard_s"] > run.seconds[2] + 300.0
    said = only(library)
    moved = said.elapsed_s - said.seconds[3]
    assert said.distance_m == pytest.approx(6.5 * moved, rel=0.02)


@pytest.mark.parametrize(
    ("start", "end", "letter"), [(10.0, 10.0, "E"), (-1.0, 5.0, "E"), (0.0, 5.0, "Q")]
)
def test_what_cannot_be_said_changes_nothing(library, start, end, letter) -> None:
    run = only(library)
    with pytest.raises(ValueError):
        library.call(corrections.shade_stretch, run.id, start, end, letter)
    with pytest.raises(ValueError, match="belt"):
        library.call(corrections.set_belt_speed, run.id, 20.0, 0.0, 60.0)
    assert only(library) == run and library.undo_names()[0] != "Count the run as easy"
