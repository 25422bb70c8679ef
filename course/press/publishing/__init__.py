"""One build of the site: its pages, and all that lies beside them."""
