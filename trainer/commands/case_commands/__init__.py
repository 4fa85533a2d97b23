"""The commands on cases and engines: `hear`, `inspect`, `handout`, `check`, `fair`, `profiles`, `cases`, `draw`."""
