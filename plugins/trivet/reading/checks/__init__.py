"""What a schema can't see in a unit: one idea in each file."""
