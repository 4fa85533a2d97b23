"""Sets of cases for a class: files, draws, checks, sealing."""
