"""Files from anywhere, read with care: size first, then text, then markup that can do no harm. Nothing is written."""

import codecs
import math
import os
import re
import stat
from pathlib import Path

from liftcalc.quantity_text import shortened
from liftcalc.units import PlainError

MOST_BYTES = 20_000_000
_NUMBER = re.compile(r"[+-]?(?:[0-9]{1,12}\.?[0-9]{0,20}|\.[0-9]{1,20})(?:[eE][+-]?[0-9]{1,3})?")


class FieldFileError(PlainError):
    """A file cannot be read; the message names file and place, says what came and what to do."""


def read_bytes(path, endings, what):
    """Return name and bytes of a file. Its kind, name and size are looked at before a byte is read.

    Parameters
    ----------
    path : str or Path
        The file.
    endings : tuple of str
        Endings the name may have, such as (".gpx",); none for any ending.
    what : str
        What the file should hold, for the messages.

    Returns
    -------
    str, bytes
        Name of the file, and what it holds.

    Raises
    ------
    FieldFileError
        If there is no such file, it is a folder, a device or a pipe, too large, or of another ending.
    """
    if not isinstance(path, (str, Path)):
        such = f"my_file{''.join(endings[:1])}"
        raise FieldFileError(f"The name of the file must be a text, but got {path!r}. Write {such!r}.")
    path = Path(path)
    name = path.name or str(path)
    try:
        looked_at = path.stat()
        if stat.S_ISDIR(looked_at.st_mode):
            raise FieldFileError(f"{name}: this is a folder. Name the file in it that holds {what}.")
        if not stat.S_ISREG(looked_at.st_mode):
            raise FieldFileError(f"{name}: this is no plain file. Name a file that holds {what}.")
        if endings and path.suffix.lower() not in endings:
            raise FieldFileError(
                f"{name}: {what} is read from a file whose name ends in {' or '.join(endings)}. "
                "Export it in that format and read the new file."
            )
        if looked_at.st_size > MOST_BYTES:
            raise FieldFileError(
                f"{name}: the file holds {looked_at.st_size:,} bytes, and {MOST_BYTES:,} are the most that is read. "
                "Cut out the part with the lift and save it as a file of its own."
            )
        return name, _whole(path)
    except (OSError, ValueError) as error:
        if isinstance(error, FieldFileError):
            raise
        reason = getattr(error, "strerror", None) or "the name cannot be one of a file"
        raise FieldFileError(f"{name}: the file cannot be opened ({reason}). Check the name and the folder.") from None


def _whole(path):
    """Return what a plain file holds. Were it changed for a pipe since it was looked at, opening would not wait."""
    with open(os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)), "rb") as file:
        return file.read(MOST_BYTES + 1)


def read_text(path, endings, what):
    """Return name and text of a file; the arguments and errors are those of ``read_bytes`` and ``decode``."""
    name, raw = read_bytes(path, endings, what)
    return name, decode(name, raw, what)


_MARKS = {codecs.BOM_UTF8: "utf-8-sig", codecs.BOM_UTF16_LE: "utf-16", codecs.BOM_UTF16_BE: "utf-16"}
_DECLARED = {  # encoding of an XML declaration: what it is decoded by
    **dict.fromkeys(("utf-8", "utf8", "us-ascii", "ascii"), "utf-8"),
    **dict.fromkeys(("iso-8859-1", "latin1", "windows-1252", "cp1252"), "cp1252"),
}
_SPREADSHEETS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")  # what the two forms of a spreadsheet program begin with


def decode(name, raw, what):
    """Return bytes as text: by their own mark, by their XML declaration, or as UTF-8; or say why they are none."""
    encoding = _by_mark(name, raw, what)
    if encoding is None:
        declared = re.match(rb"\s*<\?xml[^>]*encoding\s*=\s*[\"']([^\"']{0,40})", raw)
        word = declared[1].decode("ascii", "replace").lower() if declared else "utf-8"
        if word not in _DECLARED:
            raise FieldFileError(f"{name}: the file says it is in {word!r}. Save it in the encoding UTF-8.")
        encoding = _DECLARED[word]
    try:
        return raw.decode(encoding)
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise FieldFileError(
            f"{name}, line {line}: the byte {raw[error.start]:#04x} does not belong in {encoding.upper()} text. Save "
            "the file in the encoding UTF-8."
        ) from None


