"""The instructor's pages: collecting, reporting, sealing and building sets."""
