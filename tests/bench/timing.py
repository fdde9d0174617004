"""Timing of two calls in turn, so that a machine whose speed drifts does not spoil their ratio."""

from __future__ import annotations

import statistics
import subprocess
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Figure:
    """Medians of a call and of its floor, in seconds, and the median of their ratios."""

    name: str
    floor_name: str
    value_s: float
    floor_s: float
    ratio: float
    wanted: float | None = None

    def line(self) -> str:
        """One line of the table."""
        aim = "" if self.wanted is None else f"  (wanted <= {self.wanted:g})"
        return (
            f"{self.name:<46} {1000 * self.value_s:10.1f} ms   "
            f"{self.ratio:7.3f} x {self.floor_name} ({1000 * self.floor_s:.1f} ms){aim}"
        )


def once(call: Callable[[], object]) -> float:
    """Wall time of one call [s]."""
    begin = time.perf_counter()
    call()
    return time.perf_counter() - begin


def pair(
    name: str,
    call: Callable[[], object],
    floor_name: str,
    floor: Callable[[], object],
    *,
    times: int = 5,
    wanted: float | None = None,
) -> Figure:
    """Time a call and its floor in turn, after one warm-up of each."""
    call()
    floor()
    taken, floors = [], []
    for _ in range(times):
        taken.append(once(call))
        floors.append(once(floor))
    ratio = statistics.median(a / b for a, b in zip(taken, floors, strict=True))
    return Figure(
        name, floor_name, statistics.median(taken), statistics.median(floors), ratio, wanted
    )


def process(arguments: Sequence[str], environment: dict[str, str]) -> Callable[[], object]:
    """A whole process as a call."""
    return lambda: subprocess.run(
        arguments, env=environment, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
