"""Which version of the computations made a plan or a lock."""

from __future__ import annotations

ENGINE = "1"
"""Raised when the same inputs give another plan or other groups."""
