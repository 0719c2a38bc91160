"""The drawings: they take computed values and put them on paper. Only this folder loads matplotlib.

One module a form of chart, not one a notebook: panels of several notebooks share a form.
"""
