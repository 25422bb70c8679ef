"""Every picture of the course, drawn from `solutions/` when the site is built.

One function a picture, marked with `figure`; see DEVELOPERS.md, "A figure".
"""

from course.described import figure
