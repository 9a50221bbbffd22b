package sensorrounds.markov;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.reference.ReferenceCase;

/** The panel data and expected values of {@code reference/markov}; each case there names its source. */
final class PanelReferences {
    private PanelReferences() {}

    static JsonNode expected(String id) {
        return ReferenceCase.load("markov/panel-states.json", id).node().get("expected");
    }

    static double[][] matrix(JsonNode rows) {
        double[][] m = new double[rows.size()][];
        for (int r = 0; r < m.length; r++) {
            m[r] = ReferenceCase.numbers(rows.get(r));
        }
        return m;
    }

    /** Subjects of a file with columns id, time, state and more; states there count from 1. */
    static Map<String, List<double[]>> rows(String file) {
        Map<String, List<double[]>> subjects = new LinkedHashMap<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                PanelReferences.class.getResourceAsStream("/reference/markov/" + file), StandardCharsets.UTF_8))) {
            in.readLine();
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String[] cells = line.split(",");
                double[] row = new double[cells.length - 1];
                for (int i = 0; i < row.length; i++) {
                    row[i] = Double.parseDouble(cells[i + 1]);
                }
                subjects.computeIfAbsent(cells[0], k -> new ArrayList<>()).add(row);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return subjects;
    }

    /** How the cardiac allograft data are read. */
    enum Cav {
        DEATH_EXACT,
        PANEL_ONLY,
        FIRST_KNOWN
    }

    /**
     * 622 heart transplant patients, Sharples et al. (2003) Transplantation 76:679; state 3 is death.
     *
     * @param sexMean mean of the covariate to subtract; NaN for none
     */
    static List<Path> cav(Cav how, double sexMean) {
        List<Path> paths = new ArrayList<>();
        rows("msm-cav-4state.csv").forEach((id, rows) -> {
            List<Sighting> seen = new ArrayList<>();
            for (double[] row : rows) {
                int state = (int) row[1] - 1;
                Sighting.Kind kind = state == 3 && how != Cav.PANEL_ONLY
                        ? Sighting.Kind.EXACT_ENTRY
                        : seen.isEmpty() && how == Cav.FIRST_KNOWN ? Sighting.Kind.CERTAIN : Sighting.Kind.SNAPSHOT;
                List<Double> z = Double.isNaN(sexMean) ? List.of() : List.of(row[2] - sexMean);
                seen.add(new Sighting(row[0], state, kind, z));
            }
            paths.add(new Path(id, seen));
        });
        return paths;
    }

    /** |a - b| <= rel |b| + abs. */
    static void same(String what, double actual, double expected, double rel, double abs) {
        assertThat(Math.abs(actual - expected))
                .as("%s: %s, expected %s", what, actual, expected)
                .isLessThanOrEqualTo(abs + rel * Math.abs(expected));
    }
}
