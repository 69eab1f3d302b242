#!/usr/bin/env python3
"""Writes six cabinets as a model book, and their impedance by a circuit simulator.

Run from this folder: python3 make_networks.py   (needs ngspice; its version is in the header of each vector file)

models.json is in the published form of model books. The netlists are made from the same values by the textbook equivalents (Small
1972, 1973), without any code of the engine that is tested:
  cone        R = Z0 Qms, C = 1/(ws Z0), L = Z0/ws, in parallel; Z0 = peak resistance / Qms
  box         L = Z0 N/(ws alpha) for N equal cones, seen by the sum of their voltages (one controlled source collects them, one per cone
              gives the common current back); vented: L, C = 1/(wb^2 L), R = wb L/QL in series; closed: L and R = ws L/QL
  horn        one parallel R, L = R/(w0 Q), C = Q/(w0 R) per resonance, in series
  coil        K (jw)^n: at every frequency a resistor and an inductor of the right size, altered before each run
"""
import json
import math
import pathlib
import subprocess

HERE = pathlib.Path(__file__).parent
PI2 = 2 * math.pi
FREQUENCIES_HZ = [10 * 10 ** (k / 20) for k in range(67)]


def cone(code, ohm, k, n, fs, qms, peak):
    return {"code": code, "name": code, "kind": "CONE", "ratedImpedanceOhm": 8, "dcResistanceOhm": ohm, "lossyInductanceK": k,
            "lossyInductanceExponent": n, "resonances": [{"frequencyHz": fs, "q": qms, "peakResistanceOhm": peak}],
            "polarityMark": "red dot", "diaphragmPartNumbers": []}


def horn(code, ohm, k, n, *resonances):
    return {**cone(code, ohm, k, n, 1, 1, 1), "kind": "COMPRESSION",
            "resonances": [dict(zip(("frequencyHz", "q", "peakResistanceOhm"), r)) for r in resonances]}


DRIVERS = [
    cone("CONE-A", 5.6, 0.011, 0.68, 41, 4.3, 44),
    cone("CONE-B", 6.1, 0.0042, 0.72, 83, 3.6, 31),
    cone("CONE-C", 5.2, 0.021, 0.65, 33, 6.1, 61),
    cone("CONE-D", 5.9, 0.0031, 0.74, 160, 2.9, 22),
    horn("HORN-E", 6.3, 0.0011, 0.69, (540, 2.6, 17), (930, 3.1, 9)),
    horn("HORN-F", 8.4, 0.0016, 0.66, (470, 2.2, 21), (810, 2.8, 11), (1350, 3.3, 5)),
]


def r(name, a, b, ohm):
    return {"kind": "resistor", "id": name, "nodeA": a, "nodeB": b, "resistanceOhm": ohm, "toleranceRel": 0.05}


def l(name, a, b, henry, ohm):
    return {"kind": "inductor", "id": name, "nodeA": a, "nodeB": b, "inductanceH": henry, "seriesResistanceOhm": ohm,
            "toleranceRel": 0.05}


def c(name, a, b, farad, ohm):
    return {"kind": "capacitor", "id": name, "nodeA": a, "nodeB": b, "capacitanceF": farad, "seriesResistanceOhm": ohm,
            "toleranceRel": 0.05}


def d(position, a, b):
    return {"kind": "driver", "id": "D" + position, "nodeA": a, "nodeB": b, "positionCode": position}


def closed(name, positions, alpha, ql):
    return {"id": name, "kind": "CLOSED", "positionCodes": positions, "complianceRatio": alpha, "tuningHz": 0, "leakageLossQ": ql}


def vented(name, positions, alpha, fb, ql):
    return {"id": name, "kind": "VENTED", "positionCodes": positions, "complianceRatio": alpha, "tuningHz": fb, "leakageLossQ": ql}


def mouth(position):
    return {"id": "mouth" + position, "kind": "HORN", "positionCodes": [position], "complianceRatio": 0, "tuningHz": 0,
            "leakageLossQ": 0}


