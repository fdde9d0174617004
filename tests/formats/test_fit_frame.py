"""The frame of FIT files."""

from hypothesis import given
from hypothesis import strategies as st
from tests.formats import build

from tercet.formats.fit_frame import crc16, parts


def test_crc_of_the_catalogue():
    # check value of CRC-16/ARC in the usual catalogue of check sums, from memory
    assert crc16(b"123456789") == 0xBB3D


@given(st.binary(max_size=70))
def test_crc_equals_the_bitwise_one(data):
    assert crc16(data) == build.crc(data)


def test_crc_of_long_data_equals_the_bitwise_one():
    data = bytes(k * k % 251 for k in range(70_001))
    for length in (1023, 1024, 70_000, 70_001):
        assert crc16(data[:length]) == build.crc(data[:length])


def test_parts_of_a_chain_and_their_places():
    first, second = bytes(build.run_fit(3)), bytes(build.run_fit(5, header_size=12))
    a, b = parts(first + second)
    assert (a.damage, b.damage, a.cut, b.cut) == ((), (), False, False)
    # offset 12 in a part is the first byte after its header
    assert (first + second)[12 + a.shift] == a.data[12]
    assert 12 + b.shift == len(first) + 12


def test_no_whole_header_no_part():
    assert parts(b"") == [] == parts(bytes(build.run_fit(3))[:11])
