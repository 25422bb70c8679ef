"""The pictures of unit 05, a file for each page or theme."""
