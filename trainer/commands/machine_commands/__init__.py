"""The command `doctor`: what this machine has and lacks."""
