#!/usr/bin/env python3
"""Time the transform of real samples in NumPy and SciPy, one thread, and report it beside the benchmark's rounds.

Forward alone, and as the analysis uses it: record to impulse response, forward, times a spectrum, back. 2^17 samples hold a
capture of 3 s at 48 kHz, 2^18 the dock's own plan.

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

SIZES = (1 << 17, 1 << 18)
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

    random = numpy.random.default_rng(SEED)
    found = {}
    for size in SIZES:
        samples = 2 * random.random(size) - 1
        for words, fft in ((f"NumPy {numpy.__version__}", numpy.fft), (f"SciPy {scipy.__version__}", scipy.fft)):
            inverse = fft.rfft(2 * random.random(size) - 1)

            def response(record, fft=fft, inverse=inverse, size=size):
                spectrum = fft.rfft(record)
                spectrum *= inverse
                return fft.irfft(spectrum, size)

            found[f"forward {size} {words}"] = timed(fft.rfft, samples)
            found[f"response {size} {words}"] = timed(response, samples)
    print(json.dumps(found))


def java_rounds(path):
    """Median milliseconds per call and mean processor milliseconds of the runs of the benchmark."""
    found = {}
    for run in json.loads(path.read_text()):
        what = run["benchmark"].rsplit(".", 1)[1]
        clock = statistics.median(run["primaryMetric"]["rawData"][0])
        words = f"{what} {run['params']['size']} Docksweep, Java {run['vmVersion'].split('+')[0]}"
        found[words] = [clock, run["secondaryMetrics"]["cpu"]["score"]]
    if len(found) != 2 * len(SIZES):
        sys.exit(f"{path} holds {len(found)} runs of TransformBenchmark, expected {2 * len(SIZES)}; run compare-transforms again")
    return found


def report(folder):
    """Print the median of the rounds, and how far they lie apart."""
    rounds = {}
    for path in sorted(folder.glob("java-*.json")):
        for words, times in java_rounds(path).items():
            rounds.setdefault(words, []).append(times)
    for path in sorted(folder.glob("numpy-*.json")):
        for words, times in json.loads(path.read_text()).items():
            rounds.setdefault(words, []).append(times)
    if not rounds:
        sys.exit(f"{folder} holds no rounds; run compare-transforms")
    print("forward transform, and record to impulse response, real samples, double precision, one thread, milliseconds per call:")
    print("median of the rounds, which were taken in turn (least to most)")
    for words, times in sorted(rounds.items()):
        clock, processor = zip(*times)
        print(f"{words:44} by the clock {statistics.median(clock):7.3f} ({min(clock):.3f} to {max(clock):.3f})   "
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
