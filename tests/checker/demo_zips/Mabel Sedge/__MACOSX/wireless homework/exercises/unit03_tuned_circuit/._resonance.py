not Python: what some machines add to a zip
