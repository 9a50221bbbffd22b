package sensorrounds.analyst;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sensorrounds.analyst.SampledVehicle.SampledLife;
import sensorrounds.survival.Counted;
import sensorrounds.survival.Lifetime;

/**
 * Lives with their covariates as columns of numbers. Levels with fewer than {@link #LEAST} failures are merged into one;
 * if that is still too few its lives are left out; a factor is left out when one level remains, or when there are fewer
 * than {@link #LEAST} failures to a column (Vittinghoff and McCulloch 2007, Am. J. Epidemiol. 165:710, from memory).
 * Nothing is left out without a note.
 */
final class CovariateDesign {
    static final int LEAST = 5;
    static final String NOT_KNOWN = "not known";

    private final List<FactorLevel> levels = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final Map<Factor, Map<String, String>> names = new EnumMap<>(Factor.class);
    private double meanDoublings = Double.NaN;
    private List<Row> rows;

    /** @param doublings binary logarithm of the distance a year, NaN when not known */
    record Row(int vehicle, Lifetime life, Map<Factor, String> levels, double doublings) {
        String level(Factor factor) {
            return levels.get(factor);
        }

        boolean failed() {
            return life.failed();
        }
    }

    private CovariateDesign(List<Row> rows) {
        this.rows = rows;
    }

    static CovariateDesign of(List<SampledVehicle> vehicles) {
        List<Row> rows = new ArrayList<>();
        for (int v = 0; v < vehicles.size(); v++) {
            SampledVehicle vehicle = vehicles.get(v);
            for (SampledLife life : vehicle.lives()) {
                if (tells(life)) {
                    rows.add(row(v, vehicle, life));
                }
            }
        }
        CovariateDesign design = new CovariateDesign(rows);
        Factor.OF_LIVES.stream().filter(f -> !f.numeric()).forEach(design::take);
        for (Factor factor : Factor.OF_LIVES) {
            if (factor.numeric()) {
                design.takeDistance();
            } else {
                design.level(factor);
            }
        }
        return design.withinFailures();
    }

    /** Whether a life says anything: it was under observation for some time, or failed. */
    static boolean tells(SampledLife life) {
        return life.life().failed() || life.life().entry() < life.life().lower();
    }

    /** A life as it is told, no level merged. */
    static Row row(int number, SampledVehicle vehicle, SampledLife life) {
        Map<Factor, String> levels = new EnumMap<>(Factor.class);
        levels.put(Factor.VEHICLE_CLASS, named(vehicle.vehicleClass()));
        levels.put(Factor.PLACE, life.place().name());
        levels.put(Factor.PART, named(life.part()));
        levels.put(Factor.DEPOT, named(vehicle.depot()));
        levels.put(
                Factor.FITTED, life.fitted() == null ? NOT_KNOWN : life.fitted().words());
        boolean distance = vehicle.annualKm() != null && vehicle.annualKm() > 0;
        return new Row(number, life.life(), levels, distance ? Math.log(vehicle.annualKm()) / Math.log(2) : Double.NaN);
    }

    private static String named(String level) {
        return level == null ? NOT_KNOWN : level;
    }

    private void take(Factor factor) {
        Map<String, FactorLevel> counted = count(factor);
        Map<String, String> kept = new TreeMap<>();
        counted.keySet().forEach(level -> kept.put(level, level));
        names.put(factor, kept);
        List<FactorLevel> sparse =
                counted.values().stream().filter(l -> l.failures() < LEAST).toList();
        if (sparse.isEmpty() || sparse.size() == counted.size()) {
            return;
        }
        long failures = sparse.stream().mapToLong(FactorLevel::failures).sum();
        if (failures < LEAST) {
            Set<String> out = sparse.stream().map(FactorLevel::name).collect(Collectors.toSet());
            long lives = sparse.stream().mapToLong(FactorLevel::lives).sum();
            rows = rows.stream().filter(r -> !out.contains(r.level(factor))).toList();
            out.forEach(level -> kept.put(level, CovariateCode.LEFT_OUT));
            notes.add("left out: " + names(sparse) + ", of whose " + Counted.lives(lives) + " " + failures
                    + " failed; it takes " + LEAST);
        } else {
            Set<String> merged = sparse.stream().map(FactorLevel::name).collect(Collectors.toSet());
            String name = names(sparse);
            rows = rows.stream().map(r -> relabelled(r, factor, merged, name)).toList();
            merged.forEach(level -> kept.put(level, name));
        }
    }

    /** The levels that take part, counted once all lives that are left out are out. */
    private void level(Factor factor) {
        Map<String, FactorLevel> kept = count(factor);
        if (kept.size() < 2) {
            return;
        }
        FactorLevel reference = kept.values().stream()
                .max(Comparator.comparingLong(this::classes)
                        .thenComparingLong(FactorLevel::lives)
                        .thenComparing(FactorLevel::name, Comparator.reverseOrder()))
                .orElseThrow();
        kept.values()
                .forEach(l -> levels.add(new FactorLevel(
                        factor, l.name(), l.lives(), l.failures(), l.name().equals(reference.name()))));
    }

