"""Hostile submissions by their shape, not their code: links, pipes, zips and names that a reader could stumble over.

Each function lays one out in the folder of a class, beside a file called `secret` that no member may read; it returns the
submission's own name there, or that and a function that ends what it started.
"""

import os
import socket
import stat
import struct
import threading
import warnings
import zipfile
from pathlib import Path

from checker.course import PATHS
from tests.checker.corpus import HONEST

RESONANCE = "exercises/unit03_tuned_circuit/resonance.py"
WRONG = "def resonant_frequency(inductance, capacitance):\n    return 42.0\n"


def _put(path, text=WRONG):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "wb") as file:
        file.write(text if isinstance(text, bytes) else text.encode())


def _zip(path, entries, packing=zipfile.ZIP_DEFLATED):
    with zipfile.ZipFile(path, "w", packing) as archive:
        for entry, data in entries:
            archive.writestr(entry, data)


def soft_link(folder, secret):
    """Tries: to have a secret read through a symbolic link in place of an exercise.
    Verdict: not read.
    Says: is a link
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    (folder / "Rufus" / RESONANCE).symlink_to(secret)
    return "Rufus"


def linked_folder(folder, secret):
    """Tries: to have a secret read through a folder that is a link.
    Verdict: not read.
    Says: unit03_tuned_circuit is a link
    """
    outside = secret.parent / "outside"
    _put(outside / "resonance.py", secret.read_bytes())
    (folder / "Rufus" / "exercises").mkdir(parents=True)
    (folder / "Rufus" / "exercises" / "unit03_tuned_circuit").symlink_to(outside)
    return "Rufus"


def linked_submission(folder, secret):
    """Tries: to hand in a link to everything.
    Verdict: not read.
    Says: a link to somewhere else
    """
    (folder / "Rufus").symlink_to(secret.parent)
    return "Rufus"


def linked_zip(folder, secret):
    """Tries: to have a secret zip read through a link.
    Verdict: not read.
    Says: a link to somewhere else
    """
    _zip(secret.parent / "outside.zip", [(RESONANCE, secret.read_bytes())])
    (folder / "Rufus.zip").symlink_to(secret.parent / "outside.zip")
    return "Rufus.zip"


def hard_link(folder, secret):
    """Tries: to have a secret read through a hard link in place of an exercise.
    Verdict: not read.
    Says: hard link
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    os.link(secret, folder / "Rufus" / RESONANCE)
    return "Rufus"


def zip_slip(folder, secret):
    """Tries: to have a zip unpacked over files outside, by names that climb.
    Verdict: not read.
    Says: points out of the zip
    """
    _zip(folder / "Rufus.zip", [(f"../../{RESONANCE}", WRONG), ("..\\..\\resonance.py", WRONG)])
    return "Rufus"


def zip_slip_from_the_root(folder, secret):
    """Tries: to have a zip unpacked over files outside, by names that begin at the root.
    Verdict: not read.
    Says: points out of the zip
    """
    _zip(folder / "Rufus.zip", [("/tmp/left-by-a-submission/resonance.py", WRONG)])
    return "Rufus"


def zip_with_a_link(folder, secret):
    """Tries: to have a link unpacked from a zip, and followed.
    Verdict: not read.
    Says: points out of the zip
    """
    link = zipfile.ZipInfo(RESONANCE)
    link.external_attr = (stat.S_IFLNK | 0o777) << 16
    _zip(folder / "Rufus.zip", [(link, str(secret))])
    return "Rufus"


def zip_bomb(folder, secret):
    """Tries: to fill the memory with one file of a zip.
    Verdict: not read.
    Says: is larger than 256 kB
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(200 << 20))])
    return "Rufus"


def zip_of_many_bombs(folder, secret):
    """Tries: to fill the memory with very many files that are each just small enough.
    Verdict: wrong.
    Says: More than 8 MB in all
    """
    _zip(folder / "Rufus.zip", ((f"{number:04}/resonance.py", b"#" * (255 << 10)) for number in range(1000)))
    return "Rufus"


def zip_bomb_in_another_packing(folder, secret):
    """Tries: to fill the memory by a packing whose reader unpacks all at once.
    Verdict: not read.
    Says: packed in an unusual way
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(100 << 20))], zipfile.ZIP_BZIP2)
    return "Rufus"


