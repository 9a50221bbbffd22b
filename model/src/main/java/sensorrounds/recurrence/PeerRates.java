package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Rates of system warnings among peers: per vehicle class a gamma law of rates ({@link GammaPoissonFit}), or a few such laws
 * where the data prefer groups ({@link GroupedRatesFit}), and for one vehicle its posterior given its own count (Lawless
 * 1987, Canad. J. Statist. 15:209; empirical Bayes). A class with
 * few vehicles or few events stands on the law of all vehicles, and a fleet too small for that on a declared shape.
 */
public final class PeerRates implements Serializable {
    /** What the law of a cohort rests on. */
    public enum Status {
        FITTED,
        /** Vehicles fall into a few groups of rates, which one gamma law does not describe. */
        FITTED_GROUPS,
        /** Vehicles differ no more than chance explains; the largest shape of the settings is used. */
        NO_SPREAD,
        /** Too few vehicles or events: mean as counted, shape as declared. */
        DECLARED_SHAPE,
        /** No event at all: the mean is what half an event would give. */
        NO_EVENTS
    }

    /**
     * Law of rates of one cohort.
     *
     * @param cohort a vehicle class, or {@link PeerRates#ALL}
     * @param shape shape of the gamma law of rates; of that within each group, where there are groups
     * @param meanPerYear mean rate
     * @param groups groups that vehicles fall into; one for a single gamma law
     */
    public record Law(
            String cohort,
            Status status,
            double shape,
            double meanPerYear,
            List<Group> groups,
            long vehicles,
            long events,
            double exposureYears,
            String note)
            implements Serializable {
        public Law {
            groups = List.copyOf(groups);
            if (groups.isEmpty()) {
                throw new IllegalArgumentException("a law of rates has one group at least");
            }
        }
    }

    /** A group's mean rate per year and the share of vehicles in it. */
    public record Group(double perYear, double share) implements Serializable {}

    /**
     * A vehicle against its peers.
     *
     * @param perYear posterior mean of its rate
     * @param probabilityAbovePeers posterior probability that its rate is above its peers' mean
     * @param law the peers
     */
    public record Shrunk(double perYear, double probabilityAbovePeers, Law law) implements Serializable {}

    private static final int MOST_GROUPS = 3;
    /** Difference of the criterion that counts as strong evidence: Kass and Raftery (1995), J. Am. Stat. Assoc. 90:773. */
    private static final double STRONGLY = 6;

    /** Name of the cohort of all vehicles. */
    public static final String ALL = "all vehicles";

    private final SortedMap<String, Law> laws;
    private final Law all;

    private PeerRates(SortedMap<String, Law> laws, Law all) {
        this.laws = laws;
        this.all = all;
    }

    /** Fits every class that can stand by itself, and all vehicles together. */
    public static PeerRates fit(PeerCells cells, RecurrenceSettings settings) {
        SortedMap<String, Law> laws = new TreeMap<>();
        for (String vehicleClass : cells.classes()) {
            Sample own = Sample.of(cells, vehicleClass);
            if (own.enough(settings)) {
                Law law = fitted(vehicleClass, own, settings);
                if (law != null) {
                    laws.put(vehicleClass, law);
                }
            }
        }
        Sample sample = Sample.of(cells, null);
        Law all = sample.enough(settings) ? fitted(ALL, sample, settings) : null;
        return new PeerRates(laws, all == null ? declared(sample, settings) : all);
    }

    /** Cells of one cohort with their sums. */
    private record Sample(List<GammaPoissonFit.Cell> cells, long vehicles, long events, double years) {
        static Sample of(PeerCells cells, String vehicleClass) {
            // Vehicles alike but for their class are one cell; the order of summing does not depend on the classes.
            SortedMap<PeerCells.Key, Long> alike = new TreeMap<>();
            cells.vehicles().forEach((k, n) -> {
                if (vehicleClass == null || vehicleClass.equals(k.vehicleClass())) {
                    alike.merge(new PeerCells.Key("", k.events(), k.bins()), n, Long::sum);
                }
            });
            List<GammaPoissonFit.Cell> list = new ArrayList<>();
            long vehicles = 0;
            long events = 0;
            long bins = 0;
            for (Map.Entry<PeerCells.Key, Long> e : alike.entrySet()) {
                list.add(
                        new GammaPoissonFit.Cell(e.getKey().events(), e.getKey().years(), e.getValue()));
                vehicles += e.getValue();
                events += e.getValue() * e.getKey().events();
                bins += e.getValue() * e.getKey().bins();
            }
            return new Sample(list, vehicles, events, bins * PeerCells.BIN_DAYS / SystemWarnings.DAYS_PER_YEAR);
        }

        boolean enough(RecurrenceSettings settings) {
            return vehicles >= settings.minimumPeers() && events >= settings.minimumPeerEvents();
        }
    }

