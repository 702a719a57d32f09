"""Trivet: a planner for three-station science units."""