def zip_that_lies_about_its_size(folder, secret):
    """Tries: to have more unpacked than the zip says that there is.
    Verdict: not read or wrong.
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(50 << 20))])
    data = (folder / "Rufus.zip").read_bytes()
    (folder / "Rufus.zip").write_bytes(data.replace((50 << 20).to_bytes(4, "little"), (100).to_bytes(4, "little")))
    return "Rufus"


def zip_spoilt_inside(folder, secret):
    """Tries: to stop the run with a zip whose contents do not unpack.
    Verdict: not read.
    Says: cannot be unpacked
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, os.urandom(1000).hex())])
    data = bytearray((folder / "Rufus.zip").read_bytes())
    data[30 + len(RESONANCE) :][:200]
    data[30 + len(RESONANCE) : 30 + len(RESONANCE) + 200] = b"\xff" * 200
    (folder / "Rufus.zip").write_bytes(data)
    return "Rufus"


def overlong_path(folder, secret):
    """Tries: to stop the run with a path longer than the system allows.
    Verdict: not read.
    Says: more than 12 deep
    """
    here = os.open(folder, os.O_RDONLY)
    for name in ("Rufus", *["n" * 250] * 30):
        os.mkdir(name, dir_fd=here)
        inner = os.open(name, os.O_RDONLY, dir_fd=here)
        os.close(here)
        here = inner
    os.close(os.open("resonance.py", os.O_CREAT | os.O_WRONLY, dir_fd=here))
    os.close(here)
    return "Rufus"


def endless_name(folder, secret):
    """Tries: to spoil tables with the longest name that the system allows.
    Verdict: wrong.
    """
    _put(folder / ("R" * 255) / RESONANCE)
    return "R" * 255


def odd_file_names(folder, secret):
    """Tries: to spoil a terminal with the names of its files, where they are named.
    Verdict: wrong.
    Says: Two files for
    """
    for name in ("a\x1b[2J\u202e\n<b>", "=cmd|' ", os.fsdecode(b"b\xff\xfe")):
        _put(folder / "Rufus" / name / "resonance.py")
    _put(folder / "Rufus" / "resonance.py\n")
    return "Rufus"


def name_that_is_no_text(folder, secret):
    """Tries: to stop the run with a member's name that is not UTF-8.
    Verdict: wrong.
    """
    _put(folder / os.fsdecode(b"Rufus \xff\xfe") / RESONANCE)
    return os.fsdecode(b"Rufus \xff\xfe")


def two_names_that_look_alike(folder, secret):
    """Tries: to have its marks take the place of another member's whose name looks the same.
    Verdict: wrong.
    """
    _put(folder / "Zoe\u200b Honest" / RESONANCE)
    return "Zoe\u200b Honest"


