#!/usr/bin/env python3
"""Time the transform of 2^18 real samples in NumPy and SciPy, one thread, and report it beside the benchmark's rounds.

Usage: transform_numpy.py measure          one round of each, as JSON
       transform_numpy.py report FOLDER    medians over java-N.json (JMH) and numpy-N.json (of measure)

Needs NumPy and SciPy (Debian: python3-numpy python3-scipy). Times are by the clock and by the processor: on a busy machine the
second tells more. docs/scripts/compare-transforms runs it.
"""
import json
import os
import pathlib
import statistics
import sys
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"  # before NumPy is loaded: one thread, as the benchmark

SIZE = 1 << 18
SEED = 18
WARM_UP_S, MEASURE_S, TURNS = 1.0, 2.0, 5  # measured as long as the benchmark


def turn_ms(transform, samples, seconds):
    """Mean milliseconds per call by the clock and by the processor."""
    clock, processor, count = time.perf_counter(), time.process_time(), 0
    while time.perf_counter() - clock < seconds:
        transform(samples)
        count += 1
    return 1000 * (time.perf_counter() - clock) / count, 1000 * (time.process_time() - processor) / count


def timed(transform, samples):
    """Medians over the turns of one round."""
    turn_ms(transform, samples, WARM_UP_S)
    turns = [turn_ms(transform, samples, MEASURE_S) for _ in range(TURNS)]
    return [statistics.median(column) for column in zip(*turns)]


def measure():
    """Print one round of NumPy and SciPy."""
    import numpy
    import scipy
    import scipy.fft

    samples = 2 * numpy.random.default_rng(SEED).random(SIZE) - 1
    print(json.dumps({
        f"NumPy {numpy.__version__} rfft": timed(numpy.fft.rfft, samples),
        f"SciPy {scipy.__version__} rfft": timed(scipy.fft.rfft, samples),
    }))


def java_round(path):
    """Median milliseconds per call and mean processor milliseconds of one run of the benchmark."""
    runs = [run for run in json.loads(path.read_text()) if run["benchmark"].endswith("TransformBenchmark.forward")]
    if len(runs) != 1:
        sys.exit(f"{path} holds {len(runs)} runs of TransformBenchmark.forward, expected 1; run compare-transforms again")
    clock = statistics.median(runs[0]["primaryMetric"]["rawData"][0])
    return f"Docksweep, Java {runs[0]['vmVersion']}", [clock, runs[0]["secondaryMetrics"]["cpu"]["score"]]


def report(folder):
    """Print the median of the rounds, and how far they lie apart."""
    rounds = {}
    for path in sorted(folder.glob("java-*.json")):
        words, times = java_round(path)
        rounds.setdefault(words, []).append(times)
    for path in sorted(folder.glob("numpy-*.json")):
        for words, times in json.loads(path.read_text()).items():
            rounds.setdefault(words, []).append(times)
    if not rounds:
        sys.exit(f"{folder} holds no rounds; run compare-transforms")
    print(f"forward transform of {SIZE} real samples, double precision, one thread, milliseconds per call:")
    print("median of the rounds, which were taken in turn (least to most)")
    for words, times in rounds.items():
        clock, processor = zip(*times)
        print(f"{words:34} by the clock {statistics.median(clock):7.3f} ({min(clock):.3f} to {max(clock):.3f})   "
              f"by the processor {statistics.median(processor):7.3f} ({min(processor):.3f} to {max(processor):.3f})")


def main():
    if sys.argv[1:] == ["measure"]:
        measure()
    elif len(sys.argv) == 3 and sys.argv[1] == "report":
        report(pathlib.Path(sys.argv[2]))
    else:
        sys.exit(__doc__)


if __name__ == "__main__":
    main()
