"""The page of a brief as PDF, by a Chromium of this computer that shows no window."""

import contextlib
import os
import shutil
import subprocess
import tempfile
from pathlib import Path

from liftcalc.units import PlainError

PAPERS = {"A4": "210mm 297mm", "Letter": "8.5in 11in"}
CHROMIUM = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
MOST_SECONDS = 60


class NoBrowserError(PlainError):
    """There is no Chromium on this computer, or it would not print."""


def write_pdf(html, path, paper="A4"):
    """Write a page as PDF.

    Parameters
    ----------
    html : str
        One HTML text, as ``brief.html()`` gives it.
    path : str or Path
        The file to write; what is there is replaced.
    paper : str
        "A4" or "Letter".

    Raises
    ------
    NoBrowserError
        If there is no Chromium on this computer, or it does not print the page.
    PlainError
        If the paper is another.
    """
    if paper not in PAPERS:
        raise PlainError(f"write_pdf: paper must be {' or '.join(PAPERS)}, but got {paper!r}.")
    program = next((found for found in map(shutil.which, CHROMIUM) if found), None)
    if program is None:
        raise NoBrowserError(
            "there is no Chromium on this computer, and a PDF is printed by one. Write brief.html, open it in any "
            "browser and print it from there: it fits one sheet."
        )
    sized = html.replace("</head>", f"<style>@page {{ size: {PAPERS[paper]}; }}</style></head>", 1)
    with tempfile.TemporaryDirectory() as folder:
        page, printed = Path(folder, "brief.html"), Path(folder, "brief.pdf")
        page.write_text(sized, encoding="utf-8")
        arguments = [
            program, "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--disable-extensions",
            f"--user-data-dir={Path(folder, 'profile')}", "--no-pdf-header-footer",
            *(["--no-sandbox"] if getattr(os, "geteuid", lambda: 1)() == 0 else []),  # it has none for root
            f"--print-to-pdf={printed}", page.as_uri(),
        ]  # fmt: skip
        silent = dict.fromkeys(("stdin", "stdout", "stderr"), subprocess.DEVNULL)
        with contextlib.suppress(OSError, subprocess.TimeoutExpired):  # whatever went wrong, nothing is printed then
            subprocess.run(arguments, timeout=MOST_SECONDS, check=False, **silent)
        if not printed.is_file():
            raise NoBrowserError(
                f"{Path(program).name} printed nothing. Write brief.html, open it in any browser and print it."
            )
        shutil.copyfile(printed, path)
