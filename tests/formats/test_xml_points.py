"""Guards of the XML walk."""

import time

import pytest
from tests.formats.build import gpx, gpx_point, run_gpx, run_tcx, segment

from tercet.domain import Failed
from tercet.formats import read_bytes
from tercet.formats.xml_points import MAX_DEPTH

LAUGHS = '<!DOCTYPE gpx [<!ENTITY a "ha">' + "".join(
    f'<!ENTITY {chr(98 + n)} "{f"&{chr(97 + n)};" * 10}">' for n in range(9)
)
TRACK = segment([gpx_point(0), gpx_point(1)])

TRAPS = {
    "billion laughs": gpx(TRACK, head=LAUGHS + "]>", inside="<desc>&j;</desc>"),
    "quadratic": gpx(
        TRACK,
        head=f'<!DOCTYPE gpx [<!ENTITY a "{"a" * 80_000}">]>',
        inside=f"<desc>{'&a;' * 20_000}</desc>",
    ),
    "plain DTD": gpx(TRACK, head="<!DOCTYPE gpx>"),
    "DTD elsewhere": gpx(TRACK, head='<!DOCTYPE gpx SYSTEM "http://127.0.0.1:9/a.dtd">'),
    "external entity": gpx(
        TRACK,
        head='<!DOCTYPE gpx [<!ENTITY a SYSTEM "file:///etc/hostname">]>',
        inside="<name>&a;</name>",
    ),
    "deep": gpx(inside="<a>" * 200_000 + "</a>" * 200_000),
    "deep in a point": gpx(segment([gpx_point(0).replace("<time>", "<a>" * 200_000)])),
    "UTF-16": run_gpx(3).decode().replace("UTF-8", "UTF-16").encode("utf-16"),
    "UTF-16, no mark": run_gpx(3).decode().encode("utf-16-le"),
    "UTF-16, declared only": run_gpx(3).replace(b"UTF-8", b"UTF-16"),
    "unknown encoding": run_gpx(3).replace(b"UTF-8", b"X-NONE"),
    "odd encoding": run_gpx(3).replace(b"UTF-8", b"UTF-7"),
    "wrong encoding": gpx(inside="<name>Ä</name>").decode().encode("latin-1"),
    "NUL": b"<?xml version='1.0'?>\x00<gpx/>",
    "NUL in a tag": b"<gpx><trk><trkseg><trk\x00pt/>",
    "endless text": gpx(inside="<desc>" + "a" * 3_000_000 + "</desc>"),
    "only a bracket": b"<",
    "no end of a tag": b"<gpx " + b"a" * 2_000_000,
}


@pytest.mark.parametrize("trap", TRAPS)
def test_traps_are_refused_quickly(trap):
    began = time.perf_counter()
    failed = read_bytes(TRAPS[trap])
    spent = time.perf_counter() - began
    assert isinstance(failed, Failed) and failed.status == "refused", failed
    assert len(failed.reason) < 200
    # 0.1 s is the aim; ten times that lets a busy machine pass and stops what really runs away
    assert spent < 1.0


def test_a_dtd_is_named():
    assert "document type" in read_bytes(TRAPS["plain DTD"]).reason
    assert f"more than {MAX_DEPTH} deep" in read_bytes(TRAPS["deep"]).reason
    assert "UTF-16" in read_bytes(TRAPS["UTF-16"]).reason


def test_a_nul_after_points_keeps_the_points():
    data = run_gpx(5).replace(b"</trkseg>", b"\x00</trkseg>")
    (run,) = read_bytes(data)
    assert run.records == 5 and "damaged at line 2" in run.damage


def test_other_encodings_that_say_so():
    text = gpx(f"<name>Größe</name>{TRACK}").decode().replace("UTF-8", "ISO-8859-1")
    (run,) = read_bytes(text.encode("latin-1"))
    assert run.name == "Größe"


@pytest.mark.parametrize("data", [run_gpx(3), run_tcx(3)], ids=["gpx", "tcx"])
@pytest.mark.parametrize("before", [b"", b"\xef\xbb\xbf", b"\n  \r\n"])
def test_marks_and_blanks_before_the_declaration(data, before):
    (run,) = read_bytes(before + data)
    assert run.records == 3 and run.damage == ""