def decode_table(name, raw, what):
    """Return bytes of a table as text, and the encoding in words: UTF-8, UTF-16, or that of older spreadsheets."""
    encoding = _by_mark(name, raw, what)
    tried = {"utf-16": "UTF-16"} if encoding == "utf-16" else {"utf-8-sig": "UTF-8", "cp1252": "Windows-1252"}
    for by, words in tried.items():
        try:
            return raw.decode(by), words
        except UnicodeDecodeError:
            continue
    raise FieldFileError(
        f"{name}: this is text neither in UTF-8 nor in UTF-16 nor in Windows-1252. Save it as 'CSV UTF-8'."
    )


def _by_mark(name, raw, what):
    """Return the encoding that the first bytes name, or None; refuse what is empty, a spreadsheet, or no text."""
    encoding = next((encoding for mark, encoding in _MARKS.items() if raw.startswith(mark)), None)
    if raw.startswith(_SPREADSHEETS):
        raise FieldFileError(
            f"{name}: this is no text: it begins like the file of a spreadsheet program, or a packed one. Open it "
            "there, save it as 'CSV UTF-8', and read that file."
        )
    if not raw.strip(b"\0 \t\r\n\xff\xfe\xef\xbb\xbf"):
        raise FieldFileError(f"{name}: the file is empty. Export {what} once more.")
    if encoding != "utf-16" and b"\0" in raw:
        raise FieldFileError(f"{name}: this is no text: it holds zero bytes. Save it as UTF-8 text.")
    return encoding


def parse_markup(name, text, what):
    """Return the root element of an XML text; refuse any document type, entity or outside reference.

    Parameters
    ----------
    name : str
        Name of the file, for the messages.
    text : str
        The whole text.
    what : str
        What it should hold, for the messages.

    Returns
    -------
    Element
        The root.

    Raises
    ------
    FieldFileError
        If the text declares a document type or entities, or is no well-formed XML.
    """
    from xml.etree.ElementTree import ParseError

    from defusedxml import DefusedXmlException
    from defusedxml.ElementTree import fromstring

    if re.search(r"<!\s*(?:DOCTYPE|ENTITY)", text, flags=re.IGNORECASE):
        raise FieldFileError(
            f"{name}: the file declares a document type (DOCTYPE or ENTITY), which {what} never needs and which can do "
            "harm. It is not read. Export it once more from the program that recorded it."
        )
    try:
        return fromstring(text.strip(), forbid_dtd=True)  # as text: what it declares is decoded already
    except DefusedXmlException:
        raise FieldFileError(
            f"{name}: the file declares a document type or an entity, and is not read. Export it once more."
        ) from None
    except ParseError as error:
        line, column = error.position
        raise FieldFileError(
            f"{name}, line {line}, character {column + 1}: the markup breaks off or is not well formed "
            f"({str(error).partition(':')[0]}). The file may be cut short: export {what} once more."
        ) from None
    except (ValueError, RecursionError, MemoryError, LookupError):
        raise FieldFileError(f"{name}: the markup cannot be read. Export {what} once more.") from None


def local_name(element):
    """Return the name of an element without its namespace; an empty text for a comment."""
    return element.tag.rpartition("}")[2] if isinstance(element.tag, str) else ""


def plain_number(text):
    """Return the number a text holds, written with a decimal point; None where it is none."""
    word = (text or "").strip()
    if len(word) > 60 or not _NUMBER.fullmatch(word):
        return None
    number = float(word)
    return number if math.isfinite(number) else None


def quoted(text, most=40):
    """Return a text, cut to a length that fits into a message, with its quotation marks."""
    return repr(shortened("" if text is None else str(text), most))
