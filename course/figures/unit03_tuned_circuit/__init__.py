"""The pictures of unit 03, a file for each page or theme."""
