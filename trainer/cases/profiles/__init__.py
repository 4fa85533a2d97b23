"""Engine profiles between files and values, and whether one can be solved."""
