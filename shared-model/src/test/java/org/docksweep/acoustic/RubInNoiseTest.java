package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SoundPrint;
import org.junit.jupiter.api.Test;

/** Events that come back at the same phase, in noise and among knocks. */
class RubInNoiseTest {
    private static final double PEAK_PA = 0.5;
    /** From here an event outweighs its rarity: score^2 / 2 less the price of the looks, 10, and the prior, 5. */
    private static final double TELLING = 5.4;

    private static SoundMaker quiet() {
        return new SoundMaker(20, 20000, 2, 48_000, 2, x -> PEAK_PA * x);
    }

    private static SoundPrint print(SoundMaker maker) {
        return SoundEar.analyser().analyse(maker.make()).acoustic().print();
    }

    private static AcousticCurve curve(SoundMaker maker) {
        return SoundEar.analyser().analyse(maker.make()).acoustic();
    }

    private static double touching(AcousticCurve heard, AcousticCurve expected) {
        return new SoundEvidence(heard, expected, List.of(), 0.3, 0.3).touching();
    }

    /** A rub no higher than the peaks of the noise, over 50 periods. */
    @Test
    void whatTheBaselineWouldHaveShownAndDidNotIsNew() {
        double noisePa = PEAK_PA * Math.pow(10, -52 / 20.0);
        AcousticCurve heard = curve(rub(quiet(), -43, 1).noise(noisePa, 101));
        assertThat(heard.print().event().score()).isGreaterThan(SoundEar.NOTED_SCORE + 2.8);

        assertThat(touching(heard, curve(quiet().noise(noisePa, 102)))).isGreaterThan(5);
        // the cabinet's own
        assertThat(touching(heard, curve(rub(quiet(), -43, 2).noise(noisePa, 103))))
                .isLessThan(0);
        // a baseline a little noisier would have shown a clear one still
        AcousticCurve clear = curve(rub(quiet(), -41.5, 4).noise(noisePa, 105));
        assertThat(touching(clear, curve(quiet().noise(1.15 * noisePa, 106)))).isGreaterThan(5);
        // a baseline so much noisier may have hidden it
        assertThat(touching(heard, curve(quiet().noise(4 * noisePa, 104)))).isLessThan(0);
    }

    /** Both ends of a travel: which is the louder is chance, how loud is not. */
    @Test
    void takesTheOtherEndOfTheTravelForTheCabinetsOwnUnlessItIsLouder() {
        double noisePa = PEAK_PA * Math.pow(10, -62 / 20.0);
        AcousticCurve expected = curve(rub(quiet(), -45, 11, 0.3).noise(noisePa, 111));

        AcousticCurve otherEnd = curve(rub(quiet(), -45, 12, 0.8).noise(noisePa, 112));
        assertThat(otherEnd.print().event().score()).isGreaterThan(TELLING);
        assertThat(touching(otherEnd, expected)).isLessThan(0);

        assertThat(touching(curve(rub(quiet(), -36, 13, 0.8).noise(noisePa, 113)), expected))
                .isGreaterThan(5);
        assertThat(touching(curve(rub(quiet(), -36, 14, 0.55).noise(noisePa, 114)), expected))
                .isGreaterThan(5);
    }

    /** Clear strokes stay clear in more noise: their cells are cut off in either. */
    @Test
    void aNoisierBaselineThatWouldHaveShownClearStrokesCanDenyThem() {
        double noisePa = PEAK_PA * Math.pow(10, -62 / 20.0);
        AcousticCurve heard = curve(rub(quiet(), -46.5, 31).noise(noisePa, 131));
        SoundPrint.Event there =
                print(rub(quiet(), -46.5, 31).noise(2.5 * noisePa, 132)).event();
        assertThat(there.score()).isGreaterThan(SoundEar.NOTED_SCORE + 2.8);

        assertThat(touching(heard, curve(quiet().noise(2.5 * noisePa, 133)))).isGreaterThan(5);
        // not so where they would have drowned
        SoundPrint.Event drowned =
                print(rub(quiet(), -46.5, 31).noise(8 * noisePa, 134)).event();
        assertThat(drowned == null ? 0 : drowned.score()).isLessThan(SoundEar.NOTED_SCORE + 2.8);
        assertThat(touching(heard, curve(quiet().noise(8 * noisePa, 135)))).isLessThan(0);
    }

    /** A knock in the silence is not the noise of the sweep: the reference, noisier than the sweep was, may have hidden the strokes. */
    @Test
    void aKnockInTheSilenceDoesNotMakeTheReferenceTheQuieterOne() {
        double noisePa = PEAK_PA * Math.pow(10, -62 / 20.0);
        AcousticCurve expected = curve(quiet().noise(3 * noisePa, 122));
        SoundMaker maker = rub(quiet(), -53, 21).noise(noisePa, 121);
        AcousticCurve calm = curve(maker);
        assertThat(calm.print().event().score()).isGreaterThan(SoundEar.NOTED_SCORE + 2.8);
        assertThat(touching(calm, expected)).isLessThan(0);

        AcousticCurve knocked = curve(maker.knock(maker.start(0) - 20_000, 0.3, 123));
        assertThat(knocked.print().bands().get(5).noiseDb())
                .isGreaterThan(expected.print().bands().get(5).noiseDb() + 6);
        assertThat(touching(knocked, expected)).isLessThan(0);
    }

