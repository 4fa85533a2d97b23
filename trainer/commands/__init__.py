"""The command line: reads a call, calls a room or opens a face, prints the result and exits."""
