"""The window. Only `drawing` and `app` import pygame; everything else decides what is shown without it."""
