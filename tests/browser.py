"""Real JupyterLab or the app view, with a real browser in front: for the browser test and for the benchmark."""

import contextlib
import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
NOTEBOOKS = ROOT / "notebooks"
APP_SECRET = "for-this-test-only-0123"  # without it, the app view opens nothing
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
]
RUN_ALL = """async () => {
  const widget = jupyterapp.shell.currentWidget;
  await widget.context.ready; await widget.sessionContext.ready;
  await jupyterapp.commands.execute('notebook:run-all-cells');
}"""


def chromium():
    """Return the path of a Chromium on this machine, or None."""
    names = ("chromium", "chromium-browser", "google-chrome")
    return next((path for path in map(shutil.which, names) if path), None)


def skip_without_chromium():
    """Leave a module of tests out where there is no Chromium, unless CI=true asks for one."""
    if chromium() is None and os.environ.get("CI", "").lower() != "true":
        pytest.skip("no Chromium on this machine: the browser tests are left out", allow_module_level=True)


IN_CI = os.environ.get("CI", "").lower() == "true"
TAKES_LONG = "takes long: run it with CI=true"
in_ci = pytest.mark.skipif(not IN_CI, reason=TAKES_LONG)  # of one test; of a module ``leave_to_ci``


def leave_to_ci():
    """Leave a module of tests, or one test, to CI=true: it takes long, and a shorter one stands in the plain run."""
    if not IN_CI:
        pytest.skip(TAKES_LONG, allow_module_level=True)


def free_port():
    """Return a port that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextlib.contextmanager
def _server(arguments, environment, address, log):
    with log.open("wb") as sink:
        process = subprocess.Popen(arguments, env=environment, stdout=sink, stderr=sink, stdin=subprocess.DEVNULL)
        try:
            _wait_for(address, process, log)
            yield
        finally:
            process.terminate()
            try:
                process.wait(10)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()


def _wait_for(address, process, log, seconds=60):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if process.poll() is not None:
            break
        try:
            with urllib.request.urlopen(address, timeout=5):
                return
        except urllib.error.HTTPError as error:
            if error.code < 500:  # it answers, if only to turn away who brings no cookie
                return
            time.sleep(0.1)
        except OSError:
            time.sleep(0.1)
    raise RuntimeError(f"the server did not answer at {address}:\n{log.read_text(errors='replace')[-3000:]}")


@contextlib.contextmanager
def jupyter_lab(folder, notebooks=NOTEBOOKS):
    """Start JupyterLab, its own files in an empty folder; give the address of a notebook by its name."""
    from liftcalc.pages.app_view import LAB_EXTENSION

    paths = [str(LAB_EXTENSION), *filter(None, [os.environ.get("JUPYTER_PATH")])]  # this one, not an installed copy
    environment = dict(os.environ, JUPYTER_PATH=os.pathsep.join(paths))
    for variable in (
        "JUPYTERLAB_SETTINGS_DIR",
        "JUPYTERLAB_WORKSPACES_DIR",
        "JUPYTER_RUNTIME_DIR",
        "JUPYTER_CONFIG_DIR",
    ):
        environment[variable] = str(folder / variable.lower())
    port, token = free_port(), "for-this-test-only"
    arguments = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--no-browser",
        "--ip=127.0.0.1",
        f"--port={port}",
        "--ServerApp.port_retries=0",
        f"--IdentityProvider.token={token}",
        f"--ServerApp.root_dir={notebooks}",
        "--LabApp.expose_app_in_browser=True",
        "--LabApp.extension_manager=readonly",
    ]
    address = f"http://127.0.0.1:{port}"
    with _server(arguments, environment, f"{address}/api?token={token}", folder / "lab.log"):
        yield lambda name: f"{address}/doc/tree/{name}?token={token}"


@contextlib.contextmanager
def app_view(folder, notebooks=NOTEBOOKS, *more):
    """Start the app view; give the address of a notebook by its name, with the secret that opens it.

    Parameters
    ----------
    folder : pathlib.Path
        Where its log and its own files go.
    notebooks : pathlib.Path
        The folder that is served.
    *more : str
        More arguments of the command.
    """
    from liftcalc.pages.app_view import SECRET, command, environment

    port = free_port()
    variables = dict(environment(), JUPYTER_RUNTIME_DIR=str(folder / "app_runtime"))
    variables[SECRET] = APP_SECRET
    address = f"http://127.0.0.1:{port}"
    as_in_the_readme = [sys.executable, "-m", "liftcalc.pages.app_view", "--no-browser", f"--port={port}"]
    arguments = as_in_the_readme if notebooks == NOTEBOOKS else command(port, browser=False, folder=notebooks)
    with _server([*arguments, *more], variables, address, folder / "app.log"):
        said = (folder / "app.log").read_text(errors="replace")
        assert f"{address}/" in said, f"port {port} was taken by another server in the meantime:\n{said}"
        yield lambda name: f"{address}/voila/render/{name}?secret={APP_SECRET}"


def kernels_of(address):
    """Return the kernels that the app view at this address runs, by their process ids."""
    import psutil

    port = address.split("/")[2].partition(":")[2]
    (server,) = [each for each in psutil.process_iter(["cmdline"]) if f"--port={port}" in (each.info["cmdline"] or [])]
    children = server.children(recursive=True)
    with contextlib.suppress(psutil.NoSuchProcess):
        return {each.pid for each in children if "ipykernel_launcher" in each.cmdline()}
    return kernels_of(address)  # one ended while it was looked at


@contextlib.contextmanager
def headless():
    """Start headless Chromium without a window."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium(), headless=True, args=ARGUMENTS)
        try:
            yield started
        finally:
            started.close()


@contextlib.contextmanager
def page_of(started, width=1200, height=1000):
    """Open an empty page of a reader who was never here; every address it asks for is kept in ``page.asked``."""
    reader = started.new_context(viewport={"width": width, "height": height})
    opened = reader.new_page()
    opened.asked = []
    opened.on("request", lambda request: opened.asked.append(request.url))
    opened.set_default_timeout(60_000)
    try:
        yield opened
    finally:
        reader.close()


@contextlib.contextmanager
def page(width=1200, height=1000):
    """Open an empty page in a Chromium of its own."""
    with headless() as started, page_of(started, width, height) as opened:
        yield opened


def asked_outside(opened):
    """Return the addresses that a page asked for outside this computer."""
    inside = ("http://127.0.0.1", "ws://127.0.0.1", "data:", "blob:", "about:")
    return [address for address in opened.asked if not address.startswith(inside)]


def run_in_lab(opened, address):
    """Open a notebook in JupyterLab and run all of its cells."""
    opened.goto(address, wait_until="domcontentloaded")
    run_all(opened)


def run_all(opened):
    """Run all cells of the notebook that is open in JupyterLab."""
    opened.wait_for_function("window.jupyterapp && jupyterapp.shell.currentWidget?.sessionContext?.isReady")
    opened.evaluate(RUN_ALL)
    opened.locator(".widget-vbox [role=status]").first.wait_for(state="attached")
    opened.wait_for_function(  # until the last cell has run: running cells takes the focus away
        "![...document.querySelectorAll('.jp-InputPrompt')].some(prompt => prompt.textContent.includes('*'))"
    )


def run_in_app(opened, address):
    """Open a notebook in the app view."""
    opened.goto(address, wait_until="domcontentloaded")
    opened.locator(".widget-vbox [role=status]").first.wait_for(state="attached")
