package sensorrounds.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Collectors;
import sensorrounds.condition.ReaderQuality.Of;
import sensorrounds.numeric.StandardNormal;

/** Writes the lines on readers and technicians. */
final class Qualities {
    private static final double LOWER = 0.025;
    private static final double UPPER = 0.975;
    /** A technician with more than this share of a reader's reads is the one it is judged with. */
    private static final double MOST = 0.5;

    private final WakeCells cells;
    private final CrossedTries crossed;
    private final TechnicianEffects technicians;
    private final double overall;
    private final ConditionSettings settings;
    private final List<ReaderQuality> lines = new ArrayList<>();

    Qualities(
            WakeCells cells,
            CrossedTries crossed,
            TechnicianEffects technicians,
            double overall,
            ConditionSettings settings) {
        this.cells = cells;
        this.crossed = crossed;
        this.technicians = technicians;
        this.overall = overall;
        this.settings = settings;
    }

    void addReader(String reader, BetaDistribution posterior) {
        SortedMap<String, Double> shares = crossed.shares(reader);
        String with = shares.entrySet().stream()
                .filter(e -> e.getValue() > MOST && !technicians.effects().containsKey(e.getKey()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(null);
        // What is not known of the technicians is not known of the reader either: widened on the log odds, first order.
        double variance = technicians.varianceOfMean(shares);
        double m = posterior.mean();
        double slope = m * (1 - m);
        BetaDistribution law = variance == 0
                ? posterior
                : BetaDistribution.ofMoments(
                        m,
                        Math.min(
                                slope * MOST,
                                slope / (posterior.alpha() + posterior.beta() + 1) + slope * slope * variance));
        List<WakeCells.Key> keys = cells.keysOf(reader);
        long reads = keys.stream().mapToLong(cells::reads).sum();
        double upper = law.quantile(UPPER);
        lines.add(new ReaderQuality(
                with == null ? Of.READER : Of.PAIR,
                reader,
                with,
                reads,
                meanAttempts(keys, reads),
                m,
                law.quantile(LOWER),
                upper,
                reads >= settings.minimumReaderReads() && upper < overall));
    }

    /**
     * A pair whose technician has an ordinary reader besides is none: the technician is not what is slow about it. Asked
     * once all readers are there.
     */
    private void tellPairsApart() {
        Set<String> withOrdinary = lines.stream()
                .filter(q -> q.of() == Of.PAIR && !q.slow() && q.reads() >= settings.minimumReaderReads())
                .map(ReaderQuality::technicianId)
                .collect(Collectors.toSet());
        lines.replaceAll(q ->
                q.of() == Of.PAIR && q.slow() && withOrdinary.contains(q.technicianId()) ? q.withoutTechnician() : q);
    }

    void addTechnicians() {
        tellPairsApart();
        double average = Odds.log(overall);
        double z = StandardNormal.quantile(UPPER);
        SortedMap<String, List<WakeCells.Key>> all = crossed.byTechnician();
        technicians.effects().forEach((technician, effect) -> {
            List<WakeCells.Key> keys = all.get(technician);
            long reads = keys.stream().mapToLong(cells::reads).sum();
            lines.add(new ReaderQuality(
                    Of.TECHNICIAN,
                    null,
                    technician,
                    reads,
                    meanAttempts(keys, reads),
                    Odds.chance(average + effect.logOdds()),
                    Odds.chance(average + effect.logOdds() - z * effect.deviation()),
                    Odds.chance(average + effect.logOdds() + z * effect.deviation()),
                    reads >= settings.minimumReaderReads() && effect.slow()));
        });
    }

    private double meanAttempts(List<WakeCells.Key> keys, long reads) {
        return (double) keys.stream().mapToLong(cells::triesSpent).sum() / reads;
    }

    List<ReaderQuality> lines() {
        return lines;
    }
}
