"""Attempts and events in a database, and how they travel: bundles, backups, records, delivery."""
