"""Files from anywhere, read with care: size first, then text, then markup that can do no harm. Nothing is written."""

import csv
import io
import math
import re
from pathlib import Path

from liftcalc.quantity_text import shortened
from liftcalc.units import PlainError

MOST_BYTES = 20_000_000
_NUMBER = re.compile(r"[+-]?(?:[0-9]{1,12}\.?[0-9]{0,20}|\.[0-9]{1,20})(?:[eE][+-]?[0-9]{1,3})?")


class FieldFileError(PlainError):
    """A file cannot be read; the message names file and place, says what came and what to do."""


def read_text(path, endings, what):
    """Return name and text of a file. Its kind, name and size are looked at before a byte is read.

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
    tuple of str
        Name of the file, and its text.

    Raises
    ------
    FieldFileError
        If there is no such file, it is a folder, empty, too large, of another ending, or no UTF-8 text.
    """
    if not isinstance(path, (str, Path)):
        such = f"my_file{''.join(endings[:1])}"
        raise FieldFileError(f"The name of the file must be a text, but got {path!r}. Write {such!r}.")
    path = Path(path)
    name = path.name or str(path)
    try:
        if path.is_dir():
            raise FieldFileError(f"{name}: this is a folder. Name the file in it that holds {what}.")
        if path.exists() and not path.is_file():
            raise FieldFileError(f"{name}: this is no plain file. Name a file that holds {what}.")
        size = path.stat().st_size
        if endings and path.suffix.lower() not in endings:
            raise FieldFileError(
                f"{name}: {what} is read from a file whose name ends in {' or '.join(endings)}. "
                "Export it in that format and read the new file."
            )
        if size > MOST_BYTES:
            raise FieldFileError(
                f"{name}: the file holds {size:,} bytes, and {MOST_BYTES:,} are the most that is read. "
                "Cut out the part with the lift and save it as a file of its own."
            )
        with path.open("rb") as file:
            raw = file.read(MOST_BYTES + 1)
    except (OSError, ValueError) as error:
        if isinstance(error, FieldFileError):
            raise
        reason = getattr(error, "strerror", None) or "the name cannot be one of a file"
        raise FieldFileError(f"{name}: the file cannot be opened ({reason}). Check the name and the folder.") from None
    return name, decode(name, raw, what)


def decode(name, raw, what):
    """Return bytes as text, or say why they are none."""
    if not raw.strip():
        raise FieldFileError(f"{name}: the file is empty. Export {what} once more.")
    if b"\0" in raw:
        raise FieldFileError(f"{name}: this is no UTF-8 text: it holds zero bytes. Save it as UTF-8 text.")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise FieldFileError(
            f"{name}, line {line}: the byte {raw[error.start]:#04x} does not belong in UTF-8 text. Save the file in "
            "the encoding UTF-8."
        ) from None


def open_table(path, what):
    """Return a CSV table as lines for a reader of the csv module; a table that it would stumble over is refused here.

    Parameters
    ----------
    path : str or Path
        The file.
    what : str
        What the file should hold, for the messages.

    Returns
    -------
    StringIO
        The whole text, held in memory.

    Raises
    ------
    FieldFileError
        As ``read_text``; and if quotation marks do not close.
    """
    name, text = read_text(path, (".csv",), what)
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    try:
        for _ in rows:
            pass
    except csv.Error as error:
        raise FieldFileError(
            f"{name}, line {rows.line_num}: the quotation marks do not close, or a cell is endless ({error}). "
            "Remove or double the marks."
        ) from None
    return io.StringIO(text, newline="")


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
        If the text declares a document type or entities, an encoding other than UTF-8, or is no well-formed XML.
    """
    from xml.etree.ElementTree import ParseError

    from defusedxml import DefusedXmlException
    from defusedxml.ElementTree import fromstring

    if re.search(r"<!\s*(?:DOCTYPE|ENTITY)", text, flags=re.IGNORECASE):
        raise FieldFileError(
            f"{name}: the file declares a document type (DOCTYPE or ENTITY), which {what} never needs and which can do "
            "harm. It is not read. Export it once more from the program that recorded it."
        )
    declared = re.match(r"\s*<\?xml[^>]*encoding\s*=\s*[\"']([^\"']{0,40})", text)
    if declared and declared[1].lower() not in ("utf-8", "utf8", "us-ascii", "ascii"):
        raise FieldFileError(f"{name}: the file says it is in {declared[1]!r}. Save it in the encoding UTF-8.")
    try:
        return fromstring(text.strip().encode(), forbid_dtd=True)
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
