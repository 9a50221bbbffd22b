package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.Histories;
import sensorrounds.visit.Warning;

/**
 * The stated number of false flags against planted rates, over many fleets: of the vehicles listed, those whose true rate is not
 * above the mean of their peers are on average no more than stated, and the upper limit holds in its share of fleets. The whole
 * study is {@code -Dstudy.fleets=200 -Dstudy.sizes=300,1000,4000}; its figures are in docs/validation-recurrence.md.
 */
class FalseFlagsTest {
    private static final LocalDate AS_OF = LocalDate.of(2026, 9, 30);
    private static final RecurrenceSettings SETTINGS = RecurrenceSettings.defaults();
    private static final int FLEETS = Integer.getInteger("study.fleets", 10);
    private static final String SIZES = System.getProperty("study.sizes", "300");
    private static final long SEED = Long.getLong("study.seed", 5100);
    private static final double SQRT_OF_CHANCE = 3;

    /** A law of rates per year. */
    private interface Rates {
        double draw(SplittableRandom dice);
    }

    private record World(String name, Rates rates, double mean) {}

    private static final List<World> WORLDS = List.of(
            new World("gamma, shape 1, mean 0.6", d -> 0.6 * gamma(1, d), 0.6),
            new World("gamma, shape 3, mean 0.6", d -> 0.6 * gamma(3, d), 0.6),
            new World("nine in ten 0.3, one in ten 2.5", d -> bad(0.1, d) ? 2.5 : 0.3, 0.52),
            new World("four in five 0.3, one in five 1.5", d -> bad(0.2, d) ? 1.5 : 0.3, 0.54),
            new World(
                    "one in ten 2.5, others 0.3, gamma laws of shape 4",
                    d -> (bad(0.1, d) ? 2.5 : 0.3) * gamma(4, d),
                    0.52),
            new World("lognormal, median 0.3, spread 1", d -> 0.3 * Math.exp(normal(d)), 0.3 * Math.exp(0.5)),
            new World("70, 25, 5 in a hundred at 0.2, 0.7, 3", FalseFlagsTest::three, 0.465));

    private static boolean bad(double share, SplittableRandom dice) {
        return dice.nextDouble() < share;
    }

    /** A sum of exponentials: whole shapes are enough here. */
    private static double gamma(int shape, SplittableRandom dice) {
        double sum = 0;
        for (int i = 0; i < shape; i++) {
            sum -= Math.log(1 - dice.nextDouble());
        }
        return sum / shape;
    }

    private static double normal(SplittableRandom dice) {
        return Math.sqrt(-2 * Math.log(1 - dice.nextDouble())) * Math.cos(2 * Math.PI * dice.nextDouble());
    }

    private static double three(SplittableRandom dice) {
        double u = dice.nextDouble();
        return u < 0.05 ? 3 : u < 0.3 ? 0.7 : 0.2;
    }

    private static int poisson(double mean, SplittableRandom dice) {
        int n = 0;
        for (double t = -Math.log(1 - dice.nextDouble()); t < mean; t -= Math.log(1 - dice.nextDouble())) {
            n++;
        }
        return n;
    }

    private record Fleet(FalseFlags stated, int noWorse) {}

    /** Warnings as a Poisson process over one to four years; listed with two returns, so three warnings, within a year. */
    private static Fleet fleet(World world, int vehicles, SplittableRandom dice) {
        PeerCells all = new PeerCells();
        PeerCells list = new PeerCells();
        int noWorse = 0;
        for (int i = 0; i < vehicles; i++) {
            double rate = world.rates().draw(dice);
            int days = dice.nextInt(365, 4 * 365);
            int recent = poisson(rate * SETTINGS.windowDays() / 365.25, dice);
            int events = recent + poisson(rate * (days - SETTINGS.windowDays()) / 365.25, dice);
            int bins = (int) Math.round(days / 30.0);
            all.count("van", events, bins, 1);
            if (recent > SETTINGS.minimumReturns()) {
                list.count("van", events, bins, 1);
                noWorse += rate > world.mean() ? 0 : 1;
            }
        }
        return new Fleet(FalseFlags.ofAll(list, PeerRates.fit(all, SETTINGS)), noWorse);
    }

    private record Study(double listed, double noWorse, double stated, double error, double limit, double held) {}

