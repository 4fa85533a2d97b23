"""Solved universes cached on disk, and the proofs of cases made with them."""
