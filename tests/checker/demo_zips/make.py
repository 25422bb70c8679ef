"""Make the two zips of the demo class from the folders beside this file: the same bytes on any day, on any machine.

    python tests/checker/demo_zips/make.py
"""
import io
import zipfile
from pathlib import Path

HERE = Path(__file__).parent
DEMO_CLASS = HERE.parents[2] / "checker/examples/demo_class"
WHEN = (1980, 1, 1, 0, 0, 0)


def zipped(folder: Path) -> bytes:
    """All files below a folder, stored as they are, under their paths in it."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for file in sorted(folder.rglob("*")):
            if file.is_file() and "__pycache__" not in file.parts:
                entry = zipfile.ZipInfo(file.relative_to(folder).as_posix(), WHEN)
                entry.create_system, entry.external_attr = 3, 0o644 << 16
                archive.writestr(entry, file.read_bytes())
    return out.getvalue()


if __name__ == "__main__":
    for member in sorted(path for path in HERE.iterdir() if path.is_dir() and path.name != "__pycache__"):
        (DEMO_CLASS / f"{member.name}.zip").write_bytes(zipped(member))
