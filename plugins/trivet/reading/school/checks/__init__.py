"""What only shows when two files are held together. Each check takes values and sheets, and returns problems."""
