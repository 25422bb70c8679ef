"""The sounds of unit 07."""
