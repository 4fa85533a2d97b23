"""Profiles and cases: reading, drawing, checking and case codes, with solved results cached on disk."""
