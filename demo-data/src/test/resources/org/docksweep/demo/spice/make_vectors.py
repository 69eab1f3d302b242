#!/usr/bin/env python3
"""Writes netlists of two demo cabinets from models.json, runs ngspice on them and keeps the impedance it finds.

Run from this folder: python3 make_vectors.py   (needs ngspice; version in the header of each vector file)

Elements are linear: no voice-coil inductance, no losses beyond those of models.json. Mechanical and acoustic parts are
turned into electrical ones here, independently of the Java code, by the textbook equivalents (Small 1972, 1973):
  cone        RES = Re Qms/Qes, CMES = Qes/(2 pi fs Re), LCES = Re/(2 pi fs Qes), in parallel
  vented box  LCEB = LCES/alpha, CMEP = 1/(wb^2 LCEB), REL = wb LCEB/QL, in series, across the cone
  closed box  LCEB = LCES/alpha, REL = wc LCEB/QL with wc = ws sqrt(1+alpha), in series, across the cone
  horn        one parallel R, L = R/(w0 Q), C = Q/(w0 R) per motional resonance, in series
"""
import json
import math
import pathlib
import subprocess

HERE = pathlib.Path(__file__).parent
MODELS = HERE / "../../../../../../main/resources/org/docksweep/demo/models.json"
PI2 = 2 * math.pi


def driver(name, node_a, node_b, model, enclosure):
    re_ohm = model["dcResistanceOhm"]
    lines = [f"RE{name} {node_a} {name}m {re_ohm}"]
    terms = model["resonances"]
    for index, term in enumerate(terms):
        top = f"{name}m" if index == 0 else f"{name}m{index}"
        bottom = node_b if index == len(terms) - 1 else f"{name}m{index + 1}"
        w0 = PI2 * term["frequencyHz"]
        q, r = term["q"], term["peakResistanceOhm"]
        lines += [
            f"RM{name}{index} {top} {bottom} {r!r}",
            f"LM{name}{index} {top} {bottom} {r / (w0 * q)!r}",
            f"CM{name}{index} {top} {bottom} {q / (w0 * r)!r}",
        ]
    if enclosure["kind"] in ("VENTED", "CLOSED"):
        term = terms[0]
        ws = PI2 * term["frequencyHz"]
        lces = term["peakResistanceOhm"] / (ws * term["q"])
        lceb = lces / enclosure["complianceRatio"]
        lines.append(f"LB{name} {name}m {name}b {lceb!r}")
        if enclosure["kind"] == "VENTED":
            wb = PI2 * enclosure["tuningHz"]
            lines.append(f"CB{name} {name}b {name}c {1 / (wb * wb * lceb)!r}")
            lines.append(f"RB{name} {name}c {node_b} {wb * lceb / enclosure['leakageLossQ']!r}")
        else:
            wc = ws * math.sqrt(1 + enclosure["complianceRatio"])
            lines.append(f"RB{name} {name}b {node_b} {wc * lceb / enclosure['leakageLossQ']!r}")
    return lines


def netlist(book, code, point):
    cabinet = next(c for c in book["cabinetModels"] if c["code"] == code)
    test_point = next(t for t in cabinet["testPoints"] if t["code"] == point)
    lines = [f"* {code} {point}, linear elements only", "I1 0 in DC 0 AC 1"]
    for e in test_point["elements"]:
        a, b, name = e["nodeA"], e["nodeB"], e["id"]
        if e["kind"] == "resistor":
            lines.append(f"R_{name} {a} {b} {e['resistanceOhm']!r}")
        elif e["kind"] == "inductor":
            lines += [f"L_{name} {a} {name}x {e['inductanceH']!r}", f"R_{name} {name}x {b} {e['seriesResistanceOhm']!r}"]
        elif e["kind"] == "capacitor":
            lines += [f"C_{name} {a} {name}x {e['capacitanceF']!r}", f"R_{name} {name}x {b} {e['seriesResistanceOhm']!r}"]
        else:
            position = next(p for p in cabinet["positions"] if p["code"] == e["positionCode"])
            model = next(d for d in book["driverModels"] if d["code"] == position["driverModelCode"])
            box = next(x for x in cabinet["enclosures"] if e["positionCode"] in x["positionCodes"])
            lines += driver(name, a, b, model, box)
    out = f"{code.lower()}.raw.txt"
    lines += [
        ".ac dec 20 10 22000",
        ".control",
        "set wr_singlescale",
        "set wr_vecnames",
        "set numdgt=12",
        "run",
        f"wrdata {out} v(in)",
        "quit",
        ".endc",
        ".end",
    ]
    return "\n".join(lines) + "\n", out


def main():
    book = json.loads(MODELS.read_text())
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout.split("\n")[1].strip("* ")
    for code, point in (("SPIN12", "IN"), ("HEAD3", "IN"), ("PEBL8", "IN")):
        text, raw = netlist(book, code, point)
        (HERE / f"{code.lower()}.cir").write_text(text)
        subprocess.run(["ngspice", "-b", f"{code.lower()}.cir"], cwd=HERE, capture_output=True, check=True)
        rows = (HERE / raw).read_text().split("\n")[1:]
        (HERE / raw).unlink()
        with open(HERE / f"{code.lower()}.csv", "w") as csv:
            csv.write(f"# {code} {point}: impedance by {version}, netlist {code.lower()}.cir, script make_vectors.py\n")
            csv.write("frequency_hz,resistance_ohm,reactance_ohm\n")
            for row in rows:
                if row.strip():
                    csv.write(",".join(row.split()) + "\n")


if __name__ == "__main__":
    main()
