"""One page in the making: its cells run one after another, and what fails says so in its place."""

import asyncio
import contextlib

from jupyter_core.utils import ensure_async
from nbclient.client import NotebookClient
from nbclient.exceptions import DeadKernelError
from nbconvert.filters import strip_ansi
from voila.notebook_renderer import NotebookRenderer
from voila.utils import get_page_config

from liftcalc.pages.app_view import trouble

_STOPS_WITHIN = 5  # seconds that a cell has to stop after it was told to


def _trouble(words):
    """Return an output that the page template shows as trouble."""
    return {"output_type": "error", "ename": "", "evalue": words, "traceback": []}


class _TooSlow(Exception):
    """A cell takes longer than it may."""


class _Executor(NotebookClient):
    """Runs single cells in a kernel; one that takes too long is left alone with what it has shown so far."""

    async def _async_handle_timeout(self, timeout, cell=None):
        raise _TooSlow


class PageRenderer(NotebookRenderer):
    """Runs the cells of a notebook in its kernel and puts what they show into the page template."""

    def __init__(self, longest, **parts):
        super().__init__(**parts)
        self.longest = longest  # seconds that a cell may take

    async def _jinja_kernel_start(self, nb, kernel_id, kernel_future):
        self._kernel = await ensure_async(kernel_future)
        self.executor = _Executor(nb, km=self._kernel, allow_errors=True, timeout=self.longest)
        self.executor.kc = await self.executor.async_start_new_kernel_client()
        self.kernel_started = True
        return kernel_id

    async def _jinja_cell_generator(self, nb, kernel_id):
        missing = trouble.MissingParts()
        try:
            for index, cell in enumerate(nb.cells):
                if cell.cell_type != "code":
                    yield cell
                    continue
                cell.outputs = []
                goes_on = await self._run(cell, index, missing)
                yield cell
                if not goes_on:
                    break
        finally:
            await self._cleanup_resources()

    async def _run(self, cell, index, missing):
        """Run one cell; return whether the kernel can go on to the next."""
        try:
            await self.executor.async_execute_cell(cell, index, store_history=False)
        except _TooSlow:
            self.log.error("Stopped after %s s:\n%s", self.longest, cell.source)
            cell.outputs = [*cell.outputs, _trouble(trouble.too_slow(self.longest))]
            await self._forget(missing.leave_out(cell.source))
            if await self._stop():
                return True
            await ensure_async(self._kernel.shutdown_kernel(now=True))
            cell.outputs.append(_trouble(trouble.REST_IS_MISSING))
            return False
        except DeadKernelError:
            self.log.error("The kernel ended in this cell:\n%s", cell.source)
            cell.outputs = [*cell.outputs, _trouble(trouble.REST_IS_MISSING)]
            return False
        shown = []
        for output in cell.outputs:
            if output.output_type != "error":
                shown.append(output)
                continue
            path = strip_ansi("\n".join(output.traceback))
            self.log.error("A cell failed:\n%s\n%s", cell.source, path)
            words = missing.words_for(cell.source, output.ename, output.evalue, output.traceback)
            shown += [_trouble(words)] if words else []
            await self._forget(trouble.names_made(cell.source)[0])
        cell.outputs = shown
        return True

    async def _stop(self):
        """Interrupt the cell that takes too long; return whether it stopped."""
        await ensure_async(self._kernel.interrupt_kernel())
        try:
            await self.executor.kc.wait_for_ready(timeout=_STOPS_WITHIN)
        except RuntimeError:
            return False
        return True

    async def _forget(self, names):
        """Take names out of the kernel, so that no part shows an older value as if it were the new one."""
        if names:
            code = f"for _name in {sorted(names)!r}:\n    globals().pop(_name, None)\ndel _name"
            self.executor.kc.execute(code, silent=True, store_history=False)


class Page:
    """One page and its kernel: it starts running when it is made, and its pieces are taken as they come.

    Parameters
    ----------
    app : AppView
        The server, for its settings.
    notebook : str
        Path of the notebook in the folder that is served.
    """

    def __init__(self, app, notebook):
        self.app, self.notebook = app, notebook
        self.kernel_id = None
        self._pieces = asyncio.Queue()
        self.making = asyncio.ensure_future(self._make())

    async def _make(self):
        try:
            renderer = self._renderer()
            await renderer.initialize()
            manager = self.app.kernel_manager
            self.kernel_id = await ensure_async(
                manager.start_kernel(kernel_name=renderer.notebook.metadata.kernelspec.name, path=renderer.cwd)
            )
            kernel = manager.get_kernel(self.kernel_id)
            async for piece, _ in renderer.generate_content_generator(self.kernel_id, kernel):
                self._pieces.put_nowait(piece)
        finally:
            self._pieces.put_nowait(None)

    def _renderer(self):
        app = self.app
        settings = {
            "base_url": app.base_url,
            "settings": app.app.settings,
            "log": app.log,
            "voila_configuration": app.voila_configuration,
        }
        return PageRenderer(
            app.longest_part,
            voila_configuration=app.voila_configuration,
            traitlet_config=app.config,
            notebook_path=self.notebook,
            template_paths=app.template_paths,
            config_manager=app.config_manager,
            contents_manager=app.contents_manager,
            base_url=app.base_url,
            kernel_spec_manager=app.kernel_spec_manager,
            page_config=get_page_config(**settings),
        )

    async def pieces(self):
        """Yield the pieces of the page as they come."""
        while (piece := await self._pieces.get()) is not None:
            yield piece
        await self.making  # raises what went wrong

    @property
    def is_alive(self):
        """Whether the page can be handed out: it is in the making or made, and its kernel is there."""
        if self.making.done() and (self.making.cancelled() or self.making.exception() is not None):
            return False
        return self.kernel_id is None or self.kernel_id in self.app.kernel_manager

    async def end(self):
        """Stop making the page, and end its kernel."""
        self.making.cancel()
        with contextlib.suppress(BaseException):
            await self.making
        if self.kernel_id is not None:
            await end_kernel(self.app.kernel_manager, self.kernel_id)


async def end_kernel(manager, kernel_id):
    """End a kernel at once; one that has ended already is as good."""
    with contextlib.suppress(KeyError, RuntimeError):
        if kernel_id in manager:
            await ensure_async(manager.shutdown_kernel(kernel_id, now=True))
