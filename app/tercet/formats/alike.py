"""Points of an XML file that are written like one before them, read from its bytes all at once."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence

import numpy as np

from tercet.engine.scale import Floats
from tercet.formats.values import moment, moments_utc, number

_TAG = re.compile(rb"(<[^<>]*>)")
_BLANKS = rb"[ \t\r\n]"
_NAME = rb"[A-Za-z_][\w.:-]*"
_ATTRIBUTE = re.compile(rb'(%b+%b=")([^"<>&]*)"' % (_BLANKS, _NAME))
_START = re.compile(rb'(<%b)((?:%b+%b="[^"<>&]*")*)(%b*>)' % (_NAME, _BLANKS, _NAME, _BLANKS))
_NUMBER, _MOMENT = rb"([-+.0-9eE]*)", rb"([-+.:0-9TZ]*)"
#: What says nothing here and cannot end an element or stand for something else.
_TEXT = rb"[\t\n\r -%'-;=?-\\^-~]*"


class Shape:
    """How a point is written: the same tags and attributes around numbers and a time.

    Parameters
    ----------
    pattern : bytes
        A regular expression of one point, its numbers and times in groups.
    slots : sequence of int
        The column of every group; 0 is time.
    """

    def __init__(self, pattern: bytes, slots: Sequence[int]) -> None:
        self._slots = slots
        # what follows the last such point comes as one more match, in a group of its own
        self._points = re.compile(rb"%b*%b|(?s:(.+))" % (_BLANKS, pattern))

    def read(self, data: bytes, at: int) -> tuple[int, int, dict[int, Floats], int | None]:
        """Read points one after the other as long as they have this shape.

        Parameters
        ----------
        data : bytes
        at : int
            Where they begin: behind a point of this shape.

        Returns
        -------
        end : int
            Behind the last of them.
        points : int
            How many there are.
        columns : dict of int to ndarray of float64, shape (points,)
            By slot, as ``number`` and ``moment`` read them.
        offset_s : int or None
            First offset from UTC that is given and not 0. [s]
        """
        rows, end = self._points.findall(data, at), len(data)
        if rows and rows[-1][-1]:
            end -= len(rows.pop()[-1])
        columns: dict[int, Floats] = {}
        offset_s = None
        for slot, texts in zip(self._slots, zip(*rows, strict=True), strict=False):
            if slot:
                columns[slot] = _numbers(texts)
            else:
                columns[slot], offset_s = _moments(texts, offset_s)
        return end, len(rows), columns, offset_s


def shape_of(point: bytes, attributes: Mapping[str, int], slots: Mapping[str, int]) -> Shape | None:
    """Take the shape of a point that was read as XML without fault.

    Parameters
    ----------
    point : bytes
        From its first tag to its last.
    attributes : mapping of str to int
        Columns of the point's own attributes.
    slots : mapping of str to int
        Columns of elements within it by local name; those of others say nothing.

    Returns
    -------
    Shape or None
        None where bytes alone do not tell what is meant: comments, references, points in points.
    """
    texts, tags = (pieces := _TAG.split(point))[::2], pieces[1::2]
    start = _START.fullmatch(tags[0]) if len(tags) > 1 else None
    if start is None or not point.isascii() or b"<!" in point or b"<?" in point:
        return None
    own = _local(tags[0])
    found: list[int] = []
    pattern = [re.escape(start[1])]
    for before, value in _ATTRIBUTE.findall(start[2]):
        slot = attributes.get(before.strip()[:-2].decode("ascii"), -1)
        pattern += [re.escape(before), _NUMBER if slot > 0 else re.escape(value), b'"']
        if slot > 0:
            found.append(slot)
    pattern.append(re.escape(start[3]))
    for text, tag in zip(texts[1:-1], tags[1:], strict=True):
        name, ends = _local(tag), tag.startswith(b"</")
        slot = slots.get(name, -1) if ends or tag.endswith(b"/>") else -1
        if (name == own) != (tag is tags[-1]) or not re.fullmatch(_TEXT, text):
            return None
        if slot < 0:
            pattern += [_TEXT, re.escape(tag)]
            continue
        found.append(slot)
        wanted = _MOMENT if slot == 0 else _NUMBER
        pattern += [wanted, re.escape(tag)] if ends else [_TEXT, re.escape(tag), b"()"]
    return Shape(b"".join(pattern), found) if found else None


def blanks(data: bytes, begin: int, end: int) -> bytes:
    """As many lines and columns of blanks as there are in what stands between two places."""
    lines, latest = data.count(b"\n", begin, end), data.rfind(b"\n", begin, end)
    if data.find(b"\r", begin, end) >= 0:
        lines += data.count(b"\r", begin, end) - data.count(b"\r\n", begin, end)
        latest = max(latest, data.rfind(b"\r", begin, end))
    return b"\n" * lines + b" " * (end - max(latest, begin - 1) - 1)


def _local(tag: bytes) -> str:
    name = re.match(rb"</?([^\s/>]*)", tag)
    return name[1].rpartition(b":")[2].decode("ascii") if name else ""


def _numbers(texts: Sequence[bytes]) -> Floats:
    try:
        values = np.fromiter(map(float, texts), np.float64, len(texts))
    except ValueError:
        values = np.array([number(text.decode("ascii")) for text in texts])
    values[np.isinf(values)] = math.nan
    return values


def _moments(texts: Sequence[bytes], offset_s: int | None) -> tuple[Floats, int | None]:
    times = moments_utc(texts)
    if times is not None:
        return times, offset_s
    told = [moment(text.decode("ascii")) for text in texts]
    first = next((offset for _, offset in told if offset), None)
    return np.array([time for time, _ in told]), offset_s or first