    private static Study study(World world, int vehicles, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double listed = 0;
        double noWorse = 0;
        double stated = 0;
        double squares = 0;
        double limit = 0;
        double held = 0;
        for (int i = 0; i < FLEETS; i++) {
            Fleet f = fleet(world, vehicles, dice);
            double more = f.noWorse() - f.stated().expected();
            listed += f.stated().listed();
            noWorse += f.noWorse();
            stated += f.stated().expected();
            squares += more * more;
            limit += f.stated().upperLimit();
            held += f.noWorse() <= f.stated().upperLimit() ? 1 : 0;
        }
        double n = FLEETS;
        double error = Math.sqrt((squares / n - Math.pow((noWorse - stated) / n, 2)) / (n - 1));
        Study s = new Study(listed / n, noWorse / n, stated / n, error, limit / n, held / n);
        System.out.printf(
                Locale.ROOT,
                "| %s | %,d | %.1f | %.2f | %.2f (%.2f) | %.1f | %.3f |%n",
                world.name(),
                vehicles,
                s.listed(),
                s.noWorse(),
                s.stated(),
                s.error(),
                s.limit(),
                s.held());
        return s;
    }

    @Test
    void ofTheListedVehiclesNoMoreAreNoWorseThanStated() {
        long seed = SEED;
        for (String size : SIZES.split(",")) {
            for (World world : WORLDS) {
                Study s = study(world, Integer.parseInt(size), ++seed);
                assertThat(s.noWorse())
                        .as(world.name() + ", " + size)
                        .isLessThanOrEqualTo(s.stated() + SQRT_OF_CHANCE * s.error());
                assertThat(s.held())
                        .as(world.name() + ", " + size)
                        .isGreaterThanOrEqualTo(FalseFlags.LIMIT_CHANCE - SQRT_OF_CHANCE * Math.sqrt(0.09 / FLEETS));
            }
        }
    }

    /** An alarm that calls everything false would pass too: where the law is gamma the statement is not far too high. */
    @Test
    void theStatementIsOfUse() {
        Study s = study(WORLDS.get(1), 1000, 77);
        assertThat(s.stated()).isLessThan(2 * s.noWorse());
        assertThat(s.stated()).isLessThan(0.3 * s.listed());
    }

    /** The check can fail: measured against twice the peers' true mean, what is stated is too little. */
    @Test
    void aStatementAgainstTheWrongPeersIsFoundOut() {
        World gamma = WORLDS.get(1);
        Study s = study(new World("against twice the mean", gamma.rates(), 2 * gamma.mean()), 1000, 14);
        assertThat(s.noWorse()).isGreaterThan(s.stated() + SQRT_OF_CHANCE * s.error());
        assertThat(s.held()).isLessThan(0.5);
    }

    /** The study lists vehicles by its own count of warnings; the engine lists the same. */
    @Test
    void listedIsWhatTheEngineLists() {
        PeerRates peers = PeerRates.fit(new PeerCells().count("van", 0, 12, 5), SETTINGS);
        for (int warnings = 1; warnings <= 4; warnings++) {
            Rounds rounds = Rounds.of("van").clear("2024-01-10");
            for (int i = 0; i < warnings; i++) {
                String day = AS_OF.minusDays(300 - 60L * i).toString();
                rounds.warned(day).episode(Warning.SYSTEM_FAULT, day, day);
            }
            RecurringVehicle v = Recurrence.of(rounds.history(), peers, Histories.ordinaryModel(), SETTINGS, AS_OF)
                    .orElseThrow();
            assertThat(v.pattern() != RecurringVehicle.Pattern.NOT_RECURRING)
                    .isEqualTo(warnings > SETTINGS.minimumReturns());
            PeerCells.Key cell = new PeerCells().add(v).vehicles().firstKey();
            assertThat(cell.events()).isEqualTo(warnings);
            assertThat(cell.bins()).isEqualTo(33);
        }
    }

    /** Without a law around the declared shape, the sum of the chances; by hand for one vehicle: P(gamma(4, 2 + 1/m) <= m). */
    @Test
    void aFewVehiclesStandOnTheDeclaredShape() {
        PeerCells cells = new PeerCells().count("van", 3, 24, 1).count("van", 0, 24, 4);
        PeerRates peers = PeerRates.fit(cells, SETTINGS);
        PeerCells list = new PeerCells().count("van", 3, 24, 1);
        double mean = peers.law("van").meanPerYear();
        double chance = new GammaDistribution(4, 1 / mean + 24 * 30 / 365.25).cdf(mean);
        FalseFlags f = FalseFlags.ofAll(list, peers);
        assertThat(f.expected()).isCloseTo(chance, within(1e-12));
        assertThat(f.share()).isCloseTo(chance, within(1e-12));
        // Poisson: no event with a chance of exp(-chance), 0.9 or more up to a mean of 0.105.
        assertThat(f.upperLimit()).isEqualTo(Math.exp(-chance) >= 0.9 ? 0 : 1);
        assertThat(FalseFlags.ofAll(new PeerCells(), peers)).isEqualTo(new FalseFlags(PeerRates.ALL, 0, 0, 0));
        assertThat(FalseFlags.byClass(list, peers))
                .extracting(FalseFlags::cohort)
                .containsExactly("van", PeerRates.ALL);
    }
}
