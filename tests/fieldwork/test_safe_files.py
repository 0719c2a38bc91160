"""The door for files from outside: hostile files, files that are none, and bytes that are no text."""

import os
import re
import time
from types import SimpleNamespace

import pytest
from example_tracks import BOMB, HEAD, MANY, gpx
from messages import SOMETHING, refuses, table_of_messages

from liftcalc.fieldwork import safe_files
from liftcalc.fieldwork.safe_files import FieldFileError, read_text
from liftcalc.fieldwork.track_files import read_track, track_from_text


def test_nothing_of_a_bomb_is_unfolded():
    layers = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 12))
    text = f'<!DOCTYPE gpx [<!ENTITY e0 "ha">{layers}]>{HEAD}<trk><name>&e11;</name></trk></gpx>'
    begin = time.perf_counter()
    refuses(
        lambda: track_from_text("bomb.gpx", text),
        "bomb.gpx: the file declares a document type (DOCTYPE or ENTITY), which a GPS track (GPX) never needs and "
        "which can do harm. It is not read. Export it once more from the program that recorded it.",
        FieldFileError,
    )
    assert time.perf_counter() - begin < 1


@pytest.mark.parametrize("before", [BOMB, "<!DOCTYPE gpx>"], ids=["entities", "a bare doctype"])
def test_the_parser_refuses_a_doctype_of_itself(monkeypatch, before):
    blind = SimpleNamespace(
        search=lambda *given, **named: None, match=re.match, IGNORECASE=re.I
    )  # as if the first look had missed it
    monkeypatch.setattr(safe_files, "re", blind)
    refuses(
        lambda: safe_files.parse_markup("bomb.gpx", gpx(*MANY, before=before), "a track"),
        "bomb.gpx: the file declares a document type or an entity, and is not read. Export it once more.",
        FieldFileError,
    )


def test_a_file_too_large_is_refused_before_it_is_read(tmp_path, monkeypatch):
    path = tmp_path / "large.gpx"
    with path.open("wb") as file:
        file.truncate(200_000_000)  # sparse: takes no room

    def never(*arguments, **named):
        raise AssertionError("the file was opened")

    monkeypatch.setattr(type(path), "open", never)
    refuses(
        lambda: read_track(path),
        "large.gpx: the file holds 200,000,000 bytes, and 20,000,000 are the most that is read. Cut out the part with "
        "the lift and save it as a file of its own.",
        FieldFileError,
    )


NO_TEXT = [  # what, bytes, message
    ("empty", b"", "x.gpx: the file is empty. Export a GPS track (GPX) once more."),
    ("blank", b" \n\n", "x.gpx: the file is empty. Export a GPS track (GPX) once more."),
    (
        "latin letters",
        b"<gpx>\n\xe9t\xe9</gpx>",
        "x.gpx, line 2: the byte 0xe9 does not belong in UTF-8 text. Save the file in the encoding UTF-8.",
    ),
    (
        "a spreadsheet",
        b"PK\x03\x04\x14\x00\x06\x00",
        "x.gpx: this is no text: it begins like the file of a spreadsheet program, or a packed one. Open it there, "
        "save it as 'CSV UTF-8', and read that file.",
    ),
    (
        "another encoding declared",
        b'<?xml version="1.0" encoding="ebcdic-us"?>' + gpx(*MANY).encode(),
        "x.gpx: the file says it is in 'ebcdic-us'. Save it in the encoding UTF-8.",
    ),
    (
        "packed",
        b"\x1f\x8b\x08\x00zip",
        "x.gpx: this is no text: it holds zero bytes. Save it as UTF-8 text.",
    ),
]


@table_of_messages(NO_TEXT, "what", "raw", kind=FieldFileError)
def test_bytes_that_are_no_text(tmp_path, what, raw, message, kind):
    path = tmp_path / "x.gpx"
    path.write_bytes(raw)
    refuses(lambda: read_track(path), message, kind)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "iso-8859-1", "windows-1252"])
def test_markup_is_read_by_its_mark_or_by_what_it_declares(tmp_path, encoding):
    path, declared = tmp_path / "x.gpx", encoding.removesuffix("-sig")
    text = f'<?xml version="1.0" encoding="{declared}"?>' + gpx(*MANY).replace("<trk>", "<trk><name>Übung</name>", 1)
    path.write_bytes(text.encode(encoding))
    assert read_track(path, track="Übung").seconds.size == len(MANY)


def test_a_pipe_is_answered_at_once(tmp_path):
    path = tmp_path / "pipe.gpx"
    os.mkfifo(path)
    message = "pipe.gpx: this is no plain file. Name a file that holds a track."
    refuses(lambda: read_text(path, (".gpx",), "a track"), message, FieldFileError)
    link = tmp_path / "link.gpx"
    link.symlink_to("/dev/zero")
    message = "link.gpx: this is no plain file. Name a file that holds a track."
    refuses(lambda: read_text(link, (".gpx",), "a track"), message, FieldFileError)


def test_files_that_are_none(tmp_path):
    (tmp_path / "ride.kml").write_text(gpx(*MANY), encoding="utf-8")
    (tmp_path / "folder.gpx").mkdir()
    cases = [
        (
            tmp_path / "missing.gpx",
            f"missing.gpx: the file cannot be opened ({SOMETHING}). Check the name and the folder.",
        ),
        (tmp_path / "folder.gpx", "folder.gpx: this is a folder. Name the file in it that holds a GPS track (GPX)."),
        (
            tmp_path / "ride.kml",
            "ride.kml: a GPS track (GPX) is read from a file whose name ends in .gpx. "
            "Export it in that format and read the new file.",
        ),
        (None, "The name of the file must be a text, but got None. Write 'my_file.gpx'."),
        (
            "a\0b.gpx",
            "a\0b.gpx: the file cannot be opened (the name cannot be one of a file). Check the name and the folder.",
        ),
        (
            "x" * 5000 + ".gpx",
            f"{'x' * 5000}.gpx: the file cannot be opened ({SOMETHING}). Check the name and the folder.",
        ),
    ]
    for path, message in cases:
        refuses(lambda path=path: read_track(path), message, FieldFileError)


def test_a_device_is_no_file():
    refuses(
        lambda: read_text("/dev/zero", (".gpx",), "a track"),
        "zero: this is no plain file. Name a file that holds a track.",
        FieldFileError,
    )
