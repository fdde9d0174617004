"""Lactate step tests: where each published method puts LT1 or LT2, and why one cannot."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

#: A cubic needs one step more than it has coefficients to be more than a drawing.
FEWEST_STEPS = 5
#: Lactate must rise by so much from its lowest to the last step. [mmol/L] (common practice)
SMALLEST_RISE = 1.0
#: The first rise by so much begins modified Dmax's chord (Bishop et al. 1998). [mmol/L]
FIRST_RISE = 0.4


@dataclass(frozen=True, eq=False)
class StepTest:
    """A checked step test; arrays of one length, one entry a step."""

    speeds: Floats  # [m/s], rising; the last one lowered if its step was not finished
    lactates: Floats  # [mmol/L]
    heart_rates: Floats  # [beats/min], NaN where not taken
    resting: float  # lactate before the first step, NaN if not taken [mmol/L]


@dataclass(frozen=True)
class Candidate:
    """What one method says; ``speed`` is NaN and ``reason`` says why if it says nothing."""

    method: str
    line: str  # "LT1" or "LT2"
    speed: float = float("nan")  # [m/s]
    lactate: float = float("nan")  # [mmol/L]
    heart_rate: float = float("nan")  # [beats/min]
    reason: str = ""


def step_test(
    speeds: ArrayLike,
    lactates: ArrayLike,
    heart_rates: ArrayLike | None = None,
    lengths: ArrayLike | None = None,
    *,
    resting: float = float("nan"),
) -> StepTest:
    """Check a table and set down what was really run in a last step broken off.

    Parameters
    ----------
    speeds, lactates : array_like, shape (n,)
        One step each, in order. [m/s], [mmol/L]
    heart_rates : array_like, shape (n,), or None
        At the end of each step, NaN where not taken. [beats/min]
    lengths : array_like, shape (n,), or None
        Time run in each step. If the last is shorter than the one before, its speed counts as
        the one before plus that share of the increase. [s]
    resting : float
        Lactate before the first step if taken. [mmol/L]

    Returns
    -------
    StepTest

    Raises
    ------
    ValueError
        With too few steps, or values that cannot be; the message names the step.
    """
    v = np.array(speeds, dtype=np.float64)
    lactate = np.array(lactates, dtype=np.float64)
    n = len(v)
    hr = np.full(n, np.nan) if heart_rates is None else np.array(heart_rates, dtype=np.float64)
    if not len(lactate) == len(hr) == n:
        raise ValueError("every step needs its speed and its lactate")
    if n < FEWEST_STEPS:
        raise ValueError(f"{n} steps are too few: {FEWEST_STEPS} at least tell a curve")
    for k in range(n):
        if not 0.8 <= v[k] <= 9.0:
            raise ValueError(f"step {k + 1}: no running speed")
        if not 0.1 <= lactate[k] <= 30.0:
            raise ValueError(f"step {k + 1}: lactate must lie between 0.1 and 30 mmol/L")
        if np.isfinite(hr[k]) and not 25 <= hr[k] <= 250:
            raise ValueError(f"step {k + 1}: heart rate must lie between 25 and 250 beats/min")
        if k and v[k] <= v[k - 1]:
            raise ValueError(f"step {k + 1} is not faster than the one before")
    if lengths is not None:
        time = np.asarray(lengths, dtype=np.float64)
        if len(time) != n or not (np.isfinite(time) & (time > 0)).all():
            raise ValueError("every step needs its length, or none")
        share = min(1.0, float(time[-1] / time[-2]))
        v[-1] = v[-2] + share * (v[-1] - v[-2])
    if lactate[-1] - lactate.min() < SMALLEST_RISE:
        raise ValueError(
            f"lactate rises by less than {SMALLEST_RISE:g} mmol/L: the test ended too early to tell"
        )
    return StepTest(v, lactate, hr, float(resting))


def curve(test: StepTest, speeds: ArrayLike) -> Floats:
    """The cubic through the steps by least squares, for drawing and for the methods.

    Parameters
    ----------
    test : StepTest
    speeds : array_like
        Within those of the test. [m/s]

    Returns
    -------
    ndarray of float64
        [mmol/L]
    """
    return np.asarray(np.polyval(_cubic(test), np.asarray(speeds, dtype=np.float64)))


def _cubic(test: StepTest) -> Floats:
    centre, width = test.speeds.mean(), float(np.ptp(test.speeds)) / 2
    scaled = np.polyfit((test.speeds - centre) / width, test.lactates, 3)
    inner = np.poly1d([1 / width, -centre / width])
    return np.asarray(np.poly1d(scaled)(inner).coefficients, dtype=np.float64)


def candidates(test: StepTest) -> tuple[Candidate, ...]:
    """Put every method's line on a test.

    Parameters
    ----------
    test : StepTest

    Returns
    -------
    tuple of Candidate
        LT1: log-log [1]_, baseline + 0.5 and + 1.0 [2]_, fixed 2.0. LT2: Dmax [3]_, modified
        Dmax [4]_, fixed 4.0 [5]_. Nothing is extrapolated beyond the steps run.

    Notes
    -----
    Fixed values and baseline + are crossings of the cubic where it rises; baseline is the
    resting value if it was taken, else the lowest step. Dmax leaves rest out and draws its
    chord between measured points. Heart rate is read from the straight line through the steps.

    References
    ----------
    .. [1] W. L. Beaver, K. Wasserman, B. J. Whipp, J. Appl. Physiol. 59:1936-1940, 1985.
    .. [2] A. Berg et al., 1990; J. A. Zoladz et al., J. Physiol. 488, 1995.
    .. [3] B. Cheng et al., Int. J. Sports Med. 13:518-522, 1992.
    .. [4] D. Bishop, D. G. Jenkins, L. T. Mackinnon, Med. Sci. Sports Exerc. 30:1270-1275, 1998.
    .. [5] A. Mader et al., Sportarzt Sportmed. 27:80-88, 1976.
    """
    baseline = test.resting if np.isfinite(test.resting) else float(test.lactates.min())
    methods: tuple[tuple[str, str, Callable[[], float]], ...] = (
        ("log-log", "LT1", lambda: _log_log(test)),
        ("baseline + 0.5", "LT1", lambda: _crossing(test, baseline + 0.5)),
        ("baseline + 1.0", "LT1", lambda: _crossing(test, baseline + 1.0)),
        ("fixed 2.0", "LT1", lambda: _crossing(test, 2.0)),
        ("Dmax", "LT2", lambda: _farthest(test, 0)),
        ("modified Dmax", "LT2", lambda: _farthest(test, _before_first_rise(test))),
        ("fixed 4.0", "LT2", lambda: _crossing(test, 4.0)),
    )
    out = []
    for name, line, method in methods:
        found = Candidate(name, line)
        try:
            speed = method()
        except ValueError as error:
            out.append(replace(found, reason=str(error)))
            continue
        lactate = float(curve(test, speed))
        out.append(replace(found, speed=speed, lactate=lactate, heart_rate=_heart(test, speed)))
    return tuple(out)


def middle(found: Sequence[Candidate], line: str) -> Candidate | None:
    """The candidate in the middle of its line's group, the slower of two; None without any."""
    group = sorted(
        (c for c in found if c.line == line and not c.reason), key=lambda item: item.speed
    )
    return group[(len(group) - 1) // 2] if group else None


def _heart(test: StepTest, speed: float) -> float:
    known = np.isfinite(test.heart_rates)
    if np.count_nonzero(known) < 3:
        return float("nan")
    return float(np.polyval(np.polyfit(test.speeds[known], test.heart_rates[known], 1), speed))


def _crossing(test: StepTest, level: float) -> float:
    """Speed at which the curve rises through a lactate for good."""
    low, high = float(test.speeds[0]), float(test.speeds[-1])
    cubic = _cubic(test)
    shifted = cubic.copy()
    shifted[-1] -= level
    roots = np.roots(shifted)
    real = roots.real[np.abs(roots.imag) < 1e-7]
    rising = np.polyval(np.polyder(cubic), real) > 0
    inside = real[rising & (real >= low) & (real <= high)]
    if len(inside):
        return float(inside.max())
    if np.polyval(cubic, high) < level:
        raise ValueError(f"{level:.1f} mmol/L was not reached")
    raise ValueError(f"already above {level:.1f} mmol/L in the first step")


def _before_first_rise(test: StepTest) -> int:
    rises = np.flatnonzero(np.diff(test.lactates) >= FIRST_RISE)
    if len(rises) == 0:
        raise ValueError(f"no step rises by {FIRST_RISE:g} mmol/L")
    return int(rises[0])


def _farthest(test: StepTest, first: int) -> float:
    """Where the curve lies farthest below the chord from a step to the last."""
    v, lactate = test.speeds, test.lactates
    if len(v) - first < 3:
        raise ValueError("lactate rises only in the last step")
    chord = (lactate[-1] - lactate[first]) / (v[-1] - v[first])
    if chord <= 0:
        raise ValueError("lactate ends no higher than it began")
    slope = np.polyder(_cubic(test))
    slope[-1] -= chord
    roots = np.roots(slope)
    real = roots.real[np.abs(roots.imag) < 1e-9]
    inside = real[(real > v[first]) & (real < v[-1])]
    if len(inside) == 0:
        raise ValueError("the curve has no bend below its chord")
    return float(inside.max())


def _log_log(test: StepTest) -> float:
    """Break of two straight lines that meet, in logarithms, by least squares."""
    x, y = np.log(test.speeds), np.log(test.lactates)
    best, at = np.inf, np.nan
    for knee in np.linspace(x[1], x[-2], 400):
        table = np.stack([np.ones_like(x), x, np.maximum(x - knee, 0.0)], axis=1)
        weights, *_ = np.linalg.lstsq(table, y, rcond=None)
        rest = float(((y - table @ weights) ** 2).sum())
        if rest < best and weights[2] > 0:
            best, at = rest, knee
    if not np.isfinite(at):
        raise ValueError("the lines in logarithms do not bend upwards")
    return float(np.exp(at))
