"""Everything that a user does to a store is undone and done again by name, row for row."""

from __future__ import annotations

import importlib
import inspect
import json
import pkgutil
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path
from threading import Event
from types import SimpleNamespace
from typing import Any

import pytest
from tests.formats.build import run_fit, run_gpx

import tercet.library
from tercet import resources
from tercet.domain import Block, Changes, Planned, Race
from tercet.formats.calendar import Entry
from tercet.formats.paper import Shorthand
from tercet.formats.table.columns import Column, Naming
from tercet.library import (
    corrections,
    figures,
    importing,
    lines,
    moments,
    naming,
    next_steps,
    operations,
    paper_keep,
    pieces,
    planning,
    record,
    record_merge,
    standing,
    suggested,
    watching,
    without_places,
)
from tercet.library.library import Library
from tercet.library.paper_log import Draft
from tercet.library.review import choices
from tercet.store import lines_queries, plan_queries, queries
from tercet.store.schema import KEYS

DAY = timedelta(days=1)
TODAY = date(2026, 11, 25)
SOON = date(2026, 12, 1)
#: What changes a store by itself, or another store, and is no action of this store's user.
BY_ITSELF = {
    "operations.undo",
    "operations.redo",
    "roster.add",  # a new store: there is nothing before it
    "intake.remember",  # the end of an import, in its step
}
#: What stands in the store and is not undone: nobody sees it.
APART = {"shared"}

Act = Callable[[Library, Any], Changes | None]


def rows(library: Library) -> dict[str, list[tuple[Any, ...]]]:
    """Every row that undo must know, by table."""
    path = library.call(lambda store: store.folder) / "tercet.db"
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as db:
        return {
            table: sorted(db.execute(f"SELECT * FROM {table}"), key=repr)
            for table in KEYS
            if table not in APART
        }


def fresh_blocks(library: Library) -> list[Block]:
    return library.call(queries.blocks)


def planned(library: Library) -> list[Planned]:
    return library.call(plan_queries.planned)


ACTS: dict[str, Act] = {}


def act(name: str) -> Callable[[Act], Act]:
    def keep(made: Act) -> Act:
        ACTS[name] = made
        return made

    return keep


def calls(name: str, function: Callable[..., Any], *given: Any) -> None:
    """An operation called with plain values, or with what a function gives of the scene."""

    def made(library: Library, scene: Any) -> Any:
        return library.call(function, *(v(scene) if callable(v) else v for v in given))

    ACTS[name] = made


def run(scene: Any) -> int:
    return scene.runs[0]


def block(k: int) -> Callable[[Any], int]:
    return lambda scene: scene.blocks[k].id


