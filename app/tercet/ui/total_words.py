"""'Why this shade?' for a total: how its runs were judged and counted, with the numbers."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from tercet.engine.shades import whole_shares
from tercet.language import mark, several, tr
from tercet.library.counted import DIFFER, Behind, Counts, sessions_of
from tercet.library.stretch import Stretch
from tercet.library.views import BlockView, Five
from tercet.ui import words
from tercet.ui.made_from import WITHIN

#: Runs by what judged them.
_BY = {
    "both": mark("{n} by pace and heart rate"),
    "pace": mark("{n} by pace alone"),
    "power": mark("{n} by running power"),
    "heart": mark("{n} by heart rate alone"),
    "words": mark("{n} by what was written"),
    "unjudged": mark("{n} not judged"),
}


@dataclass(frozen=True)
class Total:
    """What a total is of, counted three ways."""

    name: str
    first: date
    last: date  # included
    seconds: Five
    metres: Five
    sessions: Counts


def block_total(block: BlockView) -> Total:
    """The total of a block."""
    return Total(
        block.name, block.start, block.end, block.seconds, block.metres, sessions_of(block)
    )


def stretch_total(name: str, stretch: Stretch) -> Total:
    """The total of a stretch of days."""
    return Total(
        name, stretch.first, stretch.last, stretch.seconds, stretch.metres, stretch.sessions
    )


def total_words(total: Total, told: Behind) -> str:
    """Why a total is as it is, its three counts, and why they differ: a line each."""
    lines = [why_total(total.name, told), ways_words(total, estimated=told.estimated > 0)]
    return "\n".join([*filter(None, lines), *([tr(DIFFER)] if lines[1] else [])])


def ways_words(total: Total, *, estimated: bool = False) -> str:
    """Shares of easy, moderate and hard by time, by distance and by sessions."""
    ways = (total.seconds, total.metres, total.sessions)
    if any(sum(way[:3]) <= 0 for way in ways):
        return ""
    time, distance, sessions = (_shares(way[:3]) for way in ways)
    said = mark(
        "Easy / moderate / hard: by time {time}, by distance {distance}, by sessions {sessions} "
        "({counts})."
    )
    if estimated:
        said = mark(
            "Easy / moderate / hard: by time about {time}, by distance about {distance}, "
            "by sessions about {sessions} ({counts})."
        )
    return tr(
        said,
        time=time,
        distance=distance,
        sessions=sessions,
        counts=sessions_words(total.sessions),
    )


def sessions_words(counts: Counts) -> str:
    """Sessions that count as easy, moderate and hard: ``14 / 2 / 6``."""
    return " / ".join(map(str, counts)) if any(counts) else words.NOTHING


def why_total(name: str, told: Behind) -> str:
    """Say in one sentence how the runs of a total were judged.

    Parameters
    ----------
    name : str
        Of the block or the stretch.
    told : Behind
    """
    if not told.runs:
        return tr("{name}: nothing was run.", name=name)
    how = [tr(said, n=getattr(told, key)) for key, said in _BY.items() if getattr(told, key)]
    parts = [
        several(
            told.runs,
            mark("{name}: {n} run, {how}"),
            mark("{name}: {n} runs, {how}"),
            name=name,
            how=words.listed(how),
        )
    ]
    if told.said:
        one, many = mark("you spoke for a part of {n}"), mark("you spoke for parts of {n}")
        parts.append(several(told.said, one, many))
    if told.estimated:
        parts.append(
            tr("{n} of {whole} by estimated thresholds", n=told.estimated, whole=told.known)
        )
    elif told.known:
        parts.append(tr("by thresholds that you gave"))
    if told.ranged:
        parts.append(_within(told))
    if told.unjudged_s >= 30.0:
        parts.append(tr("{time} could not be judged", time=words.hours(told.unjudged_s)))
    return f"{'; '.join(parts)}."


def _within(told: Behind) -> str:
    """Between what times each shade of the measured runs lies in 9 of 10 cases."""
    said = [
        tr(shade, low=words.hours(low), high=words.hours(high))
        for shade, low, high in zip(WITHIN, told.low, told.high, strict=True)
        if high >= 30.0
    ]
    if told.ranged == told.runs:
        return tr(
            "if the thresholds are right, in 9 of 10 cases or more {shades}",
            shades=words.listed(said),
        )
    return several(
        told.ranged,
        mark("if the thresholds are right, in 9 of 10 cases or more {n} measured run is {shades}"),
        mark(
            "if the thresholds are right, in 9 of 10 cases or more the {n} measured runs are "
            "{shades}"
        ),
        shades=words.listed(said),
    )


def _shares(amounts: tuple[float, ...]) -> str:
    whole = sum(amounts)
    a, b, c = whole_shares((amounts[0] / whole, amounts[1] / whole, amounts[2] / whole))
    return f"{a} / {b} / {c} %"
