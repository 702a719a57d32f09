"""What can be asked from a shell."""
