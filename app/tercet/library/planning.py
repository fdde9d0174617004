"""What a user does to the plan: blocks, races, the count-back, planned sessions; all undoable."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from datetime import date, timedelta

from tercet import week_days
from tercet.domain import Block, Changes, Planned, Race
from tercet.engine.countback import SHARES, Rules, count_back
from tercet.formats.calendar import Entry
from tercet.language import tr
from tercet.library import plan_words
from tercet.library.operations import checked, plan_fresh, replace_blocks
from tercet.library.season_file import BLOCK_NAMES
from tercet.store import plan_queries, queries
from tercet.store.database import Store

DAY = timedelta(days=1)
#: Main races nearer to one another belong to one season: 12 weeks of preparation, and a month to
#: recover (common practice, no source).
SEASON_DAYS = 16 * 7 * DAY


def _set(store: Store, blocks: Sequence[Block], step: str, token: object = None) -> Changes:
    ordered = checked(blocks)
    with store.atomic(step, token):
        replace_blocks(store, ordered)
    return Changes(plan=True, step=step)


def _named(blocks: Sequence[Block], block_id: int) -> Block:
    found = next((block for block in blocks if block.id == block_id), None)
    if found is None:
        raise ValueError(tr("that block is no longer there"))
    return found


def set_block(store: Store, block: Block) -> Changes:
    """Put a block, new or changed; edits in a row of one thing about a block are one step.

    Raises
    ------
    ValueError
        If it would overlap another or end before it starts; the message names them.
    """
    blocks = queries.blocks(store)
    others = [other for other in blocks if other.id != block.id]
    step = (
        tr("Add {block}", block=block.name)
        if block.id is None
        else tr("Change {block}", block=block.name)
    )
    old = next((other for other in blocks if block.id is not None and other.id == block.id), None)
    same = old or block
    changed = [f.name for f in fields(block) if getattr(block, f.name) != getattr(same, f.name)]
    token = None if old is None else ("block", block.id, *changed)
    return _set(store, [*others, block], step, token)


def remove_block(store: Store, block_id: int) -> Changes:
    """Remove a block; its days become unplanned."""
    blocks = queries.blocks(store)
    gone = _named(blocks, block_id)
    return _set(
        store, [block for block in blocks if block is not gone], tr("Remove {gone}", gone=gone.name)
    )


def move_edge(store: Store, first_id: int, second_id: int | None, day: date) -> Changes:
    """Let a block end the day before ``day``, and the next one, if given, begin on it.

    Raises
    ------
    ValueError
        If one of the two would have no day left, or another block is in the way.
    """
    blocks = queries.blocks(store)
    first = _named(blocks, first_id)
    moved = {first_id: replace(first, end=day - DAY)}
    if second_id is not None:
        moved[second_id] = replace(_named(blocks, second_id), start=day)
    return _set_moved(
        store, moved, tr("Move the end of {first}", first=first.name), ("edge", first_id)
    )


def move_block(
    store: Store, block_id: int, start: date, before_id: int | None, after_id: int | None
) -> Changes:
    """Let a block begin on another day and keep its length.

    Raises
    ------
    ValueError
        If a neighbour, which ends the day before or begins the day after, would have no day left,
        or if another block is in the way.
    """
    blocks = queries.blocks(store)
    block = _named(blocks, block_id)
    made = replace(block, start=start, end=start + (block.end - block.start))
    moved = {block_id: made}
    if before_id is not None:
        moved[before_id] = replace(_named(blocks, before_id), end=made.start - DAY)
    if after_id is not None:
        moved[after_id] = replace(_named(blocks, after_id), start=made.end + DAY)
    return _set_moved(store, moved, tr("Move {block}", block=block.name))


def _set_moved(store: Store, moved: dict[int, Block], step: str, token: object = None) -> Changes:
    for block in moved.values():
        if block.end < block.start:
            raise ValueError(tr('"{block}" would have no day left', block=block.name))
    blocks = [moved.get(block.id or 0, block) for block in queries.blocks(store)]
    return _set(store, blocks, step, token)


def split_block(store: Store, block_id: int, day: date) -> Changes:
    """Cut a block in two; the second begins on ``day`` with the same purpose.

    Raises
    ------
    ValueError
        Unless ``day`` lies inside, after its first day.
    """
    blocks = queries.blocks(store)
    whole = _named(blocks, block_id)
    if not whole.start < day <= whole.end:
        raise ValueError(
            tr('"{whole}" cannot be split on its first day or outside of it', whole=whole.name)
        )
    parts = [
        replace(whole, end=day - DAY),
        replace(whole, id=None, start=day, name=f"{whole.name} 2"),
    ]
    others = [block for block in blocks if block is not whole]
    return _set(store, [*others, *parts], tr("Split {whole}", whole=whole.name))


def join_blocks(store: Store, first_id: int, second_id: int) -> Changes:
    """Make one block of two; the first one's name, kind and targets stay."""
    blocks = queries.blocks(store)
    first, second = _named(blocks, first_id), _named(blocks, second_id)
    joined = replace(first, start=min(first.start, second.start), end=max(first.end, second.end))
    others = [block for block in blocks if block not in (first, second)]
    return _set(
        store,
        [*others, joined],
        tr("Join {first} and {second}", first=first.name, second=second.name),
    )


