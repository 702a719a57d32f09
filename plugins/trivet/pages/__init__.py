"""What does each reader see? Values and plans in, HTML pages and assets out."""
