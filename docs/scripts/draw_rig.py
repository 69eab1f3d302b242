#!/usr/bin/env python3
"""Draw the two schematics of rig.md as SVG. Python standard library only.

Usage: python3 draw_rig.py OUTPUT_FOLDER     (docs/images for the committed pictures)
"""
import sys
from pathlib import Path

WIDTH, HEIGHT = 1180, 700
INK, SOFT, PAPER, PART = "#1a1a1a", "#555555", "#ffffff", "#f0f0f0"


class Sheet:
    """Collects shapes; every coordinate is in pixels from the top left."""

    def __init__(self, title):
        self.shapes = [f'<rect width="{WIDTH}" height="{HEIGHT}" fill="{PAPER}"/>']
        self.text(20, 30, title, size=19, bold=True)

    def line(self, *points, dashed=False):
        dash = ' stroke-dasharray="7 5"' if dashed else ""
        path = " ".join(f"{x},{y}" for x, y in points)
        self.shapes.append(f'<polyline points="{path}" fill="none" stroke="{INK}" stroke-width="2"{dash}/>')

    def box(self, x, y, width, height, *lines):
        self.shapes.append(
            f'<rect x="{x}" y="{y}" width="{width}" height="{height}" rx="4" fill="{PART}" stroke="{INK}" stroke-width="2"/>')
        for n, words in enumerate(lines):
            self.text(x + width / 2, y + height / 2 + 5 + 18 * (n - (len(lines) - 1) / 2), words, anchor="middle")

    def text(self, x, y, words, size=14, anchor="start", bold=False, soft=False):
        weight = ' font-weight="bold"' if bold else ""
        self.shapes.append(
            f'<text x="{x}" y="{y}" font-family="DejaVu Sans, sans-serif" font-size="{size}" text-anchor="{anchor}"'
            f'{weight} fill="{SOFT if soft else INK}">{words}</text>')

    def dot(self, x, y):
        self.shapes.append(f'<circle cx="{x}" cy="{y}" r="4.5" fill="{INK}"/>')

    def across(self, x, y, words):
        """Resistor lying on a wire, 54 wide, centred on x."""
        self.shapes.append(f'<rect x="{x - 27}" y="{y - 8}" width="54" height="16" fill="{PAPER}" stroke="{INK}" stroke-width="2"/>')
        self.text(x, y - 13, words, size=13, anchor="middle")

    def down(self, x, y, words, right=True):
        """Part from a wire at y down to ground: a resistor, or two Zener diodes back to back."""
        self.dot(x, y)
        self.line((x, y), (x, y + 10))
        if words:
            self.shapes.append(f'<rect x="{x - 8}" y="{y + 10}" width="16" height="26" fill="{PAPER}" stroke="{INK}" stroke-width="2"/>')
            self.text(x + 13 if right else x - 13, y + 28, words, size=13, anchor="start" if right else "end")
        else:
            self.shapes.append(
                f'<path d="M{x - 8},{y + 10} h16 l-8,13 z M{x - 8},{y + 36} h16 l-8,-13 z M{x - 9},{y + 23} h18" '
                f'fill="{PAPER}" stroke="{INK}" stroke-width="2"/>')
        self.line((x, y + 36), (x, y + 44))
        self.ground(x, y + 44)

    def ground(self, x, y):
        for n, half in enumerate((10, 6, 2)):
            self.line((x - half, y + 4 * n), (x + half, y + 4 * n))

    def hop(self, x, y_from, y_to, y_over):
        """Vertical wire that jumps over a horizontal one."""
        self.line((x, y_from), (x, y_over - 8))
        self.shapes.append(f'<path d="M{x},{y_over - 8} a8,8 0 0 1 0,16" fill="none" stroke="{INK}" stroke-width="2"/>')
        self.line((x, y_over + 8), (x, y_to))

    def microphone(self, x, y):
        self.shapes.append(f'<circle cx="{x}" cy="{y}" r="11" fill="{PART}" stroke="{INK}" stroke-width="2"/>')
        self.line((x + 11, y - 12), (x + 11, y + 12))

    def svg(self):
        return (f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{HEIGHT}" '
                f'viewBox="0 0 {WIDTH} {HEIGHT}">\n' + "\n".join(self.shapes) + "\n</svg>\n")


def input_leg(sheet, pin, y, tap_x, upper, lower):
    """Wire from a tap to an input pin: series resistor, lower resistor of the divider if any, clamp."""
    sheet.line((150, y), (tap_x, y))
    sheet.across(430, y, upper)
    if lower:
        sheet.down(335, y, lower)
    sheet.down(235, y, None)
    sheet.text(142, y + 5, pin, size=13, anchor="end")


