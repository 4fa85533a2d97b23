"""Where sound leaves the program, and what this machine has for it."""
