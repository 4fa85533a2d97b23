"""The commands on cases and engines: `hear`, `inspect`, `handout`, `check`, `profiles`, `cases`, `draw`."""