def set_race(store: Store, race: Race) -> Changes:
    """Put a race; if it is the main one, no other of its season is."""
    step = (
        tr("Add {race}", race=race.name) if race.id is None else tr("Change {race}", race=race.name)
    )
    others = [other for other in queries.races(store) if other.id != race.id]
    if race.main:
        others = lesser(others, race, race.day)
    with store.atomic(step):
        for row in queries.race_rows([*others, race]):
            store.put("race", row)
    return Changes(plan=True, step=step)


def lesser(others: Sequence[Race], race: Race, start: date) -> list[Race]:
    """Other races beside a main one: those of its season are not main, other seasons' stay.

    Parameters
    ----------
    others : sequence of Race
    race : Race
        The main one.
    start : date
        First day of what is counted back from it; nearer than :data:`SEASON_DAYS` on either side
        is the same season anyhow.
    """
    first, last = min(start, race.day - SEASON_DAYS), race.day + SEASON_DAYS
    return [replace(item, main=item.main and not first < item.day < last) for item in others]


def as_kept(races: Sequence[Race], race: Race) -> Race:
    """A race as it is kept without counting back: main if it was, or if its season has no other.

    Parameters
    ----------
    races : sequence of Race
        As they are.
    race : Race
        The one to keep, new or changed.
    """
    was = any(old.main for old in races if race.id is not None and old.id == race.id)
    main = any(old.main and abs(old.day - race.day) < SEASON_DAYS for old in races)
    return replace(race, main=was or not main)


def usual_start(
    blocks: Sequence[Block], races: Sequence[Race], race_day: date, today: date
) -> date:
    """Where planning for a race goes on: at the block under way, else at this week's first day.

    A block under way that leads to an earlier race is left to it: planning goes on after its end.

    Parameters
    ----------
    blocks, races
        As they are.
    race_day, today : date
    """
    block = next((block for block in blocks if block.start <= today <= block.end), None)
    if block is None:
        return week_days.start_of(today)
    earlier = any(today <= race.day <= block.end and race.day < race_day for race in races)
    return block.end + DAY if earlier else block.start


def remove_race(store: Store, race_id: int) -> Changes:
    """Remove a race."""
    step = tr("Remove a race")
    with store.atomic(step):
        store.remove("race", race_id)
    return Changes(plan=True, step=step)


def laid_blocks(
    blocks: Sequence[Block],
    races: Sequence[Race],
    race: Race,
    start: date,
    today: date,
    volume: float,
    rules: Rules | None = None,
) -> list[Block]:
    """All blocks as they would be after counting back from a race.

    Parameters
    ----------
    blocks, races
        As they are.
    race : Race
        The main one.
    start : date
        What lies before stays; a block under way is cut there unless it begins there.
    today : date
    volume : float
        Run in a week nowadays. [s]
    rules : Rules or None

    Returns
    -------
    list of Block
        In order. A block laid out again keeps its name and its targets where its kind is the
        same. What comes after the race stays.
    """
    others = [other.day for other in races if other.day != race.day]
    laid = count_back(race.day, start, today, volume, rules, others, week_days.first_weekday())
    kept: list[Block] = []
    replaced: list[Block] = []
    for block in sorted(blocks, key=lambda item: item.start):
        if block.end < start or block.start > race.day:
            kept.append(block)
        elif block.start < start:
            kept.append(replace(block, end=start - DAY))
        else:
            replaced.append(block)
            if block.end > race.day and block.kind == "recovery":
                kept.append(replace(block, start=race.day + DAY))
                replaced.pop()
    for part in laid:
        old = next((block for block in replaced if block.kind == part.kind), None)
        if old is not None:
            replaced.remove(old)
            made = replace(old, start=part.start, end=part.end)
        else:
            easy, moderate, hard = SHARES[part.kind]
            made = Block(
                part.start,
                part.end,
                tr(BLOCK_NAMES[part.kind]),
                part.kind,
                easy,
                None,
                moderate,
                hard,
            )
        if part.volume is not None:
            made = replace(made, volume=part.volume, measure="time")
        kept.append(made)
    return checked(kept)


