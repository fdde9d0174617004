"""The parts of a session in words and rows: warm-up, work, recovery, cool-down."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt

from tercet.engine.parts import Label, Part, PartSum, summed
from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.session_cards import Card
from tercet.ui.twin import fill_table, fit_table, number_table

#: What a part is called, by its label.
LABELS: dict[Label, str] = {
    "warm-up": mark("warm-up"),
    "easy running": mark("easy running"),
    "work": mark("work"),
    "recovery": mark("recovery"),
    "cool-down": mark("cool-down"),
}


class PartsCard(Card):
    """One row a kind of part, with its time, way and shades; hidden where there was no work."""

    def __init__(self) -> None:
        super().__init__(tr("Parts"))
        self.table = number_table(tr("Parts of the session"))
        self.table.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.column.addWidget(self.table)
        self.restyle()

    def show_parts(self, found: Sequence[Part], units: words.Units) -> None:
        """Fill the table with the sums of each kind."""
        headings = (
            tr("part"),
            tr("time"),
            words.UNIT_WORDS[units],
            tr("easy"),
            tr("moderate"),
            tr("hard"),
        )
        rows = [
            (
                tr(LABELS[total.label])
                if total.label != "work" or total.count < 2
                else _times(total),
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
        head = max(0, self.table.horizontalHeader().sizeHint().height())
        self.table.setFixedHeight(self.table.rowCount() * themes.current().px(30) + head)


def _time(seconds: float) -> str:
    return words.duration(seconds) if seconds >= 0.5 else words.NOTHING


def _times(total: PartSum) -> str:
    return f"{tr(LABELS[total.label])} \N{MULTIPLICATION SIGN} {total.count}"


def part_name(total: PartSum) -> str:
    """``warm-up``, or ``work, 6 times``."""
    label = tr(LABELS[total.label])
    return label if total.count == 1 else tr("{part}, {n} times", part=label, n=total.count)


def parts_sentence(found: Sequence[Part], units: words.Units) -> str:
    """The parts with their times, ways and shades, for reading aloud; empty without any."""
    said = []
    for total in summed(found):
        shades = [
            tr(sentence, time=words.spoken(total.seconds[shade]))
            for shade, sentence in zip(list(Shade)[:4], _TOLD, strict=True)
            if total.seconds[shade] >= 0.5
        ]
        way = words.distance(total.distance_m, units)
        sentence = (
            mark("{part}: {time}, {distance}, of it {shades}.")
            if shades
            else mark("{part}: {time}, {distance}.")
        )
        said.append(
            tr(
                sentence,
                part=part_name(total),
                time=words.spoken(total.duration_s),
                distance=way,
                shades=words.listed(shades),
            )
        )
    return " ".join(f"{text[:1].upper()}{text[1:]}" for text in said)


_TOLD = (
    mark("{time} easy"),
    mark("{time} moderate"),
    mark("{time} hard"),
    mark("{time} not running"),
)
