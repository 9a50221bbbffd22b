package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;

/** Reads reference cases from test resources: data by columns, expected values, tolerance, and where they come from. */
final class ReferenceCases {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private ReferenceCases() {}

    /** One case. */
    record Case(String id, JsonNode json) {
        JsonNode data() {
            return json.get("data");
        }

        JsonNode expected() {
            return json.get("expected");
        }

        double[] column(String name, double whenNull) {
            return StreamSupport.stream(data().get(name).spliterator(), false)
                    .mapToDouble(value -> value.isNull() ? whenNull : value.doubleValue())
                    .toArray();
        }

        boolean has(String column) {
            return data().has(column);
        }

        /** Rows with this text in the column; all rows for an empty column name. */
        int[] rows(String column, String text) {
            int n = data().elements().next().size();
            return IntStream.range(0, n)
                    .filter(i -> column.isEmpty()
                            || data().get(column).get(i).asText().equals(text))
                    .toArray();
        }

        /** A match at the case's tolerance |a - b| <= abs + rel |b|; a null expects an undefined value. */
        void check(String quantity, double actual, JsonNode expected) {
            JsonNode tolerance = json.get("tolerance");
            double rel = tolerance.get("rel").doubleValue();
            String key = quantity.startsWith("se") ? "se" : quantity.startsWith("loglik") ? "loglik" : "";
            if (tolerance.has("overrides") && tolerance.get("overrides").has(key)) {
                rel = tolerance.get("overrides").get(key).get("rel").doubleValue();
            }
            if (expected.isNull()) {
                assertThat(actual).as("%s: %s", id, quantity).isNaN();
            } else {
                double value = expected.doubleValue();
                double slack = tolerance.path("abs").doubleValue() + rel * Math.abs(value);
                assertThat(Math.abs(actual - value))
                        .as("%s: %s is %s, reference %s", id, quantity, actual, value)
                        .isLessThanOrEqualTo(slack);
            }
        }

        @Override
        public String toString() {
            return id;
        }
    }

    static List<Case> of(String file) {
        try (InputStream stream = ReferenceCases.class.getResourceAsStream("/reference/survival/" + file)) {
            return StreamSupport.stream(MAPPER.readTree(stream).get("cases").spliterator(), false)
                    .map(json -> new Case(json.get("id").asText(), json))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("reference file " + file, e);
        }
    }

    /** Right-censored data: time, status 1 = failed, optional weights. */
    static LifetimeSample rightCensored(double[] entry, double[] time, double[] status, double[] weight) {
        double[] upper = time.clone();
        for (int i = 0; i < upper.length; i++) {
            upper[i] = status[i] == 1 ? time[i] : Double.POSITIVE_INFINITY;
        }
        return LifetimeSample.of(entry, time, upper, weight);
    }

    static double[] pick(double[] column, int[] rows) {
        return IntStream.of(rows).mapToDouble(i -> column[i]).toArray();
    }

    static double[] filled(int n, double value) {
        return IntStream.range(0, n).mapToDouble(i -> value).toArray();
    }
}
