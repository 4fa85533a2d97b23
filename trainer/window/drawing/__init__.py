"""Turns placed nodes into pixels with pygame; decides nothing, and nothing that decides imports it."""