def pipe_for_a_file(folder, secret):
    """Tries: to have the reader wait for ever on a pipe.
    Verdict: not read.
    Says: not an ordinary file
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    os.mkfifo(folder / "Rufus" / RESONANCE)
    return "Rufus"


def pipe_for_a_zip(folder, secret):
    """Tries: to have the reader wait for ever on a pipe that is called a zip.
    Verdict: not read.
    Says: not an ordinary file
    """
    os.mkfifo(folder / "Rufus.zip")
    return "Rufus"


def folder_for_a_file(folder, secret):
    """Tries: to stop the run with a folder that is called like an exercise.
    Verdict: not handed in.
    """
    (folder / "Rufus" / RESONANCE).mkdir(parents=True)
    return "Rufus"


def too_many_files(folder, secret):
    """Tries: to keep the reader busy with very many files.
    Verdict: not read.
    Says: More than 5,000 files
    """
    (folder / "Rufus").mkdir()
    for number in range(5_100):
        os.close(os.open(folder / "Rufus" / f"{number}", os.O_CREAT))
    return "Rufus"


def too_large_a_file(folder, secret):
    """Tries: to fill the memory with one file, which takes no room on a disk.
    Verdict: not read.
    Says: is larger than 256 kB
    """
    _put(folder / "Rufus" / RESONANCE)
    os.truncate(folder / "Rufus" / RESONANCE, 1 << 40)
    return "Rufus"


def encoding_that_raises(folder, secret):
    """Tries: to stop the run with an encoding that can only fail.
    Verdict: not read.
    Says: is not text in UTF-8
    """
    _put(folder / "Rufus" / RESONANCE, "# coding: undefined\n" + WRONG)
    return "Rufus"


def encoding_of_half_characters(folder, secret):
    """Tries: to stop the run with characters that cannot be written anywhere, through an encoding that makes them.
    Verdict: not read.
    """
    _put(folder / "Rufus" / RESONANCE, "# coding: unicode_escape\n" + WRONG.replace("42.0", "'\\\\ud800'  # \\ud800"))
    return "Rufus"


def no_text_at_all(folder, secret):
    """Tries: to stop the run with a program for the machine in place of text.
    Verdict: not read or raised.
    """
    _put(folder / "Rufus" / RESONANCE, b"\x7fELF\x02\x01\x01\x00" + bytes(range(256)) * 4)
    return "Rufus"


def name_with_terminal_codes(folder, secret):
    """Tries: to clear the instructor's terminal and change its title with a member's name.
    Verdict: wrong.
    """
    name = "Rufus\x1b[2J\x1b]0;owned\x07\r\n\x9b31m\u202e"
    _put(folder / name / RESONANCE)
    return name


def name_with_html(folder, secret):
    """Tries: to run a script in the instructor's browser with a member's name.
    Verdict: wrong.
    """
    name = "Rufus <img src=x onerror=alert(1)><script>alert(2)<\u2215script>&amp;\"'"
    _put(folder / name / RESONANCE)
    return name


def name_that_is_a_formula(folder, secret):
    """Tries: to run a formula in the instructor's spreadsheet with a member's name.
    Verdict: wrong.
    """
    name = '=HYPERLINK("http:\u2215\u2215127.0.0.1","Rufus"),+1;-1|@SUM(1)'
    _put(folder / name / RESONANCE)
    return name


def swapped_while_it_is_read(folder, secret):
    """Tries: to have a secret read by changing file and folder into links to it, again and again, while they are read.
    Verdict: not read or wrong.
    """
    unit, outside, stopped = folder / "Rufus/exercises/unit03_tuned_circuit", secret.parent / "swapped-in", threading.Event()
    _put(outside / "resonance.py", secret.read_bytes())
    _put(unit / "resonance.py")
    aside, link = unit.with_name("aside"), unit.with_name("link")
    link.symlink_to(outside)

    def swap():
        while not stopped.is_set():
            for one, other in ((unit, aside), (link, unit), (unit, link), (aside, unit)):
                os.rename(one, other)
            (unit / "draft").symlink_to(secret)
            os.rename(unit / "draft", unit / "resonance.py")
            _put(unit / "draft")
            os.rename(unit / "draft", unit / "resonance.py")

    swapping = threading.Thread(target=swap)
    swapping.start()
    return "Rufus", lambda: (stopped.set(), swapping.join())


def socket_for_a_file(folder, secret):
    """Tries: to have the reader wait for ever on a socket in place of an exercise.
    Verdict: not read.
    Says: was not read
    """
    unit = folder / "Rufus" / "exercises/unit03_tuned_circuit"
    unit.mkdir(parents=True)
    here = os.open(unit, os.O_RDONLY)  # a socket's path must be short
    with socket.socket(socket.AF_UNIX) as bound:
        bound.bind(f"/proc/self/fd/{here}/resonance.py")
    os.close(here)
    return "Rufus"


def device_for_a_file(folder, secret):
    """Tries: to have a device that never ends read in place of an exercise; where no device can be made, a pipe.
    Verdict: not read.
    Says: not an ordinary file
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    try:
        os.mknod(folder / "Rufus" / RESONANCE, stat.S_IFCHR | 0o600, os.makedev(1, 5))
    except PermissionError:
        os.mkfifo(folder / "Rufus" / RESONANCE)
    return "Rufus"


