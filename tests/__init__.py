"""Tests by room; the program is imported first, so that one BLAS thread is set before a test module loads NumPy."""

import trainer  # noqa: F401
