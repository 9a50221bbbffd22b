package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.reference.References.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.StepCurve;

/** Every reference case of competing causes at its stated tolerance; sources stand with the cases. */
class CausesReferenceTest {
    private static ReferenceCase load(String id) {
        return ReferenceCase.load("causes/competing-causes.json", id);
    }

    /** Causes by their number in the case; 0 is censored. */
    private static List<EndedLife<Integer>> lives(ReferenceCase reference, String column, String word) {
        double[] time = reference.data("time");
        double[] cause = reference.data("cause");
        String[] words = column.isEmpty() ? null : References.words(reference, column);
        List<EndedLife<Integer>> lives = new ArrayList<>();
        for (int i = 0; i < time.length; i++) {
            if (words == null || words[i].equals(word)) {
                lives.add(cause[i] == 0 ? EndedLife.censored(0, time[i]) : EndedLife.by((int) cause[i], 0, time[i]));
            }
        }
        return lives;
    }

    private static double[] at(StepCurve curve, double[] ages) {
        return Arrays.stream(ages).map(curve::at).toArray();
    }

    private static void checkIncidence(ReferenceCase reference, String under, CauseSample<Integer> sample) {
        Incidence<Integer> fit = AalenJohansen.withDefaults().fit(sample);
        double[] ages = reference.expected(under + "at");
        check(reference, under + "surv", at(fit.eventFree(), ages));
        check(reference, under + "se_surv", at(fit.eventFreeError(), ages));
        for (int cause : sample.causes()) {
            check(reference, under + "cif_" + cause, at(fit.of(cause), ages));
            check(reference, under + "se_cif_" + cause, at(fit.errorOf(cause), ages));
            StepCurve alone = KaplanMeier.withDefaults()
                    .fit(sample.failing(c -> c == cause))
                    .survival();
            double[] naive = Arrays.stream(ages).map(a -> 1 - alone.at(a)).toArray();
            check(reference, under + "naive_one_minus_km/cause_" + cause, naive);
            // The naive figure is no share of what ends by the cause: it is too high, and the case shows by how much.
            assertThat(naive[naive.length - 1])
                    .isGreaterThan(1.05 * fit.of(cause).at(ages[ages.length - 1]));
        }
    }

    @Test
    void timeFromInfectionToAidsOrSwitch() {
        ReferenceCase reference = load("cr-aidssi");
        CauseSample<Integer> sample = CauseSample.of(List.of(1, 2), lives(reference, "", ""));
        checkIncidence(reference, "", sample);
        Incidence<Integer> fit = AalenJohansen.withDefaults().fit(sample);
        Incidence.Step last = fit.steps().get(fit.steps().size() - 1);
        check(reference, "last_row/time", new double[] {last.age()});
        check(reference, "last_row/n_risk", new double[] {last.atRisk()});
        check(reference, "last_row/surv", new double[] {last.eventFree()});
        check(reference, "last_row/se_surv", new double[] {last.eventFreeError()});
        check(reference, "last_row/cif_1", new double[] {last.incidence()[0]});
        check(reference, "last_row/se_cif_1", new double[] {last.error()[0]});
        check(reference, "last_row/cif_2", new double[] {last.incidence()[1]});
        check(reference, "last_row/se_cif_2", new double[] {last.error()[1]});
    }

    @ParameterizedTest
    @ValueSource(strings = {"F", "M"})
    void malignancyOrDeathWithoutIt(String sex) {
        ReferenceCase reference = load("cr-mgus2");
        CauseSample<Integer> sample = CauseSample.of(List.of(1, 2), lives(reference, "sex", sex));
        checkIncidence(reference, sex + "/", sample);
        Incidence<Integer> fit = AalenJohansen.withDefaults().fit(sample);
        String times = sex + "/restricted_mean_time_months_240/";
        check(reference, times + "event_free", new double[] {fit.meanTimeFree(240)});
        check(reference, times + "pcm", new double[] {fit.meanTimeLost(1, 240)});
        check(reference, times + "death", new double[] {fit.meanTimeLost(2, 240)});
    }

