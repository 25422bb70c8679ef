"""The pictures of unit 08, a file for each page or theme."""
