"""Every sound of the course, computed from `solutions/` when the site is built.

One function a sound, marked with `sound`; see DEVELOPERS.md, "A sound".
"""

from course.described import sound
