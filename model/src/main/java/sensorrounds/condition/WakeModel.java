package sensorrounds.condition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.history.LifeReading;
import sensorrounds.visit.Mount;

/**
 * Chance that one try wakes a sound sensor, by reader, technician, inner dual wheel and cold. Tries until the answer are geometric
 * with that chance; readers' chances follow a beta law whose parameters maximise the marginal likelihood
 * ({@link BetaSpread}), and each reader's own is its posterior mean, shrunk to the average the more the fewer its tries.
 * Inner wheels and cold multiply the odds by one ratio each over all readers ({@link PooledOdds}), shrunk to 1; so does each
 * technician who can be told apart from the readers ({@link TechnicianEffects}).
 *
 * <p>Only the first {@code triesCounted} tries of a read count, so the few weak sensors among the many sound ones cannot
 * pull a reader down by needing ever more tries. What bias is left has a known sign and size: with a share w of reads on
 * weak sensors that answer one try with chance q instead of p, the estimate lies less than w (p - q) triesCounted under
 * p, which makes flags for slow waking rarer, not more frequent.
 */
public final class WakeModel implements Serializable {
    /** What the fit rests on. */
    public enum Status {
        /** Spread between readers estimated. */
        FITTED,
        /** Readers differ no more than chance explains; they are held together as closely as the settings allow. */
        NO_SPREAD,
        /** Too few readers or tries to estimate the spread: the declared one is used. */
        DECLARED_SPREAD,
        /** Not one read with a count of tries: no chance is known. */
        NO_READS
    }

    /** Readers with tries from which a spread between them is estimated. */
    private static final int LEAST_READERS = 5;
    /** Even readers that seem alike are not taken as more alike than a thousand tries can show. */
    private static final double MOST_PRIOR_TRIES = 1000;

    private final Status status;
    private final String note;
    private final BetaDistribution prior;
    private final SortedMap<String, BetaDistribution> readers;
    private final double innerLogOdds;
    private final double coldLogOdds;
    private final TechnicianEffects technicians;
    /** Pairs of a reader and a technician with an effect. */
    private final List<Hand> pairs;

    private final List<ReaderQuality> qualities;
    private final ConditionSettings settings;

    /**
     * Who read with what.
     *
     * @param readerId empty for no known reader
     * @param technicianId empty for no known technician
     */
    record Hand(String readerId, String technicianId) implements Serializable {}

    private WakeModel(
            Status status,
            String note,
            BetaDistribution prior,
            SortedMap<String, BetaDistribution> readers,
            double innerLogOdds,
            double coldLogOdds,
            TechnicianEffects technicians,
            List<Hand> pairs,
            List<ReaderQuality> qualities,
            ConditionSettings settings) {
        this.status = status;
        this.note = note;
        this.prior = prior;
        this.readers = readers;
        this.innerLogOdds = innerLogOdds;
        this.coldLogOdds = coldLogOdds;
        this.technicians = technicians;
        this.pairs = pairs;
        this.qualities = List.copyOf(qualities);
        this.settings = settings;
    }

