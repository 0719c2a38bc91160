"""Who is on which page, and when the kernel of a page ends.

Every page holds a line to the server as long as it stands (``PageLine`` in ``handlers.py``). A page that is left says
so by the way the line closes; a browser that was killed or a network that is gone does not, and has a few seconds to
come back.
"""

import time

from jupyter_core.utils import ensure_async

from liftcalc.pages.app_view import trouble
from liftcalc.pages.app_view.running import end_kernel

LOOKS_EVERY = 0.5  # seconds
COMES_BACK_WITHIN = 8  # seconds without a line before a page counts as left
ABOUT_TO_LEAVE = 5  # seconds for which a page that may be about to leave takes no room
ONE_MOVE = 1  # seconds within which all that the sliders send is taken for the same move
LEFT_FOR_GOOD_AFTER = 0.5  # seconds, for a page that said it leaves

IDLE = "Nobody moved anything on this page for {hours}, so it was put away. Load it again to go on."
ENDED = "This page has lost what computes it. Load it again to go on."


def _hours(seconds):
    if seconds < 3600:
        return f"{seconds / 60:.2g} min"
    return f"{seconds / 3600:.3g} {'hour' if seconds == 3600 else 'hours'}"


class Visit:
    """One reader on one page.

    Parameters
    ----------
    now : float
        The time at which the page was asked for.
    """

    def __init__(self, now):
        self.kernel_id = None  # until the kernel is started
        self.loading = True  # the page is still being sent
        self.lines = []  # that the page holds to the server: usually one
        self.seen = self.moved = now  # when the page was last known to be there, and its reader last moved something
        self.left = False  # the page said that it leaves
        self.leaving = None  # when the page said that it may be about to leave
        self.troubled = None  # when a move could not be worked out, while the page says so

    def is_over(self, now):
        """Return whether the reader has left the page."""
        if self.loading or self.lines:
            return False
        return now - self.seen > (LEFT_FOR_GOOD_AFTER if self.left else COMES_BACK_WITHIN)


class Keeper:
    """Keeps account of the visits and ends the kernels of those that are over.

    Parameters
    ----------
    app : AppView
        The server: its kernels, its warm pages and its options.
    clock : callable, optional
        The time in seconds.
    """

    def __init__(self, app, clock=time.monotonic):
        self.app, self.clock = app, clock
        self._visits = []
        self._strays = {}

    def start(self):
        """Return the visit of a reader who just asked for a page."""
        visit = Visit(self.clock())
        self._visits.append(visit)
        return visit

    def of(self, kernel_id):
        """Return the visit with this kernel, or None."""
        return next((visit for visit in self._visits if visit.kernel_id == kernel_id), None)

    @property
    def is_full(self):
        """Whether as many pages are open as this computer keeps."""
        since = self.clock() - ABOUT_TO_LEAVE
        staying = [visit for visit in self._visits if visit.leaving is None or visit.leaving < since]
        return len(staying) >= self.app.most_pages

    @property
    def somebody_waits(self):
        """Whether a page that somebody asked for is still in the making."""
        return any(visit.loading for visit in self._visits)

    def loaded(self, visit):
        """Note that a page was sent whole."""
        visit.loading, visit.seen = False, self.clock()

    def joined(self, visit, line):
        """Note a line from a page."""
        visit.lines.append(line)
        visit.left, visit.seen = False, self.clock()

    def leaving(self, visit):
        """Note that a page may be about to leave: it stands until what it asks for is there, and takes no room."""
        visit.leaving = self.clock()

    def parted(self, visit, line, for_good):
        """Note that a line closed, for good if the page said so."""
        if line in visit.lines:
            visit.lines.remove(line)
        visit.left, visit.seen = for_good, self.clock()

    def moved(self, kernel_id):
        """Note that a reader moved something."""
        visit = self.of(kernel_id)
        if visit is None:
            return
        visit.moved = self.clock()
        if visit.troubled is not None and visit.moved - visit.troubled > ONE_MOVE:
            self.tell(kernel_id, "trouble", "")  # another move: if it fails too, it says so

    def tell(self, kernel_id, kind, words):
        """Send words to the page with this kernel; trouble without words is over."""
        visit = self.of(kernel_id)
        if visit is None:
            return
        visit.troubled = self.clock() if kind == "trouble" and words else None
        for line in list(visit.lines):
            line.tell(kind, words)

    async def end(self, visit):
        """End a visit and its kernel."""
        if visit in self._visits:
            self._visits.remove(visit)
        if visit.kernel_id is not None:
            await end_kernel(self.app.kernel_manager, visit.kernel_id)

    async def look(self):
        """Look once at every visit and at every kernel."""
        now = self.clock()
        for visit in list(self._visits):
            if visit.is_over(now):
                await self.end(visit)
            elif not visit.loading and not await self._is_alive(visit.kernel_id):
                self.tell(visit.kernel_id, "ended", ENDED)
                await self.end(visit)
            elif now - visit.moved > self.app.longest_idle:
                self.tell(visit.kernel_id, "ended", IDLE.format(hours=_hours(self.app.longest_idle)))
                await self.end(visit)
            else:
                await self._stop_a_long_move(visit, now)
        await self._end_strays(now)

    async def _is_alive(self, kernel_id):
        manager = self.app.kernel_manager
        return kernel_id in manager and await ensure_async(manager.get_kernel(kernel_id).is_alive())

    async def _stop_a_long_move(self, visit, now):
        if visit.loading or now - visit.moved < self.app.longest_part:
            return
        kernel = self.app.kernel_manager.get_kernel(visit.kernel_id)
        if kernel.execution_state != "busy":
            return
        await kernel.interrupt_kernel()
        visit.moved = now  # asked again only after as long again
        self.tell(visit.kernel_id, "trouble", trouble.move_too_slow(self.app.longest_part))

    async def _end_strays(self, now):
        """End kernels that belong to no visit and no warm page: nothing should make one, and nothing would end it."""
        known = {visit.kernel_id for visit in self._visits} | self.app.warm_pages.kernel_ids
        if None in known:  # one is being started: it is nobody's until that is done
            return
        strays = set(self.app.kernel_manager.list_kernel_ids()) - known
        self._strays = {each: self._strays.get(each, now) for each in strays}
        for kernel_id, since in self._strays.items():
            if now - since > COMES_BACK_WITHIN:
                await end_kernel(self.app.kernel_manager, kernel_id)
