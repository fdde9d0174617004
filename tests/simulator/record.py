"""One simulated recording: truth, and what the watch kept of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime

import numpy as np

from tests.simulator.conditions import Conditions, draw_conditions
from tests.simulator.heart import heart_rate
from tests.simulator.motion import move, truth
from tests.simulator.noise import Floats, stream
from tests.simulator.runner import Runner
from tests.simulator.sensor import sense
from tests.simulator.sessions import Session
from tests.simulator.timer import Lap, kept, laps, stops
from tests.simulator.watch import true_cadence, watch

EPOCH = datetime(2026, 4, 14, 5, 0, tzinfo=UTC)


@dataclass(frozen=True, eq=False)
class Simulated:
    """A recording with its truth.

    ``samples`` holds arrays of one length, NaN where the watch kept nothing: ``time`` [s from
    the start, whole seconds], ``heart_rate`` [beats/min], ``speed`` [m/s], ``distance`` [m],
    ``latitude``, ``longitude`` [degrees], ``altitude`` [m], ``cadence`` [steps/min].
    ``truth`` has one letter for every second from the first sample to the last, R where the
    timer stood. ``repetitions`` are (start_s, duration_s, metres) of every bout meant as work,
    ``repetition_shades`` the letter most of its seconds have.
    """

    kind: str
    session: Session
    runner: Runner
    conditions: Conditions
    samples: dict[str, Floats]
    truth: str
    repetitions: list[tuple[int, int, float]]
    repetition_shades: str
    stops: list[tuple[int, int]]
    laps: list[Lap]
    true_heart_rate: Floats  # every second, before any sensor
    demand: Floats  # level-equivalent speed of every second [m/s]
    start: datetime = EPOCH
    utc_offset_s: int = 7200

    @property
    def elapsed_s(self) -> int:
        """Seconds from the first sample to the last."""
        return len(self.truth)

    def seconds(self) -> dict[str, int]:
        """True seconds by letter."""
        return {letter: self.truth.count(letter) for letter in "EMHRU"}


def _common(letters: str) -> str:
    return max("EMHR", key=letters.count)


def simulate(
    runner: Runner,
    session: Session,
    seed: int,
    *,
    start: datetime = EPOCH,
    utc_offset_s: int = 7200,
    **conditions: object,
) -> Simulated:
    """Run a session and record it.

    Parameters
    ----------
    runner, session
        Who and what; see :func:`draw_runner` and :func:`prescribe`.
    seed : int
        Same seed, same recording.
    start : datetime
        Aware, in UTC.
    **conditions
        Fields of :class:`Conditions`; those not given are drawn.
    """
    met = draw_conditions(stream(seed, 0), session, **conditions)
    motion = move(runner, session, met, seed)
    heart = heart_rate(motion, runner, met, seed)
    shown = watch(motion, runner, met, seed)
    shade = truth(motion, runner)
    repetition_shades = "".join(_common(shade[a : a + n]) for a, n, _ in motion.repetitions)
    pauses = stops(motion, met, seed)
    for first, last in pauses:
        shade = shade[:first] + "R" * (last - first) + shade[last:]
    time = kept(motion, shown.speed, pauses, met, seed)
    at = time.astype(np.int64)
    sensed = sense(heart, true_cadence(motion, runner, seed), met, seed)
    return Simulated(
        kind=session.kind,
        session=session,
        runner=runner,
        conditions=met,
        samples={
            "time": time,
            "heart_rate": sensed[at],
            "speed": np.round(shown.speed[at], 3),
            "distance": np.round(shown.distance[at], 2),
            "latitude": np.round(shown.latitude[at], 7),
            "longitude": np.round(shown.longitude[at], 7),
            "altitude": shown.altitude[at],
            "cadence": shown.cadence[at],
        },
        truth=shade,
        repetitions=motion.repetitions,
        repetition_shades=repetition_shades,
        stops=pauses,
        laps=laps(motion, shown.distance, pauses, met.laps),
        true_heart_rate=heart[:-1],
        demand=motion.demand,
        start=start,
        utc_offset_s=utc_offset_s,
    )
