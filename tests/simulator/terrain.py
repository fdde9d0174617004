"""Loops around an invented island, in the open sea between Menorca and Sardinia."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tests.simulator.noise import stream

Floats = NDArray[np.float64]

#: Deep water: no land within 100 km.
LATITUDE, LONGITUDE = 40.2, 6.1
GRID_M = 5.0
#: Root mean square of the slope [guess].
ROUGHNESS = {"level": 0.003, "rolling": 0.017, "hilly": 0.042, "track": 0.0}
STEEPEST = 0.16


@dataclass(frozen=True, eq=False)
class Route:
    """A closed loop on a 5 m grid; the last point is the first again. All in metres."""

    length_m: float
    east: Floats
    north: Floats
    height: Floats
    slope: list[float]  # rise over run in each cell
    heading: list[tuple[float, float]]  # unit vector (east, north) of each cell

    @property
    def cells(self) -> int:
        """Number of cells."""
        return len(self.slope)

    def at(self, along: Floats, channel: Floats) -> Floats:
        """A channel at distances along the loop, round and round."""
        step = self.length_m / self.cells
        return np.interp(np.mod(along, self.length_m), np.arange(self.cells + 1) * step, channel)


def _closed(east: list[float], north: list[float], length_m: float) -> tuple[Floats, Floats]:
    x, y = np.array([*east, east[0]]), np.array([*north, north[0]])
    along = np.concatenate([[0.0], np.cumsum(np.sqrt(np.diff(x) ** 2 + np.diff(y) ** 2))])
    scale = length_m / float(along[-1])
    marks = np.linspace(0.0, float(along[-1]), round(length_m / GRID_M) + 1)
    return np.interp(marks, along, x) * scale, np.interp(marks, along, y) * scale


def _oval() -> tuple[list[float], list[float]]:
    """Measured line of a 400 m track: bends of 36.80 m, straights of 84.39 m (dossier, 14)."""
    points = [(36.8, -42.195), (36.8, 42.195)]
    points += [
        (36.8 * math.cos(math.pi * k / 60), 42.195 + 36.8 * math.sin(math.pi * k / 60))
        for k in range(1, 61)
    ]
    points += [(-36.8, -42.195)]
    points += [
        (-36.8 * math.cos(math.pi * k / 60), -42.195 - 36.8 * math.sin(math.pi * k / 60))
        for k in range(1, 60)
    ]
    return [p[0] for p in points], [p[1] for p in points]


def route(terrain: str, length_m: float, seed: int) -> Route:
    """Make a loop of this length; the same seed always gives the same loop."""
    rng = stream(seed, 101)
    if terrain == "track":
        length_m = 400.0
        east, north = _closed(*_oval(), length_m)
    else:
        bumps = [
            (k, 0.35 / k * float(rng.random()), 2 * math.pi * float(rng.random()))
            for k in range(2, 9)
        ]
        angles = [2 * math.pi * k / 1440 for k in range(1440)]
        radii = [1.0 + sum(a * math.cos(k * w + p) for k, a, p in bumps) for w in angles]
        east, north = _closed(
            [r * math.cos(w) for r, w in zip(radii, angles, strict=True)],
            [r * math.sin(w) for r, w in zip(radii, angles, strict=True)],
            length_m,
        )
    cells = len(east) - 1
    step = length_m / cells
    waves = [k for k in range(1, 200) if 280.0 <= length_m / k <= 4000.0] or [1]
    waves = [waves[int(i)] for i in sorted(rng.permutation(len(waves))[:12])]
    parts = [(k, 0.6 + 0.8 * float(rng.random()), 2 * math.pi * float(rng.random())) for k in waves]
    raw = [
        sum(a * math.cos(2 * math.pi * k * i / cells + p) for k, a, p in parts)
        for i in range(cells)
    ]
    size = ROUGHNESS[terrain] / math.sqrt(sum(r * r for r in raw) / cells)
    slope = np.clip(np.array(raw) * size, -STEEPEST, STEEPEST)
    slope = slope - float(slope.mean())
    height = 60.0 + np.concatenate([[0.0], np.cumsum(slope * step)])
    heading = [
        (float(dx) / step, float(dy) / step)
        for dx, dy in zip(np.diff(east), np.diff(north), strict=True)
    ]
    return Route(length_m, east, north, height, slope.tolist(), heading)


def degrees(east: Floats, north: Floats) -> tuple[Floats, Floats]:
    """Latitude and longitude of metres from the island's middle (WGS84 radii of curvature)."""
    a, e2 = 6378137.0, 0.00669437999014
    phi = math.radians(LATITUDE)
    w = math.sqrt(1.0 - e2 * math.sin(phi) ** 2)
    meridian, normal = a * (1.0 - e2) / w**3, a / w
    return (
        LATITUDE + north * (180.0 / math.pi / meridian),
        LONGITUDE + east * (180.0 / math.pi / (normal * math.cos(phi))),
    )


def cost_ratio(slope: float) -> float:
    """Energy cost of running on a slope over that on the level, per metre.

    Minetti et al. 2002, J Appl Physiol 93:1039-1046, Cr(i)/Cr(0), valid to +-0.45.
    """
    i = min(0.45, max(-0.45, slope))
    return (((((155.4 * i - 30.4) * i - 43.3) * i + 46.3) * i + 19.5) * i + 3.6) / 3.6
