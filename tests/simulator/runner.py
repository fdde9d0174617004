"""An invented runner: two thresholds and how the heart answers to demand."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from tests.simulator.noise import clipped_normal


@dataclass(frozen=True)
class Runner:
    """Speeds in m/s on level firm ground without wind, heart rates in beats/min."""

    hr_rest: float = 48.0
    hr_max: float = 186.0
    lt1_hr: float = 146.0
    lt2_hr: float = 167.0
    lt1_speed: float = 2.95
    lt2_speed: float = 3.60
    gain: float = 25.0  # beats/min per m/s below LT1
    tau_s: float = 45.0
    cadence: float = 166.0  # steps/min at 3 m/s

    @property
    def gain_above(self) -> float:
        """Slope between LT1 and LT2 [beats/min per m/s]."""
        return (self.lt2_hr - self.lt1_hr) / (self.lt2_speed - self.lt1_speed)

    @property
    def hr_standing(self) -> float:
        """Heart rate that standing between bouts settles to; 30 above rest [guess]."""
        return self.hr_rest + 30.0

    def steady_hr(self, demand: float) -> float:
        """Heart rate that a level-equivalent speed [m/s] leads to after some minutes.

        Straight with the published gain below LT1, through (LT1, LT2), then towards the
        maximum with the same first slope; below 2 m/s down to standing [shape: guess].
        """
        if demand >= self.lt2_speed:
            room = self.hr_max - self.lt2_hr
            return self.hr_max - room * math.exp(
                -(demand - self.lt2_speed) * self.gain_above / room
            )
        if demand >= self.lt1_speed:
            return self.lt1_hr + (demand - self.lt1_speed) * self.gain_above
        knee = min(2.0, self.lt1_speed)
        at_knee = max(self.hr_standing + 5.0, self.lt1_hr - (self.lt1_speed - knee) * self.gain)
        if demand >= knee:
            return max(at_knee, self.lt1_hr - (self.lt1_speed - demand) * self.gain)
        return self.hr_standing + (at_knee - self.hr_standing) * demand / knee

    def scale(self, demand: float) -> float:
        """Demand on the scale 0 at rest, 1 at LT1, 2 at LT2 and straight on."""
        if demand < self.lt1_speed:
            return demand / self.lt1_speed
        return 1.0 + (demand - self.lt1_speed) / (self.lt2_speed - self.lt1_speed)

    def steps_per_minute(self, speed: float) -> float:
        """Cadence of running; 7 steps/min per m/s [guess], capped at 216."""
        return min(216.0, self.cadence + 7.0 * (speed - 3.0))


def draw_runner(
    rng: np.random.Generator, lt2_speed: tuple[float, float] = (3.75, 0.40), alike: float = 1.0
) -> Runner:
    """Draw a runner; ``lt2_speed`` is mean and spread [m/s], ``alike`` < 1 narrows the heart's.

    Gain 24.2 +- 8.3 beats/min per m/s and time constant 57.6 +- 23.6 s: Hunt, Fankhauser &
    Saengsuwan 2015, BioMed Eng OnLine 14:117 (limits of the draw: guess). LT1 at 67/84 of LT2:
    Condello et al. 2014, J Sports Sci Med 13:309-314, spread [guess]. The rest is [guess].
    """
    fast = clipped_normal(rng, *lt2_speed, 3.0, 5.4)
    lt1_speed = fast * clipped_normal(rng, 67 / 84, 0.03, 0.72, 0.87)
    gain = clipped_normal(rng, 24.2, 8.3 * alike, 16.0, 38.0)
    hr_max = round(clipped_normal(rng, 186.0, 8.0, 168.0, 204.0))
    hr_rest = round(clipped_normal(rng, 52.0, 6.0, 40.0, 66.0))
    lt2_hr = round(hr_max * clipped_normal(rng, 0.905, 0.015, 0.87, 0.94))
    upper = gain * clipped_normal(rng, 1.0, 0.08, 0.8, 1.2)
    lt1_hr = round(min(lt2_hr - 8.0, max(hr_rest + 60.0, lt2_hr - upper * (fast - lt1_speed))))
    return Runner(
        hr_rest=hr_rest,
        hr_max=hr_max,
        lt1_hr=lt1_hr,
        lt2_hr=lt2_hr,
        lt1_speed=round(lt1_speed, 3),
        lt2_speed=round(fast, 3),
        gain=round(gain, 2),
        tau_s=round(clipped_normal(rng, 57.6, 23.6 * alike, 25.0, 105.0), 1),
        cadence=round(clipped_normal(rng, 166.0, 6.0, 150.0, 182.0), 1),
    )
