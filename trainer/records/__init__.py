"""The store of attempts: append-only, embedded by default."""
