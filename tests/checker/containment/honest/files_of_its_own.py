import gzip
import pathlib
import shutil
import sqlite3
import tempfile

with tempfile.NamedTemporaryFile("w+") as file:
    file.write("1449")
    file.seek(0)
    text = file.read()
with tempfile.TemporaryDirectory() as folder:
    pathlib.Path(folder, "a").write_bytes(b"1" * 5000)
    shutil.copyfile(folder + "/a", folder + "/b")
    size = pathlib.Path(folder, "b").stat().st_size
    with gzip.open(folder + "/c", "wt") as file:
        file.write("x")
    rows = sqlite3.connect(folder + "/d").execute("select 1 + 1").fetchall()
answer = [text, size, rows]