    @Test
    void eightUnitsByHand() {
        ReferenceCase reference = load("cr-hand");
        Incidence<Integer> fit =
                AalenJohansen.withDefaults().fit(CauseSample.of(List.of(1, 2), lives(reference, "", "")));
        double[] ages = reference.expected("time");
        assertThat(fit.steps()).extracting(Incidence.Step::age).containsExactly(1.0, 2.0, 3.0, 5.0, 6.0);
        check(
                reference,
                "time",
                fit.steps().stream().mapToDouble(Incidence.Step::age).toArray());
        check(
                reference,
                "n_risk",
                fit.steps().stream().mapToDouble(Incidence.Step::atRisk).toArray());
        check(reference, "surv", at(fit.eventFree(), ages));
        check(reference, "se_surv", at(fit.eventFreeError(), ages));
        for (int cause : List.of(1, 2)) {
            check(reference, "cif_" + cause, at(fit.of(cause), ages));
            check(reference, "se_cif_" + cause, at(fit.errorOf(cause), ages));
        }
        // On paper: 1/8; 7/8 x 1/7; 3/4 x 1/5; 3/5 x 1/3; 2/5 x 1/2.
        assertThat(fit.of(1).at(6)).isCloseTo(19.0 / 40, within(1e-15));
        assertThat(fit.of(2).at(6)).isCloseTo(13.0 / 40, within(1e-15));
    }

    @Test
    void genotypeByGraysTestAndByRegressionOnIncidence() {
        ReferenceCase data = load("cr-aidssi");
        ReferenceCase reference = load("cr-aidssi-ccr5");
        List<EndedLife<Integer>> mutant = lives(data, "ccr5", "WM");
        List<EndedLife<Integer>> wild = lives(data, "ccr5", "WW");
        assertThat(mutant.size() + wild.size()).isEqualTo((int) reference.expected("n")[0]);
        List<CauseSample<Integer>> groups =
                List.of(CauseSample.of(List.of(1, 2), mutant), CauseSample.of(List.of(1, 2), wild));
        List<EndedLife<Integer>> all = new ArrayList<>(mutant);
        all.addAll(wild);
        double[][] x = new double[all.size()][1];
        for (int i = 0; i < mutant.size(); i++) {
            x[i][0] = 1;
        }
        Map<Integer, String> names = Map.of(1, "aids", 2, "si");
        for (int cause : List.of(1, 2)) {
            ChiSquareTest gray = GrayTest.of(groups, cause);
            check(reference, "gray statistic", gray.statistic(), reference.expected("gray_test/stat")[cause - 1]);
            check(reference, "gray p", gray.pValue(), reference.expected("gray_test/p")[cause - 1]);
            FineGrayFit fit = FineGray.of(cause).fit(List.of("WM"), all, x);
            assertThat(fit.converged()).as(fit.report().cause()).isTrue();
            check(reference, "fine_gray/" + names.get(cause) + "/coef", fit.values());
            check(reference, "fine_gray/" + names.get(cause) + "/se", new double[] {fit.standardError(0)});
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"F", "M"})
    void illnessAndDeathAsStatesWithJackknifeErrors(String sex) {
        ReferenceCase reference = load("ms-mgus2");
        StateOccupation<String> fit = StateOccupation.of(List.of("s0", "pcm", "death"), stays(reference, sex));
        double[] ages = reference.expected(sex + "/at");
        double[] times = reference.expected(sex + "/restricted_mean_time_240");
        int k = 0;
        for (String state : List.of("s0", "pcm", "death")) {
            check(reference, sex + "/pstate/" + state, at(fit.of(state), ages));
            check(reference, sex + "/se_ij/" + state, at(fit.errorOf(state), ages));
            check(reference, "mean time in " + state, fit.meanTime(state, 240), times[k++]);
        }
    }

    private static List<Stay<String>> stays(ReferenceCase reference, String sex) {
        String[] sexes = References.words(reference, "sex");
        double[] id = reference.data("id");
        double[] start = reference.data("tstart");
        double[] stop = reference.data("tstop");
        double[] event = reference.data("event");
        Map<Long, String> current = new HashMap<>();
        List<Stay<String>> stays = new ArrayList<>();
        for (int i = 0; i < id.length; i++) {
            if (sexes[i].equals(sex)) {
                long unit = (long) id[i];
                String next = event[i] == 0 ? null : event[i] == 1 ? "pcm" : "death";
                stays.add(new Stay<>(unit, current.getOrDefault(unit, "s0"), start[i], stop[i], next));
                if (next != null) {
                    current.put(unit, next);
                }
            }
        }
        return stays;
    }
}
