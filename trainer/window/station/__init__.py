"""The start page, and what belongs to this machine: sound set-up, settings, station mode, doctor."""
