"""Thresholds that nobody has measured, from whatever the recordings show; always an estimate."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from tercet.engine import physiology
from tercet.engine.fingerprint import EFFORT_S, Fingerprint
from tercet.engine.judging import HEART_RATE_GAIN
from tercet.engine.scale import Thresholds

#: VT1 and VT2 at 67 and 84 % of maximal treadmill speed: Condello et al., J. Sports Sci. Med.
#: 13:309-314, 2014; their ratio gives LT1 from LT2.
LT1_OVER_LT2 = 67 / 84
#: LT2 is put midway between the maximal lactate steady state (0.927 of critical speed: Nixon et
#: al., Eur. J. Appl. Physiol. 121(11), 2021) and critical speed itself.
LT2_OVER_CRITICAL = (0.927 + 1.0) / 2
#: Maximal heart rate of a runner of whom nothing is known, and its 90 % half-width. [memory]
UNKNOWN_MAXIMUM = (186.0, 17.0)
#: Race pace of about an hour is close to LT2 (common practice, no source). [s]
HOUR_S = 3600.0
#: A highest heart rate counts if this many other runs came within so many beats of it. [trial]
TOP_SUPPORT = (3, 4.0)
#: Above this a sensor is believed to be at fault. [beats/min] (common practice, no source)
HIGHEST_MAXIMUM = 210.0
#: Half-widths of LT1's and LT2's speed as shares: they held the truth for 9 of 10 simulated
#: runners after 6 to 40 runs. [trial]
HEART_RATE_WIDTHS = (0.27, 0.24)
PACE_WIDTHS = (0.21, 0.21)
#: LT2 outside this is a sensor's fault. [m/s] (common practice, no source)
PLAUSIBLE_LT2 = (1.8, 6.5)


@dataclass(frozen=True)
class Estimate:
    """Thresholds with half-widths of 90 % intervals and where each came from, in words."""

    values: Thresholds
    interval: Mapping[str, float] = field(default_factory=dict)
    source: str = ""


def from_race(distance: float, time: float) -> Estimate:
    """Speeds at LT1 and LT2 from one race.

    Parameters
    ----------
    distance : float
        [m]
    time : float
        [s]; 3.5 to 230 min, where the power law holds.

    Returns
    -------
    Estimate
        Speeds only. LT2 is the race speed for one hour by two models, midway; half their
        difference and the common-practice nature of the rule make the interval.

    Raises
    ------
    ValueError
        Outside the range of the power law, or at a speed that cannot be.
    """
    if not 210 <= time <= 13_800:
        raise ValueError("a race of 3.5 to 230 minutes tells; shorter and longer ones don't")
    if not 1.5 <= distance / time <= 7.5:
        raise ValueError(f"{distance:g} m in {time:g} s is no running speed")
    power = physiology.speed_for_duration(time, distance, HOUR_S)
    capacity = physiology.aerobic_capacity(distance, time)
    low, high = 1.0, 9.0
    wanted = capacity * float(physiology.sustainable_share(HOUR_S))
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (
            (middle, high) if float(physiology.oxygen_cost(middle)) < wanted else (low, middle)
        )
    oxygen = (low + high) / 2
    lt2 = (power + oxygen) / 2
    half = max(0.03 * lt2, abs(power - oxygen))
    return Estimate(
        Thresholds(lt1_speed=LT1_OVER_LT2 * lt2, lt2_speed=lt2),
        {"lt1_speed": 0.08 * lt2, "lt2_speed": half},
        "one race",
    )


def heart_rates_from_maximum(maximum: float, half_width: float = 5.0) -> Estimate:
    """Heart rates at LT1 and LT2 from the maximum alone.

    Parameters
    ----------
    maximum : float
        Maximal heart rate. [beats/min]
    half_width : float
        90 % half-width of the maximum itself. [beats/min]

    Returns
    -------
    Estimate
        Heart rates only: VT1 and VT2 at 67 and 84 % of maximal speed (Condello 2014) carried to
        heart rate by Swain 1994. The spread between runners (9 and 6 points) is in the interval.
    """
    at = physiology.share_of_maximal_heart_rate([0.67, 0.84])
    lt1, lt2 = (float(a) * maximum for a in at)
    spread = 1.645 * 0.64 * maximum
    return Estimate(
        Thresholds(lt1_hr=lt1, lt2_hr=lt2, hr_max=maximum),
        {
            "lt1_hr": float(np.hypot(0.09 * spread, float(at[0]) * half_width)),
            "lt2_hr": float(np.hypot(0.06 * spread, float(at[1]) * half_width)),
            "hr_max": half_width,
        },
        "maximal heart rate",
    )


def from_runs(
    runs: Sequence[Fingerprint],
    *,
    maximum: float | None = None,
    maximum_half_width: float = 5.0,
    race: Estimate | None = None,
) -> Estimate | None:
    """Estimate both lines from recordings and whatever else is known.

    Parameters
    ----------
    runs : sequence of Fingerprint
        Running only, any order.
    maximum : float or None
        Maximal heart rate if known, with its half-width. [beats/min]
    race : Estimate or None
        From :func:`from_race`; its speeds are taken before anything the recordings say.

    Returns
    -------
    Estimate or None
        None if neither speed nor heart rate is there. Intervals are wide on purpose.
    """
    values: dict[str, float] = {}
    interval: dict[str, float] = {}
    sources: list[str] = []
    tops = sorted((run.hr_top for run in runs if run.hr_top > 0), reverse=True)
    if tops or maximum is not None:
        if maximum is None:
            top = _supported(tops)
            maximum, maximum_half_width = (
                (top + 2.0, 6.0) if top >= UNKNOWN_MAXIMUM[0] - 8 else UNKNOWN_MAXIMUM
            )
            sources.append(
                "highest heart rate recorded"
                if maximum != UNKNOWN_MAXIMUM[0]
                else "a usual maximal heart rate, none was recorded"
            )
        else:
            sources.append("maximal heart rate")
        rates = heart_rates_from_maximum(maximum, maximum_half_width)
        lows = [run.hr_low for run in runs if run.hr_low > 0]
        values |= {
            "lt1_hr": rates.values.lt1_hr or 0.0,
            "lt2_hr": rates.values.lt2_hr or 0.0,
            "hr_max": maximum,
            "hr_rest": min(60.0, min(lows, default=60.0) - 5.0),
        }
        values["hr_rest"] = max(values["hr_rest"], 35.0)
        interval |= dict(rates.interval)
    speeds, widths, source = _speeds(runs, values, race)
    if speeds:
        values |= speeds
        interval |= widths
        sources.append(source)
    if "lt1_hr" not in values and "lt1_speed" not in values:
        return None
    return Estimate(Thresholds(**values), interval, ", ".join(sources))


def _supported(tops: Sequence[float]) -> float:
    """Take the highest value that other runs bear out: a sensor's artefact stands alone.

    Zero if none is. A runner who never went hard shows too little all the same.
    """
    for place, top in enumerate(tops):
        near = sum(other >= top - TOP_SUPPORT[1] for other in tops[place + 1 :])
        if top <= HIGHEST_MAXIMUM and near >= min(TOP_SUPPORT[0], len(tops) - place - 1):
            return top
    return 0.0


def _speeds(
    runs: Sequence[Fingerprint], rates: Mapping[str, float], race: Estimate | None
) -> tuple[dict[str, float], dict[str, float], str]:
    if race is not None and race.values.lt1_speed and race.values.lt2_speed:
        speeds = {"lt1_speed": race.values.lt1_speed, "lt2_speed": race.values.lt2_speed}
        return speeds, dict(race.interval), race.source
    typical = [run.typical_speed for run in runs if run.typical_speed >= 1.0]
    if not typical:
        return {}, {}, ""
    usual = float(np.median(typical))
    by_heart = _by_heart_rate(runs, rates)
    if by_heart is not None:
        lt2, widths, source = by_heart, HEART_RATE_WIDTHS, "heart rate in steady running"
    else:
        # Most running of most runners is below LT1, and that is all that pace alone says.
        lt2, widths, source = 1.06 * usual / LT1_OVER_LT2, PACE_WIDTHS, "usual pace alone"
    fit = _critical(runs, usual)
    best = LT2_OVER_CRITICAL * fit.speed if fit is not None else 0.0
    # Efforts in training are seldom all out: they can only say that LT2 is higher.
    if lt2 < best < PLAUSIBLE_LT2[1]:
        lt2, source = best, "best efforts recorded"
    lt1 = LT1_OVER_LT2 * lt2
    return (
        {"lt1_speed": lt1, "lt2_speed": lt2},
        {"lt1_speed": widths[0] * lt1, "lt2_speed": widths[1] * lt2},
        source,
    )


def _by_heart_rate(runs: Sequence[Fingerprint], rates: Mapping[str, float]) -> float | None:
    """Speed at which steady running would meet LT2's heart rate, by the published gain."""
    heart = np.array([hr for run in runs for hr in run.steady_hr])
    speed = np.array([v for run in runs for v in run.steady_speed])
    if "lt2_hr" not in rates or len(heart) == 0:
        return None
    at_lt2 = float(np.median(speed + (rates["lt2_hr"] - heart) / HEART_RATE_GAIN))
    return at_lt2 if PLAUSIBLE_LT2[0] < at_lt2 < PLAUSIBLE_LT2[1] else None


def _critical(runs: Sequence[Fingerprint], usual: float) -> physiology.CriticalSpeed | None:
    """Critical speed, if the recordings hold efforts clearly harder than usual running."""
    table = np.array([run.best_m for run in runs]).reshape(len(runs), len(EFFORT_S))
    best = table.max(axis=0)
    times = np.array(EFFORT_S, dtype=np.float64)
    window = (times >= 120) & (times <= 1200) & (best > 0)
    if np.count_nonzero(window) < 3:
        return None
    at_five_minutes = best[EFFORT_S.index(300)] / 300
    at_twenty_minutes = best[EFFORT_S.index(1200)] / 1200
    if at_five_minutes < 1.18 * usual or at_twenty_minutes < 1.10 * usual:
        return None
    fit = physiology.critical_speed(best[window], times[window])
    return fit if 20.0 <= fit.reserve <= 600.0 else None
