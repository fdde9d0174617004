"""Build-up by block: each block against what it was for."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date
from itertools import pairwise

from tercet import language
from tercet.engine.scale import Shade
from tercet.engine.shades import easy_share
from tercet.language import tr
from tercet.library import counted, season
from tercet.library.review import figures
from tercet.library.review.content import Page, Table
from tercet.library.review.overview import running, total
from tercet.library.review.pictures import BuildUpPart, BuildUpPicture
from tercet.library.review.scope import APART, bare
from tercet.library.views import BlockView, BuildUp, SeasonView

#: No target line, and no word on the share, before this much has been run in a block. [s]
ENOUGH_S = 7200.0


def build_up(view: SeasonView) -> Page:
    """Every block from zero: easy above, moderate and hard below, the easy asked for dashed."""
    axis = Axis(view.blocks)
    # The view is cut for this review: the build-up that the season's page keeps stays.
    built = [season.block_build_up(block, view.today) for block in view.blocks]
    parts = tuple(_part(item, view.today, axis) for item in built)
    judged = [block for block in view.blocks if sum(block.seconds[:3]) >= ENOUGH_S]
    behind = [block for block in judged if is_short(block)]
    rows = tuple(
        (
            block.name,
            tr(block.kind) if block.kind else "",
            figures.share(block.easy_target),
            figures.share(block.easy_share, estimated=block.estimated),
            *(figures.hours(value) for value in block.seconds[:3]),
            *_in_hand(block),
            figures.share(easy_share(block.metres), estimated=block.estimated),
            _sessions(block),
        )
        for block in view.blocks
    )
    if judged and all(block.id is None for block in judged):
        # Nothing was asked of stretches that nobody planned.
        sums = total(judged)
        easy = figures.share(sums[0] / sum(sums), estimated=view.estimated)
        title = tr("{share} of the running was easy", share=f"{easy[0].upper()}{easy[1:]}")
    elif len(behind) == 1:
        title = tr("{block} fell short of its easy share", block=behind[0].name)
    elif behind:
        title = tr(
            "{n} of {whole} blocks fell short of their easy share",
            n=len(behind),
            whole=len(judged),
        )
    elif len(judged) > 1:
        title = tr("Every block held its easy share")
    else:
        title = tr("The easy share was held")
    first, last = (view.blocks[0].start, view.blocks[-1].end) if view.blocks else (view.today,) * 2
    inside = first <= view.today <= last
    return Page(
        "blocks",
        tr("Build-up by block"),
        title,
        tr(
            "Hours, easy up, moderate and hard down, dashed: easy asked for. Sessions count whole "
            "by their work, so their shares differ."
        ),
        BuildUpPicture(
            parts,
            axis.months,
            axis.at(view.today.toordinal() + 1.0) if inside else None,
            axis.spans,
        )
        if parts
        else None,
        Table(
            (tr("block"), tr("for", "what a block is for"), tr("easy wanted"), tr("easy run"),
             tr("easy"), tr("moderate"), tr("hard"), tr("in hand"), tr("short", "of easy time"),
             tr("easy by distance"), tr("sessions easy / moderate / hard")),
            rows,
            frozenset({0, 1}),
            tuple(tuple(session.id for session in running(block)) for block in view.blocks),
        ),
        missing=""
        if judged
        else tr("This page needs a block with two hours of running that could be judged."),
    )  # fmt: skip


class Axis:
    """Days along the page, with the empty months between two times of running cut out."""

    #: Room kept where time is cut. [days]
    ROOM = 10.0

    def __init__(self, blocks: Sequence[BlockView]) -> None:
        self._spans: list[tuple[date, date]] = []
        for block in blocks:
            if self._spans and block.start - self._spans[-1][1] <= APART:
                self._spans[-1] = (self._spans[-1][0], block.end)
            else:
                self._spans.append((block.start, block.end))

    def at(self, day: float) -> float:
        """Where a day stands, as an ordinal of the first stretch."""
        cut = 0.0
        for (_, end), (start, _) in pairwise(self._spans):
            if day < start.toordinal():
                break
            cut += start.toordinal() - end.toordinal() - 1.0 - self.ROOM
        return day - cut

    @property
    def spans(self) -> tuple[tuple[float, float], ...]:
        """Stretches without a cut."""
        return tuple(
            (self.at(first.toordinal()), self.at(last.toordinal()) + 1.0)
            for first, last in self._spans
        )

    @property
    def months(self) -> tuple[tuple[float, str], ...]:
        """First days of months, each stretch's first with its year where there are several."""
        out: list[tuple[float, str]] = []
        for first, last in self._spans:
            named = months(first, last, max(12 // len(self._spans), 1))
            for k, (day, name) in enumerate(named):
                year = f" {date.fromordinal(int(day)).year}" if len(self._spans) > 1 else ""
                out.append((self.at(day), f"{name}{year if k == 0 else ''}"))
        return tuple(out)


def asked(block: BlockView) -> float:
    """Easy seconds that the block's moderate and hard ask for."""
    part = min(block.easy_target, 0.99)
    return part / (1.0 - part) * (block.seconds[1] + block.seconds[2])


def is_short(block: BlockView) -> bool:
    """Whether a block has less easy running than asked for."""
    return sum(block.seconds[:3]) >= ENOUGH_S and block.seconds[0] < asked(block) - 1e-6


def months(first: date, last: date, most: int = 12) -> tuple[tuple[float, str], ...]:
    """First days of months with their names, thinned; the first day where no month begins."""
    out = []
    year, month = first.year, first.month
    while (year, month) <= (last.year, last.month):
        day = date(year, month, 1)
        if day >= first:
            out.append((float(day.toordinal()), language.short_month(month)))
        year, month = (year + 1, 1) if month == 12 else (year, month + 1)
    if not out:
        return ((float(first.toordinal()), figures.short_day(first)),)
    every = max(1, math.ceil(len(out) / most))
    return tuple(out[::every])


def _sessions(block: BlockView) -> str:
    """Sessions that count as easy, moderate and hard."""
    counts = counted.sessions_of(block)
    return " / ".join(map(str, counts)) if any(counts) else figures.NOTHING


def _in_hand(block: BlockView) -> tuple[str, str]:
    """Easy time over what is asked for, and under it, one of the two in words."""
    if sum(block.seconds[:3]) < ENOUGH_S:
        return (figures.NOTHING, figures.NOTHING)
    over = block.seconds[0] - asked(block)
    said = figures.hours(over)
    return (said, figures.NOTHING) if over >= 0.0 else (figures.NOTHING, said)


def _part(item: BuildUp, today: date, axis: Axis) -> BuildUpPart:
    block = item.block
    kept = [k for k, day in enumerate(item.days) if day <= today.toordinal() + 1]
    part = min(block.easy_target, 0.99)
    factor = part / (1.0 - part)
    columns = {}
    for shade, values in (
        (Shade.EASY, item.easy),
        (Shade.MODERATE, item.moderate),
        (Shade.HARD, item.hard),
    ):
        columns[shade] = tuple(values[k] / 3600.0 for k in kept)
    easy, moderate, hard = (columns[s] for s in (Shade.EASY, Shade.MODERATE, Shade.HARD))
    target = tuple(
        factor * (m + h) if e + m + h >= ENOUGH_S / 3600.0 else None
        for e, m, h in zip(easy, moderate, hard, strict=True)
    )
    return BuildUpPart(
        bare(block) if len(axis.spans) > 1 else block.name,
        axis.at(block.start.toordinal()),
        axis.at(block.end.toordinal()) + 1.0,
        tuple(axis.at(item.days[k]) for k in kept),
        easy,
        moderate,
        hard,
        target,
        _label(block),
        _wanted(block),
    )


def _wanted(block: BlockView) -> tuple[str, ...]:
    share = figures.share(block.easy_target)
    wanted = tr("{share} easy wanted", share=share)
    short = tr("{share} wanted", share=share)
    word = tr(block.kind) if block.kind else ""
    kind = (f"{word}, {wanted}",) if word and block.id is not None else ()
    return (*kind, wanted, short) if block.id is not None else ()


def _label(block: BlockView) -> str:
    if block.easy_share is None:
        return ""
    words = figures.share(block.easy_share, estimated=block.estimated)
    return tr("short, {share}", share=words) if is_short(block) else words
