#!/usr/bin/env python3
"""Write one recording (WAV + sidecar) of a 10 ohm resistor, as recording-format.md describes it.

Usage: python3 ten_ohm_recording.py OUTPUT_FOLDER
"""
import json
import math
import random
import struct
import sys
from pathlib import Path

NAME = "ten_ohm"          # NAME.wav and NAME.json: same name, same folder
RESISTANCE_OHM = 10.0
LATENCY_S = 0.060         # delay from playback to capture; the page advises -0.3 to +0.5 s
NOISE_DB = -100.0         # rms of the noise on each channel, re full scale (1.0)
SEED = 1                  # fixed, so that every run writes the same bytes
BITS = 24

# ---- NAME.json: every field the page requires, and no others -------------------------------------
SIDECAR = {
    "format": "docksweep-recording",
    "version": 1,
    "capturedAt": "2026-05-01T01:23:45Z",
    "rigId": "ten-ohm-example",
    "testPointKind": "TERMINALS",
    "sampleRateHz": 48000,
    "channels": [                                        # in the order of the WAV file
        {"role": "VOLTAGE", "unitsPerFullScale": 4.0},   # a sample of 1.0 means 4 V
        {"role": "CURRENT", "unitsPerFullScale": 0.5},   # a sample of 1.0 means 0.5 A
    ],
    "preRollS": 0.5,
    "tailS": 0.6,
    "repeats": 2,
    "sweep": {
        "startHz": 20.0,
        "stopHz": 20000.0,
        "rateConstantS": 0.3,                            # L: f1 L = 6 is whole; T = L ln(f2/f1) = 2.07 s
        "fadeInS": 0.05,
        "fadeOutS": 0.01,
        "level": [                                       # 1 V rms at every frequency
            {"frequencyHz": 20.0, "voltageVrms": 1.0},
            {"frequencyHz": 20000.0, "voltageVrms": 1.0},
        ],
    },
}


def level_vrms(corners, f):
    """U(f): straight between two corners on logarithmic scales."""
    for a, b in zip(corners, corners[1:]):
        if f <= b["frequencyHz"]:
            break
    share = math.log(f / a["frequencyHz"]) / math.log(b["frequencyHz"] / a["frequencyHz"])
    return a["voltageVrms"] * (b["voltageVrms"] / a["voltageVrms"]) ** share


def sweep_volts(sweep, rate):
    """One sweep u(t) in volts, F = ceil(T rate) frames."""
    f1, f2, L = sweep["startHz"], sweep["stopHz"], sweep["rateConstantS"]
    fade_in, fade_out = sweep["fadeInS"], sweep["fadeOutS"]
    T = L * math.log(f2 / f1)
    volts = []
    for i in range(math.ceil(T * rate)):
        t = i / rate
        growth = math.exp(t / L)
        f = min(max(f1 * growth, f1), f2)                # held between f1 and f2
        w = 1.0                                          # product of the two half cosines
        if t < fade_in:
            w *= 0.5 - 0.5 * math.cos(math.pi * t / fade_in)
        if T - t < fade_out:
            w *= 0.5 - 0.5 * math.cos(math.pi * (T - t) / fade_out)
        phase = 2 * math.pi * f1 * L * growth
        volts.append(w * math.sqrt(2) * level_vrms(sweep["level"], f) * math.sin(phase))
    return volts


def playback_volts(sidecar):
    """Pre-roll, then `repeats` times a sweep and its tail."""
    rate = sidecar["sampleRateHz"]
    pre_roll = [0.0] * round(sidecar["preRollS"] * rate)
    tail = [0.0] * round(sidecar["tailS"] * rate)
    return pre_roll + (sweep_volts(sidecar["sweep"], rate) + tail) * sidecar["repeats"]


def main(folder):
    rate = SIDECAR["sampleRateHz"]
    played = playback_volts(SIDECAR)

    # The capture starts with the playback and is as long, but everything arrives LATENCY_S later,
    # on both channels alike. What falls off the end is the last of the (silent) tail.
    delay = round(LATENCY_S * rate)
    captured = [0.0] * delay + played[:len(played) - delay]

    # Volts and amperes -> share of full scale -> 24-bit integers (full scale is 2^23), with noise
    # of its own on each channel. One list, frame after frame: VOLTAGE, CURRENT, VOLTAGE, ...
    noise = random.Random(SEED)
    noise_rms = 10 ** (NOISE_DB / 20)
    v_full, i_full = (channel["unitsPerFullScale"] for channel in SIDECAR["channels"])
    data = bytearray()
    for v in captured:
        for sample in (v / v_full, v / RESISTANCE_OHM / i_full):
            step = round((sample + noise.gauss(0.0, noise_rms)) * 2 ** (BITS - 1))
            data += step.to_bytes(BITS // 8, "little", signed=True)

    # ---- NAME.wav: RIFF header, one `fmt ` chunk, one `data` chunk (padded when its size is odd) --
    channels, frame_bytes = len(SIDECAR["channels"]), len(SIDECAR["channels"]) * BITS // 8
    fmt = struct.pack("<HHIIHH", 1, channels, rate, rate * frame_bytes, frame_bytes, BITS)
    chunks = b"fmt " + struct.pack("<I", len(fmt)) + fmt
    chunks += b"data" + struct.pack("<I", len(data)) + bytes(data) + b"\0" * (len(data) % 2)
    wav = b"RIFF" + struct.pack("<I", 4 + len(chunks)) + b"WAVE" + chunks

    folder.mkdir(parents=True, exist_ok=True)
    (folder / f"{NAME}.wav").write_bytes(wav)
    (folder / f"{NAME}.json").write_text(json.dumps(SIDECAR, indent=2) + "\n", encoding="utf-8")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    main(Path(sys.argv[1]))
