#!/usr/bin/env python3
"""Print the tables of rig.md: what a sense resistor does to noise, and what unequal dividers do.

Python standard library only. Usage: python3 rig_accuracy.py

Noise: relative standard uncertainty of |Z|, sqrt(var(ln Z) / 2), half of the variance falling to the phase, with
    var(ln Z) = 2 Tg f / (A^2 L M) |Z + Rs|^2 (Sv / |Z|^2 + Si / Rs^2)
Sv, Si one-sided noise densities in V^2/Hz of the two channels, referred to the cabinet's voltage and to the voltage
across Rs. With Sv = Si = Sn this is the formula of the estimator's own uncertainty. It assumes that nothing but
noise is wrong; calibration, contacts and temperature come on top.
"""
import math

DRIVE_VRMS = 1.5                      # level of a dock sweep
RATE_CONSTANT_S = 2.0 / math.log(1000)  # L: 20 Hz to 20 kHz in 2 s
SWEEPS = 2                            # M
NOISE_DBFS = -100.0                   # rms in 20 kHz, of one input with its gain as set; a modest interface
NOISE_BAND_HZ = 20_000.0
INPUT_NOISE_V = 3e-6                  # rms in 20 kHz, below which no gain brings an input, at its own pins
VOLTAGE_FULL_SCALE_V = 20.0           # peak at the cabinet
LOWEST_PEAK_OHM = 2.5                 # lowest load the gain of the sense channel is set for
HEADROOM = 2.0                        # above the sweep's own peak
SENSE_OHM = (0.1, 0.22, 0.47, 1.0)
LOAD_OHM = (4.0, 8.0, 60.0)
FREQUENCY_HZ = (30.0, 1000.0, 10_000.0)
DIVIDER_TOLERANCE = 1e-3              # 0.1 % parts
DIVIDER_DRIFT_PER_K = 25e-6           # tracking of such parts
WARMER_K = 10.0
UPPER_OHM, LOWER_OHM = 10_000.0, 1_000.0


def gate_s(frequency_hz):
    """Length of the estimator's gate."""
    before = min(0.12, max(0.01, 12 / frequency_hz), 0.5 * RATE_CONSTANT_S * math.log(2))
    return before + min(0.5, max(0.02, 60 / frequency_hz))


def density(full_scale_v):
    """One-sided noise density; full scale is a peak value."""
    rms_v = max(INPUT_NOISE_V, full_scale_v * 10 ** (NOISE_DBFS / 20))
    return rms_v * rms_v / NOISE_BAND_HZ


def noise_share(load_ohm, sense_ohm, frequency_hz, own_gain):
    """Relative standard uncertainty of |Z| from noise."""
    peak_v = math.sqrt(2) * DRIVE_VRMS
    largest_sense_v = HEADROOM * peak_v * sense_ohm / (LOWEST_PEAK_OHM + sense_ohm)
    sv = density(VOLTAGE_FULL_SCALE_V)
    si = density(largest_sense_v) if own_gain else sv
    variance = (2 * gate_s(frequency_hz) * frequency_hz / (peak_v ** 2 * RATE_CONSTANT_S * SWEEPS)
                * (load_ohm + sense_ohm) ** 2 * (sv / load_ohm ** 2 + si / sense_ohm ** 2))
    return math.sqrt(variance / 2)


def common_mode_share(load_ohm, sense_ohm, part_share):
    """Error of the current of a bridged amplifier when each part of two dividers is off by part_share, at worst."""
    between_legs = 4 * part_share * UPPER_OHM / (UPPER_OHM + LOWER_OHM)
    return between_legs * (load_ohm / 2) / sense_ohm


def main():
    print(f"Noise alone, per cent of |Z| (standard uncertainty): {DRIVE_VRMS} V rms, {SWEEPS} sweeps of 2 s,"
          f" inputs {NOISE_DBFS:.0f} dB re full scale")
    for own_gain, words in ((True, "sense channel with its own gain"), (False, "both channels at one gain")):
        print(f"\n{words}")
        print("| Rs | " + " | ".join(f"{z:g} ohm at {f:g} Hz" for z in LOAD_OHM for f in FREQUENCY_HZ) + " |")
        print("| --- |" + " --- |" * (len(LOAD_OHM) * len(FREQUENCY_HZ)))
        for rs in SENSE_OHM:
            cells = [f"{100 * noise_share(z, rs, f, own_gain):.3f}" for z in LOAD_OHM for f in FREQUENCY_HZ]
            print(f"| {rs:g} ohm | " + " | ".join(cells) + " |")
    print("\nBridged amplifier, 0.1 % dividers at their worst: error of the current in per cent before calibration,"
          f" and what {WARMER_K:g} K leave of it after calibration")
    print("| Rs | " + " | ".join(f"{z:g} ohm" for z in LOAD_OHM) + " |")
    print("| --- |" + " --- |" * len(LOAD_OHM))
    for rs in SENSE_OHM:
        cells = [f"{100 * common_mode_share(z, rs, DIVIDER_TOLERANCE):.1f},"
                 f" {100 * common_mode_share(z, rs, DIVIDER_DRIFT_PER_K * WARMER_K):.2f}" for z in LOAD_OHM]
        print(f"| {rs:g} ohm | " + " | ".join(cells) + " |")
    print("\nLevel lost and heat, amplifier with 0.05 ohm, lead with 0.15 ohm")
    print("| Rs | share of the level at 4 ohm | heat in Rs at 1.5 V rms and 3 ohm | at 7 V rms into a short |")
    print("| --- | --- | --- | --- |")
    for rs in SENSE_OHM:
        loop = rs + 0.2
        print(f"| {rs:g} ohm | {20 * math.log10(4 / (4 + loop)):.1f} dB | {(1.5 / (3 + loop)) ** 2 * rs:.2f} W"
              f" | {(7 / loop) ** 2 * rs:.0f} W |")


if __name__ == "__main__":
    main()
