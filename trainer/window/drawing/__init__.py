"""Turns placed nodes into pixels with pygame; decides nothing."""