    private static SoundMaker rub(SoundMaker maker, double levelDb, long seed) {
        return rub(maker, levelDb, seed, 0.3);
    }

    private static SoundMaker rub(SoundMaker maker, double levelDb, long seed, double phaseTurns) {
        Random random = new Random(seed);
        double rate = maker.signal().rateConstantS();
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn = Math.ceil(rate * 30) + phaseTurns; turn < rate * 80; turn++) {
                double place = turn + 0.02 * random.nextGaussian();
                double tone = 2000 + 8000 * random.nextDouble();
                maker.burst(
                        maker.frameAtTurns(sweep, place),
                        PEAK_PA * Math.pow(10, levelDb / 20) * (0.7 + 0.3 * random.nextDouble()),
                        tone,
                        0.001);
            }
        }
        return maker;
    }

    /** Strokes at given turns of the drive's phase, 20 dB over the noise's rms. */
    private static SoundPrint.Event strokes(double[] inTheFirst, double[] inTheSecond, long seed) {
        return strokes(quiet(), inTheFirst, inTheSecond, seed);
    }

    private static SoundPrint.Event strokes(SoundMaker maker, double[] inTheFirst, double[] inTheSecond, long seed) {
        maker.noise(PEAK_PA * Math.pow(10, -60 / 20.0), seed);
        double[][] turns = {inTheFirst, inTheSecond};
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn : turns[sweep]) {
                maker.burst(maker.frameAtTurns(sweep, turn), PEAK_PA * Math.pow(10, -40 / 20.0), 6000, 0.001);
            }
        }
        return print(maker).event();
    }

    @Test
    void aConeThatStrikesInItsFirstPeriodsOnlyIsHeardThoughStrokesStayOut() {
        for (long seed = 0; seed < 2; seed++) {
            SoundPrint.Event event = strokes(new double[] {7.3, 9.3}, new double[] {8.3, 9.3}, 300 + seed);
            assertThat(event).as("seed %d", seed).isNotNull();
            assertThat(event.score()).as("seed %d", seed).isGreaterThan(TELLING);
            assertThat(event.toHz()).isLessThan(50);
        }
    }

    /** A sweep of a subwoofer, which begins at its fourth turn. */
    private static SoundMaker sub() {
        return new SoundMaker(15, 4000, 1.6, 48_000, 2, x -> PEAK_PA * x);
    }

    @Test
    void aSubwooferThatStrikesTwicePerSweepIsHeardFromTheFirstPeriodOnThoughAStrokeStaysOut() {
        for (long seed = 0; seed < 2; seed++) {
            SoundPrint.Event event = strokes(sub(), new double[] {4.7, 5.75}, new double[] {5.76}, 330 + seed);
            assertThat(event).as("seed %d", seed).isNotNull();
            assertThat(event.score()).as("seed %d", seed).isGreaterThan(TELLING);
            assertThat(event.fromHz()).isLessThan(18);
            assertThat(event.toHz()).isLessThan(30);
            assertThat(event.burstDb()).isCloseTo(-40, within(3.0));
        }
    }

    @Test
    void threeStrokesInOneSweepAloneAreNotTheCabinets() {
        for (long seed = 0; seed < 2; seed++) {
            SoundPrint.Event event = strokes(new double[] {7.3, 8.3, 9.3}, new double[] {}, 310 + seed);
            assertThat(event == null ? 0 : event.score()).as("seed %d", seed).isLessThan(TELLING);
        }
    }

    @Test
    void theLevelOfTwoStrokesIsThatOfTheLesserForTheOtherMayBeAKnock() {
        for (long seed = 0; seed < 2; seed++) {
            SoundMaker maker = quiet().noise(PEAK_PA * Math.pow(10, -66 / 20.0), 320 + seed);
            for (int sweep = 0; sweep < 2; sweep++) {
                maker.burst(maker.frameAtTurns(sweep, 8.3), PEAK_PA * Math.pow(10, -46 / 20.0), 6000, 0.001);
                maker.burst(maker.frameAtTurns(sweep, 9.3), PEAK_PA * Math.pow(10, -26 / 20.0), 6000, 0.001);
            }
            SoundPrint.Event event = print(maker).event();
            assertThat(event).as("seed %d", seed).isNotNull();
            assertThat(event.burstDb()).as("seed %d", seed).isCloseTo(-46, within(4.0));
        }
    }

    @Test
    void hearsARubTwelveDecibelsOverTheNoise() {
        // C4 of the technique notes: 15 clicks need about 10 to 12 dB of peak over rms
        for (long seed = 0; seed < 5; seed++) {
            SoundMaker maker = rub(quiet(), -40, seed).noise(PEAK_PA * Math.pow(10, -52 / 20.0), 100 + seed);
            SoundPrint.Event event = print(maker).event();
            assertThat(event).isNotNull();
            assertThat(event.score()).isGreaterThan(TELLING);
            assertThat(event.fromHz()).isBetween(20.0, 60.0);
            assertThat(event.phaseTurns()).isCloseTo(0.3, within(0.1));
        }
    }

    @Test
    void hearsAHighDriverScrapeWhereNothingIsLeftAboveTheTenthOrder() {
        for (long seed = 0; seed < 3; seed++) {
            SoundMaker maker = quiet().noise(PEAK_PA * Math.pow(10, -50 / 20.0), 200 + seed);
            Random random = new Random(seed);
            double rate = maker.signal().rateConstantS();
            for (int sweep = 0; sweep < 2; sweep++) {
                for (double turn = Math.ceil(rate * 1200) + 0.3; turn < rate * 3000; turn++) {
                    double tone = 3000 + 8000 * random.nextDouble();
                    double peak = PEAK_PA * Math.pow(10, -40 / 20.0) * (0.5 + 0.5 * random.nextDouble());
                    maker.burst(maker.frameAtTurns(sweep, turn + 0.02 * random.nextGaussian()), peak, tone, 0.0005);
                }
            }
            SoundPrint.Event event = print(maker).event();
            assertThat(event).isNotNull();
            assertThat(event.score()).isGreaterThan(TELLING);
            assertThat(event.fromHz()).isBetween(500.0, 2000.0);
            // strokes that run into each other have no peak of their own: the level is rough
            assertThat(event.burstDb()).isCloseTo(-42, within(8.0));
        }
    }

    @Test
    void theLargestOfSeveralStrokesIsNoRarerThanItIs() {
        // four half overlapping strokes are worth three: 0.8413^3 = 0.5955, a deviate of 0.242 (tables of the normal)
        assertThat(LargestOf.normal(1, 4)).isCloseTo(0.242, within(0.005));
        assertThat(LargestOf.normal(2.3, 1)).isEqualTo(2.3);
    }

    @Test
    void noiseAloneTellsNothing() {
        for (long seed = 0; seed < 15; seed++) {
            SoundPrint.Event event = print(quiet().noise(PEAK_PA * Math.pow(10, -40 / 20.0), seed))
                    .event();
            assertThat(event == null ? 0 : event.score()).as("seed %d", seed).isLessThan(TELLING);
        }
    }

    @Test
    void knocksInBothSweepsTellNothing() {
        Random random = new Random(8);
        for (long seed = 0; seed < 15; seed++) {
            SoundMaker maker = quiet().noise(PEAK_PA * Math.pow(10, -60 / 20.0), seed);
            for (int sweep = 0; sweep < 2; sweep++) {
                int within = (int) (random.nextDouble() * 0.5 * 48_000);
                maker.knock(maker.start(sweep) + within, 0.05 + 2 * random.nextDouble(), 2 * seed + sweep);
            }
            SoundPrint.Event event = print(maker).event();
            assertThat(event == null ? 0 : event.score())
                    .as("seed %d: %s", seed, event)
                    .isLessThan(TELLING);
        }
    }

    @Test
    void burstsInOneSweepAloneAreNotTheCabinets() {
        SoundMaker maker = quiet().noise(PEAK_PA * Math.pow(10, -60 / 20.0), 3);
        double rate = maker.signal().rateConstantS();
        for (double turn = Math.ceil(rate * 30); turn < rate * 80; turn++) {
            maker.burst(maker.frameAtTurns(0, turn), 0.05, 5000, 0.001);
        }
        SoundPrint.Event event = print(maker).event();
        assertThat(event == null ? 0 : event.score()).isLessThan(TELLING);
    }

    @Test
    void oneSweepCannotShowThatAnythingComesBack() {
        SoundPrint print = print(new SoundMaker(20, 20000, 2, 48_000, 1, x -> PEAK_PA * x));
        assertThat(print.marks()).contains(SoundPrint.Mark.SINGLE_SWEEP);
    }

    @Test
    void hearsAnotherDocksSweepAndNotAKnock() {
        SoundMaker maker = quiet().noise(PEAK_PA * Math.pow(10, -60 / 20.0), 4);
        double[] p = maker.pascals();
        double[] own = p.clone();
        int later = 40_000;
        for (int i = later; i < p.length; i++) {
            p[i] += 0.2 * own[i - later];
        }
        assertThat(print(maker).marks()).contains(SoundPrint.Mark.FOREIGN_SWEEP);
        for (long seed = 0; seed < 8; seed++) {
            SoundMaker knocked = quiet().noise(PEAK_PA * Math.pow(10, -60 / 20.0), seed);
            knocked.knock(knocked.start(0) + 5_000 * (int) seed, 1, seed);
            knocked.knock(knocked.start(1) + 3_000 * (int) seed, 1, seed + 50);
            assertThat(print(knocked).marks()).doesNotContain(SoundPrint.Mark.FOREIGN_SWEEP);
        }
    }

    @Test
    void marksASilentMicrophone() {
        assertThat(print(new SoundMaker(20, 20000, 2, 48_000, 2, x -> 0).noise(1e-3, 2))
                        .marks())
                .contains(SoundPrint.Mark.UNHEARD);
    }
}
