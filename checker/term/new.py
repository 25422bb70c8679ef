"""A term's file to begin with: every key, with what it does."""

BESIDE = "term.toml"
ROSTER = "roster.csv"

FILE = """\
# A course over a term: who is in it, what is set when, and how it counts.
# Lines that begin with # are not read. Take the # away where you want one.

title = "Crystal to Reaction, autumn"
club = "Saltmarsh Point Wireless Circle"
begins = 2026-09-01              # first and last day of the term
ends = 2026-12-18

roster = "roster.csv"            # a table with the columns name, id, address; it lies beside this file. A column
                                 # called also may have another name that somebody hands in under.
                                 # Or a folder or zip with users.csv and enrollments.csv of OneRoster 1.2.
# class_id = "autumn-evening"    # the class in those files, and in the ones that are written for a school

# names = "{name}_{number}_submission"   # how a platform made the names of the folders; {name} is the member's

values = "shown"                 # what goes back to a member: "shown", the simplest values at which an answer fails;
                                 # "hidden", what went wrong in words, without those values

[[work]]                         # a piece of work; write one such table for each
name = "Signals"
set = ["00", "01"]               # units by their number, or exercises by their name
path = "core"                    # what of them: "core", "further" or "all"
weight = 1                       # how much it counts beside the others
opens = 2026-09-14               # from the beginning of this day
due = 2026-10-05                 # to the end of this day, or 2026-10-05T18:30:00
grace = 1                        # days after that in which nothing is late
late = "10 % a day"              # of the marks earned, for each day begun after the grace; or "nothing", or "not accepted"
counts = "best"                  # of several hand-ins: "best" or "last"
# seed = 41                      # draws the values; left out, the first run chooses one and it is remembered

[[work]]
name = "Crystal set"
set = ["02", "03", "04"]
path = "core"
weight = 2
opens = 2026-10-12
due = 2026-11-09
late = "nothing"
counts = "last"
"""

ROSTER_FILE = """\
name,id,address
Isla Marrow,spwc-01,isla@saltmarsh.example
Tobias Fenn,spwc-02,tobias@saltmarsh.example
"""
