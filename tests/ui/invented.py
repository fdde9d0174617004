"""An invented runner's season and sessions for the tests of the screens."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import numpy as np
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from tercet.engine.judgement import Repetition
from tercet.engine.scale import Shade
from tercet.library.trace import SessionTrace
from tercet.library.views import ZERO, BlockView, BuildUp, Five, RaceView, SessionView
from tercet.ui import theme as themes

TODAY = date(2026, 6, 17)
RACES = (RaceView(1, date(2026, 5, 10), "10 km"), RaceView(2, date(2026, 7, 26), "Half"))
#: Name, first day, days, hours a week of easy, moderate and hard.
SEASON = (
    ("Groundwork", date(2026, 3, 2), 35, (5.4, 0.15, 0.2)),
    ("Hills", date(2026, 4, 6), 35, (5.1, 0.2, 0.4)),
    ("Threshold", date(2026, 5, 11), 28, (5.0, 1.3, 0.3)),
    ("Sharpening", date(2026, 6, 8), 28, (5.4, 0.4, 0.8)),
)


def plain_look(app: QApplication) -> None:
    """Delete what earlier tests have closed, and put the light look on at 100 %."""
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    themes.apply(app, dark=False, scale=1.0)


def block(
    name: str,
    start: date,
    days: int,
    seconds: tuple[float, float, float] = (0.0, 0.0, 0.0),
    *,
    target: float = 0.8,
    estimated: bool = False,
) -> BlockView:
    total = sum(seconds)
    five: Five = (*seconds, 0.0, 0.0)
    return BlockView(
        id=1,
        name=name,
        kind="base",
        start=start,
        end=start + timedelta(days=days - 1),
        easy_target=target,
        weeks=(),
        seconds=five,
        metres=(seconds[0] * 2.8, seconds[1] * 3.6, seconds[2] * 4.3, 0.0, 0.0),
        easy_share=seconds[0] / total if total else None,
        estimated=estimated,
    )


def straight(
    name: str,
    start: date,
    days: int,
    hours: tuple[float, float, float],
    *,
    run_days: int | None = None,
    metres: bool = False,
    target: float = 0.8,
    estimated: bool = False,
) -> BuildUp:
    """A block that grows by the same amount each day up to ``hours`` in all."""
    run = days if run_days is None else run_days
    seconds = tuple(h * 3600.0 for h in hours)
    view = block(name, start, days, seconds, target=target, estimated=estimated)
    ends = view.metres[:3] if metres else seconds
    lines = [tuple(np.linspace(0.0, end, run + 1).tolist()) for end in ends]
    first = start.toordinal()
    return BuildUp(view, tuple(range(first, first + run + 1)), *lines)


def season(*, metres: bool = False, seed: int = 5) -> list[BuildUp]:
    """Five blocks, the fourth under way today, the last to come; growing as weeks do."""
    rng = np.random.default_rng(seed)
    blocks = []
    for name, start, length, weekly in SEASON:
        run = min(length, max(0, (TODAY - start).days + 1))
        pattern = np.array(
            [
                [0.09, 0, 0],
                [0.15, 0.2, 0.6],
                [0.14, 0, 0],
                [0.15, 0.6, 0.4],
                [0, 0, 0],
                [0.12, 0, 0],
                [0.35, 0.2, 0],
            ]
        )
        daily = np.tile(pattern, (6, 1))[:run] * np.array(weekly) * 3600.0
        daily *= rng.uniform(0.7, 1.3, (run, 1))
        totals = daily.sum(axis=0)
        view = block(name, start, length, (totals[0], totals[1], totals[2]))
        if metres:
            daily = daily * np.array([2.8, 3.6, 4.3])
        sums = np.vstack((np.zeros(3), daily.cumsum(axis=0)))
        first = start.toordinal()
        blocks.append(BuildUp(view, tuple(range(first, first + run + 1)), *map(tuple, sums.T)))
    blocks.append(BuildUp(block("Races", date(2026, 7, 6), 21), (), (), (), ()))
    return blocks


def years(count: int) -> list[BuildUp]:
    """Ten blocks of five weeks a year, for timing."""
    start = TODAY - timedelta(days=35 * 10 * count)
    return [
        straight(f"Block {k}", start + timedelta(days=35 * k), 35, (25.0 + k % 3, 2.0 + k % 5, 2.5))
        for k in range(10 * count)
    ]


def hill_session(
    *, heart_rate: bool = True, altitude: bool = True, speed: bool = True, power: bool = False
) -> tuple[SessionView, SessionTrace]:
    """6 x 3 min uphill with warm-up, a stretch of moderate, and cool-down."""
    n = 4384
    rng = np.random.default_rng(3)
    wanted = np.full(n, 2.7)
    wanted[1100:1380] = 3.85
    repetitions = []
    for k in range(6):
        first = 1440 + 300 * k
        wanted[first : first + 180] = 4.1 + 0.04 * k
        repetitions.append(
            Repetition(first, 180.0, 722.0 + 6 * k, 4.02 + 0.03 * k, Shade.HARD, 120.0)
        )
    repetitions[-1] = Repetition(2940, 180.0, 752.0, 4.18, Shade.HARD, None)
    pace = np.convolve(np.pad(wanted, 15, mode="edge"), np.ones(31) / 31.0, "valid")
    pace = pace + np.convolve(rng.normal(0.0, 0.12, n + 8), np.ones(9) / 9.0, "valid")
    shades = np.full(n, Shade.EASY, dtype=np.uint8)
    shades[pace >= 1000.0 / 281.0] = Shade.MODERATE
    shades[pace >= 4.0] = Shade.HARD
    shades[3300:3360] = Shade.NOT_RUNNING
    shades[3360:3420] = Shade.UNJUDGED
    pace[3300:3360] = 0.1
    pace[3360:3420] = np.nan
    nothing = np.full(n, np.nan)
    beats = 118.0 + 14.0 * np.convolve(np.pad(pace, 60, mode="edge"), np.ones(121) / 121.0, "valid")
    trace = SessionTrace(
        seconds=np.arange(n, dtype=np.float64),
        shades=shades,
        level_speed=pace if speed else nothing,
        speed=pace * 0.97 if speed else nothing,
        heart_rate=beats if heart_rate else nothing,
        altitude=410.0 + 40.0 * np.sin(np.arange(n) / 300.0) if altitude else nothing,
        lt1_speed=1000.0 / 281.0,
        lt2_speed=4.0,
        lt1_hr=158.0,
        lt2_hr=172.0,
        repetitions=tuple(repetitions),
        power=72.0 * pace if power else np.zeros(0),
        lt1_power=256.0 if power else None,
        lt2_power=288.0 if power else None,
    )
    sums = np.bincount(shades, minlength=5).astype(float).tolist()
    view = SessionView(
        id=87,
        day=TODAY,
        start=datetime(2026, 6, 17, 6, 40),
        name="6 × 3 min uphill",
        sport="running",
        kind="",
        seconds=(sums[0], sums[1], sums[2], sums[3], sums[4]),
        metres=ZERO,
        elapsed_s=float(n),
        moving_s=float(n - 60),
        distance_m=14200.0,
        hr_mean=148.0,
        climb_m=212.0,
        effort=7,
        note="Wind at our backs on the odd ones.",
        repetitions="6 x 3 min",
    )
    return view, trace
