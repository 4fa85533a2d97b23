"""Adaptive practice: skills, ability estimates, spaced revisits and the choice of the next task."""
