"""What an author writes, into HTML."""