    /** Fits the model; with too few reads it says so in its status and note. */
    public static WakeModel fit(WakeCells cells, ConditionSettings settings) {
        if (Double.compare(cells.coldCelsius(), settings.coldCelsius()) != 0) {
            throw new IllegalArgumentException("cells were counted with cold under " + cells.coldCelsius()
                    + " °C, the settings say " + settings.coldCelsius() + " °C; count them again with the settings");
        }
        if (cells.keys().isEmpty()) {
            String none = "no read with a count of tries; no sensor is called slow to wake and no reader is judged";
            return new WakeModel(
                    Status.NO_READS, none, null, new TreeMap<>(), 0, 0, null, List.of(), List.of(), settings);
        }
        double inner = effect(cells, settings, true);
        double cold = effect(cells, settings, false);
        Prior prior = prior(cells, settings);
        CrossedTries crossed = new CrossedTries(cells, settings);
        TechnicianEffects technicians = TechnicianEffects.fit(crossed, cells, inner, cold, prior.law(), settings);
        SortedMap<String, BetaDistribution> readers = new TreeMap<>();
        Qualities qualities =
                new Qualities(cells, crossed, technicians, prior.law().mean(), settings);
        for (String reader : cells.readers()) {
            BetaDistribution posterior = ReaderPosterior.of(
                    prior.law(),
                    cells.keysOf(reader).stream()
                            .map(k -> new ReaderPosterior.ShiftedTries(
                                    (k.inner() ? inner : 0) + (k.cold() ? cold : 0) + technicians.of(k.technicianId()),
                                    cells.tries(k, settings.triesCounted())))
                            .toList());
            readers.put(reader, posterior);
            qualities.addReader(reader, posterior);
        }
        qualities.addTechnicians();
        List<Hand> pairs = cells.keys().stream()
                .filter(k -> technicians.effects().containsKey(k.technicianId()))
                .map(k -> new Hand(k.readerId(), k.technicianId()))
                .distinct()
                .toList();
        return new WakeModel(
                prior.status(),
                (prior.note()
                        + (prior.note().isEmpty() || technicians.note().isEmpty() ? "" : "; ")
                        + technicians.note()),
                prior.law(),
                readers,
                inner,
                cold,
                technicians,
                pairs,
                qualities.lines(),
                settings);
    }

    /** The average law of readers and what it rests on. */
    private record Prior(BetaDistribution law, Status status, String note) {}

    /** Shrunk log odds ratio of inner against other wheels, or of cold against other weather, within readers and technicians. */
    private static double effect(WakeCells cells, ConditionSettings settings, boolean ofInner) {
        List<PooledOdds.Stratum> strata = new ArrayList<>();
        Set<WakeCells.Key> done = new HashSet<>();
        for (WakeCells.Key key : cells.keys()) {
            boolean held = ofInner ? key.cold() : key.inner();
            WakeCells.Key one = ofInner ? key.at(true, held) : key.at(held, true);
            WakeCells.Key other = ofInner ? key.at(false, held) : key.at(held, false);
            if (done.add(one)) {
                WakeCells.Tries with = cells.tries(one, settings.triesCounted());
                WakeCells.Tries without = cells.tries(other, settings.triesCounted());
                strata.add(new PooledOdds.Stratum(
                        with.successes(), with.failures(), without.successes(), without.failures()));
            }
        }
        return PooledOdds.of(strata).shrunk(settings.effectDeviation());
    }

    /**
     * The law of readers' chances on ordinary wheels in ordinary weather; on all wheels where next to no read was
     * ordinary.
     */
    private static Prior prior(WakeCells cells, ConditionSettings settings) {
        List<WakeCells.Tries> ordinary = perReader(cells, settings, true);
        double total = ordinary.stream().mapToDouble(WakeCells.Tries::total).sum();
        if (total < settings.priorTries()) {
            ordinary = perReader(cells, settings, false);
            total = ordinary.stream().mapToDouble(WakeCells.Tries::total).sum();
        }
        double woke = ordinary.stream().mapToDouble(WakeCells.Tries::successes).sum();
        double mean = (woke + settings.priorChance() * settings.priorTries()) / (total + settings.priorTries());
        Prior declared = new Prior(
                law(mean, settings.readerPriorTries()),
                Status.DECLARED_SPREAD,
                String.format(
                        Locale.ROOT,
                        "%d readers with %.0f tries on ordinary wheels are too few to tell how readers differ; "
                                + "the average is taken as worth %.0f tries of each",
                        ordinary.size(),
                        total,
                        settings.readerPriorTries()));
        long enough = ordinary.stream()
                .filter(t -> t.total() >= settings.minimumReaderReads())
                .count();
        if (enough < LEAST_READERS) {
            return declared;
        }
        BetaSpread.Fit fit = BetaSpread.fit(ordinary.stream()
                .map(t -> new BetaSpread.Group(t.successes(), t.failures(), 1))
                .toList());
        return switch (fit.status()) {
            case NOT_CONVERGED ->
                new Prior(
                        declared.law(),
                        Status.DECLARED_SPREAD,
                        "the spread between readers could not be fitted (" + fit.iterations()
                                + " iterations); the declared one is used");
            case NO_SPREAD ->
                new Prior(law(mean, MOST_PRIOR_TRIES), Status.NO_SPREAD, "readers differ no more than chance explains");
            case CONVERGED -> {
                double size =
                        Math.min(MOST_PRIOR_TRIES, Math.max(settings.readerPriorTries(), fit.alpha() + fit.beta()));
                yield new Prior(law(fit.alpha() / (fit.alpha() + fit.beta()), size), Status.FITTED, "");
            }
        };
    }

