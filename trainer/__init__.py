"""Injector Ear Trainer: hear an actuation test, gather evidence, name the place of the fault."""

import os

__version__ = "0.1.0"

# One BLAS thread in this process and in every process it starts. The solver works on thousands of 16 x 16 matrices:
# threads gain nothing there, and on a busy machine they wait for each other (docs/decisions.md has the figures).
# A BLAS library reads these when NumPy or SciPy loads it, so they are set before any other module is imported.
os.environ.update(
    dict.fromkeys(("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS"), "1")
)
