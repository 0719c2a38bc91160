"""The drawings: they take computed values and put them on paper. Only this folder loads matplotlib."""
