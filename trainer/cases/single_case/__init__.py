"""A case, its file and its code, and those that ship."""
