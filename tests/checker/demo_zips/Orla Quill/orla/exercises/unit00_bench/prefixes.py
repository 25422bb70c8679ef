# O. Quill.  I have read enough meters in my life to do this with a table and a loop.
# No regular expressions: I never could remember them.

LADDER = "fpnµm kMG"         # the blank is no prefix at all; each step is a thousand
TAKES_A_PREFIX = "A V W Ω ohm S F H Hz s m J C T Pa rad/s V/m A/V S/m Ω/m Ω·m F/m H/m".split()
TAKES_NONE = ["", "dB", "dBm", "K", "°C", "°", "rad", "%", "m²"]


def power_of(letter):
    return 3 * (LADDER.index(letter) - LADDER.index(" "))


def tidied(text):
    for bad, good in (("u", "µ"), ("\u03bc", "µ"), ("\u2126", "Ω"), ("\u2212", "-")):
        text = text.replace(bad, good)
    return text.strip()


def from_engineering(text):
    text = tidied(text)
    # walk along while it may still be part of a number
    end = 0
    while end < len(text) and text[end] in "+-.0123456789":
        end += 1
    if end + 1 < len(text) and text[end] in "eE" and text[end + 1] in "+-0123456789":
        end += 2
        while end < len(text) and text[end].isdigit():
            end += 1
    number = float(text[:end])              # float() complains by itself if that is no number
    symbol = text[end:].strip()
    if symbol in TAKES_NONE:
        return number
    if symbol in TAKES_A_PREFIX:
        return number
    if symbol[:1] in "fpnµmkMG" and symbol[1:] in TAKES_A_PREFIX:
        power = power_of(symbol[0])
        return number / 10.0 ** -power if power < 0 else number * 10.0**power
    raise ValueError("unit not understood: " + symbol)


def to_engineering(value, unit, figures=4):
    if value != value or abs(value) == float("inf"):
        raise ValueError("no number")
    if figures < 1 or figures > 17:
        raise ValueError("1 to 17 figures")
    if value == 0:
        return ("0 " + unit).rstrip()
    mantissa, power = ("%.*e" % (figures - 1, value)).split("e")
    power = int(power)
    sign = "-" if mantissa[0] == "-" else ""
    digits = mantissa.replace("-", "").replace(".", "")
    step = power - power % 3
    if unit not in TAKES_A_PREFIX and 0.001 <= float("1e%d" % power) < 1e6:
        step = 0
    before = power - step + 1               # how many digits stand before the point
    if before <= 0:
        digits, before = "0" * (1 - before) + digits, 1
    digits = digits.ljust(before, "0")
    number = sign + digits[:before] + ("." + digits[before:] if digits[before:] else "")
    place = step // 3 + LADDER.index(" ")
    if unit in TAKES_A_PREFIX and 0 <= place < len(LADDER):
        return number + " " + LADDER[place].strip() + unit
    if step != 0:
        number = number + "e" + str(step)
    return (number + " " + unit).rstrip()
