"""What to buy or to look for, set by set, in preferred values where there are any (IEC 60063)."""

from . import keys, physics
from .spread import in_units
from .supply import FUSE
from .windings import LEADS
from .working import Sheet

ALL, WITH_VALVE, REACTING, TWO_VALVES = (keys.SETS[first:] for first in range(4))
CRYSTAL, QUENCHED = (keys.CRYSTAL,), (keys.QUENCHED,)


def parts_list(sheet: Sheet) -> list[tuple[str, str, str]]:
    """Rows of (how many, part, remark), in the order in which the set is built.

    Values that no key of the file gives are common practice, no source.
    """
    parts, supply, chosen = sheet.parts, sheet.supply, sheet.parts["set"]

    def si(name: str, unit: str, figures: int = 3) -> str:
        return in_units(parts[name], unit, figures)

    wire = 1.1 * sum(one.wire + LEADS for one in sheet.windings)
    gauge = parts.given["wire.gauge"].text or f"{si('wire.diameter', 'mm')} copper"
    volts, amperes, heated = supply.filament
    kind = f"type {parts['valve.type']}, {volts:g} V {in_units(amperes, 'A')} {heated}"
    dropper = f"{in_units(supply.dropper, 'Ω')}, {supply.rating:g} W" if supply.dropper else ""
    to_match = max(parts["telephones.impedance"] - parts["telephones.resistance"], 1.0)
    to_match = in_units(physics.dropper.next_preferred(to_match, "E24"), "Ω")
    throttle = f"{si('valve.throttle_minimum', 'F')} to {si('valve.throttle_maximum', 'F')}"
    anode = in_units(supply.anode_resistor, "Ω")
    where = "before the first valve's anode" if supply.guarded else "straight after that fuse"
    guard = f"{in_units(supply.guard, 'Ω')}, {supply.guard_rating:g} W, {where}: with LT out it saves a {heated} from HT"
    fuse = in_units(2 * supply.valves * amperes, "A")
    rows = [
        (ALL, "1", "tube", f"{si('former.diameter', 'mm')} outside, {si('former.length', 'mm')} long, dry"),
        (ALL, f"{wire:.0f} m", "covered wire", f"{gauge}, {si('wire.covered', 'mm')} over its covering; a tenth to spare"),
        (ALL, "1", "variable condenser", f"{si('condenser.minimum', 'F')} to {si('condenser.maximum', 'F')}, air"),
        (CRYSTAL, "1", "crystal or germanium diode", f"saturation current about {si('crystal.saturation', 'A')}"),
        (CRYSTAL, "1", "resistor", f"{to_match}, in series with the telephones, with 0.1 µF across it"),
        (CRYSTAL, "1", "condenser", "1 nF, across telephones and resistor together"),
        (WITH_VALVE, str(supply.valves), "valve", f"{kind}, with its holder"),
        (WITH_VALVE if dropper else (), str(supply.valves), "dropper", f"{dropper}, one to each {heated}"),
        (WITH_VALVE, "1", "grid leak", f"{in_units(supply.leak, 'Ω')}, 0.25 W"),
        (WITH_VALVE, "1", "grid condenser", f"{in_units(supply.grid_condenser, 'F')}, mica or ceramic"),
        (WITH_VALVE, "1", "anode resistor", f"{anode}, {supply.anode_rating:g} W, straight after the fuse"),
        (REACTING, "1", "throttle condenser", f"{throttle}, for 250 V, moving plates to earth"),
        (REACTING, "1", "HF choke", f"{si('valve.choke', 'H')}, wound in sections"),
        (REACTING, "1", "by-pass condenser", f"{si('valve.by_pass', 'F')}, 250 V, mica or ceramic, from the anode to earth"),
        (REACTING, "1", "condenser", "10 nF, 250 V, between anode and tickler: keeps HT from the throttle"),
        (TWO_VALVES, "1", "resistor", "10 kΩ, from the first grid to earth, aerial on the grid"),
        (QUENCHED, "1", "quench oscillator", "about 20 kHz, screened, as in unit 9"),
        (WITH_VALVE, "1", "fuse", f"{in_units(FUSE, 'A')}, quick, at the HT battery"),
        (TWO_VALVES if supply.guarded else WITH_VALVE, "1", "guard resistor", guard),
        (WITH_VALVE, "1", "fuse", f"{fuse} or the next larger, at the LT supply's own terminal"),
        (WITH_VALVE, "1", "resistor", "100 kΩ, 1 W, across HT: empties the condensers"),
        (WITH_VALVE, "1", "condenser", "1 µF, 250 V, from behind the anode resistor to 0 V"),
        (ALL, "1 pair", "telephones", f"{si('telephones.resistance', 'Ω')}, {si('telephones.impedance', 'Ω')} at 1 kHz"),
        (CRYSTAL, "2", "silicon diodes", "back to back across the telephones: they clip the worst bangs"),
        (WITH_VALVE, "2", "silicon diodes", "back to back, to clip the worst bangs; without a condenser they silence the set"),
        (WITH_VALVE, "1", "condenser", "1 µF, 250 V, not polarised, in line with the two diodes, across the telephones"),
        (ALL, "1", "resistor", "100 kΩ to 1 MΩ, aerial to earth: drains the wire"),
    ]
    return [row[1:] for row in rows if chosen in row[0]]