def folder_without_rights(folder, secret):
    """Tries: to stop the run with a folder that may not be looked into.
    Verdict: not read or wrong.
    """
    unit = folder / "Rufus" / "exercises/unit03_tuned_circuit"
    _put(unit / "resonance.py")
    unit.chmod(0)
    return "Rufus", lambda: unit.chmod(0o700)


def folders_without_end(folder, secret):
    """Tries: to keep the reader busy with very many folders that hold nothing, which no count of files counts.
    Verdict: not handed in.
    """
    (folder / "Rufus").mkdir()
    for number in range(10_000):
        os.mkdir(folder / "Rufus" / f"{number}")
    return "Rufus"


def name_that_is_blank(folder, secret):
    """Tries: to be a member whose name cannot be seen, by letters that look like nothing.
    Verdict: wrong.
    """
    _put(folder / "\u3164\u2800\u115f" / RESONANCE)
    return "\u3164\u2800\u115f"


def name_in_another_form(folder, secret):
    """Tries: to be taken for another member by a name in another of Unicode's forms.
    Verdict: wrong.
    """
    _put(folder / "Zoe\u0301 \uff28onest" / RESONANCE)
    return "Zoe\u0301 \uff28onest"


def name_of_the_first_page(folder, secret):
    """Tries: to have its page written over the page of the class.
    Verdict: wrong.
    """
    _put(folder / "index.html" / RESONANCE)
    return "index.html"


def name_that_is_an_option(folder, secret):
    """Tries: to be taken for an option of a command, with a name that is a device elsewhere.
    Verdict: wrong.
    """
    _put(folder / "--seed=1 &nul:" / RESONANCE)
    return "--seed=1 &nul:"


def letters_that_look_alike(folder, secret):
    """Tries: to hand in what looks like an exercise and is none, by a letter of another alphabet, a dot, and capitals.
    Verdict: wrong.
    """
    for name in ("r\u0435sonance.py", "resonance.py.", "resonance.py ", "RESONANCE.PY", "resonance\u200b.py"):
        _put(folder / "Rufus" / "exercises/unit03_tuned_circuit" / name)
    return "Rufus"


def overlong_letters(folder, secret):
    """Tries: to have letters read that are written in a way that UTF-8 forbids.
    Verdict: not read or raised or wrong.
    """
    _put(folder / "Rufus" / RESONANCE, WRONG.encode() + b"#\xc0\xaf\xe0\x80\xaf\xf0\x80\x80\xaf\xed\xa0\x80\xf4\x90\x80\x80\n")
    return "Rufus"


def two_orders_of_bytes(folder, secret):
    """Tries: to stop the run with a file whose mark says UTF-16 and whose first line says UTF-8.
    Verdict: not read or raised.
    """
    _put(folder / "Rufus" / RESONANCE, b"\xff\xfe" + ("# coding: utf-8\n" + WRONG).encode("utf-16-le"))
    return "Rufus"


def marks_and_form_feeds(folder, secret):
    """Tries: to spoil what is shown of a file by marks of byte order, form feeds and bare carriage returns in its lines.
    Verdict: raised or wrong.
    """
    _put(
        folder / "Rufus" / RESONANCE,
        b"\xef\xbb\xbf\x0c\x0b# \xef\xbb\xbf\r\x0c\r\n\r\r" + WRONG.encode().replace(b"42.0", b"\x0c1/0\x0b"),
    )
    return "Rufus"