calls("corrections.shade_stretch", corrections.shade_stretch, run, 60.0, 240.0, "H")
calls("corrections.make_repetition", corrections.make_repetition, run, 300.0, 420.0)
calls("corrections.set_belt_speed", corrections.set_belt_speed, run, 3.0, 0.0, 600.0)
calls("corrections.take_back", corrections.take_back, lambda scene: scene.shaded)
calls("figures.set_meant", figures.set_meant, run, True)
calls("lines.leave", lines.leave, "lt2 old", TODAY)
calls("lines.keep_test", lines.keep_test, TODAY, "steps", {"rows": []})
calls("lines.remove_test", lines.remove_test, lambda scene: scene.test)
calls("moments.shift", moments.shift, lambda scene: scene.runs[:2], 3600.0)
calls("moments.set_zone", moments.set_zone, lambda scene: scene.runs[:2], "America/Lima")
calls("moments.by_place", moments.by_place, lambda scene: scene.placed)
calls("next_steps.plan", next_steps.plan, lambda scene: scene.answer)
calls("operations.set_plan", operations.set_plan, lambda scene: scene.blocks[1:], [])
calls("operations.set_note", operations.set_note, run, "windy")
calls("operations.set_effort", operations.set_effort, run, 7)
calls("operations.set_kind", operations.set_kind, lambda scene: scene.runs[:3], "walking", "")
calls("operations.delete_runs", operations.delete_runs, lambda scene: scene.runs[:3])
calls("operations.put_away", operations.put_away, lambda scene: scene.refused)
calls("operations.set_setting", operations.set_setting, "estimate_left", "2026-11-25")
calls("paper_keep.keep", paper_keep.keep, Draft("2026-11-20: 40 min easy\n"), TODAY)
calls(
    "paper_keep.change_words", paper_keep.change_words,
    lambda scene: scene.paper, Draft("2026-10-20: 50 min easy\n"), TODAY,
)  # fmt: skip
calls("paper_keep.set_shorthand", paper_keep.set_shorthand, Shorthand({"Q": "hard"}, "km"))
calls("pieces.join", pieces.join, lambda scene: scene.cut[0], lambda scene: scene.cut[1])
calls("pieces.cut", pieces.cut, run, 900.0)
calls("pieces.part_again", pieces.part_again, *(lambda s, k=k: s.pair[k] for k in range(3)))
calls("planning.set_block", planning.set_block, lambda s: replace(s.blocks[0], name="Early"))
calls("planning.remove_block", planning.remove_block, block(0))
calls(
    "planning.move_edge", planning.move_edge,
    block(0), block(1), lambda s: s.blocks[1].start + 7 * DAY,
)  # fmt: skip
calls(
    "planning.move_block", planning.move_block,
    block(1), lambda s: s.blocks[1].start + 7 * DAY, block(0), block(2),
)  # fmt: skip
calls("planning.split_block", planning.split_block, block(0), lambda s: s.blocks[0].start + 7 * DAY)
calls("planning.join_blocks", planning.join_blocks, block(0), block(1))
calls("planning.set_race", planning.set_race, Race(SOON, "Winter 10", 10_000.0))
calls("planning.remove_race", planning.remove_race, lambda s: s.races[0].id)
calls(
    "planning.lay_out", planning.lay_out,
    Race(date(2027, 4, 25), "Spring half", 21_097.5), SOON, TODAY, 18_000.0,
)  # fmt: skip
calls("planning.add_planned", planning.add_planned, SOON, "40 min easy")
calls("planning.edit_planned", planning.edit_planned, lambda s: s.planned.id, "8 x 200 m hard")
calls("planning.move_planned", planning.move_planned, lambda s: s.planned.id, SOON + 2 * DAY)
calls("planning.remove_planned", planning.remove_planned, lambda s: s.planned.id)
calls("planning.copy_week", planning.copy_week, lambda s: s.planned.day)
calls("planning.take_calendar", planning.take_calendar, [Entry(SOON + 3 * DAY, "30 min easy")])
calls("review.choices.keep", choices.keep, "season", choices.Choices(next_lines=("More hills",)))
calls("standing.put_away", standing.put_away, "1", SimpleNamespace(key="spacing", size=2.0))
calls("standing.bring_back", standing.bring_back, "2")
calls("standing.set_spacing", standing.set_spacing, 3)
calls("suggested.plan", suggested.plan, [Planned(SOON + 5 * DAY, "60 min easy")])
calls("watching.set_folder", watching.set_folder, "recordings")
calls("without_places.keep", without_places.keep, without_places.typed("45 7", 400.0))


@act("operations.set_thresholds")
def _(library: Library, scene: Any) -> Changes:
    entries = library.call(queries.thresholds)
    slower = [
        replace(e, id=None, values=replace(e.values, lt2_speed=e.values.lt2_speed * 0.97))
        for e in entries
        if e.values.lt2_speed
    ]
    return library.use(library.preview(slower), "Change thresholds")


@act("operations.judge_again")
def _(library: Library, scene: Any) -> Changes:
    library.call(scene.forget_a_shade)
    scene.before = rows(library)
    return library.judge_all_again()


@act("lines.read_again")
def _(library: Library, scene: Any) -> Changes:
    library.call(scene.forget_efforts)
    scene.before = rows(library)
    return lines.read_again(library, lambda _: None, Event())


@act("intake.take_in")
def _(library: Library, scene: Any) -> Changes:
    return library.take_in([resources.samples() / "2026-04-14-1843.fit"]).changes


@act("naming.name_columns")
def _(library: Library, scene: Any) -> Changes:
    columns = (("day", "day first"), ("distance", "km"), ("duration", "m:ss"))
    named = Naming("runs", tuple(Column(k, *told) for k, told in enumerate(columns)))
    return library.call(naming.name_columns, scene.table, named)


@act("naming.tell_start")
def _(library: Library, scene: Any) -> Changes:
    return library.call(naming.tell_start, scene.clockless, datetime(2026, 11, 3, 18, 0))


@act("record_merge.choose")
def _(library: Library, scene: Any) -> Changes:
    return library.call(record_merge.choose, [], scene.conflicts)


@act("record_merge.take_in")
def _(library: Library, scene: Any) -> Changes:
    return record_merge.take_in(library, scene.later).changes


@pytest.fixture(scope="module")
def undoing(_taken_in_once: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Library]:
    """One library for every action here: each leaves it as it was."""
    folder = tmp_path_factory.mktemp("undoing")
    shutil.copytree(_taken_in_once, folder / "season")
    made = Library(folder / "season")
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(importing, "FEW_FILES", 1000)
        patched.setattr("tercet.library.library.FEW_RUNS", 1000)
        yield made
    made.close()


