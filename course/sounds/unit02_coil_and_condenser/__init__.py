"""The sounds of unit 02."""
