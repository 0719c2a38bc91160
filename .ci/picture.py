"""Take the picture of a panel for the README, from real JupyterLab."""

import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "tests"))
import browser  # noqa: E402


def main():
    """Write notebooks/pictures/panel.png."""
    target = ROOT / "notebooks/pictures/panel.png"
    target.parent.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, browser.jupyter_lab(Path(folder)) as address, browser.page() as page:
        browser.run_in_lab(page, address("02_spacing.ipynb"))
        panel = page.locator(".widget-vbox", has=page.locator(".result-LineViewPanel")).first
        panel.get_by_text("one past the post").wait_for()
        panel.scroll_into_view_if_needed()
        page.wait_for_timeout(1500)
        panel.screenshot(path=target)


if __name__ == "__main__":
    main()