def nothing_in_the_middle(folder, secret):
    """Tries: to have a file end for one reader and go on for another, by a NUL.
    Verdict: not read or raised.
    """
    _put(folder / "Rufus" / RESONANCE, HONEST.replace("np.pi", "np.e") + "\0" + HONEST)
    return "Rufus"


def brackets_without_end(folder, secret):
    """Tries: to crash Python's reader with brackets in brackets.
    Verdict: raised or too big or ended early or too slow or refused.
    """
    _put(folder / "Rufus" / RESONANCE, WRONG.replace("42.0", "(" * 120_000 + ")" * 120_000))
    return "Rufus"


def signs_without_end(folder, secret):
    """Tries: to crash Python's reader with a hundred thousand signs before a number, and dots behind a name.
    Verdict: too big.
    Says: nested too deeply
    """
    _put(folder / "Rufus" / RESONANCE, WRONG + "x = " + "-" * 100_000 + "1\nx" + ".x" * 60_000)
    return "Rufus"


def branches_without_end(folder, secret):
    """Tries: to crash Python's compiler with an `elif` in an `elif` in an `elif`.
    Verdict: too big.
    Says: nested too deeply
    """
    _put(folder / "Rufus" / RESONANCE, WRONG + "if 0: 0\n" + "elif 0: 0\n" * 25_000)
    return "Rufus"


def decorators_without_end(folder, secret):
    """Tries: to crash Python's compiler with sixty thousand decorators.
    Verdict: raised or too big or ended early or too slow or refused or wrong.
    """
    _put(folder / "Rufus" / RESONANCE, "f = abs\n" + "@f\n" * 80_000 + WRONG)
    return "Rufus"


def constants_without_end(folder, secret):
    """Tries: to keep Python's compiler busy with a number of a quarter of a million figures, and sums of such.
    Verdict: raised or too big or ended early or too slow or wrong.
    """
    figures = "0x" + "f" * 15_000
    _put(folder / "Rufus" / RESONANCE, WRONG + f"x = {figures} * {figures} ** 3 % {figures}\n" * 2 + "y = " + "9" * 100_000)
    return "Rufus"


def strings_in_strings(folder, secret):
    """Tries: to crash Python's reader with braces in the braces of a text, and very many texts in a row.
    Verdict: raised or too big or ended early or too slow or refused or wrong.
    """
    _put(folder / "Rufus" / RESONANCE, WRONG + "x = f'" + "{0:" * 20_000 + "}" * 20_000 + "'\ny = " + "f'{0}' " * 10_000)
    return "Rufus"


def quotes_that_never_close(folder, secret):
    """Tries: to keep whatever compares texts busy, by quotes that open and never close, in one line and in many.
    Verdict: raised or too slow.
    """
    _put(folder / "Rufus" / RESONANCE, WRONG + ("'\\" * 20_000) + "\n" + "\"'\\\n" * 20_000 + "'''\\" * 10_000)
    return "Rufus"


def circle_of_imports(folder, secret):
    """Tries: to have two exercises load one another without end.
    Verdict: raised.
    """
    _put(folder / "Rufus" / RESONANCE, "from exercises.unit03_tuned_circuit.quality_factor import *\nx = y\n" + WRONG)
    other = folder / "Rufus" / "exercises/unit03_tuned_circuit/quality_factor.py"
    _put(
        other, "import exercises.unit03_tuned_circuit.resonance as r\nfrom exercises.unit03_tuned_circuit.resonance import x\n"
    )
    return "Rufus"


def stars_without_end(folder, secret):
    """Tries: to import from a neighbour everything that it lists, in a list without end.
    Verdict: too slow or too big or raised.
    """
    _put(folder / "Rufus" / RESONANCE, "from exercises.unit03_tuned_circuit.quality_factor import *\n" + WRONG)
    listed = "class All:\n    def __getitem__(self, place):\n        return 'x'\n\n\nx, __all__ = 1, All()\n"
    _put(folder / "Rufus" / "exercises/unit03_tuned_circuit/quality_factor.py", listed)
    return "Rufus"


