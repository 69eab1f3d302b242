package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Houses whose true spreads are known, drawn from named seeds. */
class SharedScatterTest {
    private static final List<String> IDS = List.of("contact", "C1.value", "C1.esrOhm", "L1.value", "LF.Re", "HF.Re");
    private static final double TOLERANCE = 0.04;
    private static final int UNITS = 5;
    /** Of a parameter that shows: its information is worth an error of a tenth of its tolerance. */
    private static final double SHOWS = 1 / (0.1 * TOLERANCE * 0.1 * TOLERANCE);
    /** The mean of five units is unsure by a sixth of their variance, and a variance believed with 15 degrees of freedom by 15 / 13 at most. */
    private static final double MEAN_OF_FIVE = 1 + 1.0 / 6;

    private final Random random = new Random(20261127);

    /** A reference of five units that vary by a share of the tolerance, seen through fits that began with the tolerance. */
    private PointReference reference(String model, double share, double... information) {
        double[][] deviations = new double[UNITS][IDS.size()];
        for (double[] unit : deviations) {
            for (int p = 0; p < unit.length; p++) {
                double shown = information[p] / (information[p] + 1 / (TOLERANCE * TOLERANCE));
                double noise = information[p] > 0 ? random.nextGaussian() / Math.sqrt(information[p]) : 0;
                unit[p] = shown * (share * TOLERANCE * random.nextGaussian() + noise);
            }
        }
        return reference(model, deviations, information);
    }

    private static PointReference reference(String model, double[][] deviations, double... information) {
        double[] tolerance = new double[IDS.size()];
        Arrays.fill(tolerance, TOLERANCE);
        double[][] matrix = new double[IDS.size()][IDS.size()];
        for (int p = 0; p < matrix.length; p++) {
            matrix[p][p] = information[p];
        }
        double[] none = new double[0];
        PointReference.Taught taught = new PointReference.Taught(
                IDS,
                new double[IDS.size()],
                tolerance,
                none,
                none,
                none,
                UnitScatter.of(tolerance, matrix, tolerance, deviations));
        return new PointReference(model, "IN", deviations.length, none, none, none, none, none, none, none, taught);
    }

    private static double spread(PointReference reference, String id) {
        return reference.taught().spread()[IDS.indexOf(id)];
    }

    private static double[] all(double information) {
        double[] all = new double[IDS.size()];
        Arrays.fill(all, information);
        return all;
    }

    private List<PointReference> house(int models, double share) {
        List<PointReference> house = new ArrayList<>();
        for (int m = 0; m < models; m++) {
            house.add(reference("M" + m, share, all(SHOWS)));
        }
        return house;
    }

    private static double mean(List<PointReference> house, String id) {
        return house.stream().mapToDouble(r -> spread(r, id)).average().orElseThrow();
    }

    @Test
    void aHouseOfManyModelsLearnsHowTightItsPartsAreAndOneModelOnlyHalfOfIt() {
        List<PointReference> house = house(40, 0.4);

        double together = mean(SharedScatter.over(house), "C1.value");
        double alone = spread(SharedScatter.over(house.subList(0, 1)).get(0), "C1.value");

        // the truth, with the error of a mean of five and of a variance; a tenth is left to chance and to what is
        // believed besides
        double truth = 0.4 * TOLERANCE * Math.sqrt(MEAN_OF_FIVE * 17 / 15);
        assertThat(together).isCloseTo(truth, within(0.1 * truth));
        assertThat(alone).isBetween(1.1 * truth, TOLERANCE * Math.sqrt(MEAN_OF_FIVE * 17 / 15));
    }

    @Test
    void unitsThatVaryMoreThanTheTolerancesSayWidenThem() {
        assertThat(mean(SharedScatter.over(house(40, 1.6)), "LF.Re"))
                .isCloseTo(1.6 * TOLERANCE * Math.sqrt(MEAN_OF_FIVE * 17 / 15), within(0.2 * TOLERANCE));
    }

