"""Injector Ear Trainer: hear an actuation test, gather evidence, name the place of the fault."""

__version__ = "0.1.0"
