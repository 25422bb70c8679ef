"""What members hand in: read once, sorted to exercises, and compared with one another."""
