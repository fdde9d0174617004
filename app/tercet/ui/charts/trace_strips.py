"""The strips below a session's trace that it fills: heart rate, running power, height; no Qt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tercet.engine.scale import Floats
from tercet.language import tr
from tercet.library.trace import SessionTrace
from tercet.ui import words
from tercet.ui.charts.trace_shape import Channel, Range, drawn_by, even_marks, trace_range

BEAT_STEPS = (5.0, 10.0, 20.0, 40.0)
WATT_STEPS = (10.0, 20.0, 50.0, 100.0, 200.0)
HEIGHT_STEPS = (5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0)


@dataclass(frozen=True, eq=False)
class Strip:
    """One channel below the trace, with its two boundaries where it has any."""

    name: str
    values: Floats
    lines: tuple[float | None, ...]
    steps: Sequence[float]
    pixels: int  # how high at 100 %

    @property
    def title(self) -> str:
        """Its name, and where its boundaries lie."""
        known = [words.number(value) for value in self.lines if value is not None]
        if len(known) != 2:
            return self.name
        return tr("{channel}; LT1 {lt1}, LT2 {lt2}", channel=self.name, lt1=known[0], lt2=known[1])

    @property
    def filled(self) -> bool:
        """Whether there is anything to draw."""
        return bool(np.isfinite(self.values).any())

    def ends_and_marks(
        self, shades: np.ndarray, pixels: float, line: float
    ) -> tuple[Range, list[float]]:
        """Ends of its axis, with room for the title, and what to label: the boundaries if known.

        Parameters
        ----------
        shades : ndarray of uint8, shape (n,)
        pixels, line : float
            Height of the strip and of a line of text. [px]
        """
        ends = trace_range(self.values, shades, self.lines, 0.08)
        span = (ends.high - ends.low) * pixels / max(pixels - 1.2 * line, 1.0)
        ends = Range(ends.low, ends.low + span)
        known = [value for value in self.lines if value is not None]
        kept: list[float] = []
        for value in sorted(known or even_marks(ends, pixels, 1.3 * line, self.steps)):
            if not kept or (value - kept[-1]) / span * pixels >= line:
                kept.append(value)
        return ends, kept


def strips_of(trace: SessionTrace) -> dict[str, Strip]:
    """The strips that a session fills, by name; what the trace itself draws has none."""
    strips: dict[Channel | str, Strip] = {
        "heart": Strip(
            tr("heart rate, /min"), trace.heart_rate, (trace.lt1_hr, trace.lt2_hr), BEAT_STEPS, 66
        ),
        "power": Strip(
            tr("running power, W"),
            trace.power,
            (trace.lt1_power, trace.lt2_power),
            WATT_STEPS,
            66,
        ),
        "height": Strip(tr("height, m"), trace.altitude, (), HEIGHT_STEPS, 48),
    }
    strips.pop(drawn_by(trace), None)
    return {name: strip for name, strip in strips.items() if strip.filled}
