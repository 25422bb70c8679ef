"""The course's site: lessons, their figures and sounds, and the press that makes pages of them."""
