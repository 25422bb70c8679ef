"""The sounds of unit 05."""