    @Test
    void whatNoCurveShowsKeepsWhatItsTradeBelieves() {
        double[] blindToLosses = all(SHOWS);
        blindToLosses[IDS.indexOf("C1.esrOhm")] = 0;
        List<PointReference> house = new ArrayList<>();
        for (int m = 0; m < 40; m++) {
            house.add(reference("M" + m, 1, blindToLosses));
        }

        double unseen = Math.sqrt(MEAN_OF_FIVE * 15 / 13);
        assertThat(mean(SharedScatter.over(house), "C1.esrOhm") / TOLERANCE).isCloseTo(unseen, within(0.1));
    }

    @Test
    void makersThatAreWiderThanTheOthersOfTheHouseKeepMoreOfTheirWidth() {
        List<PointReference> house = new ArrayList<>(house(30, 0.5));
        house.add(reference("WIDE", 1.5, all(SHOWS)));

        List<PointReference> learned = SharedScatter.over(house);

        double wide = spread(learned.get(30), "LF.Re");
        assertThat(wide).isGreaterThan(1.5 * mean(learned.subList(0, 30), "LF.Re"));
    }

    @Test
    void oneBadUnitAmongTheGoodWidensNothingMuch() {
        List<PointReference> house = house(20, 0.5);
        double before = mean(SharedScatter.over(house), "C1.value");
        double[][] deviations = new double[UNITS][IDS.size()];
        for (double[] unit : deviations) {
            for (int p = 0; p < unit.length; p++) {
                unit[p] = 0.5 * TOLERANCE * random.nextGaussian();
            }
        }
        deviations[3][IDS.indexOf("C1.value")] = -20 * TOLERANCE;
        house.set(0, reference("M0", deviations, all(SHOWS)));

        List<PointReference> learned = SharedScatter.over(house);

        assertThat(mean(learned, "C1.value")).isCloseTo(before, within(0.05 * before));
        assertThat(spread(learned.get(0), "C1.value")).isLessThan(1.5 * before);
    }

    @Test
    void appliedToItsOwnOutcomeItGivesTheSame() {
        List<PointReference> learned = SharedScatter.over(house(6, 0.7));

        assertThat(SharedScatter.over(learned)).isEqualTo(learned);
    }

    @Test
    void referencesOfBeforeScatterWasKeptStayAsTheyAre() {
        PointReference old = reference("OLD", 0.5, all(SHOWS));
        PointReference.Taught taught = old.taught();
        PointReference without = new PointReference(
                "OLD",
                "IN",
                UNITS,
                old.frequencyHz(),
                old.meanLogOhm(),
                old.meanPhaseRad(),
                old.spreadLog(),
                old.acousticFrequencyHz(),
                old.meanLevelDb(),
                old.spreadLevelDb(),
                new PointReference.Taught(
                        taught.parameterIds(),
                        taught.mean(),
                        taught.spread(),
                        taught.offsetLog(),
                        taught.offsetPhaseRad(),
                        taught.offsetSigma(),
                        null));
        List<PointReference> house = new ArrayList<>(house(3, 0.5));
        house.add(1, without);

        List<PointReference> learned = SharedScatter.over(house);

        assertThat(learned).hasSize(4);
        assertThat(learned.get(1)).isSameAs(without);
        assertThat(learned.get(2).cabinetModelCode()).isEqualTo("M1");
    }

    @Test
    void whatBelongsToTheMomentKeepsItsWidth() {
        assertThat(spread(SharedScatter.over(house(10, 0.2)).get(0), "contact")).isEqualTo(TOLERANCE);
    }

    @Test
    void aScatterThatIsNotOfItsCircuitIsRefusedInWords() {
        double[] tolerance = {TOLERANCE, TOLERANCE};

        assertThatIllegalArgumentException()
                .isThrownBy(() -> new UnitScatter(tolerance, new double[][] {{1}}, new double[1][2]))
                .withMessageContainingAll("2 parameters", "teach the reference again");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        new UnitScatter(tolerance, new double[][] {{1}, {0, Double.NaN}}, new double[][] {{0, 0}}))
                .withMessageContainingAll("must be numbers", "teach the reference again");
    }

    @Test
    void informationThatNoCurveHasIsRefusedInWords() {
        double[] negative = all(SHOWS);
        negative[2] = -SHOWS;
        PointReference impossible = reference("M0", new double[UNITS][IDS.size()], negative);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> SharedScatter.over(List.of(impossible)))
                .withMessageContainingAll("information must be positive", "teach the reference again");
    }
}