    /** The fitted law, or null when the fit failed. */
    private static Law fitted(String cohort, Sample s, RecurrenceSettings settings) {
        GammaPoissonFit.Fit fit = GammaPoissonFit.fit(s.cells());
        return switch (fit.status()) {
            case CONVERGED ->
                grouped(cohort, s, fit, settings)
                        .orElseGet(() -> new Law(
                                cohort,
                                Status.FITTED,
                                Math.min(settings.largestPeerShape(), fit.shape()),
                                fit.mean(),
                                one(fit.mean()),
                                s.vehicles(),
                                s.events(),
                                s.years(),
                                ""));
            case NO_SPREAD ->
                new Law(
                        cohort,
                        Status.NO_SPREAD,
                        settings.largestPeerShape(),
                        fit.mean(),
                        one(fit.mean()),
                        s.vehicles(),
                        s.events(),
                        s.years(),
                        "vehicles differ no more than chance explains");
            case FAILED -> null;
        };
    }

    private static List<Group> one(double mean) {
        return List.of(new Group(mean, 1));
    }

    /**
     * Groups of rates, when the Bayesian information criterion (Schwarz 1978, Ann. Statist. 6:461) prefers them to one gamma
     * law by more than {@link #STRONGLY}, and each further group likewise.
     */
    private static Optional<Law> grouped(
            String cohort, Sample s, GammaPoissonFit.Fit gamma, RecurrenceSettings settings) {
        double perParameter = Math.log(s.vehicles());
        GroupedRatesFit.Fit fit = new GroupedRatesFit.Fit(
                gamma.shape(), List.of(new GroupedRatesFit.Group(gamma.mean(), 1)), gamma.logLikelihood(), Double.NaN);
        while (fit.groups().size() < MOST_GROUPS) {
            GroupedRatesFit.Fit more = GroupedRatesFit.withOneMore(s.cells(), fit, settings.largestPeerShape());
            double gain = 2 * (more.logLikelihood() - fit.logLikelihood()) - (more.size() - fit.size()) * perParameter;
            if (!(gain > STRONGLY)) {
                break;
            }
            fit = more;
        }
        if (fit.groups().size() == 1) {
            return Optional.empty();
        }
        return Optional.of(new Law(
                cohort,
                Status.FITTED_GROUPS,
                fit.shape(),
                fit.mean(),
                fit.groups().stream().map(g -> new Group(g.mean(), g.share())).toList(),
                s.vehicles(),
                s.events(),
                s.years(),
                "vehicles fall into " + fit.groups().size() + " groups of rates"));
    }

    private static Law declared(Sample s, RecurrenceSettings settings) {
        double years = Math.max(s.years(), SystemWarnings.LEAST_EXPOSURE_DAYS / SystemWarnings.DAYS_PER_YEAR);
        String note = String.format(
                Locale.ROOT,
                "%d vehicles with %d events in %.1f years are too few to tell how vehicles differ, or the fit failed; "
                        + "a shape of %s is assumed",
                s.vehicles(),
                s.events(),
                s.years(),
                settings.declaredPeerShape());
        return new Law(
                ALL,
                s.events() == 0 ? Status.NO_EVENTS : Status.DECLARED_SHAPE,
                settings.declaredPeerShape(),
                Math.max(s.events(), 0.5) / years,
                one(Math.max(s.events(), 0.5) / years),
                s.vehicles(),
                s.events(),
                s.years(),
                note);
    }

    /** The law a class stands on: its own, or that of all vehicles. */
    public Law law(String vehicleClass) {
        return vehicleClass == null ? all : laws.getOrDefault(vehicleClass, all);
    }

    /** All laws fitted, classes in order, all vehicles last. */
    public List<Law> laws() {
        List<Law> list = new ArrayList<>(laws.values());
        list.add(all);
        return List.copyOf(list);
    }

    /**
     * The vehicle's rate given its own count: in a group of mean m it is gamma with shape (k + events) and rate (k / m +
     * years), where k is the peers' shape; the groups weighted by their shares and how likely they make the count.
     */
    public Shrunk shrunk(String vehicleClass, int events, double years) {
        if (!(events >= 0 && years > 0)) {
            throw new IllegalArgumentException("needs events >= 0 and years > 0, not " + events + ", " + years);
        }
        Law law = law(vehicleClass);
        double k = law.shape();
        double[] logs = law.groups().stream()
                .mapToDouble(g -> Math.log(g.share())
                        + k * Math.log(k)
                        + (events == 0 ? 0 : events * Math.log(g.perYear()))
                        - (k + events) * Math.log(k + g.perYear() * years))
                .toArray();
        double most = Arrays.stream(logs).max().orElseThrow();
        double all = 0;
        double mean = 0;
        double above = 0;
        for (int g = 0; g < logs.length; g++) {
            double weight = Math.exp(logs[g] - most);
            GammaDistribution posterior =
                    new GammaDistribution(k + events, k / law.groups().get(g).perYear() + years);
            all += weight;
            mean += weight * posterior.mean();
            above += weight * posterior.above(law.meanPerYear());
        }
        return new Shrunk(mean / all, above / all, law);
    }
}
