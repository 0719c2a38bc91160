"""How the pages reach their readers beside the notebooks: on paper, without code, and in JupyterLab as root."""
