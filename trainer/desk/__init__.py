"""Runs one attempt: practice, store and player joined, without a face."""
