"""The sounds of unit 08."""
