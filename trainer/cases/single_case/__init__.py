"""A case as a value, its file, its code, and the shipped cases."""
