"""What a user does: each action one step, with what it changed, and refused in words."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from tercet.domain import Block, Changes, Race
from tercet.engine.judging import METHOD
from tercet.library import operations, season
from tercet.library.library import Library
from tercet.store import queries

BASE = Block(date(2026, 4, 13), date(2026, 7, 5), "Groundwork", "base", 0.9)
PEAK = Block(date(2026, 7, 6), date(2026, 8, 9), "Support", "support", 0.82)
HALF = Race(date(2026, 9, 27), "Half", 21_097.5)


@pytest.fixture
def run_id(season_library: Library) -> int:
    return season_library.call(queries.run_ids)[0]


def test_a_plan_is_put_in_place_of_the_one_before(season_library: Library) -> None:
    changes = season_library.call(operations.set_plan, [PEAK, BASE], [HALF])
    assert changes == Changes(plan=True, step="Change blocks and races")
    assert [b.name for b in season_library.call(queries.blocks)] == ["Groundwork", "Support"]
    assert [r.name for r in season_library.call(queries.races)] == ["Half"]
    season_library.call(operations.undo)
    assert len(season_library.call(queries.blocks)) == 4
    assert len(season_library.call(queries.races)) == 2


def test_a_kept_block_keeps_its_number(season_library: Library) -> None:
    before = season_library.call(queries.blocks)
    season_library.call(operations.set_plan, before[1:], [])
    assert season_library.call(queries.blocks) == before[1:]


@pytest.mark.parametrize(
    ("blocks", "words"),
    [
        (
            [PEAK, Block(date(2026, 5, 1), date(2026, 7, 6), "Long")],
            '"Long" and "Support" overlap on 2026-07-06',
        ),
        ([Block(date(2026, 5, 2), date(2026, 5, 1), "Backwards")], '"Backwards" ends before'),
    ],
)
def test_a_plan_that_cannot_be_names_its_blocks(
    season_library: Library, blocks: list[Block], words: str
) -> None:
    before = season_library.call(queries.blocks)
    with pytest.raises(ValueError, match=words):
        season_library.call(operations.set_plan, blocks, [])
    assert season_library.call(queries.blocks) == before
    assert season_library.undo_names() == (None, None)


def test_edits_of_one_note_are_one_step(season_library: Library, run_id: int) -> None:
    for text in ("w", "wi", "wind"):
        changes = season_library.call(operations.set_note, run_id, text)
    assert changes.runs and not changes.thresholds
    row = season_library.call(queries.session, run_id)
    assert row is not None and row["note"] == "wind"
    season_library.call(operations.undo)
    row = season_library.call(queries.session, run_id)
    assert row is not None and row["note"] == ""
    assert season_library.undo_names() == (None, "Edit note")


def test_notes_of_two_runs_are_two_steps(season_library: Library) -> None:
    first, second, *_ = season_library.call(queries.run_ids)
    season_library.call(operations.set_note, first, "one")
    season_library.call(operations.set_note, second, "two")
    season_library.call(operations.undo)
    row = season_library.call(queries.session, first)
    assert row is not None and row["note"] == "one"


@pytest.mark.parametrize("effort", [None, 0, 10])
def test_effort_as_said(season_library: Library, run_id: int, effort: int | None) -> None:
    season_library.call(operations.set_effort, run_id, effort)
    row = season_library.call(queries.session, run_id)
    assert row is not None and row["effort"] == effort


@pytest.mark.parametrize("effort", [-1, 11])
def test_an_effort_off_the_scale_is_refused(
    season_library: Library, run_id: int, effort: int
) -> None:
    # CR-10: Foster et al. 2001, J Strength Cond Res 15:109-115
    with pytest.raises(ValueError, match="from 0 to 10"):
        season_library.call(operations.set_effort, run_id, effort)


def test_a_run_called_a_walk_counts_no_more_and_again(season_library: Library, run_id: int) -> None:
    before = season_library.call(season.season, date(2026, 10, 1))
    season_library.call(operations.set_kind, [run_id], "walking", "")
    view = season_library.call(season.season, date(2026, 10, 1))
    assert view.session_count == before.session_count - 1
    assert view.other_sports == before.other_sports + 1
    assert view.blocks[0].seconds != before.blocks[0].seconds
    season_library.call(operations.set_kind, [run_id], "running", "")
    view = season_library.call(season.season, date(2026, 10, 1))
    assert [block.seconds for block in view.blocks] == [b.seconds for b in before.blocks]


def test_a_session_that_turns_out_to_be_a_run_is_judged_like_the_others(
    library: Library, season_logs: Path
) -> None:
    library.take_in([season_logs / "2026-06-27-0839.fit.gz"])  # a ride, before any thresholds
    library.take_in([season_logs / "season.toml"])
    (ride,) = [row["id"] for row in library.call(queries.sessions)]
    assert library.call(season.season, date(2026, 10, 1)).blocks[0].easy_share is None
    library.call(operations.set_kind, [ride], "running", "")
    assert not library.call(queries.judged_by_others, METHOD)
    view = library.call(season.season, date(2026, 10, 1))
    assert sum(view.blocks[0].seconds[:3]) > 1000
    library.call(operations.undo)
    assert library.call(season.season, date(2026, 10, 1)).blocks[0].easy_share is None


@pytest.mark.parametrize(
    ("act", "one", "two"),
    [
        (operations.delete_runs, "Delete session", "Delete 2 sessions"),
        (
            lambda store, ids: operations.set_kind(store, ids, "running", "trail"),
            "Change kind", "Change kind of 2 sessions",
        ),
    ],
)  # fmt: skip
def test_steps_say_how_many(season_library: Library, act: Callable, one: str, two: str) -> None:
    ids = season_library.call(queries.run_ids)
    assert season_library.call(act, ids[:1]).step == one
    assert season_library.call(act, ids[1:3]).step == two
    assert season_library.undo_names()[0] == two


def test_deleting_takes_the_files_along_and_both_of_a_pair(season_library: Library) -> None:
    (pair,) = [
        run_id
        for run_id in season_library.call(queries.run_ids)
        if season_library.call(queries.attachments, run_id)
    ]
    before = season_library.call(queries.known_files)
    season_library.call(operations.delete_runs, [pair])
    assert len(season_library.call(queries.known_files)) == len(before) - 2
    season_library.call(operations.undo)
    assert season_library.call(queries.known_files) == before


def test_deleting_what_is_gone_does_nothing(season_library: Library) -> None:
    season_library.call(operations.delete_runs, [999_999])
    assert season_library.undo_names() == (None, None)


def test_a_file_put_away_is_listed_no_more(season_library: Library) -> None:
    first, *rest = season_library.call(queries.files_to_look_at)
    season_library.call(operations.put_away, first.sha256)
    assert season_library.call(queries.files_to_look_at) == rest
    season_library.call(operations.undo)
    assert len(season_library.call(queries.files_to_look_at)) == len(rest) + 1


def test_undo_says_what_changed(season_library: Library, run_id: int) -> None:
    season_library.call(operations.set_setting, "zone", "Asia/Kathmandu")
    season_library.call(operations.set_plan, [], [])
    season_library.call(operations.delete_runs, [run_id])
    undone = [season_library.call(operations.undo) for _ in range(4)]
    assert undone == [
        Changes(runs=True, files=True, step="Delete session"),
        Changes(plan=True, step="Change blocks and races"),
        Changes(settings=True, step="Change zone"),
        None,
    ]
    redone = [season_library.call(operations.redo) for _ in range(4)]
    assert redone == [*undone[2::-1], None]
