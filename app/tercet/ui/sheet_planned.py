"""Planned sessions on the season sheet: hollow stairs still to run, plan rules, missed ones."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from tercet.language import mark, tr
from tercet.library.views import BlockView, PlannedView, WeekView
from tercet.ui import words
from tercet.ui.hollow import paint_hollow, paint_plan_rule
from tercet.ui.sheet_rows import Cell
from tercet.ui.stairs import DOUBLE_GAP
from tercet.ui.theme import Theme

_STATES = {"to run": mark("still to run"), "done": mark("done"), "missed": mark("missed")}
_LEFT_MIDDLE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


def still_to_run(cell: Cell) -> tuple[PlannedView, ...]:
    """What of a day's plan lies ahead."""
    return tuple(item for item in cell.planned if item.state == "to run" and item.running_s > 0)


def ruled_s(cell: Cell) -> float:
    """Length of the plan that a day's rule shows: what was done or missed [s]."""
    return sum(item.running_s for item in cell.planned if item.state in ("done", "missed"))


def is_missed(cell: Cell) -> bool:
    """Whether something was planned and nothing was run."""
    return not cell.sessions and any(item.state == "missed" for item in cell.planned)


def paint_day(
    painter: QPainter,
    cell: Cell,
    span: tuple[float, float, float],
    base: float,
    px_per_hour: float,
    heights: tuple[float, float, float],
    look: Theme,
    *,
    selected: bool,
) -> float:
    """Draw a day's plan beside its runs and return the right end of what was drawn.

    ``span`` is where the day's bars begin, where its runs end, and where the day itself ends.
    """
    left, right, end = span
    rule = ruled_s(cell)
    if rule:
        length = min(rule * px_per_hour / 3600.0, end - left - 4)
        paint_plan_rule(painter, left, base, length, look)
    if is_missed(cell):
        font = look.font("small")
        painter.setFont(font)
        painter.setPen(look.color("text_3"))
        missed = tr("missed")
        wide = QFontMetricsF(font).horizontalAdvance(missed)
        if wide <= end - left:
            box = QRectF(left, base - look.px(18), wide + 2, look.px(18))
            painter.drawText(box, _LEFT_MIDDLE, missed)
            right = max(right, left + wide + 4)
    x = right + (DOUBLE_GAP if right > left else 0.0)
    role = "text_2" if selected else "control"
    for item in still_to_run(cell):
        room = max(end - x - 4, 3.0)
        scale = min(px_per_hour, room * 3600.0 / item.running_s)
        right = paint_hollow(painter, x, base, scale, item.seconds, heights, look, role)
        x = right + DOUBLE_GAP
    return right


def week_plan_s(block: BlockView, week: WeekView) -> float:
    """What a week should come to: its planned sessions, else the block's volume in time [s]."""
    if week.planned_s:
        return week.planned_s
    return week.wanted or 0.0 if block.measure == "time" else 0.0


def block_plan_s(block: BlockView) -> float:
    """The same for a whole block; 0 if some week has none, for the sum would mislead [s]."""
    weeks = [week_plan_s(block, week) for week in block.weeks]
    return sum(weeks) if weeks and all(weeks) else 0.0


def spoken(cell: Cell) -> str:
    """A day's plan for a screen reader: ``planned 1 hour 2 minutes, still to run``."""
    parts = []
    for item in cell.planned:
        if item.state == "rest":
            parts.append(tr("rest planned"))
        else:
            state = tr(_STATES.get(item.state, item.state))
            parts.append(
                tr(
                    "planned {session}, {length}, {state}",
                    session=item.notation,
                    length=words.spoken(item.running_s),
                    state=state,
                )
            )
    return "; ".join(parts)
