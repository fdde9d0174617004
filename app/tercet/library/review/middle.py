"""The intensity curve then and now, and where the middle came from."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from tercet.domain import DatedThresholds
from tercet.engine import curve
from tercet.engine.scale import Floats
from tercet.language import mark, several, tr
from tercet.library import reading
from tercet.library.review import figures
from tercet.library.review.content import Page, Table
from tercet.library.review.overview import running, total
from tercet.library.review.pictures import Bar, BarPicture, Curve, CurvePicture
from tercet.library.review.scope import Side
from tercet.library.views import BlockView, SeasonView
from tercet.store import review_queries
from tercet.store.database import Store

#: A curve from less than this is not drawn. [s]
CURVE_FROM_S = 3 * 3600.0
#: Of less than this no share is told. [s]
WORTH_S = 600.0
CAUSES = {
    "START": mark("Too fast from the start"),
    "LATE": mark("Crept up late"),
    "CLIMB": mark("Climbs"),
    "DRIFT": mark("Heart rate rose at steady pace"),
    "AROUND": mark("Around repetitions"),
    "MEANT": mark("Meant"),
}


@dataclass(frozen=True)
class Held:
    """What judging kept of one run: seconds by intensity, and moderate seconds by cause."""

    spread: Floats | None
    causes: Mapping[str, float]


def held(store: Store, ids: Iterable[int]) -> dict[int, Held]:
    """What judging kept of these runs."""
    out = {}
    for row in review_queries.middles(store, ids):
        found = {
            name: float(values[0]) for name, values in json.loads(row["causes"] or "{}").items()
        }
        if row["meant"]:
            found = {"MEANT": sum(found.values())} if found else {}
        spread = None
        if row["spread"] is not None:
            spread = np.frombuffer(row["spread"], dtype="<u4").astype(np.float64)
        out[row["run_id"]] = Held(spread, found)
    return out


def intensity(
    view: SeasonView,
    kept: Mapping[int, Held],
    entries: Sequence[DatedThresholds],
    pair: tuple[str, str],
    units: str,
    sides: Sequence[Side] = (),
) -> Page:
    """The curve of two blocks, or of two seasons: the earlier dashed, the later filled."""
    if sides:
        view = replace(view, blocks=tuple(side.as_one for side in sides))
    then, now = compared(view, pair)
    blocks = [block for block in (then, now) if block is not None]
    rows = tuple(
        (block.name, figures.hours(sum(block.seconds[:3])), *_three_shares(block))
        for block in view.blocks
    )
    table = Table(
        (tr("block"), tr("hours judged"), tr("easy"), tr("moderate"), tr("hard")),
        rows,
        frozenset({0}),
        tuple(tuple(session.id for session in running(block)) for block in view.blocks),
    )
    name = tr("Intensity curve")
    curves = [_curve(block, kept, entries) for block in blocks]
    if now is None or any(made is None for made in curves):
        return Page(
            "curve", name, name, "", None, table,
            missing=tr(
                "A curve needs three hours of judged running in each block shown; the shares "
                "stand in the table."
            ),
        )  # fmt: skip
    drawn = [made for made in curves if made is not None]
    entry = reading.in_force(entries, now.end)
    pairs = list(zip(blocks, drawn, strict=True))
    named = [
        Curve(block.name, tuple(c.density.tolist()), _three_shares(block)) for block, c in pairs
    ]
    bounds = ("", "")
    if entry is not None:
        speeds = (entry.values.lt1_speed, entry.values.lt2_speed)
        bounds = tuple(  # type: ignore[assignment]
            ""
            if speed is None
            else figures.about(figures.pace(speed, units), estimated=entry.estimated)
            for speed in speeds
        )
    return Page(
        "curve",
        name,
        _title(then, now),
        tr("Time over intensity; both lines enclose the same area.")
        if then is not None
        else tr("Time over intensity in {block}.", block=now.name),
        CurvePicture(
            tuple(drawn[-1].at.tolist()),
            drawn[-1].lt2,
            named[-1],
            named[0] if then is not None else None,
            bounds,
            view.blocks.index(now),
        ),
        table,
    )


def compared(view: SeasonView, pair: tuple[str, str]) -> tuple[BlockView | None, BlockView | None]:
    """The two blocks to compare: those chosen, else the first and the last with enough running."""
    by_day = {block.start.isoformat(): block for block in view.blocks}
    if pair[0] in by_day and pair[1] in by_day and pair[0] != pair[1]:
        return by_day[pair[0]], by_day[pair[1]]
    enough = [block for block in view.blocks if sum(block.seconds[:3]) >= CURVE_FROM_S]
    if not enough:
        return None, view.blocks[-1] if view.blocks else None
    return (enough[0] if len(enough) > 1 else None), enough[-1]


def _three_shares(block: BlockView) -> tuple[str, str, str]:
    easy, middle, hard = figures.shares((block.seconds[0], block.seconds[1], block.seconds[2]))
    words = [figures.about(share, estimated=block.estimated) for share in (easy, middle, hard)]
    return (words[0], words[1], words[2])


def _curve(
    block: BlockView, kept: Mapping[int, Held], entries: Sequence[DatedThresholds]
) -> curve.Curve | None:
    parts = [kept[s.id].spread for s in running(block) if s.id in kept]
    spreads = [part for part in parts if part is not None and len(part) == curve.BINS]
    if not spreads or np.sum(spreads) < CURVE_FROM_S:
        return None
    entry = reading.in_force(entries, block.end)
    ratio = curve.USUAL_RATIO
    if entry is not None and entry.values.lt1_speed and entry.values.lt2_speed:
        ratio = entry.values.lt2_speed / entry.values.lt1_speed
    return curve.smooth(np.sum(spreads, axis=0), ratio)


def _title(then: BlockView | None, now: BlockView) -> str:
    after = _three_shares(now)[1]
    if then is None:
        return tr("The middle took {share} of {block}", share=after, block=now.name)
    before = _three_shares(then)[1]
    if before == after:
        return tr("The middle stayed at {share}", share=after)
    less = then.seconds[1] / sum(then.seconds[:3]) > now.seconds[1] / sum(now.seconds[:3])
    if less:
        return tr("The middle shrank from {before} to {after}", before=before, after=after)
    return tr("The middle grew from {before} to {after}", before=before, after=after)


#: A cause on one side: seconds, and the runs it was in.
_Found = dict[str, tuple[float, tuple[int, ...]]]


def causes(view: SeasonView, kept: Mapping[int, Held], sides: Sequence[Side] = ()) -> Page:
    """Moderate time by cause, most first; what was meant stands last. Of a pair each by itself."""
    named = [(side.name, _found(side.blocks, kept)) for side in sides] or [
        ("", _found(view.blocks, kept))
    ]
    seconds: Counter[str] = Counter()
    for _, found in named:
        for name, (amount, _) in found.items():
            seconds[name] += amount  # type: ignore[assignment]
    order = [name for name, _ in seconds.most_common() if name != "MEANT" and name in CAUSES]
    if "MEANT" in seconds:
        order.append("MEANT")
    bars, rows, behind = [], [], []
    for name in order:
        for k, (side, found) in enumerate(named):
            amount, ids = found.get(name, (0.0, ()))
            whole = sum(found[other][0] for other in order if other in found)
            words = figures.hours(amount)
            where = f", {side}" if side else ""
            one, many = mark("{time} in {n} run"), mark("{time} in {n} runs")
            said = several(len(ids), one, many, time=words) + where
            cause = tr(CAUSES[name])
            bars.append(Bar(cause if k == 0 else "", amount, said, name == "MEANT"))
            share = figures.share(amount / whole) if whole else figures.NOTHING
            rows.append((f"{cause}{where}", words, share, str(len(ids))))
            behind.append(ids)
    middle = total(view.blocks)[1]
    return Page(
        "middle",
        tr("Where the middle came from"),
        _causes_title(order, seconds, named),
        tr("Moderate time by cause, hours and minutes. What was meant is no fault."),
        BarPicture(tuple(bars)),
        Table(
            (tr("cause"), tr("time"), tr("of the middle"), tr("runs")),
            tuple(rows),
            frozenset({0}),
            tuple(behind),
        ),
        missing=""
        if order
        else (
            tr(
                "The causes of these runs are not known yet; they come when the runs are judged "
                "again."
            )
            if middle >= 60.0
            else tr("No moderate running in these blocks.")
        ),
    )


def _found(blocks: Sequence[BlockView], kept: Mapping[int, Held]) -> _Found:
    out: _Found = {}
    for block in blocks:
        for session in running(block):
            for name, amount in kept[session.id].causes.items() if session.id in kept else ():
                before, ids = out.get(name, (0.0, ()))
                out[name] = (before + amount, (*ids, session.id))
    return out


def _causes_title(
    order: Sequence[str], seconds: Mapping[str, float], named: Sequence[tuple[str, _Found]]
) -> str:
    if not order:
        return tr("Where the middle came from")
    sums = [sum(found[name][0] for name in order if name in found) for _, found in named]
    if len(named) > 1:
        before, after = (figures.hours(value) for value in sums)
        return tr(
            "The middle: {before} in {first}, {after} in {second}",
            before=before,
            first=named[0][0],
            after=after,
            second=named[1][0],
        )
    whole = sums[0]
    if whole < WORTH_S:
        return tr("{hours} in the middle in all", hours=figures.hours(whole))
    most = max(order, key=lambda name: seconds[name])
    share = figures.share(seconds[most] / whole)
    if most == "MEANT":
        return tr("{share} of the middle was meant", share=share)
    return tr("{cause}: {share} of the middle", cause=tr(CAUSES[most]), share=share)
