"""What all parts of a run share, notebooks and docstrings too: compiled modules, a folder for records, kernels."""

import contextlib
import itertools
import os
import sys
import tempfile
from pathlib import Path

import pytest

pytest.register_assert_rewrite("sweep")

LONGEST = (
    "tests/pages/test_app_view.py",
    "tests/lifts/test_limits_of_line.py",
    "tests/pages/test_jupyter_lab.py",
    "tests/formulas/test_mutation.py",
    "tests/formulas/test_laws.py",
)


def pytest_configure(config):
    """Give the run an empty folder for records, and what its children share."""
    os.environ["LIFTCALC_RECORDS"] = str(Path(tempfile.mkdtemp(prefix="records-")) / "my_records")
    share_compiled_modules(config)
    if getattr(config.option, "nbval", False):
        set_up_kernels()


@pytest.hookimpl(wrapper=True)
def pytest_collect_file(file_path, parent):
    """Move every control of a notebook after its strict check, in the kernel that is warm then."""
    collected = yield
    if file_path.suffix != ".ipynb" or not collected:
        return collected
    from sweep import SweptNotebook

    return [SweptNotebook.from_parent(parent, path=file_path)]


def pytest_collection_modifyitems(items):
    """Begin with the files that take longest, so that the workers end at one time."""
    files = [*LONGEST, ""]
    items.sort(key=lambda item: next(place for place, file in enumerate(files) if item.nodeid.startswith(file)))


def share_compiled_modules(config):
    """Keep compiled modules in pytest's own cache, where the environment wants none beside the sources.

    Without them every kernel, server and other child of the tests would compile each package anew.
    """
    if hasattr(config, "cache") and os.environ.get("PYTHONDONTWRITEBYTECODE"):
        with contextlib.suppress(OSError):  # nothing can be written here: then it takes longer
            os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = str(config.cache.mkdir("compiled"))
            del os.environ["PYTHONDONTWRITEBYTECODE"]
            sys.dont_write_bytecode = False


def set_up_kernels():
    """Put the kernels of the notebook runs on Unix sockets, and write no message out where nobody reads it.

    With random TCP ports two kernels that start at the same moment can be given one port, and one of them then never
    answers.
    """
    import nbval.kernel

    folder, numbers = tempfile.mkdtemp(prefix="nb-"), itertools.count()

    class SocketKernelManager(nbval.kernel.KernelManager):
        def __init__(self, **options):
            super().__init__(transport="ipc", ip=f"{folder}/k{next(numbers)}", **options)

    if os.name == "posix":
        nbval.kernel.KernelManager = SocketKernelManager
    nbval.kernel.pformat = lambda message: message  # of every message, for a log that nobody keeps