def lay_out(
    store: Store,
    race: Race,
    start: date,
    today: date,
    volume: float,
    rules: Rules | None = None,
) -> Changes:
    """Put a race, the main one of its season, and count the season back from it; one step."""
    others = [item for item in queries.races(store) if item.id != race.id]
    others = lesser(others, race, start)
    made = laid_blocks(queries.blocks(store), others, race, start, today, volume, rules)
    step = tr("Count back from {race}", race=race.name)
    with store.atomic(step):
        replace_blocks(store, made)
        for row in queries.race_rows([*others, replace(race, main=True)]):
            store.put("race", row)
    return Changes(plan=True, step=step)


def add_planned(store: Store, day: date, notation: str, note: str = "") -> Changes:
    """Plan a session, after what is already planned that day."""
    text = plan_words.plain(store, notation.strip())
    if not text:
        return Changes()
    step = tr("Plan a session")
    with store.atomic(step):
        _put(store, Planned(day, text, plan_queries.next_place(store, day), note))
    return Changes(plan=True, step=step)


def edit_planned(store: Store, planned_id: int, notation: str) -> Changes:
    """Change a planned session's line; an empty line removes it. Edits in a row are one step."""
    text = notation.strip()
    if not text:
        return remove_planned(store, planned_id)
    step = tr("Change a planned session")
    with store.atomic(step, ("planned", planned_id)):
        before = _planned(store, planned_id)
        plan_words.learn_unit(store, before.notation, text)
        _put(store, replace(before, notation=plan_words.plain(store, text)))
    return Changes(plan=True, step=step)


def move_planned(store: Store, planned_id: int, day: date, *, copy: bool = False) -> Changes:
    """Move a planned session to another day, or copy it there."""
    step = tr("Copy a planned session") if copy else tr("Move a planned session")
    with store.atomic(step):
        entry = _planned(store, planned_id)
        if copy or day != entry.day:
            moved = replace(entry, day=day, place=plan_queries.next_place(store, day))
            _put(store, replace(moved, id=None) if copy else moved)
    return Changes(plan=True, step=step)


def remove_planned(store: Store, planned_id: int) -> Changes:
    """Remove a planned session."""
    step = tr("Remove a planned session")
    with store.atomic(step):
        store.remove("planned", planned_id)
    return Changes(plan=True, step=step)


def copy_week(store: Store, first_day: date) -> Changes:
    """Plan the next week as this one, after what it already holds."""
    step = tr("Copy a week's plan")
    entries = [e for e in plan_queries.planned(store) if first_day <= e.day < first_day + 7 * DAY]
    with store.atomic(step):
        for entry in entries:
            day = entry.day + 7 * DAY
            _put(store, replace(entry, id=None, day=day, place=plan_queries.next_place(store, day)))
    return Changes(plan=True, step=step)


def take_calendar(store: Store, entries: Sequence[Entry]) -> Changes:
    """Plan what a calendar holds; a line that its day already has is left out."""
    step = tr("Plan sessions from a calendar")
    with store.atomic(step):
        plan_fresh(store, [Planned(entry.day, entry.text, note=entry.note) for entry in entries])
    return Changes(plan=True, step=step)


def calendar_entries(store: Store) -> list[Entry]:
    """All planned sessions and races as entries of a calendar."""
    planned = [
        Entry(item.day, item.notation, item.note, f"planned-{item.id}")
        for item in plan_queries.planned(store)
    ]
    races = [
        Entry(race.day, race.name, "Race", f"race-{race.id}", race=True)
        for race in queries.races(store)
    ]
    return planned + races


def _planned(store: Store, planned_id: int) -> Planned:
    found = plan_queries.planned(store, [planned_id])
    if not found:
        raise ValueError(tr("that planned session is no longer there"))
    return found[0]


def _put(store: Store, entry: Planned) -> None:
    store.put("planned", plan_queries.planned_row(entry))
