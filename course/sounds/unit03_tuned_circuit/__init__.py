"""The sounds of unit 03."""
