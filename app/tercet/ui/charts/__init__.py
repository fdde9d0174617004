"""The charts; the only part of the program that knows pyqtgraph."""

from tercet.ui.charts.buildup import BuildUpChart
from tercet.ui.charts.trace import TraceChart

__all__ = ["BuildUpChart", "TraceChart"]
