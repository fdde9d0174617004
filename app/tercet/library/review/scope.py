"""What a review is about: a season, one block, or two of either."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from itertools import groupby

from tercet.engine import tally
from tercet.language import tr
from tercet.library.views import BlockView, SeasonView

#: Blocks further apart than this belong to two seasons.
APART = timedelta(days=28)
#: What goes on for longer without a break is reviewed year by year.
LONGEST = timedelta(days=400)


@dataclass(frozen=True)
class Side:
    """One of two seasons or blocks that are laid side by side."""

    key: str
    name: str
    blocks: tuple[BlockView, ...]

    @property
    def as_one(self) -> BlockView:
        """The blocks of a season as one."""
        blocks = self.blocks
        sums = [sum(block.seconds[k] for block in blocks) for k in range(5)]
        far = [sum(block.metres[k] for block in blocks) for k in range(5)]
        seconds = (sums[0], sums[1], sums[2], sums[3], sums[4])
        return replace(
            blocks[0],
            name=self.name,
            end=blocks[-1].end,
            weeks=tuple(week for block in blocks for week in block.weeks),
            seconds=seconds,
            metres=(far[0], far[1], far[2], far[3], far[4]),
            easy_share=tally.easy_share(seconds),
            estimated=any(block.estimated for block in blocks),
        )


@dataclass(frozen=True)
class Scope:
    """A name and the season view cut to it; ``sides`` are the two of a pair, the earlier first."""

    key: str
    name: str
    view: SeasonView
    sides: tuple[Side, ...] = ()


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


def bare(block: BlockView) -> str:
    """A block's name without the year that :func:`told_apart` gave it."""
    return block.name.removesuffix(f" {block.start.year}")


def scope(view: SeasonView, key: str = "") -> Scope:
    """Cut a season view to a scope; an unknown or empty key means the last season.

    A key is a block's first day, first and last day of a season's blocks parted by "..", or two
    such keys parted by "+".
    """
    parts = sorted(set(key.split("+")))
    found = [_blocks(view, part) for part in parts]
    if len(parts) == 2 and all(found) and found[0][-1].end < found[1][0].start:
        every = told_apart((*found[0], *found[1]), view)
        halves = (every[: len(found[0])], every[len(found[0]) :])
        sides = tuple(
            Side(part, _name(held), held) for part, held in zip(parts, halves, strict=True)
        )
        name = tr("{first} and {second}", first=sides[0].name, second=sides[1].name)
        return Scope(pair_key(*parts), name, _cut(view, every), sides)
    chosen = found[0] if len(parts) == 1 else ()
    if not chosen:
        last = seasons(view)
        chosen = last[-1] if last else ()
    return Scope(_key(chosen), _name(chosen), _cut(view, chosen))


def _blocks(view: SeasonView, key: str) -> tuple[BlockView, ...]:
    """The blocks of a season's or a block's key; none where it is not understood."""
    by_day = {block.start.isoformat(): block for block in view.blocks}
    first, parted, last = key.partition("..")
    if first not in by_day or (parted and last not in by_day):
        return ()
    low, high = by_day[first].start, by_day[last if parted else first].start
    return tuple(block for block in view.blocks if low <= block.start <= high)


def pair_key(first: str, second: str) -> str:
    """Key of two seasons or blocks side by side, the earlier first."""
    return "+".join(sorted((first, second)))


def _key(blocks: tuple[BlockView, ...]) -> str:
    if not blocks:
        return ""
    if len(blocks) == 1:
        return blocks[0].start.isoformat()
    return f"{blocks[0].start.isoformat()}..{blocks[-1].start.isoformat()}"


def _name(blocks: tuple[BlockView, ...]) -> str:
    if not blocks:
        return tr("No season yet")
    if len(blocks) == 1:
        return blocks[0].name
    first, last = blocks[0].end, blocks[-1].start
    if first.year == last.year:
        return tr("Season {year}", year=first.year)
    return tr("Season {first} to {last}", first=first.year, last=last.year)


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
