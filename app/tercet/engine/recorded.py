"""Both lines from a runner's own recordings: critical speed and steady running."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tercet.engine import critical, steady
from tercet.engine.estimate import LT1_OVER_LT2, LT2_OVER_CRITICAL, Estimate
from tercet.engine.fingerprint import Fingerprint
from tercet.engine.scale import Thresholds

#: Half-widths of 90 % intervals of the two published shares, as shares of the speed: between
#: MLSS and critical speed, and LT1's share, the rougher of the two. [trial]
LT2_SHARE_HALF, LT1_SHARE_HALF = 0.025, 0.075
#: Weights of :func:`steady.relation` about the two lines. [trial]
LT1_WIDTH, LT2_WIDTH = 0.15, 0.08
#: With less running near LT2 than this its heart rate is not told. [days' worth] [trial]
LEAST_SUPPORT = 0.5


@dataclass(frozen=True)
class Recorded:
    """What recordings tell, each with a 90 % interval, and in words what they do not."""

    critical: critical.Critical
    estimate: Estimate
    silence: tuple[str, ...] = ()


def usual_speed(runs: Sequence[Fingerprint]) -> float:
    """Median of the runs' median level speeds, 0 without any. [m/s]"""
    known = [run.typical_speed for run in runs if run.typical_speed >= 1.0]
    return float(np.median(known)) if known else 0.0


def from_recordings(
    runs: Sequence[Fingerprint], span: Sequence[Fingerprint] | None = None
) -> Recorded:
    """Find both lines from hard efforts and steady running.

    Parameters
    ----------
    runs : sequence of Fingerprint
        Outdoor running of the last weeks.
    span : sequence of Fingerprint or None
        Those whose efforts count, if not all.

    Returns
    -------
    Recorded

    Raises
    ------
    ValueError
        With the plain reason why efforts do not tell critical speed.
    """
    efforts = [effort for run in span or runs for effort in run.efforts or ()]
    found = critical.critical_speed(critical.hard_efforts(efforts, usual_speed(runs)))
    lt2 = LT2_OVER_CRITICAL * found.speed
    lt2_half = float(np.hypot(LT2_OVER_CRITICAL * found.speed_half, LT2_SHARE_HALF * lt2))
    lt1 = LT1_OVER_LT2 * lt2
    lt1_half = float(np.hypot(LT1_OVER_LT2 * lt2_half, LT1_SHARE_HALF * lt1))
    values = {"lt1_speed": lt1, "lt2_speed": lt2}
    interval = {"lt1_speed": lt1_half, "lt2_speed": lt2_half}
    silence: list[str] = []
    pieces = steady.pieces_of(runs)
    try:
        high = steady.relation(pieces, lt2, LT2_WIDTH)
        low = steady.relation(pieces, lt1, LT1_WIDTH)
    except ValueError as error:
        silence.append(f"Heart rates: {error}")
    else:
        if high.support < LEAST_SUPPORT:
            silence.append("Heart rates: there was no steady running near LT2.")
        elif low.heart_rate < high.heart_rate:
            values |= {"lt1_hr": low.heart_rate, "lt2_hr": high.heart_rate}
            interval |= {
                "lt1_hr": float(np.hypot(low.half, low.gain * lt1_half)),
                "lt2_hr": float(np.hypot(high.half, 0.5 * high.gain * lt2_half)),
            }
    count = len(found.efforts)
    return Recorded(
        found,
        Estimate(Thresholds(**values), interval, f"{count} hard efforts recorded"),
        tuple(silence),
    )
