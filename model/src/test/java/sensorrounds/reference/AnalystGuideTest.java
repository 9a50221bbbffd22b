package sensorrounds.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.causes.CauseHazardFit;
import sensorrounds.causes.CauseHazardFitter;
import sensorrounds.causes.CauseSample;
import sensorrounds.causes.EndedLife;
import sensorrounds.causes.FineGray;
import sensorrounds.causes.FineGrayFit;
import sensorrounds.causes.GrayTest;
import sensorrounds.causes.MaskedLife;
import sensorrounds.causes.MaskedSample;
import sensorrounds.cox.CoxFit;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.cox.ProportionalityCheck;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.ranktest.ComparisonResult;
import sensorrounds.ranktest.Group;
import sensorrounds.ranktest.LogRank;
import sensorrounds.ranktest.RankWeight;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RatioTest;
import sensorrounds.regression.RegressionFit;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.PiecewiseExponentialFit;
import sensorrounds.survival.PiecewiseExponentialFitter;

/** The examples of docs/analyst.md: each block of Java there stands here word for word, is compiled, and finds what was simulated. */
class AnalystGuideTest {
    record Life(String vehicle, String part, String cause, Lifetime ages) {}

    static List<Life> lives(Path sensorLives) throws IOException {
        List<String> lines = Files.readAllLines(sensorLives);
        List<String> columns = List.of(lines.get(0).split(","));
        List<Life> lives = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            String entry = cells[columns.indexOf("age_at_entry")];
            String failed = cells[columns.indexOf("age_first_known_failed")];
            if (!entry.isEmpty()) {
                Lifetime ages = new Lifetime(
                        Integer.parseInt(entry),
                        Integer.parseInt(cells[columns.indexOf("age_last_known_good")]),
                        failed.isEmpty() ? Lifetime.NEVER : Integer.parseInt(failed),
                        1);
                lives.add(new Life(
                        cells[columns.indexOf("vehicle_id")],
                        cells[columns.indexOf("part")],
                        cells[columns.indexOf("cause")],
                        ages));
            }
        }
        return lives;
    }

    static LifetimeSample sample(List<Life> lives) {
        return LifetimeSample.of(lives.stream().map(Life::ages).toList());
    }

    @TempDir
    private Path folder;

    /** Weibull lives of shape 2.5, those of the new part 1.4 times as long; a fifth of causes unknown. */
    private List<Life> simulated() throws IOException {
        Random random = new Random(20261125);
        List<String> lines = new ArrayList<>();
        lines.add("life_id,vehicle_id,part,cause,age_at_entry,age_last_known_good,age_first_known_failed");
        while (lines.size() <= 1200) {
            boolean newPart = random.nextBoolean();
            double age = (newPart ? 2800 : 2000) * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
            int entry = random.nextBoolean() ? 0 : random.nextInt(1500);
            int seen = entry + 100 * (int) ((age - entry) / 100);
            if (age > entry) {
                boolean failed = age < entry + 2000;
                String cause = random.nextInt(5) == 0 ? "UNKNOWN" : random.nextInt(4) == 0 ? "INGRESS" : "BATTERY";
                lines.add("L" + lines.size() + ",V" + lines.size() / 4 + (newPart ? ",P-2," : ",P-1,")
                        + (failed ? cause : "") + "," + entry + "," + (failed ? seen : entry + 2000) + ","
                        + (failed ? "" + (seen + 100) : ""));
            }
        }
        lines.add("L0,V0,P-1,,,,");
        return lives(Files.write(folder.resolve("sensor-lives.csv"), lines));
    }

    @Test
    void everyBlockOfTheGuideStandsHere() throws IOException {
        String here = plain(Files.readString(Path.of("src/test/java/sensorrounds/reference/AnalystGuideTest.java")));
        Matcher block =
                Pattern.compile("(?s)```java\n(.*?)```").matcher(Files.readString(Path.of("..", "docs", "analyst.md")));
        int blocks = 0;
        while (block.find()) {
            blocks++;
            assertThat(here.contains(plain(block.group(1))))
                    .as("block %s: %s", blocks, block.group(1))
                    .isTrue();
        }
        assertThat(blocks).isEqualTo(8);
    }

    private static String plain(String code) {
        return code.replaceAll("\\s+", "");
    }

    @Test
    void livesThatTakeNoPartAreLeftOut() throws IOException {
        assertThat(simulated()).hasSize(1200);
    }

    @Test
    void curves() throws IOException {
        List<Life> lives = simulated();

        KaplanMeierFit curve = KaplanMeier.withDefaults().fit(sample(lives).atMidpoints());
        double stillToCome = curve.meanResidualLife(1000, 2000);
        PiecewiseExponentialFit bands =
                PiecewiseExponentialFitter.withBands(730, 1460).fit(sample(lives));
        Estimate fiveYears = bands.survival(5 * 365.25);

        assertThat(stillToCome).isBetween(400.0, 1000.0);
        // Half exp(-(1826.25/2000)^2.5), half exp(-(1826.25/2800)^2.5).
        assertThat(fiveYears.value()).isBetween(0.53, 0.64);
    }

    @Test
    void ranks() throws IOException {
        List<Life> lives = simulated();

        List<Group> parts = lives.stream()
                .collect(Collectors.groupingBy(Life::part, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(part -> Group.of(part.getKey(), sample(part.getValue()).atMidpoints()))
                .toList();
        ComparisonResult early =
                LogRank.withDefaults().with(RankWeight.PETO_PETO).test(parts);
        double p = early.pValue();

        assertThat(p).isLessThan(1e-6);
    }

    @Test
    void regressions() throws IOException {
        List<Life> lives = simulated();

        CovariateLives columns = CovariateLives.of(
                        lives.stream().mapToDouble(l -> l.ages().entry()).toArray(),
                        lives.stream().mapToDouble(l -> l.ages().lower()).toArray(),
                        lives.stream()
                                .mapToDouble(l -> l.ages().failed() ? l.ages().upper() : Double.POSITIVE_INFINITY)
                                .toArray(),
                        lives.stream().mapToDouble(l -> 1).toArray())
                .withColumn(
                        "new part",
                        lives.stream()
                                .mapToDouble(l -> l.part().equals("P-2") ? 1 : 0)
                                .toArray());
        RegressionFit scale = LifeRegression.of(LifeFamily.WEIBULL).fit(columns);
        RegressionFit both =
                LifeRegression.of(LifeFamily.WEIBULL).withShapeOn("new part").fit(columns);
        RatioTest sameShape = both.against(scale);
        RegressionFit wider = LifeRegression.of(LifeFamily.GENERALISED_GAMMA).fit(columns);

        FitReport report = scale.report();
        String answer = scale.converged()
                ? "life factor "
                        + Math.exp(scale.coefficient(Coefficient.Part.LOG_SCALE, "new part")
                                .value())
                : report.status() + " " + report.column() + ": " + report.cause();

        assertThat(scale.coefficient(Coefficient.Part.LOG_SCALE, "new part").value())
                .isBetween(Math.log(1.25), Math.log(1.55));
        assertThat(answer).startsWith("life factor 1.");
        assertThat(sameShape.pValue()).as("the shapes are the same").isGreaterThan(0.001);
        assertThat(wider.converged()).as(wider.cause()).isTrue();
    }

    @Test
    void covariatesThatChangeWithAge() {
        double[] entry = {100, 900, 0, 0, 200, 700, 0};
        double[] exit = {900, 1100, 1300, 800, 700, 1500, 1600};
        boolean[] failed = {false, true, true, true, false, true, false};
        double[][] lowBattery = {{0}, {1}, {0}, {0}, {0}, {1}, {0}};
        int[] sensor = {0, 0, 1, 2, 3, 3, 4};
        CoxFit cox = CoxFitter.withDefaults()
                .fit(CoxSample.of(List.of("low battery"), entry, exit, failed, lowBattery)
                        .withClusters(sensor));
        Estimate ratio = cox.coefficients().get(0).robustHazardRatio();
        ProportionalityCheck.Result drift = ProportionalityCheck.withDefaults().of(cox);

        // By hand, r the ratio: failures at 800, 1100, 1300, 1500 with 4 + r, 2 + 2 r, 2 + r, 1 + r at risk, of r in
        // the second and last.
        double r = ratio.value();
        assertThat(2 - r / (4 + r) - 2 * r / (1 + r) - r / (2 + r)).isCloseTo(0, within(1e-9));
        assertThat(drift.columns()).hasSize(1);
    }

    @Test
    void hazardsOfCauses() throws IOException {
        List<Life> lives = simulated();

        Set<String> possible = Set.of("BATTERY", "STEM_OR_CORROSION", "TYRE_CHANGE_DAMAGE", "INGRESS");
        MaskedSample<String> masked = MaskedSample.of(
                List.copyOf(new TreeSet<>(possible)),
                lives.stream()
                        .map(l -> MaskedLife.of(l.ages(), l.cause().equals("UNKNOWN") ? possible : Set.of(l.cause())))
                        .toList());
        CauseHazardFit<String> hazards = CauseHazardFitter.withBands(1460).fit(masked);
        Estimate battery = hazards.incidence("BATTERY", 0, 5 * 365.25);

        assertThat(hazards.converged()).as(hazards.reason()).isTrue();
        // Three quarters of what fails within five years, which is .42.
        assertThat(battery.value()).isBetween(0.26, 0.38);
    }

    @Test
    void incidenceByPart() throws IOException {
        List<Life> lives = simulated();

        List<Life> seenFromNew =
                lives.stream().filter(l -> l.ages().entry() == 0).toList();
        Function<Life, EndedLife<String>> ended = l -> l.ages().failed()
                ? EndedLife.by(l.cause(), 0, (l.ages().lower() + l.ages().upper()) / 2.0)
                : EndedLife.censored(0, l.ages().lower());
        List<String> causes = seenFromNew.stream()
                .map(Life::cause)
                .filter(c -> !c.isEmpty())
                .distinct()
                .toList();
        List<CauseSample<String>> byPart = Stream.of("P-1", "P-2")
                .map(part -> CauseSample.of(
                        causes,
                        seenFromNew.stream()
                                .filter(l -> l.part().equals(part))
                                .map(ended)
                                .toList()))
                .toList();
        ChiSquareTest gray = GrayTest.of(byPart, "BATTERY");
        FineGrayFit fineGray = FineGray.of("BATTERY")
                .fit(
                        List.of("new part"),
                        seenFromNew.stream().map(ended).toList(),
                        seenFromNew.stream()
                                .map(l -> new double[] {l.part().equals("P-2") ? 1 : 0})
                                .toArray(double[][]::new));

        assertThat(gray.pValue()).isLessThan(1e-4);
        assertThat(fineGray.values()[0]).isNegative();
    }
}
