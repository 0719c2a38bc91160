"""Pages that ran before anybody asked for them, so that they open at once. They know nothing of any visit."""

import asyncio

from liftcalc.pages.app_view.running import Page

_MOMENT = 2  # seconds from handing a page out to making the next: the reader's browser has the processor first


class WarmPages:
    """One page ready for each of a few notebooks.

    Parameters
    ----------
    app : AppView
        The server, for its settings.
    notebooks : list of str
        Paths of the notebooks to keep ready, the most wanted first.
    """

    def __init__(self, app, notebooks):
        self.app, self.notebooks = app, notebooks
        self._pages = {}
        self._filling = None

    def fill(self, after=0):
        """Make what is missing, one page after the other."""
        if self._filling is None or self._filling.done():
            self._filling = asyncio.ensure_future(self._fill(after))

    async def _fill(self, after):
        await asyncio.sleep(after)
        while missing := [notebook for notebook in self.notebooks if notebook not in self._pages]:
            while self.app.keeper.somebody_waits:
                await asyncio.sleep(0.2)
            self._pages[missing[0]] = page = Page(self.app, missing[0])
            await asyncio.wait([page.making])

    def take(self, notebook):
        """Return the page of a notebook that is ready, or None; another takes its place."""
        page = self._pages.pop(notebook, None)
        if page is not None:
            self.fill(after=_MOMENT)
        return page if page is not None and page.is_alive else None

    def look_after(self):
        """Put a new page in place of one that has come to harm."""
        harmed = [notebook for notebook, page in self._pages.items() if not page.is_alive]
        for notebook in harmed:
            del self._pages[notebook]
        if harmed:
            self.fill(after=10)

    @property
    def kernel_ids(self):
        """The kernels of the pages that are ready or in the making."""
        return {page.kernel_id for page in self._pages.values()}