CABINETS = {
    # name: (drivers by position, enclosures, elements)
    "ONE-WAY-CLOSED": ({"LF": "CONE-B"}, [closed("box", ["LF"], 2.1, 5)], [d("LF", "in", "0")]),
    "PAIR-VENTED-FIRST-ORDER": (
        {"LF1": "CONE-C", "LF2": "CONE-C"}, [vented("box", ["LF1", "LF2"], 1.4, 36, 8)],
        [l("L1", "in", "low", 4.7e-3, 0.42), d("LF1", "low", "0"), d("LF2", "low", "0")]),
    "TWO-WAY-CLOSED-THIRD-ORDER": (
        {"LF": "CONE-B", "HF": "HORN-E"}, [closed("box", ["LF"], 1.7, 6), mouth("HF")],
        [l("L1", "in", "a", 0.9e-3, 0.21), c("C1", "a", "0", 15e-6, 0.06), l("L2", "a", "low", 0.33e-3, 0.11),
         r("RZ", "low", "z", 6.2), c("CZ", "z", "0", 10e-6, 0.05), d("LF", "low", "0"),
         c("C2", "in", "b", 6.2e-6, 0.04), l("L3", "b", "0", 0.36e-3, 0.18), c("C3", "b", "high", 18e-6, 0.05),
         r("RP1", "high", "horn", 2.7), r("RP2", "horn", "0", 12), d("HF", "0", "horn")]),
    "THREE-WAY-VENTED-AND-POD": (
        {"LF": "CONE-A", "MF": "CONE-D", "HF": "HORN-E"},
        [vented("box", ["LF"], 1.2, 44, 7), closed("pod", ["MF"], 0.8, 4), mouth("HF")],
        [l("L1", "in", "low", 3.3e-3, 0.35), c("C1", "low", "0", 56e-6, 0.08), d("LF", "low", "0"),
         c("C2", "in", "m", 47e-6, 0.07), l("L2", "m", "0", 2.7e-3, 0.4), l("L3", "m", "mid", 0.47e-3, 0.16),
         c("C3", "mid", "0", 8.2e-6, 0.04), d("MF", "0", "mid"),
         c("C4", "in", "h", 4.7e-6, 0.03), l("L4", "h", "0", 0.27e-3, 0.2), r("R1", "h", "horn", 4.7), d("HF", "horn", "0")]),
    "SUBWOOFER-FOURTH-ORDER": (
        {"LF": "CONE-C"}, [vented("box", ["LF"], 0.9, 31, 9)],
        [l("L1", "in", "a", 8.2e-3, 0.3), c("C1", "a", "0", 330e-6, 0.05), l("L2", "a", "low", 3.9e-3, 0.2),
         c("C2", "low", "0", 82e-6, 0.05), d("LF", "low", "0")]),
    "HORN-BEHIND-LAMP-AND-CAPACITOR": (
        {"HF": "HORN-F"}, [mouth("HF")],
        [c("C1", "in", "a", 22e-6, 0.06), r("LAMP", "a", "horn", 1.4), r("RP", "horn", "0", 20), d("HF", "horn", "0")]),
}


def cabinet(code, drivers, boxes, elements):
    return {"code": code, "name": code, "feed": "PASSIVE", "widthMm": 400, "heightMm": 700, "massKg": 25,
            "positions": [{"code": p, "way": p[:2], "driverModelCode": m, "centreXMm": 200, "centreYMm": 200, "widthMm": 100,
                           "heightMm": 100} for p, m in drivers.items()],
            "enclosures": boxes,
            "testPoints": [{"code": "IN", "kind": "TERMINALS", "contacts": "1+ / 1-", "positionCodes": list(drivers),
                            "ratedImpedanceOhm": 8, "levelMask": {"points": [{"frequencyHz": f, "voltageVrms": 1} for f in (10, 20000)]},
                            "elements": elements}]}


