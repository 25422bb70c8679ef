"""What every sound goes through: its loudness, its files, and the picture over its player."""