    private static BetaDistribution law(double mean, double tries) {
        return new BetaDistribution(mean * tries, (1 - mean) * tries);
    }

    private static List<WakeCells.Tries> perReader(WakeCells cells, ConditionSettings settings, boolean ordinaryOnly) {
        List<WakeCells.Tries> all = new ArrayList<>();
        for (String reader : cells.readers()) {
            WakeCells.Tries sum = cells.keysOf(reader).stream()
                    .filter(k -> !ordinaryOnly || !k.inner() && !k.cold())
                    .map(k -> cells.tries(k, settings.triesCounted()))
                    .reduce(new WakeCells.Tries(0, 0), WakeCells.Tries::plus);
            if (sum.total() > 0) {
                all.add(sum);
            }
        }
        return all;
    }

    public Status status() {
        return status;
    }

    /** What to know about the fit, in a sentence; empty when nothing. */
    public String note() {
        return note;
    }

    /** Chance over all readers on an ordinary wheel in ordinary weather; NaN when no chance is known. */
    public double overallChance() {
        return prior == null ? Double.NaN : prior.mean();
    }

    /** Tries the average of all readers is worth against one reader's own; NaN when no chance is known. */
    public double priorTries() {
        return prior == null ? Double.NaN : prior.alpha() + prior.beta();
    }

    /** Ratio of the odds on an inner dual wheel to those on another wheel. */
    public double innerOddsRatio() {
        return Math.exp(innerLogOdds);
    }

    /** Ratio of the odds in the cold to those in other weather. */
    public double coldOddsRatio() {
        return Math.exp(coldLogOdds);
    }

    /** Standard deviation over technicians of the log odds they add to their readers'; NaN when none is told apart. */
    public double technicianDeviation() {
        return technicians == null ? Double.NaN : technicians.deviation();
    }

    /**
     * Chance that one try wakes a sound sensor, the technician unknown.
     *
     * @param readerId null or never seen: the average reader
     * @return within the limits of the settings; NaN when no chance is known
     */
    public double chance(String readerId, Mount mount, boolean cold) {
        return chanceOf(new Hand(readerId == null ? "" : readerId, ""), mount, cold);
    }

    double chanceOf(Hand hand, Mount mount, boolean cold) {
        if (prior == null) {
            return Double.NaN;
        }
        BetaDistribution reader = readers.getOrDefault(hand.readerId(), prior);
        double logOdds = Odds.log(reader.mean())
                + technicians.of(hand.technicianId())
                + (mount == Mount.INNER ? innerLogOdds : 0)
                + (cold ? coldLogOdds : 0);
        return Math.min(settings.mostChance(), Math.max(settings.leastChance(), Odds.chance(logOdds)));
    }

    /** The chance at one reading, with its reader, technician, place and weather. */
    public double chance(LifeReading reading) {
        WakeCells.Key key = WakeCells.key(reading, settings.coldCelsius());
        return chanceOf(
                new Hand(key.readerId(), key.technicianId()), key.inner() ? Mount.INNER : Mount.SINGLE, key.cold());
    }

    /** Named readers, alone, then with each technician that has an effect, then these technicians with no known reader. */
    List<Hand> hands() {
        List<Hand> hands = new ArrayList<>();
        readers.keySet().forEach(r -> hands.add(new Hand(r, "")));
        pairs.stream().filter(h -> !h.readerId().isEmpty()).forEach(hands::add);
        technicians.effects().keySet().forEach(t -> hands.add(new Hand("", t)));
        return hands;
    }

    /** One line per named reader, in order, then one per technician told apart from the readers. */
    public List<ReaderQuality> qualities() {
        return qualities;
    }
}
