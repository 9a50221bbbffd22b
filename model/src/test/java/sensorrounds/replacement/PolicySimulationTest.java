package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.WeibullLife;

/** The list against simple rules, over twelve years of a fleet whose true lives are known; figures in docs. */
class PolicySimulationTest {
    private static final int VANS = Integer.getInteger("policy.vans", 250);
    private static final int YEARS = Integer.getInteger("policy.years", 12);
    /** The costs of the default settings. */
    private static final Costs COSTS = new Costs("EUR", LocalDate.of(2026, 1, 1), 45, 15, 25, 40, 130, 120);

    @Test
    void theListCostsLessThanSimpleRules() {
        PolicyWorld world = new PolicyWorld(new WeibullLife(4.2, 3600, 0, 0, 0), COSTS, YEARS);
        Map<String, PolicyWorld.Bill> bills = new LinkedHashMap<>();
        bills.put("the list", world.play(VANS, world.list(ReplacementSettings.defaults())));
        bills.put("only on failure", world.play(VANS, PolicyWorld.onlyOnFailure()));
        for (int years = 4; years <= 9; years++) {
            bills.put("at a stop from " + years + " years", world.play(VANS, PolicyWorld.atAge(years * 365)));
        }
        bills.put("brought in at seven years", world.play(VANS, PolicyWorld.broughtInAtAge(7 * 365)));
        double list = bills.get("the list").money;
        assertThat(list).isLessThan(0.65 * bills.get("only on failure").money);
        assertThat(list).isLessThan(0.97 * bills.get("brought in at seven years").money);
        // Rules of an age at stops that happen anyway come close, when the age is chosen with the law known.
        assertThat(list).isLessThan(bills.get("at a stop from 5 years").money);
        assertThat(list).isLessThan(bills.get("at a stop from 8 years").money);
        assertThat(list).isLessThan(1.1 * bills.get("at a stop from 6 years").money);
    }
}
