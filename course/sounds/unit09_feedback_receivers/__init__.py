"""The sounds of unit 09."""