    /** Classes in which a level is met: a reference met in one alone could not be told apart from that class. */
    private long classes(FactorLevel level) {
        return rows.stream()
                .filter(r -> r.level(level.factor()).equals(level.name()))
                .map(r -> r.level(Factor.VEHICLE_CLASS))
                .distinct()
                .count();
    }

    private static Row relabelled(Row row, Factor factor, Set<String> merged, String name) {
        if (!merged.contains(row.level(factor))) {
            return row;
        }
        Map<Factor, String> levels = new EnumMap<>(row.levels());
        levels.put(factor, name);
        return new Row(row.vehicle(), row.life(), levels, row.doublings());
    }

    private Map<String, FactorLevel> count(Factor factor) {
        Map<String, long[]> counts = new TreeMap<>();
        for (Row row : rows) {
            long[] count = counts.computeIfAbsent(row.level(factor), k -> new long[2]);
            count[0]++;
            count[1] += row.failed() ? 1 : 0;
        }
        Map<String, FactorLevel> levelsByName = new TreeMap<>();
        counts.forEach((name, n) -> levelsByName.put(name, new FactorLevel(factor, name, n[0], n[1], false)));
        return levelsByName;
    }

    /** Distance takes part where it is known of nine lives in ten; the others count as of mean distance. */
    private void takeDistance() {
        double[] known = rows.stream()
                .mapToDouble(Row::doublings)
                .filter(Double::isFinite)
                .toArray();
        long different = Arrays.stream(known).distinct().count();
        if (known.length < 0.9 * rows.size() || different < 2) {
            if (known.length > 0) {
                notes.add("distance a year is known of " + known.length + " of " + Counted.lives(rows.size())
                        + ", too few to take part");
            }
            return;
        }
        double mean = Arrays.stream(known).average().orElse(0);
        meanDoublings = mean;
        rows = rows.stream()
                .map(r -> Double.isFinite(r.doublings()) ? r : new Row(r.vehicle(), r.life(), r.levels(), mean))
                .toList();
        levels.add(new FactorLevel(Factor.ANNUAL_DISTANCE, "twice the distance", rows.size(), failures(), false));
    }

    /** Leaves factors out, the least important first, until there are enough failures for the columns. */
    private CovariateDesign withinFailures() {
        for (int i = Factor.OF_LIVES.size() - 1;
                i >= 0 && failures() < (long) LEAST * (columns().size() + 2);
                i--) {
            Factor factor = Factor.OF_LIVES.get(i);
            if (levels.stream().anyMatch(l -> l.factor() == factor)) {
                drop(
                        factor,
                        Counted.failures(failures()) + (failures() == 1 ? " is" : " are")
                                + " too few for so many columns");
            }
        }
        return this;
    }

    /** Takes one level out of the comparison whose column others add up to: its effect is in theirs. */
    void alias(FactorLevel level) {
        levels.remove(level);
        notes.add(
                level.factor().words() + " " + level.name() + " cannot be told apart from levels of other factors that"
                        + " always come with it: its effect is in theirs");
        if (columns().stream().noneMatch(l -> l.factor() == level.factor())) {
            levels.removeIf(l -> l.factor() == level.factor());
        }
    }

    /** Takes a factor out, for a reason. */
    void drop(Factor factor, String why) {
        levels.removeIf(l -> l.factor() == factor);
        notes.add("the " + factor.words() + " is left out: " + why);
    }

    long failures() {
        return rows.stream().filter(Row::failed).count();
    }

    List<Row> rows() {
        return rows;
    }

    /** Every level that takes part, references among them. */
    List<FactorLevel> levels() {
        return List.copyOf(levels);
    }

    /** The levels that have a column of their own. */
    List<FactorLevel> columns() {
        return levels.stream().filter(l -> !l.reference()).toList();
    }

    /** How lives become the columns as they now are, for the lives of vehicles that were not drawn as well. */
    CovariateCode code() {
        return new CovariateCode(levels, names, meanDoublings);
    }

    /** The level with a column of this name. */
    Optional<FactorLevel> column(String name) {
        return columns().stream().filter(l -> l.column().equals(name)).findFirst();
    }

    List<String> notes() {
        return List.copyOf(notes);
    }

    /** Values of a column, one for each row. */
    double[] values(FactorLevel level) {
        Function<Row, Double> value = level.factor().numeric()
                ? Row::doublings
                : row -> row.level(level.factor()).equals(level.name()) ? 1.0 : 0.0;
        return rows.stream().mapToDouble(value::apply).toArray();
    }

    private static String names(List<FactorLevel> levels) {
        return levels.stream().map(FactorLevel::name).collect(Collectors.joining(", "));
    }
}
