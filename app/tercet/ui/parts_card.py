"""The parts of a session in words and rows: warm-up, work, recovery, cool-down."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt

from tercet.engine.parts import Part, PartSum, summed
from tercet.engine.shades import Shade
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.session_cards import Card
from tercet.ui.twin import fill_table, fit_table, number_table


class PartsCard(Card):
    """One row a kind of part, with its time, way and shades; hidden where there was no work."""

    def __init__(self) -> None:
        super().__init__("Parts")
        self.table = number_table("Parts of the session")
        self.table.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.column.addWidget(self.table)
        self.restyle()

    def show_parts(self, found: Sequence[Part], units: words.Units) -> None:
        """Fill the table with the sums of each kind."""
        headings = ("part", "time", words.UNIT_WORDS[units], "easy", "moderate", "hard")
        rows = [
            (
                total.label if total.label != "work" or total.count < 2 else _times(total),
                words.duration(total.duration_s),
                words.number(total.distance_m / words.UNIT_METRES[units], 2),
                *(_time(total.seconds[shade]) for shade in list(Shade)[:3]),
            )
            for total in summed(found)
        ]
        fill_table(self.table, headings, rows, left={0})
        self._narrow()
        self.setAccessibleDescription(parts_sentence(found, units))
        self.setVisible(bool(rows))
        self._fit()

    def restyle(self, *_: object) -> None:
        super().restyle()
        if self.table.columnCount():
            self._narrow()
        self._fit()

    def _narrow(self) -> None:
        """Six columns need closer edges than other tables have."""
        fit_table(self.table, 0)
        edge = themes.current().px(3)
        self.table.setStyleSheet(
            f"QTableView::item {{ padding: 0px {edge}px; }}"
            f"QHeaderView::section {{ padding: 0px {edge}px; }}"
        )

    def _fit(self) -> None:
        """As tall as its rows."""
        head = self.table.horizontalHeader().sizeHint().height()
        self.table.setFixedHeight(self.table.rowCount() * themes.current().px(30) + head)


def _time(seconds: float) -> str:
    return words.duration(seconds) if seconds >= 0.5 else words.NOTHING


def _times(total: PartSum) -> str:
    return f"{total.label} \N{MULTIPLICATION SIGN} {total.count}"


def part_name(total: PartSum) -> str:
    """``warm-up``, or ``work, 6 times``."""
    return total.label if total.count == 1 else f"{total.label}, {total.count} times"


def parts_sentence(found: Sequence[Part], units: words.Units) -> str:
    """The parts with their times, ways and shades, for reading aloud; empty without any."""
    said = []
    for total in summed(found):
        shades = [
            f"{words.spoken(total.seconds[shade])} {name}"
            for shade, name in zip(list(Shade)[:4], _NAMES, strict=True)
            if total.seconds[shade] >= 0.5
        ]
        way = words.distance(total.distance_m, units)
        said.append(
            f"{part_name(total)}: {words.spoken(total.duration_s)}, {way}, "
            f"of it {words.listed(shades)}."
            if shades
            else f"{part_name(total)}: {words.spoken(total.duration_s)}, {way}."
        )
    return " ".join(f"{text[:1].upper()}{text[1:]}" for text in said)


_NAMES = ("easy", "moderate", "hard", "not running")
