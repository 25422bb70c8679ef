"""The pictures of unit 02, a file for each page or theme."""
