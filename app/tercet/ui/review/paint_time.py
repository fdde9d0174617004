"""Painting what went over the season's days: repetitions, thresholds and races, volume."""

from __future__ import annotations

from PySide6.QtCore import QRectF

from tercet.language import tr
from tercet.library.review.pictures import DotPicture, Level, LevelPicture, VolumePicture
from tercet.ui.review.board import Along, Board
from tercet.ui.review.paint_blocks import whole_marks

LEFT = 124.0


def dots(board: Board, picture: DotPicture, area: QRectF) -> None:
    """Every repetition a dot over its day, its session's mean as a bar, paces at the left."""
    plot = QRectF(area.left() + LEFT, area.top() + 48.0, area.width() - LEFT, area.height() - 56.0)
    speeds = [speed for item in picture.sessions for speed in item.speeds]
    low, high = min(speeds), max(speeds)
    room = max(high - low, 0.05) * 0.1
    low, high = low - room, high + room
    first, last = picture.blocks[0][0], picture.blocks[-1][1]

    def x_of(day: float) -> float:
        return plot.left() + (day - first + 0.5) / (last - first) * plot.width()

    def y_of(speed: float) -> float:
        return plot.bottom() - (speed - low) / (high - low) * plot.height()

    for speed, words in picture.marks:
        y = y_of(speed)
        board.line((plot.left(), plot.right()), (y, y), "rule", 1.0)
        board.text(plot.left() - 14.0, y + 8.0, words, color="text_2", align="right")
    for left, right, name in picture.blocks:
        board.line((x_of(left - 0.5),) * 2, (plot.top(), plot.bottom()), "edge", 1.2)
        room = x_of(right) - x_of(left) - 8.0
        board.text(x_of(left) + 4.0, area.top() + 26.0, board.fit(name, "block", room), "block")
    for item in picture.sessions:
        x = x_of(item.day)
        board.spot(QRectF(x - 17.0, plot.top(), 34.0, plot.height()), item.row)
        for speed in item.speeds:
            board.dot(x, y_of(speed), 5.0, "hard")
    for item in picture.sessions:
        x, y = x_of(item.day), y_of(item.mean)
        board.line((x - 17.0, x + 17.0), (y, y), "pane", 8.0)
        board.line((x - 15.0, x + 15.0), (y, y), "text", 4.0)
    ends = [picture.sessions[0], picture.sessions[-1]]
    for item in (*ends, *sorted(picture.sessions[1:-1], key=lambda s: -s.mean)[:1]):
        _beside(board, x_of(item.day), y_of(item.mean), item.words, plot, item.row)


def _beside(board: Board, x: float, y: float, words: str, plot: QRectF, row: int | None) -> None:
    """Write beside a mark where there is room."""
    width = board.wide(words, "bold")
    for left, base in (
        (x + 24.0, y + 8.0),
        (x - 24.0 - width, y + 8.0),
        (x - width / 2.0, y - 24.0),
        (x - width / 2.0, y + 40.0),
    ):
        if left < plot.left() or left + width > plot.right() or base > plot.bottom():
            continue
        if board.free(QRectF(left - 4.0, base - 20.0, width + 8.0, 24.0)):
            board.text(left, base, words, "bold", halo=True, row=row)
            return


def levels(board: Board, picture: LevelPicture, area: QRectF) -> None:
    """Flat steps with their paces, races as flags and, where their pace is known, as dots."""
    plot = QRectF(area.left(), area.top() + 10.0, area.width() - 80.0, area.height() - 124.0)
    speeds = [speed for level in picture.levels for _, speed, _ in level.steps]
    speeds += [speed for _, speed, _, _, _ in picture.races if speed is not None]
    low, high = min(speeds), max(speeds)
    room = max(high - low, 0.2) * 0.22
    low, high = low - room, high + room

    def x_of(day: float) -> float:
        return plot.left() + (day - picture.left) / (picture.right - picture.left) * plot.width()

    def y_of(speed: float) -> float:
        return plot.bottom() - (speed - low) / (high - low) * plot.height()

    board.line((plot.left(), plot.right()), (plot.bottom(),) * 2, "text_2", 1.4)
    for day, speed, *_ in picture.races:
        if speed is not None:
            board.dot(x_of(day), y_of(speed), 8.0)
            board.taken.append(QRectF(x_of(day) - 8.0, y_of(speed) - 8.0, 16.0, 16.0))
    for level in picture.levels:
        _level(board, level, picture.right, x_of, y_of, plot)
    for day, name in picture.months:
        x = x_of(day)
        width = board.wide(name)
        board.line((x, x), (plot.bottom(), plot.bottom() + 6.0), "text_2", 1.2)
        if x + width <= plot.right() and board.free(
            QRectF(x - 14.0, plot.bottom() + 10.0, width + 28.0, 22.0)
        ):
            board.text(x, plot.bottom() + 30.0, name, color="text_2")
    for day, _, name, time, row in picture.races:
        x = x_of(day)
        board.spot(QRectF(x - 20.0, plot.top(), 40.0, plot.height()), row)
        board.pennant(x, plot.bottom(), 40.0)
        room = plot.width() * 0.5 - board.wide(f" {time}", "bold")
        shown = f"{board.fit(name, 'bold', room)} {time}".strip()
        width = board.wide(shown, "bold")
        left = min(max(x - width / 2.0, plot.left()), area.right() - width)
        for y in (plot.bottom() + 66.0, plot.bottom() + 98.0):
            if board.free(QRectF(left - 10.0, y - 20.0, width + 20.0, 26.0)):
                board.text(left, y, shown, "bold", halo=True, row=row)
                break