def zip_that_is_locked(folder, secret):
    """Tries: to have the run ask for a password.
    Verdict: not read.
    Says: locked with a password
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, WRONG)], zipfile.ZIP_STORED)
    data = (folder / "Rufus.zip").read_bytes()
    for head, flags in ((b"PK\3\4", 6), (b"PK\1\2", 8)):
        place = data.index(head) + flags
        data = data[:place] + b"\1" + data[place + 1 :]
    (folder / "Rufus.zip").write_bytes(data)
    return "Rufus"


def zip_with_one_name_twice(folder, secret):
    """Tries: to have one text marked and another shown, by a zip with two files of one name.
    Verdict: wrong.
    Says: more than once
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        _zip(folder / "Rufus.zip", [(RESONANCE, HONEST), (f"./{RESONANCE}", HONEST), (RESONANCE, WRONG)])
    return "Rufus"


def zip_with_other_systems_names(folder, secret):
    """Tries: to have a zip unpacked elsewhere, by names with a drive, a share, and a stream.
    Verdict: not read or wrong.
    """
    unit = "unit03_tuned_circuit"
    names = (
        f"C:\\{unit}\\resonance.py",
        f"\\\\host\\share\\{unit}\\resonance.py",
        f"{unit}/resonance.py:$DATA",
        "nul/resonance.py",
    )
    _zip(folder / "Rufus.zip", [(name, WRONG) for name in names])
    return "Rufus"


def zip_with_a_name_cut_off(folder, secret):
    """Tries: to have a picture taken for an exercise, by a name with a NUL in it.
    Verdict: not read or wrong.
    """
    _zip(folder / "Rufus.zip", [(RESONANCE + "_.png", WRONG)])
    data = (folder / "Rufus.zip").read_bytes()
    (folder / "Rufus.zip").write_bytes(data.replace(b".py_.png", b".py\0.png"))
    return "Rufus"


def zip_with_two_tables(folder, secret):
    """Tries: to have one file read and another seen, by a zip whose table names a file otherwise than the file itself.
    Verdict: not read.
    Says: cannot be unpacked
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, WRONG)])
    data = (folder / "Rufus.zip").read_bytes()
    (folder / "Rufus.zip").write_bytes(data.replace(b"resonance.py", b"resonancf.py", 1))
    return "Rufus"


def zip_behind_a_zip(folder, secret):
    """Tries: to have another zip seen than is marked, by two in one file, a table in the remark, and bytes behind the end.
    Verdict: wrong or not read.
    """
    _zip(folder / "right.zip", [(RESONANCE, HONEST)])
    _zip(folder / "wrong.zip", [(RESONANCE, WRONG)])
    right, wrong = (folder / "right.zip").read_bytes(), (folder / "wrong.zip").read_bytes()
    remark = wrong[-22:] + bytes(60_000)
    (folder / "Rufus.zip").write_bytes(right + wrong[:-2] + struct.pack("<H", len(remark)) + remark + b"behind")
    for name in ("right.zip", "wrong.zip"):
        os.unlink(folder / name)
    return "Rufus"


def zip_of_many_disks(folder, secret):
    """Tries: to stop the run with a zip that says that it begins on another disk.
    Verdict: not read or wrong.
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, WRONG)])
    data = bytearray((folder / "Rufus.zip").read_bytes())
    data[-18:-14] = b"\x05\x00\x04\x00"
    (folder / "Rufus.zip").write_bytes(data)
    return "Rufus"


