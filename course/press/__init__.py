"""What turns the lessons into pages: the parts that `hooks.py` hands to MkDocs. Four rooms, each on top of the ones before:

- `text`: what an author writes, into HTML: calls `{{ … }}`, Markdown, formulas, numbers, the two vocabularies
- `media`: pictures and sounds, made once and kept; their files with a label in each
- `boxes`: the HTML of each thing that a call puts into a page, from the templates beside
- `publishing`: one build of all pages, and what lies beside them: booklets, the bench, typefaces, scripts; every link checked

Under all four stand `faults` (what an author is told), `templates` (Jinja), `pages` (the units and their order), `club` (who
publishes) and `current_page`.
"""
