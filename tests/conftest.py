"""Settings of the whole suite: kernels of the notebook runs, and repeatable draws."""

import itertools
import os
import tempfile

from hypothesis import Phase, settings

settings.register_profile("project", derandomize=True, deadline=None, max_examples=60)
settings.register_profile(  # for the mutation check: it only asks whether there is a failure, not for the smallest one
    "quick", derandomize=True, deadline=None, max_examples=4, phases=(Phase.explicit, Phase.generate)
)
settings.load_profile("project")


def pytest_configure(config):
    """Put the kernels of the notebook runs on Unix sockets, each with a name of its own.

    With random TCP ports two kernels that start at the same moment can be given one port, and one of them then never
    answers.
    """
    if getattr(config.option, "nbval", False) and os.name == "posix":
        import nbval.kernel

        folder, numbers = tempfile.mkdtemp(prefix="nb-"), itertools.count()

        class SocketKernelManager(nbval.kernel.KernelManager):
            def __init__(self, **options):
                super().__init__(transport="ipc", ip=f"{folder}/k{next(numbers)}", **options)

        nbval.kernel.KernelManager = SocketKernelManager