def _level(
    board: Board, level: Level, right: float, x_of: Along, y_of: Along, plot: QRectF
) -> None:
    """One boundary: its steps joined upright, a pace over each, its name at the end."""
    if not level.steps:
        return
    x, y = [], []
    for k, (day, speed, _) in enumerate(level.steps):
        end = level.steps[k + 1][0] if k + 1 < len(level.steps) else right
        x += [x_of(day), x_of(end)]
        y += [y_of(speed), y_of(speed)]
    board.line(x, y, "text", 2.6)
    for day, speed, words in level.steps:
        at = x_of(day)
        board.box(QRectF(at - 5.0, y_of(speed) - 5.0, 10.0, 10.0), "text")
        left = min(at + 12.0, plot.right() - board.wide(words, "bold"))
        for base in (y_of(speed) - 12.0, y_of(speed) + 32.0):
            if board.free(QRectF(left, base - 20.0, board.wide(words, "bold"), 24.0)):
                board.text(left, base, words, "bold", halo=True)
                break
    board.text(plot.right() + 12.0, y[-1] + 8.0, level.name, "bold")


def volume(board: Board, picture: VolumePicture, area: QRectF) -> None:
    """Weeks as outlined columns, the longest run as an ink bar in each."""
    if not picture.columns:
        return
    left = area.left() + 72.0
    plot = QRectF(left, area.top() + 44.0, area.right() - left, area.height() - 96.0)
    highest = max(max(sum(column.seconds), column.planned) for column in picture.columns)
    most = highest / 3600.0 or 1.0
    per_hour = (plot.height() - 34.0) / most
    step = plot.width() / len(picture.columns)
    base = plot.bottom()
    for mark in whole_marks(most, most * per_hour, 34.0):
        y = base - mark * per_hour
        board.line((plot.left(), plot.right()), (y, y), "rule", 1.0)
        board.text(plot.left() - 12.0, y + 8.0, tr("{n} h", n=mark), color="text_2", align="right")
    for k, column in enumerate(picture.columns):
        x, wide = plot.left() + k * step + step * 0.14, step * 0.72
        height = sum(column.seconds) / 3600.0 * per_hour
        box = QRectF(x, base - height, wide, height)
        if height > 0.0:
            board.box(box, "sunken")
            board.outline(box, "control")
        if column.planned > 0.0:
            y = base - column.planned / 3600.0 * per_hour
            board.line((x - 3.0, x + wide + 3.0), (y, y), "text_2", 3.0)
        board.spot(QRectF(plot.left() + k * step, plot.top(), step, plot.height()), k)
        run = column.longest / 3600.0 * per_hour
        board.box(QRectF(x + wide * 0.3, base - run, wide * 0.4, run), "text_2")
    board.line((plot.left(), plot.right()), (base, base), "text_2", 1.4)
    for first, last, name in picture.blocks:
        x, end = plot.left() + first * step, plot.left() + (last + 1) * step
        board.line((x, x), (plot.top() - 8.0, base + 8.0), "edge", 1.2)
        board.text(x + 4.0, area.top() + 26.0, board.fit(name, "block", end - x - 8.0), "block")
    for place, words in picture.labels:
        x = plot.left() + (place + 0.5) * step
        y = base - sum(picture.columns[place].seconds) / 3600.0 * per_hour - 8.0
        half = board.wide(words, "bold") / 2.0
        x = min(max(x, plot.left() + half), plot.right() - half)
        board.text(x, y, words, "bold", align="center", halo=True, row=place)
    for at, words in picture.gaps:
        half = board.wide(words) / 2.0
        x = min(max(plot.left() + at * step, plot.left() + half), plot.right() - half)
        for y in (base + 34.0, base + 60.0):
            if board.free(QRectF(x - half - 6.0, y - 20.0, 2.0 * half + 12.0, 24.0)):
                board.text(x, y, words, align="center")
                break
