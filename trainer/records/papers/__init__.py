"""Pages and drawings for a browser or a printer."""
