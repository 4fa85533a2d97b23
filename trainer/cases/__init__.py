"""Files to values and back: profiles, cases, the drawing of cases, their codes, their checks."""
