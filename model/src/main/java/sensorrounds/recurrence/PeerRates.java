package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Rates of system warnings among peers: per vehicle class a gamma law of rates ({@link GammaPoissonFit}; Lawless
 * 1987, Canad. J. Statist. 15:209), around it the laws that the counts allow beside it ({@link RateLaws}), and for one vehicle its
 * posterior given its own count, over all these laws. A class with
 * few vehicles or few events stands on the law of all vehicles, and a fleet too small for that on a declared shape.
 */
public final class PeerRates implements Serializable {
    /** What the law of a cohort rests on. */
    public enum Status {
        FITTED,
        /** Vehicles differ no more than chance explains; the largest shape of the settings is used. */
        NO_SPREAD,
        /** Too few vehicles or events: mean as counted, shape as declared. */
        DECLARED_SHAPE,
        /** No event at all: the mean is what half an event would give. */
        NO_EVENTS
    }

    /**
     * Gamma law of rates of one cohort.
     *
     * @param cohort a vehicle class, or {@link PeerRates#ALL}
     * @param shape shape of the gamma law of rates
     * @param meanPerYear mean rate
     */
    public record Law(
            String cohort,
            Status status,
            double shape,
            double meanPerYear,
            long vehicles,
            long events,
            double exposureYears,
            String note)
            implements Serializable {}

    /**
     * A vehicle against its peers.
     *
     * @param perYear posterior mean of its rate
     * @param probabilityAbovePeers posterior probability that its rate is above its peers' mean
     * @param law the peers
     */
    public record Shrunk(double perYear, double probabilityAbovePeers, Law law) implements Serializable {}

    /** Name of the cohort of all vehicles. */
    public static final String ALL = "all vehicles";

    private final SortedMap<String, Law> laws;
    private final Law all;
    /** By cohort; none where the shape is declared. */
    private final SortedMap<String, RateLaws> around;

    private PeerRates(SortedMap<String, Law> laws, Law all, SortedMap<String, RateLaws> around) {
        this.laws = laws;
        this.all = all;
        this.around = around;
    }

    /** Fits every class that can stand by itself, and all vehicles together. */
    public static PeerRates fit(PeerCells cells, RecurrenceSettings settings) {
        SortedMap<String, Law> laws = new TreeMap<>();
        SortedMap<String, RateLaws> around = new TreeMap<>();
        for (String vehicleClass : cells.classes()) {
            Sample own = Sample.of(cells, vehicleClass);
            if (own.enough(settings)) {
                Law law = fitted(vehicleClass, own, settings);
                if (law != null) {
                    laws.put(vehicleClass, law);
                    around.put(vehicleClass, own.around(law));
                }
            }
        }
        Sample sample = Sample.of(cells, null);
        Law all = sample.enough(settings) ? fitted(ALL, sample, settings) : null;
        if (all != null) {
            around.put(ALL, sample.around(all));
        }
        return new PeerRates(laws, all == null ? declared(sample, settings) : all, around);
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

        RateLaws around(Law law) {
            return RateLaws.draw(cells, law.shape(), law.meanPerYear());
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
                new Law(
                        cohort,
                        Status.FITTED,
                        Math.min(settings.largestPeerShape(), fit.shape()),
                        fit.mean(),
                        s.vehicles(),
                        s.events(),
                        s.years(),
                        "");
            case NO_SPREAD ->
                new Law(
                        cohort,
                        Status.NO_SPREAD,
                        settings.largestPeerShape(),
                        fit.mean(),
                        s.vehicles(),
                        s.events(),
                        s.years(),
                        "vehicles differ no more than chance explains");
            case FAILED -> null;
        };
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
     * The vehicle's rate given its own count, over all laws that its peers' counts allow. Where the shape is declared it is gamma
     * with shape (k + events) and rate (k / m + years), k and m being the peers' shape and mean.
     */
    public Shrunk shrunk(String vehicleClass, int events, double years) {
        if (!(events >= 0 && years > 0)) {
            throw new IllegalArgumentException("needs events >= 0 and years > 0, not " + events + ", " + years);
        }
        Law law = law(vehicleClass);
        RateLaws allowed = around.get(law.cohort());
        if (allowed == null) {
            GammaDistribution posterior = posterior(law, events, years);
            return new Shrunk(posterior.mean(), posterior.above(law.meanPerYear()), law);
        }
        RateLaws.Judged judged = allowed.judge(events, years);
        return new Shrunk(judged.perYear(), 1 - judged.meanNoWorse(), law);
    }

    /** Chance that such a vehicle is no worse than its peers, under each law that the counts allow. */
    double[] noWorse(String vehicleClass, int events, double years) {
        Law law = law(vehicleClass);
        RateLaws allowed = around.get(law.cohort());
        if (allowed != null) {
            return allowed.judge(events, years).noWorse();
        }
        double[] alike = new double[RateLaws.LAWS];
        Arrays.fill(alike, posterior(law, events, years).cdf(law.meanPerYear()));
        return alike;
    }

    private static GammaDistribution posterior(Law law, int events, double years) {
        return new GammaDistribution(law.shape() + events, law.shape() / law.meanPerYear() + years);
    }
}