def zip_in_an_odd_packing(folder, secret):
    """Tries: to stop the run with packings that nobody has: Deflate64, and number 65,535.
    Verdict: not read.
    Says: packed in an unusual way
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, WRONG), ("resonance.py", WRONG)])
    data = bytearray((folder / "Rufus.zip").read_bytes())
    for head, place in ((b"PK\3\4", 8), (b"PK\1\2", 10)):
        for packing in (b"\x09\x00", b"\xff\xff"):
            at = data.index(head)
            data[at + place : at + place + 2] = packing
            data[at : at + 2] = b"QQ"
    (folder / "Rufus.zip").write_bytes(data.replace(b"QQ", b"PK"))
    return "Rufus"


def zip_with_huge_numbers(folder, secret):
    """Tries: to stop the run with sizes and places of 64 bits, some missing, and a day that is in no calendar.
    Verdict: not read.
    """
    entry = zipfile.ZipInfo(RESONANCE, (1980, 0, 0, 31, 63, 62))
    _zip(folder / "Rufus.zip", [(entry, WRONG)])
    data = bytearray((folder / "Rufus.zip").read_bytes())
    table = data.index(b"PK\1\2")
    data[table + 20 : table + 28] = b"\xff" * 8  # both sizes: see the field of 64 bits
    data[table + 42 : table + 46] = b"\xff" * 4  # the place too
    extra = struct.pack("<HHQQ", 1, 16, 1 << 63, (1 << 64) - 1)
    data[table + 30 : table + 32] = struct.pack("<H", len(extra))
    name = table + 46 + len(RESONANCE)
    data[name:name] = extra
    end = data.index(b"PK\5\6")
    data[end + 12 : end + 16] = struct.pack("<I", end - table)
    (folder / "Rufus.zip").write_bytes(data)
    return "Rufus"


def zip_of_names_alone(folder, secret):
    """Tries: to fill the memory with the table of a zip that holds nothing but folders.
    Verdict: not read.
    """
    head = struct.pack("<4s6H3I5H2I", b"PK\1\2", 20, 20, 0, 0, 0, 33, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0)
    table = (head + b"a/") * 170_000
    end = struct.pack("<4s4H2IH", b"PK\5\6", 0, 0, 65_535, 65_535, len(table), 0, 0)
    (folder / "Rufus.zip").write_bytes(table + end)
    return "Rufus"


def zip_of_links_to_itself(folder, secret):
    """Tries: to have one file of a zip read through another that is a link, and a folder through a device.
    Verdict: wrong.
    """
    link, device = zipfile.ZipInfo("exercises/unit03_tuned_circuit"), zipfile.ZipInfo(RESONANCE)
    link.external_attr, device.external_attr = (stat.S_IFLNK | 0o777) << 16, (stat.S_IFCHR | 0o777) << 16
    _zip(folder / "Rufus.zip", [(link, str(secret.parent)), ("aside/resonance.py", WRONG), (device, HONEST)])
    return "Rufus"


def zip_behind_another(folder, secret):
    """Tries: to have a right zip seen and a wrong one marked, or the other way round, by two in one file.
    Verdict: wrong.
    """
    _zip(folder / "right.zip", [(RESONANCE, HONEST)])
    _zip(folder / "wrong.zip", [(RESONANCE, WRONG)])
    (folder / "Rufus.zip").write_bytes((folder / "right.zip").read_bytes() + (folder / "wrong.zip").read_bytes())
    for name in ("right.zip", "wrong.zip"):
        os.unlink(folder / name)
    return "Rufus"


def long_in_every_exercise(folder, secret):
    """Tries: to keep whatever compares members busy, by forty thousand signs in every exercise of the course.
    Verdict: too slow or raised or too big or wrong.
    """
    for path in PATHS:
        _put(folder / "Rufus" / f"exercises/{path}.py", WRONG + "x = " + "[0]+\\\n[1];" * 3_300 + "0\n")
    return "Rufus"


SHAPES = {
    name: made
    for name, made in list(globals().items())
    if callable(made) and getattr(made, "__module__", "") == __name__ and not name.startswith("_")
}


def secret_in(folder: Path) -> Path:
    """A right answer that nobody in the class has: whoever gets marks for it has read it."""
    secret = folder / "secret"
    secret.write_text(HONEST)
    return secret
