"""The pictures of unit 00, a file for each page or theme."""
