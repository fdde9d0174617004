"""Points taken from the bytes: what comes out is what the parser alone gives."""

import random

import pytest
from tests.formats.build import gpx, run_tcx

from tercet.formats import xml_points
from tercet.formats.alike import shape_of
from tercet.formats.gpx import read_gpx
from tercet.formats.tcx import read_tcx
from tercet.formats.unpack import Refused

SLOTS = {"time": 0, "hr": 1, "ele": 2}
POINT = b'<trkpt lat="50.%d" lon="7"><ele>1</ele><time>2026-01-01T00:00:%02dZ</time></trkpt>\n'
POINTS = b"".join(POINT % (k, k) for k in range(5))


def shape(point):
    return shape_of(point.strip(), {"lat": 3, "lon": 4}, SLOTS)


def test_points_alike_are_read_up_to_the_first_other():
    other = b'<trkpt lat="50" lon="7"><ele>1</ele></trkpt>'
    end, points, columns, offset_s = shape(POINT % (7, 7)).read(b"head" + POINTS + other, 4)
    assert (end, points, offset_s) == (4 + len(POINTS) - 1, 5, None)
    assert columns[3].tolist() == [50.0, 50.1, 50.2, 50.3, 50.4]
    assert columns[0].tolist() == [1767225600.0 + k for k in range(5)]  # GNU date
    assert columns[2].tolist() == [1.0] * 5


@pytest.mark.parametrize(
    "inside",
    [
        b"<!-- 1 -->", b"<?a b?>", b"<![CDATA[1]]>", b"<hr>&#49;</hr>", b"<hr>1 bpm</hr >",
        b"<trkpt></trkpt>", b"<a:trkpt/>", "<name>Ä</name>".encode(),
    ],
)  # fmt: skip
def test_what_bytes_do_not_tell_has_no_shape(inside):
    point = b'<trkpt lat="1" lon="2">' + inside + b"<time>2026-01-01T00:00:00Z</time></trkpt>"
    found = shape(point)
    assert found is None or found.read(point, 0)[1] == 0


# How writers write points, and what may go wrong between and within them.
WAYS = (
    lambda k: f'<trkpt lat="5{k / 1e3}" lon="7"><ele>{k}</ele><time>{at(k)}Z</time></trkpt>\n',
    lambda k: f'<trkpt lat="5{k}" lon="7">\r\n <time>{at(k)}.5Z</time><hr/><cad>8{k}</cad></trkpt>',
    lambda k: f"<trkpt lon='7' lat='5{k}'><time>{at(k)}+02:00</time><sat>{k}</sat></trkpt>\r",
    lambda k: f'<a:trkpt lat="" lon="{k}e9"><time>{at(k)}Z</time><a:hr>1{k}</a:hr></a:trkpt>',
    lambda k: f'<trkpt lat="1"><time>{at(k)}.000Z</time><hr>4_{k}</hr><hr>9e999</hr></trkpt>',
)  # fmt: skip
FAULTS = (
    b"<", b">", b'"', b"&", b"<!--", b"-->", b"<![CDATA[", b"]]>", b"<?a", b"\0", b"\xff", b"\r",
    b"</trkpt>", b"<trkpt>", b"</trkseg><trkseg>", b"</Lap>", b"<hr>1</hr>", b"<!DOCTYPE a>", b"x",
)  # fmt: skip


def at(k):
    return f"2026-01-01T{k // 3600:02}:{k // 60 % 60:02}:{k % 60:02}"


def written(chance):
    """A file of points in some ways, with up to two faults."""
    if chance.random() < 0.3:
        data = run_tcx(30)
    else:
        points = [chance.choice(WAYS) for _ in range(4)]
        text = "".join(points[k // 12](k) for k in range(48))
        data = gpx(f'<trk xmlns:a="urn:a"><trkseg>{text}</trkseg></trk>')
    for _ in range(chance.randrange(3)):
        place = chance.randrange(len(data))
        data = data[:place] + chance.choice(FAULTS) + data[place + chance.choice((0, 0, 1, 9)) :]
    return data[: chance.choice((len(data), len(data), chance.randrange(len(data))))]


def read(data, size):
    pieces = (data[k : k + size] for k in range(0, len(data), size))
    try:
        found = (read_tcx if b"Trackpoint" in data else read_gpx)(pieces, "name")
    except Refused as refusal:
        return str(refusal)
    if not isinstance(found, list):
        return found
    return [
        {
            **vars(run),
            "time": run.time.tobytes(),
            "streams": {
                name: (stream.time.tobytes(), stream.values.tobytes())
                for name, stream in run.streams.items()
            },
        }
        for run in found
    ]


@pytest.mark.parametrize("seed", range(40))
def test_the_parser_alone_gives_the_same(monkeypatch, seed):
    chance = random.Random(seed)
    data = written(chance)
    with monkeypatch.context() as patched:
        patched.setattr(xml_points, "shape_of", lambda *_: None)
        alone = read(data, len(data))
    monkeypatch.setattr(xml_points, "_STEP", 0)
    for size in (chance.randint(20, 400), len(data)):
        assert read(data, size) == alone


def test_a_file_of_points_alike_is_hardly_parsed(monkeypatch):
    parsed, feed = [], xml_points.Walker._feed

    def told(self, parser, data):
        parsed.append(data.strip())
        feed(self, parser, data)

    monkeypatch.setattr(xml_points.Walker, "_feed", told)
    data = gpx(f"<trk><trkseg>{''.join(map(WAYS[0], range(3000)))}</trkseg></trk>")
    (run,) = read_gpx(data)
    assert run.records == 3000
    assert sum(map(len, parsed)) < len(data) / 10
