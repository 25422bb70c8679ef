"""The pictures of unit 06, a file for each page or theme."""
