"""Time from a slider key press to the changed picture and text, in real Chromium; a unit check; a hill of 200 sheets.

    python .ci/benchmark.py            JupyterLab
    python .ci/benchmark.py hill       the hill of 200 sheets and the simulated days, without a browser
    python .ci/benchmark.py app        the app view
    python .ci/benchmark.py app_view   the app view's pages: seconds until they stand, kernels left, memory of a kernel
    python .ci/benchmark.py app_view 00 09    the same of these pages
    python .ci/benchmark.py lab 5 02   fewer presses, one notebook

Everything is measured in one run, a bare slider with a label beside the panels: compare within a run, not between runs.
It is no test: times differ between machines, ratios less.
"""

import os
import shutil
import statistics
import sys
import tempfile
import time
import timeit
from pathlib import Path

import nbformat

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / ".ci")]
import browser  # noqa: E402
from build_notebooks import KERNEL  # noqa: E402

ASKED_WITHOUT_STOPS, ASKED_WITH_STOPS = 100, 50  # times the model of processes, at the loading point
REST = 500  # milliseconds between presses, so that the other panels have followed
WHICH = sys.argv[3] if len(sys.argv) > 3 else "0"
PRESSES = int(sys.argv[2]) if len(sys.argv) > 2 else 30  # of the other sub-commands
YARDSTICK = """import ipywidgets
slider, label = ipywidgets.FloatSlider(value=5, min=0, max=100, step=0.1), ipywidgets.HTML("<div role='status'>5</div>")
slider.observe(lambda change: setattr(label, "value", f"<div role='status'>{change['new']:.1f}</div>"), "value")
ipywidgets.VBox([slider, label])"""

WATCH = """(root) => {
  const picture = root.querySelector('svg');
  const watch = {};
  const words = () => root.querySelector('[role=status]').textContent;
  const before = words();
  window.answer = new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error('nothing changed within 3 seconds')), 3000);
    let start = null, text = null, figure = picture ? null : 0;
    const done = () => { if (text !== null && figure !== null)
      requestAnimationFrame(() => { observer.disconnect(); resolve(performance.now() - start); }); };
    root.addEventListener('keydown', () => { start = performance.now(); }, {capture: true, once: true});
    const observer = new MutationObserver(records => {
      if (text === null && words() !== before) text = 1;
      if (picture && root.querySelector('svg') !== picture) figure = 1;
      done();
    });
    observer.observe(root, {subtree: true, childList: true, characterData: true});
  });
}"""


def focus_a_slider_that_shows(page, panel):
    """Focus the first slider of a panel whose smallest step changes a number in its text."""
    words = panel.locator("[role=status]")
    for handle in panel.locator(".noUi-handle").all():
        if not handle.is_visible():
            continue
        handle.scroll_into_view_if_needed()
        handle.focus()
        before = words.text_content()
        page.keyboard.press("ArrowRight")
        page.wait_for_timeout(1500)
        after = words.text_content()
        page.keyboard.press("ArrowLeft")
        page.wait_for_timeout(1500)
        if after != before:
            return
    raise RuntimeError("no slider of the panel changes its text")


def panel_times(page):
    """Return, for each panel of the open notebook, its title and the times of all presses in milliseconds."""
    panels = page.locator(".widget-vbox:has([role=status]):has(.noUi-handle)")
    for number in range(panels.count()):
        panel = panels.nth(number)
        focus_a_slider_that_shows(page, panel)
        title = panel.locator("strong").first.text_content() if panel.locator("strong").count() else "bare slider"
        times = []
        for press in range(PRESSES + 3):
            panel.evaluate(WATCH)
            page.keyboard.press("ArrowRight" if press % 2 == 0 else "ArrowLeft")
            times.append(page.evaluate("() => window.answer"))
            page.wait_for_timeout(REST)
        yield title, times[3:], not panel.locator("img").count()


