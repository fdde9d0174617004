"""The next block in the coach's own words, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence

from tercet.language import mark, tr
from tercet.library.review import figures
from tercet.library.review.blocks import is_short
from tercet.library.review.content import Page, Table
from tercet.library.review.pictures import Lines
from tercet.library.views import SeasonView

CAUTIONS = (
    mark(
        "Pain, illness, chest pain, faintness or an uneven heartbeat: stop, and see a professional."
    ),
    mark(
        "After illness or injury come back by easy running first. Doctors and coaches come before "
        "this page."
    ),
)
FRESH = ("taper", "race", "recovery")
#: A race this recent is recovered from first. [days]
SOON_DAYS = 21
OWN = mark("In the coach's own words.")
PROPOSED = mark("Put forward by the program; a coach puts it in other words.")


def next_block(view: SeasonView, own: Sequence[str]) -> Page:
    """A few lines, the coach's where there are any, and what to heed."""
    lines = tuple(own) if own else proposed(view)
    source = tr("coach") if own else tr("program")
    rows = tuple((str(k), line, source) for k, line in enumerate(lines, 1))
    heed = tuple(tr(line) for line in CAUTIONS)
    cautions = tuple((tr("caution {number}", number=k), line, "") for k, line in enumerate(heed, 1))
    return Page(
        "next",
        tr("Next block"),
        _title(view),
        tr(OWN) if own else tr(PROPOSED),
        Lines(lines, bool(own), heed),
        Table((tr("line"), tr("words"), tr("by")), (*rows, *cautions), frozenset({0, 1, 2})),
    )


def _title(view: SeasonView) -> str:
    coming = next((b for b in view.blocks if b.start > view.today), None)
    if coming is not None:
        return tr(
            "Next: {block}, from {day}", block=coming.name, day=figures.short_day(coming.start)
        )
    return tr("What to do next")


def proposed(view: SeasonView) -> tuple[str, ...]:
    """Plain lines from what was run; common practice, no source."""
    out = []
    ran = [block for block in view.blocks if sum(block.seconds[:3]) > 0.0]
    if not ran:
        return (tr("Run easily and regularly first; everything else rests on it."),)
    last = ran[-1]
    # What was run to be fresh for a race tells little of how the training went.
    told = next((block for block in reversed(ran) if block.kind not in FRESH), last)
    coming = next((block for block in view.blocks if block.start > view.today), last)
    wanted = figures.share(coming.easy_target)
    race = view.races[-1] if view.races else None
    if coming is last and race is not None and 0 <= (view.today - race.day).days <= SOON_DAYS:
        out.append(
            tr(
                "After {race}: a week or two of easy running, and rest, come first.",
                race=race.name,
            )
        )
    if is_short(told):
        now = figures.share(told.easy_share, estimated=told.estimated)
        out.append(
            tr(
                "Run easily: {wanted} easy is wanted, {block} had {now}.",
                wanted=wanted,
                block=told.name,
                now=now,
            )
        )
    else:
        out.append(tr("Keep at least {wanted} of the running easy.", wanted=wanted))
    if told.seconds[1] > told.seconds[2]:
        out.append(tr("Trade time in the middle for a few short, fast repetitions."))
    else:
        out.append(tr("Keep the fast running in short repetitions with easy days between."))
    weeks = [week for week in last.weeks if sum(week.seconds[:3]) > 0.0]
    if weeks:
        hours = sum(sum(week.seconds[:3]) + week.seconds[4] for week in weeks) / len(weeks)
        out.append(
            tr(
                "Begin near the {hours} a week of {block}.",
                hours=figures.hours(hours),
                block=last.name,
            )
        )
    return tuple(out)
