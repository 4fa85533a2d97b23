"""The commands of `records`: collect, mark, report, export, keep and move results."""