def netlist(code, drivers, boxes, elements):
    """Lines, and the names of the parts that follow (jw)^n with K and n."""
    lines, coils, leaks = [f"* {code}", "I1 0 in DC 0 AC 1"], [], set()
    models = {m["code"]: m for m in DRIVERS}
    cones = {}
    for e in elements:
        a, b, name = e["nodeA"], e["nodeB"], e["id"].lower()
        leaks |= {a, b} - {"0"}
        if e["kind"] == "resistor":
            lines.append(f"R{name} {a} {b} {e['resistanceOhm']!r}")
        elif e["kind"] == "driver":
            m = models[drivers[e["positionCode"]]]
            lines += [f"Re{name} {a} {name}k {m['dcResistanceOhm']!r}", f"Rk{name} {name}k {name}j 1", f"Lk{name} {name}j {name}m 1m"]
            coils.append((name, m["lossyInductanceK"], m["lossyInductanceExponent"]))
            if m["kind"] == "CONE":
                t = m["resonances"][0]
                ws, z0 = PI2 * t["frequencyHz"], t["peakResistanceOhm"] / t["q"]
                lines += [f"Rm{name} {name}m {b} {t['peakResistanceOhm']!r}", f"Cm{name} {name}m {b} {1 / (ws * z0)!r}",
                          f"Lm{name} {name}m {b} {z0 / ws!r}"]
                cones[e["positionCode"]] = (f"{name}m", b, ws, z0)
            else:
                top = f"{name}m"
                for i, t in enumerate(m["resonances"]):
                    bottom = b if i == len(m["resonances"]) - 1 else f"{name}m{i}"
                    w0 = PI2 * t["frequencyHz"]
                    lines += [f"Rm{name}{i} {top} {bottom} {t['peakResistanceOhm']!r}",
                              f"Lm{name}{i} {top} {bottom} {t['peakResistanceOhm'] / (w0 * t['q'])!r}",
                              f"Cm{name}{i} {top} {bottom} {t['q'] / (w0 * t['peakResistanceOhm'])!r}"]
                    top = bottom
        else:
            kind, value = ("L", "inductanceH") if e["kind"] == "inductor" else ("C", "capacitanceF")
            lines += [f"{kind}{name} {a} {name}x {e[value]!r}", f"Rs{name} {name}x {b} {e['seriesResistanceOhm']!r}"]
    for box in boxes:
        if box["kind"] == "HORN":
            continue
        name, here = box["id"], [cones[p] for p in box["positionCodes"]]
        ws, z0 = here[0][2:]
        henry = z0 * len(here) / (ws * box["complianceRatio"])
        top = "0"
        for i, (m, b, _, _) in enumerate(here):  # their voltages one on top of the other
            lines.append(f"E{name}{i} {name}s{i} {top} {m} {b} 1")
            top = f"{name}s{i}"
        lines += [f"V{name} {top} {name}v 0", f"La{name} {name}v {name}w {henry!r}"]
        if box["kind"] == "VENTED":
            wb = PI2 * box["tuningHz"]
            lines += [f"Ca{name} {name}w {name}y {1 / (wb * wb * henry)!r}", f"Ra{name} {name}y 0 {wb * henry / box['leakageLossQ']!r}"]
        else:
            lines.append(f"Ra{name} {name}w 0 {ws * henry / box['leakageLossQ']!r}")
        lines += [f"F{name}{i} {m} {b} V{name} 1" for i, (m, b, _, _) in enumerate(here)]
    lines += [f"Rleak{i} {node} 0 1e12" for i, node in enumerate(sorted(leaks))]
    return lines, coils


def main():
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout.split("\n")[1].strip("* ")
    book = {"cabinetModels": [cabinet(code, *parts) for code, parts in CABINETS.items()], "driverModels": DRIVERS}
    (HERE / "models.json").write_text(json.dumps(book, indent=1) + "\n")
    for code, parts in CABINETS.items():
        lines, coils = netlist(code, *parts)
        control = [".control", "set numdgt=12"]
        for hz in FREQUENCIES_HZ:
            for name, k, n in coils:
                size, turn = k * (PI2 * hz) ** n, n * math.pi / 2
                control += [f"alter rk{name} = {size * math.cos(turn)!r}", f"alter lk{name} = {size * math.sin(turn) / (PI2 * hz)!r}"]
            control += [f"ac lin 1 {hz!r} {hz!r}", "print frequency real(v(in)) imag(v(in))", "destroy all"]
        text = "\n".join(lines + control + ["quit", ".endc", ".end"]) + "\n"
        (HERE / f"{code.lower()}.cir").write_text("\n".join(lines) + "\n")
        run = subprocess.run(["ngspice", "-b", "/dev/stdin"], input=text, capture_output=True, text=True, cwd=HERE)
        values = [line.split(" = ")[1] for line in run.stdout.split("\n") if line.startswith(("real(v(in))", "imag(v(in))"))]
        if len(values) != 2 * len(FREQUENCIES_HZ):
            raise SystemExit(f"{code}: {len(values)} values of {2 * len(FREQUENCIES_HZ)}\n{run.stdout[-2000:]}{run.stderr[-2000:]}")
        with open(HERE / f"{code.lower()}.csv", "w") as csv:
            csv.write(f"# {code}: impedance by {version}, netlist {code.lower()}.cir, script make_networks.py\n")
            csv.write("frequency_hz,resistance_ohm,reactance_ohm\n")
            for i, hz in enumerate(FREQUENCIES_HZ):
                csv.write(f"{hz!r},{values[2 * i]},{values[2 * i + 1]}\n")


if __name__ == "__main__":
    main()
