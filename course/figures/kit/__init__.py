"""What the pictures of every unit are drawn with: style, axes, parts, trees, motion, and the SVG they end in."""
