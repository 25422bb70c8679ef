"""The pictures of unit 01, a file for each page or theme."""
