"""Engine profiles: reading, checking and a trial solve."""
