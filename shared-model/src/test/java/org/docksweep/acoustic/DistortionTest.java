package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SoundPrint;
import org.docksweep.sweep.SweepAnalyser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Distortion against what is known from outside: polynomials, published lead times, pulse trains. */
class DistortionTest {
    private static final double[] ORDERS_DB = {0, -20, -26, -33, -37, -42, -45, -51, -54};

    /** A sum of Chebyshev polynomials turns a tone of amplitude 1 into harmonics of just these amplitudes. */
    private static double chebyshev(double x) {
        double before = 1;
        double now = x;
        double sum = 0;
        for (double db : ORDERS_DB) {
            sum += Math.pow(10, db / 20) * now;
            double next = 2 * x * now - before;
            before = now;
            now = next;
        }
        return 0.5 * sum;
    }

    private static SoundPrint print(SoundMaker maker) {
        return SoundEar.analyser().analyse(maker.make()).acoustic().print();
    }

    @ParameterizedTest
    @CsvSource({"126", "200", "316", "398"})
    void recoversTheHarmonicsOfAPolynomial(double frequencyHz) {
        // 96 kHz and 5 kHz: the ninth order stays below half the sample rate
        SoundPrint print = print(new SoundMaker(50, 5000, 2, 96_000, 1, DistortionTest::chebyshev));
        double[] levels = print.bandAt(frequencyHz).harmonicDb();
        assertThat(levels).hasSize(8);
        for (int n = 2; n <= 9; n++) {
            assertThat(levels[n - 2])
                    .as("order %d at %.0f Hz", n, frequencyHz)
                    .isCloseTo(ORDERS_DB[n - 1], within(0.1));
        }
    }

    /** Lead L ln n: Farina, AES 108, 2000; L rounded as Novak, Lotton, Simon, JAES 63, 2015: 0.304985 and 0.483389 s. */
    @ParameterizedTest
    @CsvSource({"2, 0.304985", "3, 0.483389"})
    void ordersArriveAsFarinaAndNovakSay(int order, double leadS) {
        AtomicReference<Double> leadSeenS = new AtomicReference<>();
        SoundMaker maker = new SoundMaker(50, 5000, 2, 48_000, 1, x -> 0.5 * (x + 0.2 * x * x + 0.2 * x * x * x));
        new SweepAnalyser()
                .hearing(take -> {
                    leadSeenS.set(leadNear(take, leadS));
                    return new SoundEar().read(take);
                })
                .analyse(maker.make());
        // the second order of a square law is a cosine: its response has two equal lobes beside the arrival
        assertThat(leadSeenS.get()).isCloseTo(leadS, within(10.5 / 48_000));
    }

    /** How much earlier than the sound itself the largest value near a lead arrives. */
    private static double leadNear(MicrophoneTake take, double leadS) {
        assertThat(take.signal().rateConstantS()).isCloseTo(0.44, within(1e-9));
        double[] response = take.response(0);
        int mask = response.length - 1;
        int expected = take.arrival() - (int) Math.rint(leadS * 48_000);
        int best = expected;
        for (int i = expected - 150; i < expected + 150; i++) {
            best = Math.abs(response[i & mask]) > Math.abs(response[best & mask]) ? i : best;
        }
        return (take.arrival() - best) / 48_000.0;
    }

    /** A burst of length t in a period P under a Hann window: crest 10 lg(16 P / 3 t), since its mean square is 3/16. */
    @ParameterizedTest
    @CsvSource({"0.001", "0.002", "0.004"})
    void crestFactorOfAPulseTrainIsThatOfItsShape(double lengthS) {
        SoundMaker maker = new SoundMaker(20, 20000, 2, 48_000, 2, x -> 0.5 * x);
        double rate = maker.signal().rateConstantS();
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn = Math.ceil(rate * 35) + 0.25; turn < rate * 75; turn++) {
                maker.burst(maker.frameAtTurns(sweep, turn), 0.02, 5000, lengthS);
            }
        }
        SoundPrint.Band band = print(maker).bandAt(50);
        assertThat(band.crestDb()).isCloseTo(10 * Math.log10(16 / (3 * lengthS * 50)), within(0.6));
        assertThat(band.burstDb()).isCloseTo(20 * Math.log10(0.02 / 0.5), within(0.6));
    }

    @Test
    void aCleanSweepLeavesNothingAboveTheTenthOrder() {
        SoundPrint print =
                print(new SoundMaker(20, 20000, 2, 48_000, 2, x -> 0.5 * (x + 0.05 * x * x - 0.05 * x * x * x)));
        assertThat(print.event()).isNull();
        for (SoundPrint.Band band : print.bands()) {
            if (band.centreHz() < 900) {
                assertThat(band.residueDb()).as("%s", band).isLessThan(-85);
            }
        }
    }
}
