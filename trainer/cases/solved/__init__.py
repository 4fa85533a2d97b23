"""Solved universes on disk, and what a case proves by them."""
