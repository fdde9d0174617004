"""The thresholds page's matter: history, what recordings tell, flags with reasons, kept tests."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date, timedelta
from typing import TYPE_CHECKING, Any

from tercet import units
from tercet.domain import Changes, DatedThresholds
from tercet.engine.shades import Shade, Thresholds
from tercet.language import mark, month, number, several, tr
from tercet.library.dated import in_force
from tercet.library.engine_words import worded
from tercet.library.held import HeldRuns
from tercet.store import lines_queries, queries
from tercet.store.database import Store
from tercet.store.lines_queries import KeptTest, RunPrint

if TYPE_CHECKING:
    from threading import Event

    from tercet.engine.field_test import FieldTest
    from tercet.engine.fingerprint import Fingerprint
    from tercet.engine.recorded import Recorded
    from tercet.engine.steady import Meeting
    from tercet.library.importing import Progress
    from tercet.library.library import Library

#: Efforts count for so long; the easy ceiling is drawn from the last weeks only. [days]
SPAN_DAYS, STEADY_DAYS = 90, 42
#: Lines lose their worth after eight weeks (common practice, no source). [days]
OLD_DAYS = 56
#: A long easy run: at least so long [s] and so much of it easy; looked for so far back. [days]
LONG_S, EASY_SHARE, LONG_DAYS = 3600.0, 0.85, 28
#: How much faster than LT2 half an hour and an hour can be run: by the power law and 2 % for
#: errors of position.
HALF_HOUR, HOUR = 1.06, 1.02


@dataclass(frozen=True)
class Stored:
    """What the store holds of it."""

    entries: tuple[DatedThresholds, ...]
    prints: tuple[RunPrint, ...]
    tests: tuple[KeptTest, ...]
    left: Mapping[str, str]  # day on which a flag was left, by its key


@dataclass(frozen=True)
class Flag:
    """Something worth a look: why, and what may be done; nothing is changed by it."""

    key: str
    reason: str
    runs: tuple[int, ...] = ()
    offer: str = ""  # "recordings" or "race": where a better line may come from


@dataclass(frozen=True)
class Own:
    """What the recordings tell, or in words why not."""

    recorded: Recorded | None
    refusal: str
    ceiling: Meeting | None
    ceiling_refusal: str
    hard_end: Meeting | None
    days: tuple[date, ...]  # of the runs that gave the ceiling
    warmth: tuple[float, float] | None  # their range
    unread: int  # runs whose fingerprint is from an earlier version


_prints = HeldRuns(
    lambda store, ids: {item.id: item for item in lines_queries.run_prints(store, ids)}
)


def stored(store: Store) -> Stored:
    """Read it."""
    return Stored(
        tuple(queries.thresholds(store)),
        tuple(sorted(_prints.of(store).values(), key=lambda item: (item.start_utc, item.id))),
        tuple(lines_queries.tests(store)),
        json.loads(queries.setting(store, "flags_left", "{}")),
    )


def own(held: Stored, today: date, span_days: int = SPAN_DAYS) -> Own:
    """Find what the recordings tell as of a day."""
    from tercet.engine import recorded, steady
    from tercet.library.library import fingerprint_of, of_earlier

    outdoor = [item for item in held.prints if item.kind != "treadmill" and item.day <= today]

    def since(days: int) -> list[RunPrint]:
        return [item for item in outdoor if item.day > today - timedelta(days=days)]

    asked = since(max(span_days, STEADY_DAYS))
    prints = {item.id: fingerprint_of(item.fingerprint) for item in asked}

    span = [prints[item.id] for item in since(span_days)]
    found, refusal = None, ""
    try:
        found = recorded.from_recordings(span)
    except ValueError as error:
        looked = several(
            len(span),
            mark("Looked at: {n} run of the last {days} days."),
            mark("Looked at: {n} runs of the last {days} days."),
            days=span_days,
        )
        refusal = f"{worded(str(error))} {looked}"
    late = [item for item in since(STEADY_DAYS) if prints[item.id].steady_at]
    pieces = steady.pieces_of([prints[item.id] for item in late])
    now = in_force(held.entries, today)
    met: list[Meeting | None] = []
    silence = ""
    for beats in (now.values.lt1_hr, now.values.lt2_hr) if now is not None else ():
        try:
            met.append(steady.meeting(pieces, beats) if beats is not None else None)
        except ValueError as error:
            met.append(None)
            looked = tr("Looked at: the last {days} days.", days=STEADY_DAYS)
            silence = silence or f"{worded(str(error))} {looked}"
    if not met or (now is not None and now.values.lt1_hr is None):
        silence = tr("No heart rate at LT1 is in force.")
    ceiling, hard_end = met if met else (None, None)
    return Own(
        found,
        refusal,
        ceiling,
        silence,
        hard_end,
        tuple(item.day for item in late),
        _range([prints[item.id] for item in late]),
        sum(of_earlier(item.fingerprint) for item in outdoor),
    )


def _range(runs: Sequence[Fingerprint]) -> tuple[float, float] | None:
    known = [run.warmth for run in runs if run.warmth is not None]
    return (min(known), max(known)) if known else None


def flags(held: Stored, today: date) -> tuple[Flag, ...]:
    """What contradicts the lines in force, or makes them doubtful; those left are left out."""
    entry = in_force(held.entries, today)
    if entry is None:
        return ()
    found = [*_old(held, entry, today), *_warm(held, entry, today), *_fast(held, entry, today)]
    return tuple(flag for flag in found if flag.key not in held.left)


def _old(held: Stored, entry: DatedThresholds, today: date) -> list[Flag]:
    ran_lately = any(item.day > today - timedelta(days=OLD_DAYS) for item in held.prints)
    age = (today - entry.age_from).days
    if age <= OLD_DAYS or not ran_lately:
        return []
    reason = tr(
        "The lines in force are of {day}, {n} weeks ago. "
        "Lines move with training; after about 8 weeks they are worth finding anew.",
        day=tr("{day} {year}", day=_day(entry.age_from), year=entry.age_from.year),
        n=age // 7,
    )
    # Asked again when another eight weeks have passed.
    return [Flag(f"old {entry.age_from} {age // OLD_DAYS}", reason, (), "recordings")]


def _warm(held: Stored, entry: DatedThresholds, today: date) -> list[Flag]:
    beats = entry.values.lt1_hr
    if beats is None:
        return []
    above = [
        item
        for item in held.prints
        if max(entry.start, today - timedelta(days=LONG_DAYS)) <= item.day <= today
        and item.moving_s >= LONG_S
        and (item.easy_share or 0.0) >= EASY_SHARE
        and (item.hr_mean or 0.0) > beats
    ]
    if len(above) < 2:
        return []
    days = ", ".join(_day(item.day) for item in above)
    reason = tr(
        "{n} long runs stayed at easy pace with mean heart rate over LT1 ({beats} /min): {days}. "
        "Warm days, tiredness, illness, or an LT1 that is too fast.",
        n=len(above),
        beats=number(beats),
        days=days,
    )
    ids = tuple(item.id for item in above)
    return [Flag(f"warm {entry.start} {ids[-1]}", reason, ids, "recordings")]


def _fast(held: Stored, entry: DatedThresholds, today: date) -> list[Flag]:
    from tercet.engine.fingerprint import EFFORT_S
    from tercet.library.library import fingerprint_of

    speed = entry.values.lt2_speed
    if speed is None:
        return []
    out = []
    for item in held.prints:
        if not entry.start <= item.day <= today or item.kind == "treadmill":
            continue
        best = fingerprint_of(item.fingerprint).best_m
        for seconds, factor in ((1800, HALF_HOUR), (3600, HOUR)):
            held_speed = best[EFFORT_S.index(seconds)] / seconds
            if held_speed > factor * speed:
                reason = tr(
                    "{day}: {n} minutes faster than an LT2 of {lt2} allows ({held} on the "
                    "level). LT2 may be faster, or the positions of that run off.",
                    day=_day(item.day),
                    n=seconds // 60,
                    lt2=_pace(speed),
                    held=_pace(held_speed),
                )
                out.append(Flag(f"fast {item.id}", reason, (item.id,), "race"))
                break
    return out[-1:]


def _day(day: date) -> str:
    return tr("{day} {month}", day=day.day, month=month(day.month))


def _pace(speed: float) -> str:
    whole = round(units.metres() / speed)
    return f"{whole // 60}:{whole % 60:02d} {units.pace_word()}"


def leave(store: Store, key: str, today: date) -> Changes:
    """Leave a flag as it is: it is not shown again for this reason."""
    left = json.loads(queries.setting(store, "flags_left", "{}"))
    left[key] = today.isoformat()
    step = tr("Leave it as it is")
    with store.atomic(step):
        store.put("setting", {"name": "flags_left", "value": json.dumps(left)})
    return Changes(settings=True, step=step)


def keep_test(
    store: Store, day: date, kind: str, rows: Mapping[str, Any], test_id: int | None = None
) -> Changes:
    """Keep a test as it was typed, in place of an earlier state of it."""
    step = tr("Keep a test")
    row = {"day": day.isoformat(), "kind": kind, "rows": json.dumps(dict(rows)), "note": ""}
    with store.atomic(step, ("test", test_id)):
        store.put("test", row if test_id is None else {**row, "id": test_id})
    return Changes(thresholds=True, step=step)


def remove_test(store: Store, test_id: int) -> Changes:
    """Remove a kept test; undo brings it back."""
    step = tr("Remove a test")
    with store.atomic(step):
        store.remove("test", test_id)
    return Changes(thresholds=True, step=step)


def field_test(store: Store, run_id: int) -> FieldTest:
    """Find the field test in a stored run.

    Raises
    ------
    ValueError
        If there is none; the message says what was sought.
    """
    from tercet.engine import field_test as engine_field_test
    from tercet.library.stored import stored_judgement

    row = queries.run(store, run_id)
    if row is None:
        raise ValueError(tr("That run is no longer there."))
    packed = queries.streams(store, row["sha256"], row["part"])
    judged = stored_judgement(packed, row["stops"], None)
    running = judged.shades != Shade.NOT_RUNNING
    try:
        return engine_field_test.recognise(judged.level_speed, running, judged.heart_rate)
    except ValueError as error:
        raise ValueError(worded(str(error))) from error


def paired(values: Thresholds, now: DatedThresholds | None) -> Thresholds:
    """Give a lone LT2 heart rate its LT1: as far below it as in force, else none of the two."""
    if values.lt2_hr is None or values.lt1_hr is not None:
        return values
    known = now.values if now is not None else Thresholds()
    if known.lt1_hr is None or known.lt2_hr is None:
        return replace(values, lt2_hr=None)
    return replace(values, lt1_hr=known.lt1_hr / known.lt2_hr * values.lt2_hr)


def read_again(library: Library, tell: Callable[[Progress], None], stop: Event) -> Changes:
    """Take anew the fingerprints that an earlier version kept, as one undo step. Blocks."""
    from tercet.library.importing import Progress
    from tercet.library.library import of_earlier

    old = [
        item.id for item in library.call(lines_queries.run_prints) if of_earlier(item.fingerprint)
    ]
    taken: dict[int, str] = {}
    for run_id in old:
        if stop.is_set():
            break
        taken[run_id] = library.call(_fingerprint, run_id)
        tell(Progress(len(taken), len(old), "reading"))
    return library.call(_put_fingerprints, taken)


def _fingerprint(store: Store, run_id: int) -> str:
    from tercet.engine.fingerprint import fingerprint
    from tercet.library import reading
    from tercet.library.stored import stored_judgement
    from tercet.store import packing

    row = queries.run(store, run_id)
    if row is None:
        raise LookupError(f"no run {run_id}")
    packed = queries.streams(store, row["sha256"], row["part"])
    judged = stored_judgement(packed, row["stops"], None)
    _, streams = packing.unpack_streams(packed)
    return json.dumps(asdict(fingerprint(judged, reading.mean_warmth(streams))))


def _put_fingerprints(store: Store, taken: Mapping[int, str]) -> Changes:
    step = tr("Read earlier runs again")
    with store.atomic(step):
        for run_id, text in taken.items():
            store.put("run", {"id": run_id, "fingerprint": text})
    return Changes(thresholds=True, step=step)
