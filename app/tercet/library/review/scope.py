"""What a review is about: a season, one block, or two of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from itertools import groupby

from tercet.library.views import BlockView, SeasonView

#: Blocks further apart than this belong to two seasons.
APART = timedelta(days=28)
#: What goes on for longer without a break is reviewed year by year.
LONGEST = timedelta(days=400)


@dataclass(frozen=True)
class Scope:
    """A name and the season view cut to it."""

    key: str
    name: str
    view: SeasonView


def seasons(view: SeasonView) -> list[tuple[BlockView, ...]]:
    """Blocks, planned or not, parted where four weeks lie between, and by years if need be."""
    found: list[list[BlockView]] = []
    for block in view.blocks:
        if found and block.start - found[-1][-1].end <= APART:
            found[-1].append(block)
        else:
            found.append([block])
    out: list[tuple[BlockView, ...]] = []
    for blocks in found:
        if blocks[-1].end - blocks[0].start <= LONGEST:
            out.append(tuple(blocks))
        else:
            # A block belongs to the year that holds its middle.
            by_year = groupby(blocks, key=lambda b: (b.start + (b.end - b.start) / 2).year)
            out += [tuple(held) for _, held in by_year]
    return out


def choices(view: SeasonView) -> list[tuple[str, str]]:
    """Keys and names of all that a review may be about, the last season first."""
    made: list[tuple[str, str]] = []
    for blocks in reversed(seasons(view)):
        made.append((_key(blocks), _name(blocks)))
        if len(blocks) > 1:
            made += [(_key((block,)), block.name) for block in told_apart(blocks, view)]
    return made


def told_apart(blocks: Sequence[BlockView], view: SeasonView) -> tuple[BlockView, ...]:
    """The blocks, each with its year in its name where the runner has several so called."""
    often = Counter(block.name for block in view.blocks)
    return tuple(
        replace(block, name=f"{block.name} {block.start.year}") if often[block.name] > 1 else block
        for block in blocks
    )


def scope(view: SeasonView, key: str = "") -> Scope:
    """Cut a season view to a scope; an unknown or empty key means the last season.

    A key is a block's first day, first and last day of a season's blocks parted by "..", or two
    blocks' days parted by "+".
    """
    by_day = {block.start.isoformat(): block for block in view.blocks}
    chosen: tuple[BlockView, ...] = ()
    if ".." in key:
        first, _, last = key.partition("..")
        if first in by_day and last in by_day:
            low, high = by_day[first].start, by_day[last].start
            chosen = tuple(block for block in view.blocks if low <= block.start <= high)
    elif key and len(set(key.split("+"))) <= 2 and all(p in by_day for p in key.split("+")):
        chosen = tuple(by_day[part] for part in sorted(set(key.split("+"))))
    if not chosen:
        found = seasons(view)
        chosen = found[-1] if found else ()
    if len(chosen) == 2 and "+" in key:
        chosen = told_apart(chosen, view)
        name = f"{chosen[0].name} and {chosen[1].name}"
        return Scope(pair_key(*key.split("+")), name, _cut(view, chosen))
    return Scope(_key(chosen), _name(chosen), _cut(view, chosen))


def pair_key(first: str, second: str) -> str:
    """Key of two blocks side by side, the earlier first."""
    return "+".join(sorted((first, second)))


def _key(blocks: tuple[BlockView, ...]) -> str:
    if not blocks:
        return ""
    if len(blocks) == 1:
        return blocks[0].start.isoformat()
    return f"{blocks[0].start.isoformat()}..{blocks[-1].start.isoformat()}"


def _name(blocks: tuple[BlockView, ...]) -> str:
    if not blocks:
        return "No season yet"
    if len(blocks) == 1:
        return blocks[0].name
    first, last = blocks[0].end, blocks[-1].start
    years = str(first.year) if first.year == last.year else f"{first.year} to {last.year}"
    return f"Season {years}"


def _cut(view: SeasonView, blocks: tuple[BlockView, ...]) -> SeasonView:
    kept = [s for block in blocks for week in block.weeks for day in week.days for s in day]
    running = [session for session in kept if session.sport == "running"]
    return replace(
        view,
        blocks=blocks,
        races=tuple(
            race
            for race in view.races
            if any(block.start <= race.day <= block.end for block in blocks)
        ),
        session_count=len(running),
        other_sports=len(kept) - len(running),
        estimated=any(session.estimated for session in running),
    )
