"""The pictures of unit 09, a file for each page or theme."""
