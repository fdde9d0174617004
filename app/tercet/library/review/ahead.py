"""The next block in the coach's own words, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence

from tercet.library.review import figures
from tercet.library.review.blocks import is_short
from tercet.library.review.content import Page, Table
from tercet.library.review.pictures import Lines
from tercet.library.views import SeasonView

CAUTIONS = (
    "Pain, illness, chest pain, faintness or an uneven heartbeat: stop, and see a professional.",
    "After illness or injury come back by easy running first. Doctors and coaches come before "
    "this page.",
)
FRESH = ("taper", "race", "recovery")
#: A race this recent is recovered from first. [days]
SOON_DAYS = 21
OWN = "In the coach's own words."
PROPOSED = "Put forward by the program; a coach puts it in other words."


def next_block(view: SeasonView, own: Sequence[str]) -> Page:
    """A few lines, the coach's where there are any, and what to heed."""
    lines = tuple(own) if own else proposed(view)
    source = "coach" if own else "program"
    rows = tuple((str(k), line, source) for k, line in enumerate(lines, 1))
    cautions = tuple((f"caution {k}", line, "") for k, line in enumerate(CAUTIONS, 1))
    return Page(
        "next",
        "Next block",
        _title(view),
        OWN if own else PROPOSED,
        Lines(lines, bool(own), CAUTIONS),
        Table(("line", "words", "by"), (*rows, *cautions), frozenset({0, 1, 2})),
    )


def _title(view: SeasonView) -> str:
    coming = next((b for b in view.blocks if b.start > view.today), None)
    if coming is not None:
        return f"Next: {coming.name}, from {figures.short_day(coming.start)}"
    return "What to do next"


def proposed(view: SeasonView) -> tuple[str, ...]:
    """Plain lines from what was run; common practice, no source."""
    out = []
    ran = [block for block in view.blocks if sum(block.seconds[:3]) > 0.0]
    if not ran:
        return ("Run easily and regularly first; everything else rests on it.",)
    last = ran[-1]
    # What was run to be fresh for a race tells little of how the training went.
    told = next((block for block in reversed(ran) if block.kind not in FRESH), last)
    coming = next((block for block in view.blocks if block.start > view.today), last)
    wanted = figures.share(coming.easy_target)
    race = view.races[-1] if view.races else None
    if coming is last and race is not None and 0 <= (view.today - race.day).days <= SOON_DAYS:
        out.append(f"After {race.name}: a week or two of easy running, and rest, come first.")
    if is_short(told):
        now = figures.share(told.easy_share, estimated=told.estimated)
        out.append(f"Run easily: {wanted} easy is wanted, {told.name} had {now}.")
    else:
        out.append(f"Keep at least {wanted} of the running easy.")
    if told.seconds[1] > told.seconds[2]:
        out.append("Trade time in the middle for a few short, fast repetitions.")
    else:
        out.append("Keep the fast running in short repetitions with easy days between.")
    weeks = [week for week in last.weeks if sum(week.seconds[:3]) > 0.0]
    if weeks:
        hours = sum(sum(week.seconds[:3]) + week.seconds[4] for week in weeks) / len(weeks)
        out.append(f"Begin near the {figures.hours(hours)} a week of {last.name}.")
    return tuple(out)
