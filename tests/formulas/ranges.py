"""Ranges from which laws draw their numbers."""

from hypothesis import strategies as st

speeds = st.floats(0.2, 8)
lengths = st.floats(1, 900)
gaps = st.floats(1, 60)
persons = st.integers(1, 12)
