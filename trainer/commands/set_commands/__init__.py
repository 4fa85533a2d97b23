"""The commands of `set`: make, check, preview, seal, show and work sets of cases."""
