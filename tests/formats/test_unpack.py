"""gzip within limits."""

import gzip
import io
import time
import zlib

import pytest
from tests.formats.build import run_fit, run_gpx, run_tcx

from tercet.domain import Failed
from tercet.formats import read_bytes, unpack
from tercet.formats.unpack import Counted, Pieces, Refused


@pytest.mark.parametrize("data", [bytes(run_fit(9)), run_gpx(9), run_tcx(9)])
def test_packed_files_read_like_plain_ones(data):
    (plain,), (packed,) = read_bytes(data), read_bytes(gzip.compress(data))
    assert packed.records == plain.records == 9
    assert packed.start == plain.start and packed.damage == ""


def test_several_members_are_one_file():
    data = run_gpx(9)
    assert gunzip(gzip.compress(data[:500]) + gzip.compress(data[500:])) == (data, "")


def gunzip(data):
    pieces = Pieces(Counted(io.BytesIO(data)))
    try:
        return pieces.whole(1 << 30, "It"), pieces.damage
    except Refused as refusal:
        return Failed(str(refusal))


def test_bytes_come_back():
    data = bytes(range(256)) * 5000
    assert gunzip(gzip.compress(data)) == (data, "")


def test_a_bomb_is_stopped():
    bomb = gzip.compress(b" " * 200_000_000)
    began = time.perf_counter()
    failed = read_bytes(bomb)
    assert isinstance(failed, Failed) and "times larger" in failed.reason
    assert time.perf_counter() - began < 2.0


def test_a_large_file_is_stopped(monkeypatch):
    monkeypatch.setattr(unpack, "MAX_BYTES", 1 << 20)
    failed = gunzip(gzip.compress(bytes(2 << 20)))
    assert isinstance(failed, Failed) and "larger than 1 MB" in failed.reason


def test_a_cut_gzip_gives_what_could_be_unpacked():
    data = gzip.compress(run_gpx(2000))
    (run,) = read_bytes(data[: len(data) // 2])
    assert 100 < run.records < 2000
    assert "gzip file is cut short" in run.damage and "It is cut short" in run.damage
    (whole,) = read_bytes(data[:-4])  # only gzip's own sum is missing
    assert whole.records == 2000 and "gzip file is cut short" in whole.damage


def test_a_damaged_gzip_is_told():
    data = bytearray(gzip.compress(run_gpx(50)))
    data[-6] ^= 0xFF  # gzip's sum over the contents
    failed = read_bytes(bytes(data))
    assert isinstance(failed, Failed) and "gzip file is damaged near byte" in failed.reason
    assert isinstance(read_bytes(b"\x1f\x8b"), Failed)
    assert isinstance(read_bytes(b"\x1f\x8bnothing of the kind"), Failed)


def test_gzip_within_gzip_and_other_things_within():
    twice = read_bytes(gzip.compress(gzip.compress(run_gpx(3))))
    assert isinstance(twice, Failed) and "within a gzip" in twice.reason
    text = read_bytes(gzip.compress(b"hello"))
    assert isinstance(text, Failed) and "plain text" in text.reason
    nothing = read_bytes(gzip.compress(b""))
    assert isinstance(nothing, Failed) and "holds nothing" in nothing.reason


def test_bytes_after_the_last_member_are_ignored():
    engine = zlib.compressobj(wbits=31)
    packed = engine.compress(b"abc") + engine.flush()
    assert gunzip(packed + bytes(512)) == (b"abc", "")
