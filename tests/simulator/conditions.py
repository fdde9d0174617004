"""What a run meets: ground, weather, the runner's day, and what the watch can and cannot do."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np

from tests.simulator.noise import clipped_normal
from tests.simulator.sessions import Session


@dataclass(frozen=True)
class Conditions:
    """Everything outside runner and session; the frequencies in :func:`draw_conditions`."""

    terrain: str = "level"  # level, rolling, hilly; a session on the track overrules it
    loop: int = 1  # which of the loops of that terrain
    loop_m: float = 6000.0
    ground: float = 1.0  # energy cost of the soft stretches over that of firm ground
    soft_share: float = 0.0  # share of the loop that is soft
    wind: float = 0.0  # m/s, from the west
    temperature: float = 15.0  # degrees C
    day_shift: float = 0.0  # beats/min at LT1, this day against the usual
    drift: float = 4.0  # beats/min per hour after the first ten minutes
    hr_source: str = "strap"  # strap, optical, none
    hr_fault: str = ""  # dropouts, cadence lock, dead, stuck, dry start
    gps: str = "open"  # open, trees, town, none
    gps_gaps: int = 0
    gps_spikes: int = 0
    smoothing_s: float = 2.0
    delay_s: int = 1
    altitude: str = "baro"  # baro, gps, none
    sampling: str = "1s"  # 1s, smart
    timer: str = "running"  # running, auto (pause), manual
    laps: str = "auto"  # none, auto (every km), pressed
    waits: int = 0  # stops at crossings and gates


def _pick(rng: np.random.Generator, **shares: float) -> str:
    """Draw a name by its share; the shares add up to one."""
    drawn, names = float(rng.random()), list(shares)
    for name in names:
        drawn -= shares[name]
        if drawn < 0:
            return name
    return names[-1]


def draw_conditions(rng: np.random.Generator, session: Session, **given: object) -> Conditions:
    """Draw the conditions of one run; what is given stays as given.

    Sources, by field (sections of the project's dossier of published values):

    - ``drift``: rise after 10-20 min of steady work, more in heat (Coyle & Gonzalez-Alonso
      2001, section 10); 5 +- 3 beats/min per hour and 0.35 more per degree above 18 [guess].
    - ``day_shift``: 0 +- 3.5 beats/min [guess; from memory, Lamberts et al. 2004: heart rate at
      one speed varies by some 3-8 beats/min from day to day], heat adds 0.4 per degree above 18.
    - ``ground``: 1.03-1.20 on paths, grass and mud [guess; from memory, Lejeune et al. 1998:
      1.6 in dry sand]; one run in four has some.
    - ``gps``, ``altitude``, ``hr_source`` error sizes: see ``watch.py`` and ``sensor.py``. How
      often each occurs is [guess] throughout.
    """
    soft = bool(rng.random() < 0.25) and not session.track
    temperature = clipped_normal(rng, 16.0, 6.5, -2.0, 33.0)
    temperature = float(given.get("temperature", temperature))  # type: ignore[arg-type]
    heat = max(0.0, temperature - 18.0)
    source = _pick(rng, strap=0.55, optical=0.42, none=0.03)
    faults = {
        "strap": {"": 0.80, "dry start": 0.11, "dropouts": 0.05, "dead": 0.025, "stuck": 0.015},
        "optical": {"": 0.80, "cadence lock": 0.10, "dropouts": 0.09, "stuck": 0.01},
        "none": {"": 1.0},
    }[source]
    terrain = _pick(rng, level=0.40, rolling=0.42, hilly=0.18)
    easy_day = not session.structured
    drawn = Conditions(
        terrain=terrain,
        loop=int(rng.integers(1, 4)),
        loop_m=float(rng.choice([3200.0, 5400.0, 8100.0, 11300.0])),
        ground=clipped_normal(rng, 1.09, 0.05, 1.03, 1.22) if soft else 1.0,
        soft_share=0.2 + 0.8 * float(rng.random()) if soft else 0.0,
        wind=abs(clipped_normal(rng, 0.0, 3.2, -9.0, 9.0)),
        temperature=round(temperature, 1),
        day_shift=clipped_normal(rng, 0.0, 3.5, -10.0, 10.0) + 0.4 * heat,
        drift=clipped_normal(rng, 5.0, 3.0, -1.0, 14.0) + 0.35 * heat,
        hr_source=source,
        hr_fault=_pick(rng, **faults),
        gps=_pick(rng, open=0.62, trees=0.25, town=0.13),
        gps_gaps=int(rng.random() < 0.08) * int(rng.integers(1, 3)),
        gps_spikes=int(rng.random() < 0.10) * int(rng.integers(1, 4)),
        smoothing_s=1.0 + 3.0 * float(rng.random()),
        delay_s=int(rng.integers(0, 4)),
        altitude=_pick(rng, baro=0.70, gps=0.24, none=0.06),
        sampling=_pick(rng, **{"smart": 0.45 if easy_day else 0.25, "1s": 0.55}),
        timer=_pick(rng, running=0.55, auto=0.25, manual=0.20),
        laps=_pick(rng, pressed=0.0 if easy_day else 0.55, auto=0.30, none=0.70),
        waits=0 if session.track or session.race else int(rng.poisson(0.8)),
    )
    if session.indoor:
        drawn = replace(
            drawn, terrain="level", ground=1.0, soft_share=0.0, wind=0.0, waits=0,
            temperature=21.0, gps="none", altitude="none", gps_gaps=0, gps_spikes=0,
        )  # fmt: skip
    unknown = set(given) - {f.name for f in fields(Conditions)}
    if unknown:
        raise TypeError(f"no such condition: {', '.join(sorted(unknown))}")
    return replace(drawn, **given)
