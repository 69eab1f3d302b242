#!/usr/bin/env python3
"""Time the transform of 2^18 real samples in NumPy and SciPy, one thread, and print it beside the benchmark's own.

Usage: /usr/bin/python3 transform_numpy.py [BENCHMARKS.json]

Needs NumPy and SciPy (Debian: python3-numpy python3-scipy). BENCHMARKS.json is what the benchmarks of demo-data wrote; without it
only NumPy and SciPy are timed. Times are by the clock and by the processor: on a busy machine the second tells more.
"""
import json
import os
import statistics
import sys
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"  # before NumPy is loaded: one thread, as the benchmark

import numpy  # noqa: E402
import scipy  # noqa: E402
import scipy.fft  # noqa: E402

SIZE = 1 << 18
SEED = 18
WARM_UP_S, MEASURE_S, ROUNDS = 1.0, 2.0, 5  # the same as the benchmark's


def round_ms(transform, samples, seconds):
    """Mean milliseconds per call by the clock and by the processor."""
    clock, processor, count = time.perf_counter(), time.process_time(), 0
    while time.perf_counter() - clock < seconds:
        transform(samples)
        count += 1
    return 1000 * (time.perf_counter() - clock) / count, 1000 * (time.process_time() - processor) / count


def timed(transform, samples):
    """Medians over the rounds."""
    round_ms(transform, samples, WARM_UP_S)
    rounds = [round_ms(transform, samples, MEASURE_S) for _ in range(ROUNDS)]
    return [statistics.median(column) for column in zip(*rounds)]


def benchmark(path):
    """Median milliseconds per call and mean processor milliseconds of the benchmark."""
    with open(path, encoding="utf-8") as file:
        runs = [run for run in json.load(file) if run["benchmark"].endswith("TransformBenchmark.forward")]
    if len(runs) != 1:
        sys.exit(f"{path} holds {len(runs)} runs of TransformBenchmark.forward, expected 1; run mvn -Pbench again")
    rounds = runs[0]["primaryMetric"]["rawData"][0]
    processor = runs[0]["secondaryMetrics"]["cpu"]["score"]
    return runs[0]["vmVersion"], statistics.median(rounds), processor


def main():
    samples = 2 * numpy.random.default_rng(SEED).random(SIZE) - 1
    print(f"forward transform of {SIZE} real samples, double precision, one thread, milliseconds per call")
    rows = []
    if len(sys.argv) > 1:
        version, clock, processor = benchmark(sys.argv[1])
        rows.append((f"Docksweep, Java {version}", clock, processor))
    rows.append((f"NumPy {numpy.__version__} rfft", *timed(numpy.fft.rfft, samples)))
    rows.append((f"SciPy {scipy.__version__} rfft", *timed(scipy.fft.rfft, samples)))
    for words, clock, processor in rows:
        print(f"{words:34} by the clock {clock:7.3f}   by the processor {processor:7.3f}")


if __name__ == "__main__":
    main()
