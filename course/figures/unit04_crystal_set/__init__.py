"""The pictures of unit 04, a file for each page or theme."""
