"""Attempts, debriefs and sets as lines of text."""