@pytest.fixture(scope="module")
def scene(undoing: Library, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A season with something to do each action to."""
    library, call, tmp_path = undoing, undoing.call, tmp_path_factory.mktemp("scene")
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr("tests.formats.build.START_FIT", 200)
        (tmp_path / "clockless.fit").write_bytes(bytes(run_fit(900)))
    (tmp_path / "table.csv").write_text(
        "".join(f"0{d}.0{d + 1}.2024,{d}.2,{d}7:10\n" for d in range(1, 8))
    )
    (tmp_path / "placed.gpx").write_bytes(run_gpx(900))
    first = call(queries.run_ids)
    library.take_in([tmp_path / name for name in ("clockless.fit", "table.csv", "placed.gpx")])
    placed = list(set(call(queries.run_ids)) - set(first))
    other = Library(tmp_path / "other")
    archive = tmp_path / "one.zip"
    assert record.write(library, archive)
    record_merge.take_in(other, archive)
    call(operations.set_note, first[-1], "mine")
    theirs = other.call(queries.run_ids)
    other.call(operations.set_note, theirs[-1], "theirs")
    assert record.write(other, tmp_path / "two.zip")
    conflicts = record_merge.take_in(library, tmp_path / "two.zip").conflicts
    other.call(operations.set_effort, theirs[-2], 6)
    assert record.write(other, tmp_path / "later.zip")
    other.close()
    call(planning.add_planned, SOON, "20 min easy")
    known = set(call(queries.run_ids))
    call(paper_keep.keep, Draft("2026-10-20: 40 min easy\n"), TODAY)
    (paper,) = set(call(queries.run_ids)) - known
    call(lines.keep_test, TODAY, "steps", {"rows": [1]})
    call(standing.put_away, "2", SimpleNamespace(key="spacing", size=2.0))
    call(corrections.shade_stretch, first[1], 60.0, 120.0, "H")
    pair = next(
        (number, *found[0]) for number in first if (found := call(queries.attachments, number))
    )
    whole = first[2]
    known = set(call(queries.run_ids))
    call(pieces.cut, whole, 700.0)
    cut = [whole, *(set(call(queries.run_ids)) - known)]
    call(moments.set_zone, placed, "Pacific/Auckland")
    waiting = {row.name: row.sha256 for row in call(queries.files_to_look_at)}

    def forget_efforts(store: Any) -> None:
        with store.atomic("Forget"):
            row = queries.run(store, first[0])
            assert row is not None
            taken = json.loads(row["fingerprint"])
            del taken["efforts"]
            store.put("run", {"id": first[0], "fingerprint": json.dumps(taken)})

    def forget_a_shade(store: Any) -> None:
        with store.atomic("Forget"):
            store.put("judgement", {"run_id": first[0], "easy_s": 0.0})

    return SimpleNamespace(
        runs=first,
        shaded=first[1],
        placed=placed,
        cut=cut,
        pair=pair,
        paper=paper,
        test=call(lambda store: next(row.id for row in lines_queries.tests(store))),
        blocks=fresh_blocks(library),
        races=call(queries.races),
        planned=planned(library)[-1],
        answer=SimpleNamespace(
            words="Plan strides",
            lines=(
                Planned(SOON + 6 * DAY, "30 min easy"),
                replace(planned(library)[-1], notation="20 min easy, 6 x 20 s fast"),
            ),
        ),
        refused=waiting["2026-05-21-1815.fit"],
        table=waiting["table.csv"],
        clockless=waiting["clockless.fit"],
        conflicts=conflicts,
        later=tmp_path / "later.zip",
        forget_efforts=forget_efforts,
        forget_a_shade=forget_a_shade,
        before=None,
    )


def actions() -> set[str]:
    """Every function of the library that opens a step of the store, by module and name."""
    found = set()
    for module in pkgutil.walk_packages(tercet.library.__path__, "tercet.library."):
        loaded = importlib.import_module(module.name)
        for name, function in inspect.getmembers(loaded, inspect.isfunction):
            if function.__module__ == module.name and not name.startswith("_"):
                gives = str(inspect.signature(function).return_annotation)
                if "Changes" in gives or ".atomic(" in inspect.getsource(function):
                    found.add(f"{module.name.removeprefix('tercet.library.')}.{name}")
    return found


def test_no_action_is_missing_here() -> None:
    assert actions() > BY_ITSELF
    # An import of a record gives what it merged, and changes within.
    assert actions() - BY_ITSELF == set(ACTS) - {"record_merge.take_in"}


@pytest.mark.parametrize("name", ACTS)
def test_each_is_undone_and_done_again_by_its_word(name: str, undoing: Library, scene: Any) -> None:
    library = undoing
    scene.before = rows(library)
    changes = ACTS[name](library, scene)
    before, after = scene.before, rows(library)
    assert changes is not None and changes.step
    assert after != before
    assert library.undo_names()[0] == changes.step
    undone = library.call(operations.undo)
    assert undone is not None and undone.step == changes.step
    assert rows(library) == before
    assert library.undo_names()[1] == changes.step
    done = library.call(operations.redo)
    assert done is not None and rows(library) == after
    library.call(operations.undo)
