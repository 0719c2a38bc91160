"""A lift of any kind from its readings: its kind, its line, its limits, and which of them governs."""
