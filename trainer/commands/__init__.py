"""The one entry: parses, calls a room or opens a face, prints, exits."""
