package sensorrounds.analyst;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.analyst.CovariateDesign.Row;
import sensorrounds.analyst.SampledVehicle.SampledLife;
import sensorrounds.survival.Lifetime;

/**
 * How lives become the columns of a regression on covariates: decided on a draw of vehicles ({@link CovariateDesign}), to be
 * asked of any vehicle. Immutable.
 */
public final class CovariateCode implements Serializable {
    /** Stands for a level whose lives take no part. */
    static final String LEFT_OUT = "\u0000";

    private static final long serialVersionUID = 1;

    private final List<FactorLevel> levels;
    private final Map<Factor, Map<String, String>> names = new EnumMap<>(Factor.class);
    private final double meanDoublings;

    /**
     * A life of known covariates.
     *
     * @param covariates in the order of {@link CovariateCode#names()}; not to be changed afterwards
     * @param levels the levels it is at, by their place among those that are compared
     */
    public record CodedLife(Lifetime life, double[] covariates, List<Integer> levels) {
        /** First age known failed; positive infinity when no failure was seen. */
        public double upper() {
            return life.failed() ? life.upper() : Double.POSITIVE_INFINITY;
        }
    }

    /**
     * @param levels that take part, references among them
     * @param names what each level of the draw is called once sparse ones are merged, {@link #LEFT_OUT} where its lives take no part
     * @param meanDoublings binary logarithm of the distance where it is not known
     */
    CovariateCode(List<FactorLevel> levels, Map<Factor, Map<String, String>> names, double meanDoublings) {
        this.levels = List.copyOf(levels);
        names.forEach((factor, merged) -> this.names.put(factor, new TreeMap<>(merged)));
        this.meanDoublings = meanDoublings;
    }

    /** Names of the columns. */
    public List<String> names() {
        return levels.stream()
                .filter(l -> !l.reference())
                .map(FactorLevel::column)
                .toList();
    }

    /** Number of levels that are compared, references among them. */
    int levels() {
        return levels.size();
    }

    /** Place of a level among those that are compared; -1 when it is not among them. */
    int place(Factor factor, String level) {
        for (int i = 0; i < levels.size(); i++) {
            if (levels.get(i).factor() == factor && levels.get(i).name().equals(level)) {
                return i;
            }
        }
        return -1;
    }

    /** The lives of a vehicle that say anything and are at levels that the draw holds. */
    public List<CodedLife> of(SampledVehicle vehicle) {
        List<CodedLife> coded = new ArrayList<>();
        for (SampledLife life : vehicle.lives()) {
            if (CovariateDesign.tells(life)) {
                Row row = CovariateDesign.row(0, vehicle, life);
                if (takesPart(row)) {
                    coded.add(coded(row));
                }
            }
        }
        return coded;
    }

    private boolean takesPart(Row row) {
        return names.entrySet().stream().allMatch(e -> {
            String name = e.getValue().get(row.level(e.getKey()));
            return name == null ? levels.stream().noneMatch(l -> l.factor() == e.getKey()) : !name.equals(LEFT_OUT);
        });
    }

    private CodedLife coded(Row row) {
        List<Double> covariates = new ArrayList<>();
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            FactorLevel level = levels.get(i);
            if (level.factor().numeric()) {
                at.add(i);
                covariates.add(Double.isFinite(row.doublings()) ? row.doublings() : meanDoublings);
            } else {
                boolean here = level.name().equals(names.get(level.factor()).get(row.level(level.factor())));
                if (here) {
                    at.add(i);
                }
                if (!level.reference()) {
                    covariates.add(here ? 1.0 : 0.0);
                }
            }
        }
        return new CodedLife(
                row.life(), covariates.stream().mapToDouble(Double::doubleValue).toArray(), List.copyOf(at));
    }
}
