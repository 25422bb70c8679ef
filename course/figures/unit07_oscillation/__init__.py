"""The pictures of unit 07, a file for each page or theme."""
