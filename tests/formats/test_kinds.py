"""Files of other kinds are named in plain words."""

import io
import zipfile

import pytest

from tercet.domain import Failed
from tercet.formats import read_bytes


def a_zip():
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("run.fit", b"x")
    return buffer.getvalue()


@pytest.mark.parametrize(
    ("data", "word"),
    [
        (a_zip(), "zip archive"),
        (b"PK\x05\x06" + bytes(18), "empty zip"),
        (b"%PDF-1.7\n%\xe2\xe3", "PDF"),
        (b"\x89PNG\r\n\x1a\n" + bytes(9), "picture"),
        (b"SQLite format 3\x00" + bytes(99), "database"),
        (b"[table]\nkey = 'value'\n", "TOML"),
        (b"a = 1\nb = 2\n", "TOML"),
        (b'{"a": 1}', "JSON"),
        (b"here,there,both\n1,2,3\n", "CSV"),
        (b"Dear diary,\ntoday I ran.\n", "plain text"),
        ("Größe und Länge".encode(), "plain text"),
        (b" \n\n", "blank"),
        (b"<html><body>hello</body></html>", "<html>"),
        (b"<?xml version='1.0'?><kml xmlns='urn:k'/>", "<kml>"),
    ],
)
def test_known_kinds_are_passed_over(data, word):
    failed = read_bytes(data)
    assert isinstance(failed, Failed) and failed.status == "passed over"
    assert word in failed.reason


@pytest.mark.parametrize(
    ("data", "word"),
    [
        (b"", "empty"),
        (b"\x00\x01\x02\x03" * 99, "no FIT, TCX or GPX"),
        (b"\x0e\x10\x00\x00", "no FIT"),
        ("Text".encode("utf-16"), "UTF-16"),
    ],
)
def test_what_says_nothing_is_refused(data, word):
    failed = read_bytes(data)
    assert isinstance(failed, Failed) and failed.status == "refused"
    assert word in failed.reason
