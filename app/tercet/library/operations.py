"""One function for each thing a user does: one transaction, one undo step, and what it changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise
from typing import TYPE_CHECKING

from tercet.domain import Block, Changes, DatedThresholds, Planned, Race
from tercet.engine import check_thresholds
from tercet.language import mark, several, tr
from tercet.library.dated import in_force
from tercet.store import plan_queries, queries
from tercet.store.database import Row, Step, Store

if TYPE_CHECKING:
    from tercet.library.season_file import SeasonFile


def apply_season(store: Store, season: SeasonFile) -> str:
    """Put a season file's parts in place of what was said of its days; other seasons stay."""
    said = []
    if season.runner:
        store.put("setting", {"name": "runner", "value": season.runner})
    if season.zone:
        store.put("setting", {"name": "zone", "value": season.zone})
    if season.thresholds:
        kept = [
            entry
            for entry in queries.thresholds(store)
            if not (entry.estimated or season.about(entry.start))
        ]
        _replace_thresholds(store, [*kept, *season.thresholds])
        said.append(tr("{n} dated thresholds", n=len(season.thresholds)))
    if season.blocks:
        outside = [b for b in queries.blocks(store) if not season.about(b.start, b.end)]
        replace_blocks(store, [*outside, *season.blocks])
        said.append(several(len(season.blocks), mark("{n} block"), mark("{n} blocks")))
    if season.races:
        others = [race for race in queries.races(store) if not season.about(race.day)]
        _replace_races(store, [*others, *season.races])
        said.append(several(len(season.races), mark("{n} race"), mark("{n} races")))
    if season.planned:
        fresh = plan_fresh(store, season.planned)
        said.append(several(fresh, mark("{n} planned session"), mark("{n} planned sessions")))
    if season.zone:
        from tercet.library.moments import follow_runner

        follow_runner(store, season.zone)
    return ", ".join(said)


def plan_fresh(store: Store, entries: Sequence[Planned]) -> int:
    """Plan inside an open step what its day does not hold yet; says how many that were."""
    days: dict[date, list[Planned]] = {}
    for old in plan_queries.planned(store):
        days.setdefault(old.day, []).append(old)
    count = 0
    for entry in entries:
        there = days.setdefault(entry.day, [])
        if entry.notation not in [old.notation for old in there]:
            placed = replace(entry, place=max((old.place + 1 for old in there), default=0))
            store.put("planned", plan_queries.planned_row(placed))
            there.append(placed)
            count += 1
    return count


def _replace_thresholds(store: Store, entries: Sequence[DatedThresholds]) -> list[DatedThresholds]:
    keep = {entry.id for entry in entries if entry.id is not None}
    for old in queries.thresholds(store):
        if old.id not in keep:
            store.remove("threshold", old.id)
    return [
        replace(entry, id=store.put("threshold", queries.threshold_row(entry)))
        if entry.id is None
        else _kept(store, entry)
        for entry in entries
    ]


def _kept(store: Store, entry: DatedThresholds) -> DatedThresholds:
    store.put("threshold", queries.threshold_row(entry))
    return entry


def replace_blocks(store: Store, blocks: Sequence[Block]) -> None:
    """Put all blocks inside an open step; those not among them go."""
    keep = {block.id for block in blocks if block.id is not None}
    for old in queries.blocks(store):
        if old.id not in keep:
            store.remove("block", old.id)
    for row in queries.block_rows(blocks):
        store.put("block", row)


def _replace_races(store: Store, races: Sequence[Race]) -> None:
    keep = {race.id for race in races if race.id is not None}
    for old in queries.races(store):
        if old.id not in keep:
            store.remove("race", old.id)
    for row in queries.race_rows(races):
        store.put("race", row)


def set_thresholds(
    store: Store,
    entries: Sequence[DatedThresholds],
    judgements: dict[int, Row],
    *,
    step: str,
    token: object = None,
) -> Changes:
    """Replace the dated thresholds and put the judgements made by them.

    ``judgements`` holds a judgement row by run id; its ``threshold_id`` is the place of the
    entry in ``entries``.

    Raises
    ------
    ValueError
        If a pair of values cannot be.
    """
    for entry in entries:
        check_thresholds(entry.values)
    with store.atomic(step, token):
        stored = _replace_thresholds(store, entries)
        put_judgements(store, judgements, [entry.id for entry in stored])
    return Changes(runs=True, thresholds=True, step=step)


def put_judgements(store: Store, judgements: dict[int, Row], ids: Sequence[int | None]) -> None:
    """Put judgement rows inside an open step, their threshold place turned into its id."""
    for run_id, row in judgements.items():
        place = row["threshold_id"]
        put_judgement(store, run_id, {**row, "threshold_id": None if place is None else ids[place]})


def put_judgement(store: Store, run_id: int, row: Row) -> None:
    """Keep a judgement made in a worker, inside an open step."""
    judgement = {**row, "run_id": run_id}
    changed = judgement.pop("run", None)  # a paper run lasts as long as its thresholds say
    if changed is not None:
        store.put("run", {**changed, "id": run_id})
    store.put("judgement", judgement)


def judge_again(
    store: Store, judgements: dict[int, Row], *, step: str, token: object = None
) -> Changes:
    """Put new judgements made by the stored thresholds (ids already in the rows)."""
    with store.atomic(step, token):
        for run_id, row in judgements.items():
            put_judgement(store, run_id, row)
    return Changes(runs=True, step=step)


