"""Profiles and cases: files to values and back, cases drawn, codes, checks, what is solved kept on disk."""
