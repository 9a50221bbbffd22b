package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.Warning;

/**
 * The expected false share of the list of recurring vehicles against planted rates: of the vehicles listed, the share whose true
 * rate is not above the mean of their peers is at most the stated one, the mean of one less their posterior probabilities
 * (Müller, Parmigiani and Rice 2006, Bayesian Statistics 8; Newton et al. 2004, Biostatistics 5:155).
 */
class FalseFlagsTest {
    private static final LocalDate AS_OF = LocalDate.of(2026, 9, 30);
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final int VEHICLES = Integer.getInteger("study.vehicles", 4000);
    private static final double SQRT_OF_CHANCE = 3;

    /** A law of rates per year. */
    private interface Rates {
        double draw(SplittableRandom dice);
    }

    private record Outcome(int listed, int noWorse, double stated, double variance) {}

    private static Outcome study(Rates rates, double mean, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        List<Double> rate = new ArrayList<>();
        List<VehicleHistory> histories = new ArrayList<>();
        PeerCells cells = new PeerCells();
        for (int i = 0; i < VEHICLES; i++) {
            double r = rates.draw(dice);
            VehicleHistory h = history(r, dice);
            rate.add(r);
            histories.add(h);
            cells.add(h, AS_OF);
        }
        PeerRates peers = PeerRates.fit(cells, SETTINGS);
        int listed = 0;
        int noWorse = 0;
        double stated = 0;
        double variance = 0;
        for (int i = 0; i < VEHICLES; i++) {
            RecurringVehicle v = Recurrence.of(histories.get(i), peers, Histories.ordinaryModel(), SETTINGS, AS_OF)
                    .orElse(null);
            if (v != null && v.pattern() != RecurringVehicle.Pattern.NOT_RECURRING) {
                double p = v.probabilityAbovePeers();
                listed++;
                noWorse += rate.get(i) > mean ? 0 : 1;
                stated += 1 - p;
                variance += p * (1 - p);
            }
        }
        Outcome o = new Outcome(listed, noWorse, stated, variance);
        System.out.println(o + ", " + peers.law("van").groups().size() + " groups of shape "
                + peers.law("van").shape());
        return o;
    }

    /** Warnings as a Poisson process over one to four years, each proven off before the next. */
    private static VehicleHistory history(double rate, SplittableRandom dice) {
        LocalDate first = AS_OF.minusDays(dice.nextInt(365, 4 * 365));
        Rounds rounds = Rounds.of("van").clear(first.toString());
        double day = 0;
        while (true) {
            day += -Math.log(1 - dice.nextDouble()) * 365.25 / rate;
            LocalDate on = first.plusDays((long) Math.min(day, 1e6));
            if (on.isAfter(AS_OF)) {
                return rounds.history();
            }
            rounds.warned(on.toString()).episode(Warning.SYSTEM_FAULT, on.toString(), on.toString());
        }
    }

    private static double gamma(double shape, SplittableRandom dice) {
        // A sum of exponentials: whole shapes are enough here.
        double sum = 0;
        for (int i = 0; i < shape; i++) {
            sum -= Math.log(1 - dice.nextDouble());
        }
        return sum / shape;
    }

    /** Rates differ as the engine assumes: what it states is what comes out. */
    @Test
    void ofTheListedVehiclesNoMoreAreNoWorseThanStated() {
        for (double shape : new double[] {1, 3}) {
            Outcome o = study(dice -> 0.6 * gamma(shape, dice), 0.6, 11 + (long) shape);
            assertThat(o.listed()).isGreaterThan(VEHICLES / 100);
            assertThat((double) o.noWorse())
                    .isLessThanOrEqualTo(o.stated() + SQRT_OF_CHANCE * Math.sqrt(o.variance()))
                    .isGreaterThanOrEqualTo(o.stated() - SQRT_OF_CHANCE * Math.sqrt(o.variance()));
        }
    }

    private record NamedRates(String name, Rates rates, double mean) {}

    private static final List<NamedRates> NOT_ONE_GAMMA_LAW = List.of(
            new NamedRates("nine in ten 0.3, one in ten 2.5", d -> bad(0.1, d) ? 2.5 : 0.3, 0.52),
            new NamedRates("four in five 0.3, one in five 1.5", d -> bad(0.2, d) ? 1.5 : 0.3, 0.54),
            new NamedRates(
                    "one in ten 2.5, others 0.3, each a gamma law of shape 4 around it",
                    d -> (bad(0.1, d) ? 2.5 : 0.3) * gamma(4, d),
                    0.52),
            new NamedRates("lognormal, spread 1, median 0.3", d -> 0.3 * Math.exp(normal(d)), 0.3 * Math.exp(0.5)),
            new NamedRates("0.2, 0.7 and 3 for 70, 25 and 5 in a hundred", FalseFlagsTest::three, 0.465));

    private static boolean bad(double share, SplittableRandom dice) {
        return dice.nextDouble() < share;
    }

    private static double normal(SplittableRandom dice) {
        return Math.sqrt(-2 * Math.log(1 - dice.nextDouble())) * Math.cos(2 * Math.PI * dice.nextDouble());
    }

    private static double three(SplittableRandom dice) {
        double u = dice.nextDouble();
        return u < 0.05 ? 3 : u < 0.3 ? 0.7 : 0.2;
    }

    /**
     * Rates that are no gamma law: the data choose groups. That these are fitted to the same counts is not in the statement, so
     * beside chance a third of it is allowed; with one gamma law it was too low by up to three times.
     */
    @Test
    void whereRatesFallIntoGroupsTheStatementHoldsToo() {
        for (int w = 0; w < NOT_ONE_GAMMA_LAW.size(); w++) {
            NamedRates world = NOT_ONE_GAMMA_LAW.get(w);
            Outcome o = study(world.rates(), world.mean(), 4101 + w);
            assertThat(o.listed()).isGreaterThan(VEHICLES / 100);
            assertThat((double) o.noWorse())
                    .as(world.name())
                    .isLessThanOrEqualTo(4 / 3.0 * o.stated() + SQRT_OF_CHANCE * Math.sqrt(o.variance()));
        }
    }

    /** The check can fail: measured against twice the peers' true mean, what is stated is too little. */
    @Test
    void aStatementAgainstTheWrongPeersIsFoundOut() {
        Outcome o = study(dice -> 0.6 * gamma(3, dice), 1.2, 14);
        assertThat((double) o.noWorse()).isGreaterThan(o.stated() + SQRT_OF_CHANCE * Math.sqrt(o.variance()));
    }
}