def rig(bridged):
    sheet = Sheet("Bridged amplifier: both outputs hot, nothing of the loudspeaker side touches ground" if bridged
                  else "Amplifier with a grounded low side")
    sheet.box(20, 60, 130, 620)
    sheet.text(85, 90, "audio", anchor="middle", bold=True)
    sheet.text(85, 108, "interface", anchor="middle", bold=True)

    # drive: output, pad, amplifier, fuse
    sheet.text(142, 135, "OUT 1", size=13, anchor="end")
    sheet.line((150, 130), (390, 130))
    sheet.across(215, 130, "10 kΩ")
    sheet.down(290, 130, "620 Ω")
    sheet.box(390, 95, 130, 145, "power", "amplifier")
    sheet.line((520, 115), (1010, 115))
    sheet.across(590, 115, "fuse 2 A")
    sheet.text(524, 107, "+", bold=True)
    sheet.text(142, 225, "OUT 2", size=13, anchor="end")
    sheet.line((150, 220), (255, 220))
    sheet.across(200, 220, "100 Ω")
    sheet.text(262, 216, "line lead for", size=13)
    sheet.text(262, 232, "powered cabinets", size=13)

    # return: cabinet, sense resistor, amplifier
    sense_y = 215
    sheet.line((520, sense_y), (1010, sense_y))
    sheet.text(524, sense_y - 8, "−", bold=True)
    sheet.across(690, sense_y, "Rs " + ("1 Ω" if bridged else "0.47 Ω"))
    if not bridged:
        sheet.dot(560, sense_y)
        sheet.line((560, sense_y), (560, sense_y + 14))
        sheet.ground(560, sense_y + 14)
    else:
        sheet.text(530, sense_y + 18, "hot", size=13, soft=True)
        sheet.text(524, 134, "hot", size=13, soft=True)

    # cable and cabinet
    sheet.line((860, 98), (860, 232), dashed=True)
    sheet.line((985, 98), (985, 232), dashed=True)
    sheet.text(922, 108, "cable", size=13, anchor="middle")
    for n, words in enumerate(("open, short", "and load go to", "the far plug")):
        sheet.text(922, 150 + 18 * n, words, size=13, anchor="middle", soft=True)
    sheet.box(1010, 85, 130, 160, "cabinet")

    # taps, rightmost lowest so that no wire crosses another below the return line
    for x in (640, 740, 785):
        sheet.dot(x, sense_y)
    sheet.dot(830, 115)
    legs = [("IN 2 −", 285, 640), ("IN 2 +", 355, 740), ("IN 1 −", 425, 785), ("IN 1 +", 495, 830)]
    for pin, y, x in legs:
        divided = bridged or pin.startswith("IN 1")
        input_leg(sheet, pin, y, x, "10.0 kΩ 0.1 %" if divided else "1 kΩ", "1.00 kΩ 0.1 %" if divided else None)
        if x == 830:
            sheet.hop(x, 115, y, sense_y)
        else:
            sheet.line((x, sense_y), (x, y))
    sheet.text(848, 290, "IN 2: current, the voltage across Rs", size=13)
    sheet.text(848, 308, "(its own two sense wires)", size=13, soft=True)
    sheet.text(848, 430, "IN 1: voltage at the near end", size=13)
    sheet.text(848, 448, "of the cable", size=13)

    # microphones
    sheet.text(142, 585, "IN 3", size=13, anchor="end")
    sheet.line((150, 580), (820, 580))
    sheet.microphone(831, 580)
    sheet.text(855, 585, "microphone at the marked spot, 0.3 m", size=13)
    sheet.text(142, 640, "IN 4", size=13, anchor="end")
    sheet.line((150, 635), (820, 635))
    sheet.microphone(831, 635)
    sheet.text(855, 640, "far microphone, 3 m (optional)", size=13)
    grounds = ("Ground: the interface's own, at the rig box only." if bridged
               else "Ground: the interface's own, at the rig box; the amplifier's low side is grounded inside it.")
    sheet.text(160, 672, "Clamps: two 6.8 V Zener diodes back to back. " + grounds, size=13, soft=True)
    return sheet


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for name, bridged in (("rig-grounded.svg", False), ("rig-bridged.svg", True)):
        (folder / name).write_text(rig(bridged).svg(), encoding="utf-8")
        print(folder / name)


if __name__ == "__main__":
    main()
