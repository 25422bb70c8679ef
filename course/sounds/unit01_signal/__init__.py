"""The sounds of unit 01."""
