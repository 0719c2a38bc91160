"""Let the first command open the notebooks as root too, as in a container: JupyterLab alone refuses and only says no.

JupyterLab loads this in environments in which the package is installed; ``lab_settings/server.json`` switches it on.
"""

import os


def _jupyter_server_extension_points():
    return [{"module": "liftcalc.pages.lab_server"}]


def _load_jupyter_server_extension(app):
    """Allow the server to run as root, and say so in its log; for anybody else nothing changes."""
    if hasattr(os, "geteuid") and os.geteuid() == 0 and not app.allow_root:
        app.allow_root = True
        app.log.warning(
            "JupyterLab runs as root here, as liftcalc allows it: fit for a container, not for a shared machine."
        )
