"""A seeded simulator of runners, their sessions and what a watch makes of them.

It knows the truth of every second, which no real recording does. It shares no code with the
program and takes nothing from it but the letters E, M, H, R, U; its figures come from the
literature named beside them, or are marked ``[guess]``.
"""

from tests.simulator.conditions import Conditions
from tests.simulator.record import Simulated, simulate
from tests.simulator.runner import Runner, draw_runner
from tests.simulator.season import MIDDLE_DISTANCE_MIX, season
from tests.simulator.sessions import KINDS, Session, Step, prescribe

__all__ = [
    "KINDS",
    "MIDDLE_DISTANCE_MIX",
    "Conditions",
    "Runner",
    "Session",
    "Simulated",
    "Step",
    "draw_runner",
    "prescribe",
    "season",
    "simulate",
]
