"""Two seasons or two blocks side by side: week by week back from the race, and what differs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from tercet import week_days
from tercet.language import tr
from tercet.library import years
from tercet.library.review import figures
from tercet.library.review.content import Page, Table
from tercet.library.review.overview import running, three, total
from tercet.library.review.pictures import BackPicture, BackSide, BackWeek, Facts
from tercet.library.review.scope import Side, bare
from tercet.library.views import RaceView, SeasonView, SessionView
from tercet.library.years import Past

WEEK = timedelta(days=7)


@dataclass(frozen=True)
class _Weeks:
    """The running of one side by weeks to go; 0 is the race's week, or the last."""

    side: Side
    race: RaceView | None
    end: date
    runs: dict[int, list[SessionView]]
    first: int
    last: int


def back(sides: Sequence[Side], view: SeasonView) -> Page:
    """Weeks of both sides in one row each, counted back from their races."""
    both = [_weeks(side, view) for side in sides]
    raced = all(part.race is not None for part in both)
    most, least = max(part.first for part in both), min(part.last for part in both)
    rows, behind = [], []
    shown: list[list[BackWeek]] = [[], []]
    for to_go in range(most, least - 1, -1):
        words, ids = [], []
        for k, part in enumerate(both):
            runs = part.runs.get(to_go, [])
            inside = part.last <= to_go <= part.first
            sums = three([sum(s.seconds[j] for s in runs) for j in range(3)] if runs else (0, 0, 0))
            ran = sum(s.running_s for s in runs)
            said = figures.hours(ran) if inside else ""
            words += [figures.short_day(_first_day(part, to_go)) if inside else "", said]
            ids += [s.id for s in runs]
            race = any(_to_go(part.end, race.day) == to_go for race in _races(part.side, view))
            shown[k].append(BackWeek(sums, said if runs else "", race))
        rows.append((_week_words(to_go, raced), *words))
        behind.append(tuple(ids))
    names = tuple(side.name for side in sides)
    return Page(
        "pair",
        tr("Side by side"),
        _title(sides),
        tr("A row is a week of both, easy next to the middle, hard outermost.")
        if not raced
        else tr("Weeks counted back from each race, easy next to the middle, hard outermost."),
        BackPicture(
            tuple(row[0] for row in rows),
            (_side(both[0], shown[0], most), _side(both[1], shown[1], most)),
        ),
        Table(
            (
                tr("to go"),
                *(
                    heading
                    for name in names
                    for heading in (
                        tr("{name}, week of", name=name),
                        tr("{name}, hours", name=name),
                    )
                ),
            ),
            tuple(rows),
            frozenset({0, 1, 3}),
            tuple(behind),
        ),
        missing="" if any(behind) else tr("Nothing has been run in these weeks yet."),
    )  # fmt: skip


def differs(sides: Sequence[Side], view: SeasonView, spacing: int) -> Page:
    """At most five pairs of numbers with a sentence each; no better and no worse."""
    pasts = [_past(_weeks(side, view)) for side in sides]
    told = years.differs(pasts[0], pasts[1], spacing)
    rows = []
    for item in told:
        what, _, numbers = item.title.partition(": ")
        rows.append((numbers, what, item.text))
    ids = tuple(run.id for past in pasts for run in past.runs)
    return Page(
        "differs",
        tr("What differs"),
        tr("{first} and {second}", first=sides[0].name, second=sides[1].name),
        tr("The earlier number first. More is neither better nor worse."),
        Facts(tuple(rows)),
        Table(
            (tr("from and to"), tr("what"), tr("more of it")),
            tuple(rows),
            frozenset({0, 1, 2}),
            tuple(ids for _ in rows),
        ),
        missing="" if rows else tr("This page needs running in both."),
    )


def _weeks(side: Side, view: SeasonView) -> _Weeks:
    races = _races(side, view)
    # The main race, else the last; weeks after it count on, below it.
    race = next((race for race in reversed(races) if race.main), races[-1] if races else None)
    end = race.day if race is not None else min(side.blocks[-1].end, view.today)
    runs: dict[int, list[SessionView]] = {}
    for block in side.blocks:
        for session in running(block):
            runs.setdefault(_to_go(end, session.day), []).append(session)
    weeks = [*runs, 0]
    return _Weeks(side, race, end, runs, max(weeks), min(weeks))


def _past(part: _Weeks) -> Past:
    blocks = part.side.blocks
    runs = tuple(s for block in blocks for s in running(block))
    start = runs[0].day if runs else blocks[0].start
    # What was run after the race is told of as well, so its weeks count.
    end = max(part.end, runs[-1].day) if runs else part.end
    return Past(part.side.key, part.side.name, start, end, part.race, runs, blocks)


def _races(side: Side, view: SeasonView) -> list[RaceView]:
    return [
        race
        for race in view.races
        if any(block.start <= race.day <= block.end for block in side.blocks)
    ]


def _side(part: _Weeks, weeks: Sequence[BackWeek], most: int) -> BackSide:
    blocks = []
    for block in part.side.blocks if len(part.side.blocks) > 1 else ():
        first, last = _to_go(part.end, block.start), _to_go(part.end, min(block.end, part.end))
        first, last = min(first, part.first), max(last, part.last)
        if first >= last:
            blocks.append((most - first, most - last, bare(block)))
    amounts = total(part.side.blocks)
    ran = sum(sum(block.seconds[:3]) + block.seconds[4] for block in part.side.blocks)
    share = amounts[0] / sum(amounts) if sum(amounts) > 0.0 else None
    estimated = any(block.estimated for block in part.side.blocks)
    percent = figures.share(share, estimated=estimated)
    said = tr("{hours}, {share} easy", hours=figures.hours(ran), share=percent)
    return BackSide(part.side.name, said, tuple(weeks), tuple(blocks))


def _title(sides: Sequence[Side]) -> str:
    ran = [
        sum(sum(block.seconds[:3]) + block.seconds[4] for block in side.blocks) for side in sides
    ]
    before, after = (figures.hours(value) for value in ran)
    return tr(
        "{first} ran {before}, {second} {after}",
        first=sides[0].name,
        before=before,
        second=sides[1].name,
        after=after,
    )


def _to_go(end: date, day: date) -> int:
    return (week_days.start_of(end) - week_days.start_of(day)).days // 7


def _first_day(part: _Weeks, to_go: int) -> date:
    return week_days.start_of(part.end) - to_go * WEEK


def _week_words(to_go: int, raced: bool) -> str:
    if to_go < 0:
        return tr("{n} after", n=-to_go)
    if to_go == 0:
        return tr("race") if raced else tr("last", "week")
    return str(to_go)
