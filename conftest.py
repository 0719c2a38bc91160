"""What all parts of a run share, notebooks and docstrings too: compiled modules, a folder for records, kernels."""

import itertools
import os
import sys
import tempfile
from pathlib import Path


def pytest_configure(config):
    """Give the run an empty folder for records, and what its children share."""
    os.environ["LIFTCALC_RECORDS"] = str(Path(tempfile.mkdtemp(prefix="records-")) / "my_records")
    share_compiled_modules(config)
    if getattr(config.option, "nbval", False) and os.name == "posix":
        put_kernels_on_unix_sockets()


def share_compiled_modules(config):
    """Keep compiled modules in pytest's own cache, where the environment wants none beside the sources.

    Without them every kernel, server and other child of the tests would compile each package anew.
    """
    if hasattr(config, "cache") and os.environ.pop("PYTHONDONTWRITEBYTECODE", ""):
        os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = str(config.cache.mkdir("compiled"))
        sys.dont_write_bytecode = False


def put_kernels_on_unix_sockets():
    """Put the kernels of the notebook runs on Unix sockets.

    With random TCP ports two kernels that start at the same moment can be given one port, and one of them then never
    answers.
    """
    import nbval.kernel

    folder, numbers = tempfile.mkdtemp(prefix="nb-"), itertools.count()

    class SocketKernelManager(nbval.kernel.KernelManager):
        def __init__(self, **options):
            super().__init__(transport="ipc", ip=f"{folder}/k{next(numbers)}", **options)

    nbval.kernel.KernelManager = SocketKernelManager
