"""Ground floor: an engine's actuation circuit as values, its faults, its solved currents and motion."""
