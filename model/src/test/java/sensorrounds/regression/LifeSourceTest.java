package sensorrounds.regression;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lives in parts give the fit of lives in one array, to 1e-10 relative, whatever the parts. */
class LifeSourceTest {
    private static final CovariateLives ALL = SimulatedFleet.of(23, 20_000);

    /** Lives on several machines, as it were: only states travel, and those through serialisation. */
    private record Parts(List<CovariateLives> parts) implements LifeSource {
        @Override
        public List<String> names() {
            return parts.get(0).names();
        }

        @Override
        public LifeSummary summary() {
            LifeSummary total = LifeSummary.empty(names().size());
            parts.forEach(part -> total.add(travelled(part.summary())));
            return total;
        }

        @Override
        public LikelihoodSums sums(Design design, double parameter, double[] point) {
            LikelihoodSums total = new LikelihoodSums(design.slopes());
            parts.forEach(part -> total.add(travelled(part.sums(travelled(design), parameter, point))));
            return total;
        }

        @Override
        public boolean clustered() {
            return true;
        }

        @Override
        public ClusterSteps clusterSteps(Design design, double[] point, double[][] information) {
            ClusterSteps total = new ClusterSteps(information);
            parts.forEach(part -> total.add(travelled(part.clusterSteps(travelled(design), point, information))));
            return total;
        }
    }

    @SuppressWarnings("unchecked")
    private static <T> T travelled(T state) {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            new ObjectOutputStream(bytes).writeObject(state);
            return (T) new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject();
        } catch (IOException | ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }

    /** Clusters of four stay together; one part is empty. */
    private static LifeSource cut(long seed, int parts) {
        Random random = new Random(seed);
        List<List<Integer>> rows = new ArrayList<>();
        IntStream.range(0, parts + 1).forEach(i -> rows.add(new ArrayList<>()));
        for (int vehicle = 0; vehicle < ALL.size() / 4; vehicle++) {
            List<Integer> part = rows.get(random.nextInt(parts));
            IntStream.range(4 * vehicle, 4 * vehicle + 4).forEach(part::add);
        }
        rows.forEach(part -> Collections.shuffle(part, random));
        return new Parts(rows.stream()
                .map(part -> ALL.rows(part.stream().mapToInt(i -> i).toArray()))
                .toList());
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 13, 200})
    void anyPartsGiveTheSameFit(int parts) {
        for (LifeRegression.Errors errors : LifeRegression.Errors.values()) {
            LifeRegression regression =
                    LifeRegression.of(LifeFamily.WEIBULL).withShapeOn("partB").with(errors);
            RegressionFit whole = regression.fit(ALL);
            RegressionFit cut = regression.fit(cut(parts, parts));
            same(cut.logLikelihood(), whole.logLikelihood());
            for (int i = 0; i < whole.coefficients().size(); i++) {
                same(
                        cut.coefficients().get(i).value(),
                        whole.coefficients().get(i).value());
                same(
                        cut.coefficients().get(i).error(),
                        whole.coefficients().get(i).error());
            }
        }
    }

    private static void same(double actual, double expected) {
        assertThat(Math.abs(actual - expected)).isLessThanOrEqualTo(1e-10 * Math.abs(expected));
    }

    @Test
    void threadsChangeNothingAtAll() {
        LifeRegression regression = LifeRegression.of(LifeFamily.WEIBULL);
        RegressionFit one = regression.fit(ALL);
        RegressionFit many = regression.fit(ALL.with(CovariateLives.Threads.COMMON_POOL));
        assertThat(many.coefficients()).isEqualTo(one.coefficients());
        assertThat(many.logLikelihood()).isEqualTo(one.logLikelihood());
    }

    /** Beginning from a part of the lives ends where a flat start does. */
    @Test
    void theStartDoesNotShow() {
        CovariateLives many = SimulatedFleet.of(4, 120_000);
        assertThat(many.part()).isPresent();
        RegressionFit quick = LifeRegression.of(LifeFamily.WEIBULL).fit(many);
        RegressionFit plain = LifeRegression.of(LifeFamily.WEIBULL).fit(new Parts(List.of(many)));
        assertThat(quick.iterations()).isLessThan(plain.iterations());
        for (int i = 0; i < plain.coefficients().size(); i++) {
            same(
                    quick.coefficients().get(i).value(),
                    plain.coefficients().get(i).value());
        }
    }
}
