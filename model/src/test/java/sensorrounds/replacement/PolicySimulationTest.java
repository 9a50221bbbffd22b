package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.survival.WeibullLife;

/**
 * The list against simple rules over many years of a fleet whose true lives are known, under several costs; figures in docs,
 * from {@code -Dpolicy.vans=1000 -Dpolicy.print=true}.
 */
class PolicySimulationTest {
    private static final int VANS = Integer.getInteger("policy.vans", 60);
    private static final int YEARS = Integer.getInteger("policy.years", 30);
    private static final double SCALE = 3600;
    private static final WeibullLife WEAROUT = new WeibullLife(4.2, SCALE, 0, 0, 0);
    private static final WeibullLife CHANCE_DAMAGE = new WeibullLife(1, 2500, 0, 0, 0);
    private static final long SEED = Long.getLong("policy.seed", 31_415_926L);

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        // the default settings
        "usual costs, 4.2, 45, 130, 120, 180",
        "cheap breakdowns, 4.2, 45, 60, 20, 180",
        "hardly any stops, 4.2, 20, 130, 120, 14600"
    })
    void theListCostsNoMoreThanTheBestSimpleRule(
            String costs, double shape, double setUp, double callOut, double downtime, int gapDays) {
        compare(costs, List.of(new WeibullLife(shape, SCALE, 0, 0, 0)), setUp, callOut, downtime, gapDays);
    }

    /**
     * Every other vehicle has sensors that fail as often when young as when old, so that an early replacement brings next to
     * nothing: the rule by chance spends its pieces on them, and the rule by age cannot tell them from the others.
     */
    @Test
    void whereSensorsDifferTheListBeatsTheHighestChanceInTheLongRun() {
        List<WeibullLife> laws = List.of(WEAROUT, CHANCE_DAMAGE);
        if (Boolean.getBoolean("policy.print")) {
            compare("unlike sensors", laws, 45, 130, 120, 180);
        }
        PolicyWorld world = world(laws, 45, 130, 120, 180);
        PolicyWorld.Bill list = world.play(VANS, world.list(ReplacementSettings.defaults()));
        PolicyWorld.Bill likeliest = world.play(VANS, PolicyWorld.highestChance(aMonth(list)));
        double[] dearer = difference(likeliest, list);
        assertThat(dearer[0]).isGreaterThan(2 * dearer[1]);
    }

    /** For the docs: the same in more worlds, a minute or so. */
    @EnabledIfSystemProperty(named = "policy.print", matches = "true")
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "dear breakdowns, 4.2, 45, 250, 250, 180",
        "a stop every two years, 4.2, 45, 130, 120, 730",
        "mild wear, 2, 45, 130, 120, 180"
    })
    void moreWorlds(String costs, double shape, double setUp, double callOut, double downtime, int gapDays) {
        compare(costs, List.of(new WeibullLife(shape, SCALE, 0, 0, 0)), setUp, callOut, downtime, gapDays);
    }

    /** @param gapDays days between stops */
    private static void compare(
            String costs, List<WeibullLife> laws, double setUp, double callOut, double downtime, int gapDays) {
        PolicyWorld world = world(laws, setUp, callOut, downtime, gapDays);
        PolicyWorld.Bill list = world.play(VANS, world.list(ReplacementSettings.defaults()));
        Map<String, PolicyWorld.Bill> rules = new LinkedHashMap<>();
        rules.put("only on failure", world.play(VANS, PolicyWorld.onlyOnFailure()));
        rules.put("oldest first, as many", world.play(VANS, PolicyWorld.oldestFirst(aMonth(list))));
        rules.put("highest chance, as many", world.play(VANS, PolicyWorld.highestChance(aMonth(list))));
        for (int years = 4; years <= 8; years++) {
            rules.put("at a stop from " + years + " years", world.play(VANS, PolicyWorld.atAge(years * 365)));
        }
        for (int years = 5; years <= 8; years++) {
            rules.put("brought in at " + years + " years", world.play(VANS, PolicyWorld.broughtInAtAge(years * 365)));
        }
        if (Boolean.getBoolean("policy.print")) {
            System.out.println(costs);
            print("the list", list);
            rules.forEach((rule, bill) -> {
                print(rule, bill);
                double[] less = difference(list, bill);
                System.out.printf("list less %s: %+.2f ± %.2f%n", rule, less[0] / (4 * YEARS), less[1] / (4 * YEARS));
            });
        }
        rules.forEach((rule, bill) -> notDearer(rule, list, bill));
        assertThat(list.money).isLessThan(0.9 * rules.get("only on failure").money);
    }

    private static PolicyWorld world(
            List<WeibullLife> laws, double setUp, double callOut, double downtime, int gapDays) {
        return new PolicyWorld(
                laws,
                new Costs("EUR", LocalDate.of(2026, 1, 1), setUp, 15, 25, 40, callOut, downtime),
                YEARS,
                gapDays,
                SEED);
    }

    /** Sensors replaced early in a month. */
    private static double aMonth(PolicyWorld.Bill bill) {
        return bill.early / (YEARS * 365 / (double) PolicyWorld.REVIEW_DAYS);
    }

    /**
     * By the differences vehicle by vehicle, within three standard errors, which must be small enough to mean something; the
     * docs give the figures of a fleet large enough to need no such room.
     */
    private static void notDearer(String rule, PolicyWorld.Bill list, PolicyWorld.Bill bill) {
        double[] difference = difference(list, bill);
        double mean = difference[0];
        double error = difference[1];
        assertThat(3 * error).as("room against %s", rule).isLessThan(0.15 * bill.money / VANS);
        assertThat(mean).as("dearer than %s", rule).isLessThan(3 * error);
    }

    /** How much dearer a vehicle is under the first, and its standard error. */
    private static double[] difference(PolicyWorld.Bill a, PolicyWorld.Bill b) {
        double squares = 0;
        double mean = (a.money - b.money) / VANS;
        for (int v = 0; v < VANS; v++) {
            squares += Math.pow(a.byVan[v] - b.byVan[v] - mean, 2);
        }
        return new double[] {mean, Math.sqrt(squares) / VANS};
    }

    private static void print(String policy, PolicyWorld.Bill b) {
        System.out.printf(
                "| %s | %.2f | %d | %d | %d | %d | %d |%n",
                policy, b.money / (VANS * 4.0 * YEARS), b.pieces, b.early, b.breakdowns, b.ownStops, b.readings);
    }
}