def set_plan(store: Store, blocks: Sequence[Block], races: Sequence[Race]) -> Changes:
    """Replace blocks and races.

    Raises
    ------
    ValueError
        If two blocks overlap or one ends before it starts; the message names them.
    """
    ordered = checked(blocks)
    step = tr("Change blocks and races")
    with store.atomic(step):
        replace_blocks(store, ordered)
        _replace_races(store, races)
    return Changes(plan=True, step=step)


def checked(blocks: Sequence[Block]) -> list[Block]:
    """Put blocks in order; a ``ValueError`` names what overlaps or ends before it starts."""
    ordered = sorted(blocks, key=lambda block: block.start)
    for block in ordered:
        if block.end < block.start:
            raise ValueError(tr('"{block}" ends before it starts', block=block.name))
    for first, second in pairwise(ordered):
        if second.start <= first.end:
            raise ValueError(
                tr(
                    '"{first}" and "{second}" overlap on {start}',
                    first=first.name,
                    second=second.name,
                    start=second.start,
                )
            )
    return ordered


def set_note(store: Store, run_id: int, note: str) -> Changes:
    """Keep a runner's note; quick edits of one note are one step."""
    step = tr("Edit note")
    with store.atomic(step, ("note", run_id)):
        store.put("run", {"id": run_id, "note": note})
    return Changes(runs=True, step=step)


def set_effort(store: Store, run_id: int, effort: int | None) -> Changes:
    """Keep the session RPE (CR-10) as said by the runner; None for not said.

    Raises
    ------
    ValueError
        Outside 0 to 10.
    """
    if effort is not None and not 0 <= effort <= 10:
        raise ValueError(tr("effort is said on a scale from 0 to 10"))
    step = tr("Set effort")
    with store.atomic(step, ("effort", run_id)):
        store.put("run", {"id": run_id, "effort": effort})
        from tercet.library import rejudge

        if not rejudge.by_channels(store, run_id):
            rejudge.judge_one(store, run_id)  # where nothing else judges a run, its effort does
    return Changes(runs=True, step=step)


def set_kind(store: Store, run_ids: Sequence[int], sport: str, kind: str) -> Changes:
    """Say what sessions were: a sport, and for running its kind."""
    step = (
        tr("Change kind")
        if len(run_ids) == 1
        else tr("Change kind of {n} sessions", n=len(run_ids))
    )
    entries = queries.thresholds(store)
    with store.atomic(step):
        for run_id in run_ids:
            store.put("run", {"id": run_id, "sport": sport, "kind": kind})
            if sport == "running":
                _judge_by_its_day(store, run_id, entries)
    return Changes(runs=True, step=step)


def _judge_by_its_day(store: Store, run_id: int, entries: Sequence[DatedThresholds]) -> None:
    """Judge a session that was none of running when the others were judged."""
    from tercet.library.rejudge import judge_one

    row, kept = queries.run(store, run_id), queries.judgement(store, run_id)
    if row is None or kept is None:
        return
    entry = in_force(entries, date.fromisoformat(row["day"]))
    if kept["threshold_id"] == (entry.id if entry is not None else None):
        return
    judge_one(store, run_id)


def delete_runs(store: Store, run_ids: Sequence[int]) -> Changes:
    """Delete sessions with the files they came from; undo brings them back."""
    step = tr("Delete session") if len(run_ids) == 1 else tr("Delete {n} sessions", n=len(run_ids))
    with store.atomic(step):
        for run_id in run_ids:
            row = queries.run(store, run_id)
            if row is None:
                continue
            store.remove("judgement", run_id)
            store.remove("run", run_id)
            for sha256, part in queries.attachments(store, run_id):
                store.remove("attachment", sha256, part)
                if not queries.is_used(store, sha256):
                    store.remove("file", sha256)
            if not queries.is_used(store, row["sha256"]):
                store.remove("file", row["sha256"])
    return Changes(runs=True, files=True, step=step)


def put_away(store: Store, sha256: str) -> Changes:
    """Put a listed file out of sight; it is not read again."""
    step = tr("Skip a file")
    with store.atomic(step):
        store.put("file", {"sha256": sha256, "put_away": 1})
    return Changes(files=True, step=step)


def set_setting(store: Store, name: str, value: str) -> Changes:
    """Keep a setting that belongs to the store."""
    step = tr("Change {name}", name=tr(name))
    with store.atomic(step, ("setting", name)):
        store.put("setting", {"name": name, "value": value})
    return Changes(settings=True, step=step)


def undo(store: Store) -> Changes | None:
    """Take back the last step."""
    step = store.undo()
    return _changes(step) if step is not None else None


def redo(store: Store) -> Changes | None:
    """Bring back the last undone step."""
    step = store.redo()
    return _changes(step) if step is not None else None


def _changes(step: Step) -> Changes:
    tables = step.tables
    return Changes(
        runs=bool(tables & {"run", "judgement", "attachment", "correction"}),
        thresholds=bool(tables & {"threshold", "test"}),
        plan=bool(tables & {"block", "race", "planned"}),
        files="file" in tables,
        settings="setting" in tables,
        step=step.name,
    )