def run_browser(kind):
    """Print median and worst time of every panel, and their ratio to the bare slider."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shutil.copytree(ROOT / "notebooks", folder / "notebooks", ignore=shutil.ignore_patterns("sources"))
        shutil.copytree(ROOT / "data", folder / "data")
        cells = [nbformat.v4.new_code_cell(YARDSTICK)]
        nbformat.write(
            nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": KERNEL}), folder / "notebooks/yard.ipynb"
        )
        serve = browser.app_view if kind == "app" else browser.jupyter_lab
        rows = []
        with serve(folder, folder / "notebooks") as address, browser.page() as page:
            for path in [folder / "notebooks/yard.ipynb", *sorted((folder / "notebooks").glob(f"{WHICH}*.ipynb"))]:
                (browser.run_in_app if kind == "app" else browser.run_in_lab)(page, address(path.name))
                page.wait_for_timeout(12_000)  # until the last panel of the page is there
                print(path.stem, file=sys.stderr, flush=True)
                rows += [(path.stem, *measured) for measured in panel_times(page)]
        bare = statistics.median(rows[0][2])
        print(f"{kind}: key press to changed picture and text, {PRESSES} presses, milliseconds")
        for stem, title, times, is_drawing in rows:
            middle, worst = statistics.median(times), max(times)
            kind_of_picture = "line view" if is_drawing else "chart"
            print(
                f"{stem[:2]}  {title:42} {kind_of_picture if title != 'bare slider' else '':10} "
                f"median {middle:5.0f}  worst {worst:5.0f}  {middle / bare:4.1f} times the bare slider"
            )


def run_units():
    """Print what a unit check costs, beside the plain formula."""
    from liftcalc import Q, headway

    speed, spacing = Q(3.4, "m/s"), Q(6.8, "m")
    checked = min(timeit.repeat(lambda: headway(speed, spacing), number=2000, repeat=5)) / 2000 * 1e6
    plain = min(timeit.repeat(lambda: headway.plain(3.4, 6.8), number=200_000, repeat=5)) / 200_000 * 1e6
    print(f"headway with its unit check {checked:.1f} microseconds, plain {plain:.3f}: {checked / plain:,.0f} times")
    many = Q([3.4] * 1_000_000, "m/s")
    checked = min(timeit.repeat(lambda: headway(many, spacing), number=5, repeat=5))
    plain = min(timeit.repeat(lambda: headway.plain(many.magnitude, 6.8), number=5, repeat=5))
    print(f"headway of a million speeds with its unit check: {checked / plain:.2f} times the plain formula")


def run_hill(lines=200):
    """Print what a hill of many sheets costs: reading it, all of its tables, and the part of each in the whole."""
    from liftcalc.lifts.hill import read_hill
    from liftcalc.lifts.tables import comparison_table, governing_table, hill_csv, hill_table, weakest_first

    demo = sorted((ROOT / "data/hill").glob("*.csv"))
    with tempfile.TemporaryDirectory() as name:
        for number in range(lines):
            rows = demo[number % len(demo)].read_text(encoding="utf-8").splitlines()
            named = {"lift": f"lift,Lift {number},,,,", "line": f"line,Line {number},,,,"}
            text = "\n".join(named.get(row.partition(",")[0], row) for row in rows)
            Path(name, f"{number}.csv").write_text(text, encoding="utf-8")
        read_hill(demo[0].parent)
        hill_csv(read_hill(demo[0].parent))  # loads pandas
        start, marks = timeit.default_timer(), {}
        hill = read_hill(name)
        marks["read"] = timeit.default_timer()
        for make in (hill_table, comparison_table, governing_table, weakest_first, hill_csv):
            make(hill)
            marks[make.__name__] = timeit.default_timer()
    whole = marks["hill_csv"] - start
    before, parts = start, []
    for what, mark in marks.items():
        parts.append(f"{what} {100 * (mark - before) / whole:.0f} %")
        before = mark
    print(f"a hill of {lines} sheets, all tables and its CSV: {whole:.2f} s: {', '.join(parts)}")


def run_loading():
    """Print what days at the loading point cost, beside a model of processes, a rider each, on the same draws."""
    import numpy as np

    from liftcalc.simulation.loading_day import LoadingDay, RiderClass, _starts
    from liftcalc.simulation.many_days import simulate_days
    from liftcalc.simulation.running_time import Rope

    classes = (
        RiderClass("expert", 0.45, 2.6, 0.30, 0.01, 0.001),
        RiderClass("learner", 0.30, 3.6, 0.40, 0.06, 0.012),
        RiderClass("child", 0.25, 3.0, 0.40, 0.05, 0.010),
    )
    day = LoadingDay(classes, 2.0, 45.25, 7, 1.5, 35, 0.6, 0.5, 3, 20, 0.5)
    start = timeit.default_timer()
    rates = simulate_days(day, 2026, 1000)
    took = timeit.default_timer() - start
    print(f"1,000 days of 7 hours with all causes: {took:.2f} s, {rates.mean():.1f} persons an hour")
    import simpy

    generator = np.random.default_rng(1)
    arrived, ready = np.sort(generator.uniform(0, 25_200, 8400)), generator.lognormal(1.03, 0.35, 8400)
    slots, done = np.maximum(ready, 2.0), np.empty(8400)
    environment = simpy.Environment()
    place = simpy.Resource(environment)

    def rider(number, comes, takes):
        yield environment.timeout(comes)
        with place.request() as turn:
            yield turn
            yield environment.timeout(takes)
            done[number] = environment.now

    for number, (comes, takes) in enumerate(zip(arrived.tolist(), slots.tolist(), strict=True)):
        environment.process(rider(number, comes, takes))
    start = timeit.default_timer()
    environment.run()
    processes = timeit.default_timer() - start
    rope = Rope(LoadingDay((RiderClass("all", 1.0, 3.0, 0.0),), 2.0, 45.25), generator, 25_200)
    ours = min(timeit.repeat(lambda: _starts(ready, 2.0, rope, arrived), number=10, repeat=5)) / 10
    apart = np.abs(_starts(ready, 2.0, rope, arrived) - done).max()
    print(
        f"8,400 riders who come and wait: {processes / ours:,.0f} times the model of processes (asked: "
        f"{ASKED_WITHOUT_STOPS}), {apart:.0e} s apart"
    )


def run_crowded(days=3000, compared=20):
    """Print what days with arrivals, stops and returns cost, beside the model of processes on the same draws."""
    import numpy as np
    from loading_processes import GivenDraws, run_processes

    from liftcalc.simulation.crowded_run import Run
    from liftcalc.simulation.loading_day import LoadingDay, RiderClass

    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.4),), 2.0, 45.25, 7, 5, 35, 0.6)
    generator, spread = np.random.default_rng(1), np.sqrt(np.log1p(0.4**2))
    arrivals = np.sort(generator.uniform(0, 24_400, (days, 6500)), axis=1)
    ready = generator.lognormal(np.log(3) - spread**2 / 2, spread, (days, 9000))
    gaps, lengths = generator.exponential(720, (days, 120)), generator.lognormal(3.4, 0.55, (days, 120))
    start = timeit.default_timer()
    run = Run(day, arrivals, GivenDraws(ready, gaps, lengths), None, come_back=True)
    run.all_steps()
    ours = (timeit.default_timer() - start) / days
    given = [[each[number].tolist() for each in (arrivals, ready, gaps, lengths)] for number in range(compared)]
    start = timeit.default_timer()
    seen = [run_processes(*each, 2.0, 45.25, 25_200) for each in given]
    processes = (timeit.default_timer() - start) / compared
    apart = max(
        abs(run.waited[number] - waits) / started
        for number, (waits, started, _, _) in enumerate(seen)
        if not run.totals["turned_away"][number]
    )
    print(
        f"{days:,} days with arrivals, stops and returns: {processes / ours:,.0f} times the model of processes (asked: "
        f"{ASKED_WITH_STOPS}), mean waits {apart:.0e} s apart"
    )


def run_carriers():
    """Print what 1,000 days of carriers cost that come every 6 seconds."""
    from liftcalc.simulation.carrier_day import CarrierDay

    day = CarrierDay(
        2, 6.0, 291.0, {1: 0.4, 2: 0.4, 3: 0.1, 4: 0.1}, misloads=0.01, misloads_that_stop=0.3, stops_an_hour=3,
        stop_time=40, stop_variation=0.6, slow_downs_an_hour=2, slow_time=60, slow_speed=0.5,
    )  # fmt: skip
    start = timeit.default_timer()
    rates = day.rates(2026, 1000)
    took = timeit.default_timer() - start
    print(f"1,000 days of 7 hours of carriers every 6 s (asked: 3 s): {took:.2f} s, {rates.mean():.0f} persons an hour")


PANELS = """(() => {
  const seen = new Set();
  window.panelTimes = [];
  new MutationObserver(() => {
    for (const panel of document.querySelectorAll('.widget-vbox:has([role=status])'))
      if (!seen.has(panel)) { seen.add(panel); window.panelTimes.push(performance.now() / 1000); }
  }).observe(document, {subtree: true, childList: true});
})()"""


def panels_stand(page, address):
    """Open a page; return the seconds until its first panel and its last stand, and how many there are."""
    page.goto(address, wait_until="domcontentloaded")
    many, still, end = 0, 0, time.monotonic() + 60
    while not many or still < 3:
        if time.monotonic() > end:
            raise RuntimeError(f"no panel stood within 60 s at {page.url}")
        page.wait_for_timeout(1000)
        found = page.evaluate("window.panelTimes.length")
        many, still = found, (still + 1 if found == many else 0)
    times = page.evaluate("window.panelTimes")
    return times[0], times[-1], many


def run_app_view(views=30):
    """Print, for each page of the app view, when its panels stand; what many views leave; what a kernel takes."""
    import psutil

    from liftcalc.pages.app_view.server import WARM

    names = [path.name for path in sorted((ROOT / "notebooks").glob("*.ipynb"))]
    names = [name for name in names if name.startswith(tuple(sys.argv[2:]) or "")]
    with tempfile.TemporaryDirectory() as folder, browser.headless() as chromium:
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # as on a reader's computer, who opens pages the second time
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(folder) / "compiled")
        with browser.app_view(Path(folder), ROOT / "notebooks", "--no-warm-pages") as app:
            for name in names:
                with browser.page_of(chromium) as page:
                    page.goto(app(name), wait_until="domcontentloaded")
        taken = []
        with browser.app_view(Path(folder), ROOT / "notebooks", "--no-warm-pages") as app:
            for name in names:
                with browser.page_of(chromium) as page:
                    page.add_init_script(PANELS)
                    first, last, many = panels_stand(page, app(name))
                    (kernel,) = browser.kernels_of(app(""))
                    own, used = psutil.Process(kernel).memory_full_info(), psutil.Process(kernel).cpu_times()
                    taken.append((own.rss / 1e6, own.uss / 1e6))
                stands = f"first panel {first:4.1f} s  last of {many:2} {last:4.1f} s"
                stands += f"  its kernel took {used.user + used.system:.1f} s of a processor"
                print(f"{name[:2]}  cold  {stands}  {taken[-1][0]:4.0f} MB", flush=True)
                page_left = time.monotonic()
                while browser.kernels_of(app("")) and time.monotonic() < page_left + 20:
                    time.sleep(0.1)
            most = 0
            with browser.page_of(chromium) as page:
                for number in range(views):
                    page.goto(app(names[number % len(names)]), wait_until="domcontentloaded")
                    most = max(most, len(browser.kernels_of(app(""))))
            time.sleep(10)
            left = len(browser.kernels_of(app("")))
            print(f"{views} page views: {most} kernels at most, {left} ten seconds after the last page was closed")
        with browser.app_view(Path(folder)) as app:
            for name in [name for name in names if name.startswith(WARM)]:
                time.sleep(25)  # until all warm pages are ready
                pool = [psutil.Process(each).memory_full_info().rss / 1e6 for each in browser.kernels_of(app(""))]
                with browser.page_of(chromium) as page:
                    page.add_init_script(PANELS)
                    first, last, many = panels_stand(page, app(name))
                print(f"{name[:2]}  warm  first panel {first:4.1f} s  last of {many:2} {last:4.1f} s")
            print(f"kept warm: {len(pool)} kernels, {sum(pool):.0f} MB")
        for what, sizes in zip(("resident", "its own alone"), zip(*taken, strict=True), strict=True):
            print(
                f"memory of a kernel, {what}: {min(sizes):.0f} to {max(sizes):.0f} MB, "
                f"{statistics.mean(sizes):.0f} on average"
            )


if __name__ == "__main__":
    if sys.argv[1:2] == ["app_view"]:
        run_app_view()
        sys.exit()
    run_hill()
    run_loading()
    run_crowded()
    run_carriers()
    if sys.argv[1:] != ["hill"]:
        run_units()
        run_browser(sys.argv[1] if len(sys.argv) > 1 else "lab")
